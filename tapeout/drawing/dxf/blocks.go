package dxf

import (
	"fmt"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// block is a picture that inserts place in the drawing.
type block struct {
	name      string
	base      vec // the point of it that an insert places
	paper     bool
	elsewhere bool // its lines are in another file
	entities  []*entity
	notes     linework.Leftovers // what was left aside in it
	noted     bool               // in the sheet as well

	measured  bool
	measuring bool
	weight    float64 // things that one copy of it places, itself counted
	why       string  // why it cannot be placed; empty: it can
}

const (
	whyNoBlock   = "the block that it places is not in the file"
	whyElsewhere = "its lines are in another file; bind that one in, or import it by itself"
	whyItself    = "the block contains itself"
	whyDeep      = "its blocks are nested more than 64 deep"
)

// readBlocks reads the blocks with what is in them.
func (r *reader) readBlocks() error {
	if r.blocksRead {
		r.left.Add("second list of blocks", "a drawing has one", 1)
		return nil
	}
	defer func() { r.block = nil }()
	err := r.eachRecord(func(e *record) error {
		switch e.kind {
		case "BLOCK":
			if err := r.closeOpen(); err != nil {
				return err
			}
			return r.startBlock(e)
		case "ENDBLK":
			err := r.closeOpen()
			r.block = nil
			return err
		}
		if r.block == nil {
			return nil
		}
		return r.readEntity(e)
	})
	if err == nil {
		err = r.closeOpen()
	}
	r.blocksRead = true
	return err
}

func (r *reader) startBlock(e *record) error {
	const external = 4
	raw, _ := e.find(2)
	b := &block{name: strings.TrimSpace(r.text.text(raw)), base: e.vec(10), elsewhere: e.whole(70, 0)&external != 0}
	key := capitals(b.name)
	b.paper = strings.HasPrefix(key, "*PAPER_SPACE") || strings.HasPrefix(key, "$PAPER_SPACE")
	if e.bad != "" {
		b.why = e.bad
	}
	r.blocks[key], r.block = b, b
	return r.spend(costName + len(b.name))
}

// measure finds out how much a copy of the block places, and whether it can be
// placed at all. depth is that of the block inside the one first asked for.
func (r *reader) measure(b *block, depth int) {
	switch {
	case b.measuring:
		b.why = whyItself
	case depth > maxDepth:
		b.why = whyDeep
	case b.elsewhere:
		b.why = whyElsewhere
	}
	if b.measured || b.measuring || b.why != "" {
		return
	}
	b.measuring = true
	b.weight = 1
	for _, e := range b.entities {
		b.weight++
		if e.insert == nil {
			continue
		}
		if child := r.blocks[e.insert.block]; child != nil {
			r.measure(child, depth+1)
			if child.why == "" {
				b.weight += e.insert.copies() * child.weight
			}
		}
	}
	b.measuring, b.measured = false, true
}

func (i *insert) copies() float64 { return float64(i.columns) * float64(i.rows) }

// placeable returns the block of the insert, or why it cannot be placed.
func (r *reader) placeable(i *insert, depth int) (b *block, why string) {
	b = r.blocks[i.block]
	if b == nil {
		return nil, whyNoBlock
	}
	r.measure(b, 0)
	switch {
	case b.why != "":
		return nil, b.why
	case depth >= maxDepth:
		return nil, whyDeep
	case i.copies()*b.weight > maxPlaced:
		return nil, fmt.Sprintf("it would place more than %d things", maxPlaced)
	}
	return b, ""
}

// placeInsert places a block, and all that is in it, with everything that it hands
// down.
func (r *reader) placeInsert(e *entity, c *surroundings) error {
	i := e.insert
	inner := c.within(&e.style)
	if c.depth == 0 {
		r.groups++
		inner.group = r.groups
	}
	if i.picture && c.kind == "" {
		inner.kind = e.kind
	}
	if i.measure != nil {
		if err := r.emitMeasure(e, c, inner.group); err != nil {
			return err
		}
	}
	if err := r.placeAttribs(i, c, inner); err != nil {
		return err
	}
	b, why := r.placeable(i, c.depth)
	if why != "" {
		r.left.Add(strings.TrimSpace(e.kind+" "+kindName(i.name)), why, 1)
		return nil
	}
	inner.block = b.name
	r.passNotes(b, &inner)
	for row := range i.rows {
		for column := range i.columns {
			by := i.across.times(float64(column)).plus(i.along.times(float64(row)))
			inner.m = c.m.after(shift(by)).after(i.place).after(shift(b.base.times(-1)))
			if err := r.placeCopy(b, &inner); err != nil {
				return err
			}
		}
	}
	return nil
}

// note counts something that is left aside: at once, or once the block that is being
// read is placed.
func (r *reader) note(what, why string) {
	if r.block != nil {
		r.block.notes.Add(what, why, 1)
		return
	}
	r.left.Add(what, why, 1)
}

// passNotes passes on what was left aside in a block when it is first placed. What a
// dimension's picture lacks is of no interest.
func (r *reader) passNotes(b *block, c *surroundings) {
	if b.noted || c.kind != "" {
		return
	}
	b.noted = true
	for _, l := range b.notes.List() {
		r.left.Add(l.What, l.Why, l.Count)
	}
}

func (r *reader) placeCopy(b *block, c *surroundings) error {
	if err := r.step(1); err != nil {
		return err
	}
	for _, e := range b.entities {
		if err := r.step(1); err != nil {
			return err
		}
		if r.steps%1024 == 0 {
			if err := r.in.ctx.Err(); err != nil {
				return err
			}
		}
		place := r.emit
		if e.insert != nil {
			place = r.placeInsert
		}
		if err := place(e, c); err != nil {
			return err
		}
	}
	return nil
}

// placeAttribs places the words that an insert brings: they stand in the insert's
// own surroundings, but a frozen layer hides them with the rest.
func (r *reader) placeAttribs(i *insert, c *surroundings, inner surroundings) error {
	inner.m, inner.block = c.m, i.name
	for _, a := range i.attribs {
		if err := r.emit(a, &inner); err != nil {
			return err
		}
	}
	return nil
}

func (r *reader) emitMeasure(e *entity, c *surroundings, group int) error {
	if err := r.spend(costText); err != nil {
		return err
	}
	m := *e.insert.measure
	place := func(p plane.Point) plane.Point { return c.m.apply(vec{p.X, p.Y, 0}).plan() }
	m.From, m.To = place(m.From), place(m.To)
	if !inRange(plane.Edge{A: m.From, B: m.To}) {
		r.left.Add(e.kind, whyPlaced, 1)
		return nil
	}
	m.Layer, m.Group, m.Hidden = e.style.on(c).Name, group, e.style.hidden(c)
	r.sheet.Measures = append(r.sheet.Measures, m)
	return nil
}
