package drawingin

import (
	"context"

	"groundrow/prep"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
)

// toggle takes lines that were touched in the drawing, or leaves them aside when
// all of them are taken; with what touches them, when that is ticked. A corner of
// the page's own is no line.
func (p *Page) toggle(items []int) {
	if p.d == nil || len(items) == 0 {
		return
	}
	if p.board.touching.Value() {
		items = sense.Touching(p.d.sheet, sense.NewSet(items...), p.d.scenery(), sense.DefaultJoin/p.d.perUnit())
	}
	on := false
	for _, i := range items {
		if i >= 0 && i < len(p.d.take) && !p.d.take[i] {
			on = true
		}
	}
	p.setTaken(items, on)
}

// setTaken takes lines, or leaves them aside.
func (p *Page) setTaken(items []int, on bool) {
	p.d.set(items, on)
	p.changed()
}

func (p *Page) takeAll(on bool) {
	for i := range p.d.take {
		p.d.take[i] = on
	}
	p.changed()
}

func (p *Page) takeAsProposed() {
	for i := range p.d.take {
		p.d.take[i] = p.d.why[i] == ""
	}
	p.changed()
}

// answerScale answers the scale. The picture keeps the same part of the drawing in
// sight, whatever its size on the floor.
func (p *Page) answerScale(say func(*drawn) error) error {
	before := p.d.perUnit()
	p.scale.found = nil
	if err := say(p.d); err != nil {
		return err
	}
	if k := p.d.perUnit() / before; k != 1 {
		p.rescaled(k)
	}
	p.changed()
	return nil
}

func (p *Page) rescaled(k float64) {
	view := p.board.canvas.GetView()
	view.Centre, view.Scale = view.Centre.Times(k), view.Scale*k
	p.redraw()
	p.board.canvas.SetView(view)
}

func (p *Page) answerDatum(say func(*drawn) error) error {
	if err := say(p.d); err != nil {
		return err
	}
	p.changed()
	return nil
}

// changed shows an answer and works out anew what comes in.
func (p *Page) changed() {
	p.showAll()
	p.propose()
}

// propose works out what the lines taken would make, without keeping anybody
// waiting; an answer given meanwhile calls it off.
func (p *Page) propose() {
	p.calling()
	if p.d.missing() != "" {
		p.coming.take(nil)
		p.showComing()
		return
	}
	job := p.proposing()
	var found []candidate
	p.calling = p.desk.Quietly(func(ctx context.Context) { found = job(ctx) }, func() {
		p.coming.take(found)
		p.decided()
	})
}

// decided shows what comes in, and compares it anew with the plan that there is.
func (p *Page) decided() {
	p.showComing()
	p.redraw()
	p.comparing()
	now := p.desk.View().Snapshot
	if !p.revising || len(now.P.Plan.Elements) == 0 || prep.FitForFloors(p.coming.elements()) != nil {
		return
	}
	after, next := p.coming.elements(), p.changes.again()
	var means meaning
	p.comparing = p.desk.Quietly(func(context.Context) {
		next.all = revision.Compare(now.P.Plan.Elements, after, revision.DefaultTolerance)
		means = next.meaning(now)
	}, func() {
		p.changes.all, p.means = next.all, means
		p.redraw()
		p.showComing()
	})
}

// dimensionOf is a dimension of the drawing to look at: the longest that it
// states, and failing that the width of what comes in.
func (d *drawn) dimensionOf() *dimension {
	var best *dimension
	long := 0.0
	for _, m := range d.sheet.Measures {
		if l := m.From.To(m.To); !m.Hidden && !m.Angular && l > long {
			best, long = &dimension{from: m.From, to: m.To}, l
		}
	}
	if best != nil {
		return best
	}
	longest := 0.0
	var found plane.Edge
	for i := range d.sheet.Items {
		if !d.take[i] {
			continue
		}
		for _, e := range d.sheet.Items[i].Edges {
			if e.Straight() && e.Chord() > longest {
				longest, found = e.Chord(), e
			}
		}
	}
	if longest == 0 {
		return nil
	}
	return &dimension{from: found.A, to: found.B}
}
