package floor

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Solid is an outline that people walk round, in floor axes: closed with all that it
// encloses, or a line.
type Solid struct {
	Element plan.ElementID
	Path    plane.Path
}

// Headroom is the height in metres above the stage floor from which on a level is over
// people's heads: they pass beneath, and its lines would be taken for walls there
// (common practice, no source).
const Headroom = 2.0

// Solids returns what people walk round in the scene, of what the floor lays or has set
// on spikes; the empty scene is the plan as drawn. One walks through doors and openings,
// over revolves and tracks, and below a level that is overhead unless it is laid aside.
func (f *Floor) Solids(pl *plan.Plan, scene plan.SceneID) []Solid {
	var out []Solid
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if stand, in := pl.Where(e, scene); in && f.solid(pl, e, t) {
			out = append(out, f.outlines(e, t, stand)...)
		}
	}
	return out
}

// Covers returns what people walk round that has its outline all the way round, in
// every position, but for the house: the stage is within its own walls.
func (f *Floor) Covers(pl *plan.Plan) []Solid {
	var out []Solid
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if !f.solid(pl, e, t) || e.Kind.House() {
			continue
		}
		for _, s := range pl.Standings(e) {
			for _, o := range f.outlines(e, t, s.Motion) {
				if o.Path.Closed {
					out = append(out, o)
				}
			}
		}
	}
	return out
}

// solid tells whether people walk round the element on this floor.
func (f *Floor) solid(pl *plan.Plan, e *plan.Element, t Treatment) bool {
	l := pl.Level(e.Level)
	overhead := l != nil && l.Height >= Headroom
	return e.Kind.Solid() && t.How != LeftOut && (!overhead || t.How == MovedAside)
}

// outlines returns the outlines of the element in a position.
func (f *Floor) outlines(e *plan.Element, t Treatment, stand plane.Motion) []Solid {
	m := f.motion(t, stand).Then(f.FloorToDatum().Inverse())
	var out []Solid
	for _, path := range e.Paths {
		if path.Role == plan.Outline {
			out = append(out, Solid{e.ID, path.Path.Moved(m)})
		}
	}
	return out
}
