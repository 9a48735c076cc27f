package floor

import (
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Aside is what a floor lays beside its true place by one offset. It has a datum
// of its own, the floor's datum moved along: from there up and over are those of
// the true place.
type Aside struct {
	Elements []plan.ElementID // in plan order
	Over, Up float64          // the offset in plan axes, metres
	Datum    plane.Point      // the datum of its own, in the floor's datum axes
	OnFloor  bool             // that datum can be marked: it is inside the walls and on no obstacle
	Sign     plane.Point      // where the offset is written: at that datum, else at the end or corner nearest to it
}

// Asides returns what the floor moves aside, gathered by offset, in plan order.
func (f *Floor) Asides(pl *plan.Plan) []Aside {
	var out []Aside
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if t.How != MovedAside || len(pl.Standings(e)) == 0 {
			continue
		}
		k := slices.IndexFunc(out, func(a Aside) bool {
			return plane.Point{X: a.Over, Y: a.Up}.To(plane.Point{X: t.Over, Y: t.Up}) < tight
		})
		if k < 0 {
			k = len(out)
			out = append(out, Aside{Over: t.Over, Up: t.Up, Datum: f.asideShift(t)})
		}
		out[k].Elements = append(out[k].Elements, e.ID)
	}
	for i := range out {
		f.signs(&out[i], pl)
	}
	return out
}

// asideShift is the offset of a treatment in datum axes.
func (f *Floor) asideShift(t Treatment) plane.Point {
	return f.PlanToDatum().Rotate(plane.Point{X: t.Over, Y: t.Up})
}

// AsideBy returns how far the floor lays the element from its true place, in datum
// axes; zero for what is not moved aside.
func (f *Floor) AsideBy(e *plan.Element) plane.Point {
	if t := f.Decide(e); t.How == MovedAside {
		return f.asideShift(t)
	}
	return plane.Point{}
}

// signs finds where the offset of an aside is written.
func (f *Floor) signs(a *Aside, pl *plan.Plan) {
	a.Sign = a.Datum
	if a.OnFloor = f.Holds(a.Datum); a.OnFloor {
		return
	}
	nearest := -1.0
	for _, id := range a.Elements {
		e := pl.Element(id)
		for _, s := range pl.Standings(e) {
			m := f.motion(f.Decide(e), s.Motion)
			for _, path := range e.Paths {
				for _, p := range path.Path.Moved(m).Points() {
					if d := p.To(a.Datum); nearest < 0 || d < nearest {
						nearest, a.Sign = d, p
					}
				}
			}
		}
	}
}

// Holds tells whether a mark can be put at the point, in datum axes: it lies inside
// the walls and on no obstacle. A floor that has not been measured holds all.
func (f *Floor) Holds(at plane.Point) bool {
	on := f.FloorToDatum().Inverse().Apply(at)
	if len(f.Outline.Vertices) > 0 && !f.Outline.Contains(on, tight) {
		return false
	}
	return !slices.ContainsFunc(f.Obstacles, func(o Obstacle) bool { return o.Shape.Contains(on, 0) })
}

// Stop is a station of a revolve or a track as the floor has it.
type Stop struct {
	plan.Station // in datum axes
	Carrier      plan.ElementID
}

// Stops returns where the carriers that the floor lays come to rest, in plan
// order and the order of their travel.
func (f *Floor) Stops(pl *plan.Plan) []Stop {
	var out []Stop
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if !e.Kind.Carrier() || t.How == LeftOut {
			continue
		}
		m := f.motion(t, plane.Motion{})
		for _, s := range pl.Stations(e) {
			s.At, s.Centre, s.Across = m.Apply(s.At), m.Apply(s.Centre), m.Rotate(s.Across)
			out = append(out, Stop{s, e.ID})
		}
	}
	return out
}
