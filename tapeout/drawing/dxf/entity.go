package dxf

import (
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// entity is one thing of the drawing in the coordinates of its block, or of the
// drawing itself. At most one of parts, words and insert is there.
type entity struct {
	kind   string
	style  style
	parts  []part
	words  *words
	insert *insert
}

// style is how an entity is drawn, before layers and blocks have their say.
type style struct {
	layer     *layer
	ink       ink
	linetype  *linetype // nil: by layer
	scale     float64   // of the linetype, for this entity alone
	weight    int       // hundredths of a millimetre; -1 by layer, -2 by block, -3 not said
	invisible bool
}

// words is a TEXT, an MTEXT or an attribute.
type words struct {
	text      string
	at        vec
	along, up vec // the direction of reading, and the height of capitals across it
}

// insert is a block placed in the drawing, or the picture of a dimension.
type insert struct {
	block   string // its key
	name    string
	place   affine // the first of the array; its block's base point is still to come off
	columns int
	rows    int
	across  vec // from one column to the next
	along   vec // from one row to the next
	attribs []*entity
	measure *linework.Measure // of a dimension
	picture bool              // everything inside counts as of the entity's own kind
}

func (e *entity) cost() int {
	total := costEntity
	for _, p := range e.parts {
		total += p.cost()
	}
	if e.words != nil {
		total += len(e.words.text)
	}
	return total
}

// style reads what all entities have in common.
func (r *reader) style(e *record) (style, error) {
	l, err := r.layer(e)
	if err != nil {
		return style{}, err
	}
	s := style{layer: l, ink: e.ink(), scale: e.num(48, 1), weight: e.whole(370, -1), invisible: e.whole(60, 0) == 1}
	if name, ok := e.find(6); ok {
		if s.linetype = r.linetype(name); s.linetype.name == lineByLayer {
			s.linetype = nil
		}
	}
	return s, nil
}

// surroundings are what is handed down into a block.
type surroundings struct {
	m      affine
	block  string
	kind   string // of a dimension's picture; empty: things have their own
	group  int
	depth  int
	hidden bool
	layer  *layer // that layer 0 stands for; nil outside blocks
	colour linework.Colour
	dash   *linetype
	weight int
}

func outside() surroundings {
	return surroundings{m: identity, colour: indexed(foreground), weight: -3}
}

// on returns the layer that the style is on within the surroundings.
func (s *style) on(c *surroundings) *layer {
	if c.layer != nil && s.layer.Name == "0" {
		return c.layer
	}
	return s.layer
}

func (s *style) hidden(c *surroundings) bool {
	l := s.on(c)
	return c.hidden || s.invisible || l.Off || l.Frozen
}

func (s *style) colour(c *surroundings) linework.Colour {
	return s.ink.colour(s.on(c).Colour, c.colour)
}

// pattern returns the linetype, nil for solid.
func (s *style) pattern(c *surroundings) *linetype {
	switch {
	case s.linetype == nil:
		return s.on(c).linetype
	case s.linetype.name == lineByBlock:
		return c.dash
	}
	return s.linetype
}

func (s *style) lineWeight(c *surroundings) int {
	switch s.weight {
	case -1:
		return s.on(c).weight
	case -2:
		return c.weight
	}
	return s.weight
}

// within returns the surroundings inside an insert with the style. A frozen layer hides
// everything inside; one that is only off hides what takes its layer from it.
func (c surroundings) within(s *style) surroundings {
	l := s.on(&c)
	c.hidden = c.hidden || s.invisible || l.Frozen
	c.colour, c.dash, c.weight, c.layer = s.colour(&c), s.pattern(&c), s.lineWeight(&c), l
	c.depth++
	return c
}

// emit places an entity's lines or words in the sheet.
func (r *reader) emit(e *entity, c *surroundings) error {
	if e.words != nil {
		return r.emitWords(e, c)
	}
	edges, raised := r.placed(e, c)
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
	r.sheet.Items = append(r.sheet.Items, linework.Item{
		Edges: edges, Layer: e.style.on(c).Name, Kind: kind, Block: c.block, Group: c.group,
		Colour: e.style.colour(c), Width: max(0, float64(e.style.lineWeight(c))*1e-5),
		Dash:   e.style.pattern(c).dash(e.style.scale * r.header.lineScale),
		Hidden: e.style.hidden(c),
	})
	return nil
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
