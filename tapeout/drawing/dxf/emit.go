package dxf

import (
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// emit places an entity's lines or words in the sheet.
func (r *reader) emit(e *entity, c *surroundings) error {
	if e.words != nil {
		return r.emitWords(e, c)
	}
	edges, raised := r.placed(e, c)
	const chordsInStep = 16
	if err := r.step(len(r.scratch) / chordsInStep); err != nil {
		return err
	}
	if len(edges) == 0 {
		return nil
	}
	if err := r.spend(costItem + costEdge*len(edges)); err != nil {
		return err
	}
	kind := e.kind
	if c.kind != "" {
		kind = c.kind
	}
	if raised && !e.style.hidden(c) {
		r.left.Add("heights of "+e.kind, whyRaised, 1)
	}
	r.addItem(linework.Item{
		Edges: edges, Layer: e.style.on(c).Name, Kind: kind, Block: c.block, Group: c.group,
		Colour: e.style.colour(c), Width: max(0, float64(e.style.lineWeight(c))*1e-5),
		Dash:   e.style.pattern(c).dash(e.style.scale * r.header.lineScale),
		Hidden: e.style.hidden(c),
	})
	return nil
}

// addItem keeps an item in pieces of memory that do not move as they grow in number.
func (r *reader) addItem(i linework.Item) {
	const chunk = 1024
	last := len(r.items) - 1
	if last < 0 || len(r.items[last]) == chunk {
		r.items = append(r.items, make([]linework.Item, 0, chunk))
		last++
	}
	r.items[last] = append(r.items[last], i)
}

// Reasons for leaving things aside when they are placed.
const (
	whyRaised = "it does not lie level, and is read as it looks from above"
	whyPoint  = "it has no length, seen from above"
	whyPlaced = "its place in the drawing is beyond 10 000 million drawing units"
)

// placed returns the entity's edges in the plan, none of them without a length.
func (r *reader) placed(e *entity, c *surroundings) (edges []plane.Edge, raised bool) {
	out := r.scratch[:0]
	for _, p := range e.parts {
		out = p.place(c.m, r.fineness, out)
		raised = raised || !p.level(c.m)
	}
	r.scratch = out
	kept := out[:0]
	for _, edge := range out {
		if !inRange(edge) {
			r.left.Add(e.kind, whyPlaced, 1)
			return nil, false
		}
		if edge.A != edge.B {
			kept = append(kept, edge)
		}
	}
	if len(kept) == 0 {
		r.left.Add(e.kind, whyPoint, 1)
		return nil, false
	}
	return r.keep(kept), raised
}

// inRange tells whether the edge stays where float64 can still tell its points apart.
func inRange(e plane.Edge) bool {
	b := plane.Box{Min: plane.Point{X: -maxCoord, Y: -maxCoord}, Max: plane.Point{X: maxCoord, Y: maxCoord}}
	if !b.Holds(e.A) || !b.Holds(e.B) {
		return false
	}
	if e.Bulge == 0 {
		return true
	}
	around := e.Bounds()
	return b.Holds(around.Min) && b.Holds(around.Max)
}

// keep copies edges into memory that many items share.
func (r *reader) keep(edges []plane.Edge) []plane.Edge {
	const chunk = 4096
	n := len(edges)
	if n > cap(r.arena)-len(r.arena) {
		r.arena = make([]plane.Edge, 0, max(chunk, n))
	}
	from := len(r.arena)
	r.arena = append(r.arena, edges...)
	return r.arena[from : from+n : from+n]
}

func (r *reader) emitWords(e *entity, c *surroundings) error {
	if e.words.text == "" {
		return nil
	}
	if err := r.spend(costText + len(e.words.text)); err != nil {
		return err
	}
	kind := e.kind
	if c.kind != "" {
		kind = c.kind
	}
	at := c.m.apply(e.words.at).plan()
	if !inRange(plane.Edge{A: at, B: at}) {
		r.left.Add(e.kind, whyPlaced, 1)
		return nil
	}
	r.sheet.Texts = append(r.sheet.Texts, linework.Text{
		Text: e.words.text, At: at, Turn: c.m.turn(e.words.along).plan().Angle(),
		Height: c.m.turn(e.words.up).plan().Len(),
		Layer:  e.style.on(c).Name, Kind: kind, Block: c.block, Group: c.group, Hidden: e.style.hidden(c),
	})
	return nil
}
