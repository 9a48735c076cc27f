package placement

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// item is all that counts of one element, in plan axes.
type item struct {
	id    plan.ElementID
	worth float64
	whole bool // it must lie on the free floor whole
	lines []plane.Edge
	areas []plane.Path // playing area
	solid []plane.Path // closed outlines: nothing may be in the way inside them, if it must be whole
}

// itemsOf gathers what the floor means to lay, before anything is cut short, in
// plan order.
func itemsOf(pl *plan.Plan, f *floor.Floor) []item {
	whole := uncut(f)
	items := map[plan.ElementID]*item{}
	var order []*item
	at := func(id plan.ElementID) *item {
		it, ok := items[id]
		if !ok {
			e := pl.Element(id)
			it = &item{id: id, worth: e.Worth(), whole: e.Use.MustBeWhole() && f.Decide(e).How != floor.CutShort}
			items[id] = it
			order = append(order, it)
		}
		return it
	}
	for _, l := range whole.Lines(pl) {
		if l.Length() > 0 && sound(plane.Path{Vertices: []plane.Vertex{{Point: l.A, Bulge: l.Bulge}, {Point: l.B}}}) {
			it := at(l.Element)
			it.lines = append(it.lines, l.Edge)
		}
	}
	for _, piece := range whole.Spiked(pl) {
		it := at(piece.Element)
		for _, p := range piece.Paths {
			if sound(p.Path) {
				it.lines = append(it.lines, p.Edges()...)
			}
		}
	}
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := whole.Decide(e)
		if t.How == floor.LeftOut {
			continue
		}
		for _, p := range closedOutlines(pl, e, t) {
			it := at(e.ID)
			it.solid = append(it.solid, p)
			if e.Kind.Area() && !e.Kind.Movable() {
				it.areas = append(it.areas, p)
			}
		}
	}
	out := make([]item, len(order))
	for i, it := range order {
		out[i] = *it
	}
	return out
}

// uncut is the floor with nothing cut short and its datum where the plan's is, so
// that what it lays comes in plan axes and whole.
func uncut(f *floor.Floor) *floor.Floor {
	g := *f
	g.OwnDatum = false
	g.Treatments = nil
	for _, t := range f.Treatments {
		if t.How == floor.CutShort {
			t.How = floor.AsDrawn
		}
		g.Treatments = append(g.Treatments, t)
	}
	return &g
}

// closedOutlines are the areas that an element encloses, in all its positions.
func closedOutlines(pl *plan.Plan, e *plan.Element, t floor.Treatment) []plane.Path {
	var out []plane.Path
	for _, s := range pl.Standings(e) {
		m := s.Motion
		if t.How == floor.MovedAside {
			m = m.Then(plane.Motion{Shift: plane.Point{X: t.Over, Y: t.Up}})
		}
		for _, p := range e.Paths {
			if p.Role != plan.Outline || !p.Closed || !sound(p.Path) || !(p.Area() > 1e-6) {
				continue
			}
			if _, crosses := p.CrossesItself(touch); !crosses {
				out = append(out, p.Path.Moved(m))
			}
		}
	}
	return out
}
