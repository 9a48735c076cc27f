// Package placement finds the best ways to set the plan on a floor.
//
// # The score
//
// The free floor is the outline less all obstacles and all areas that must stay
// clear. What touches the outline within a tenth of a millimetre is on it; what
// touches an obstacle or such an area is not. Of a placement,
//
//	lines = Σ w·(metres of line work on the free floor) / Σ w·(metres of line work)
//	area  = Σ w·(square metres of playing area on the free floor) / Σ w·(square metres)
//	sight = Σ w·(metres on the free floor that the front table sees) / Σ w·(metres)
//	score = (lines + a·area + s·sight) / (1 + a + s)
//
// where w is the worth of the element, a and s are the floor's wishes, and a term
// of which there is nothing at all counts nothing. Line work is every edge that
// the floor lays in tape or outlines with spikes, in every position of every
// scene, before anything is cut short. Playing area is what the closed outlines of
// things that are stood on enclose. The front table sees a point when the straight
// line from its middle meets no wall and no obstacle, and the point is not further
// downstage than the table.
//
// One score serves search, dragging and typing: Case.At.
//
// # Requirements
//
// Essential elements that the floor lays whole must lie wholly on the free floor,
// with nothing in the way inside their outlines; what is cut short or left out need
// not. The turn must be one that the floor's wishes allow, and downstage must look
// to a side that may be the front. Areas that must stay clear are not on the free
// floor, so that nothing on them counts as kept.
//
// # The search
//
// Best-first branch and bound over boxes of turn and shift. Within a box no point
// at distance r from the middle of the plan moves by more than the half diagonal
// of the shifts + r·(half the turn); so it can lie on the free floor somewhere in
// the box only if its distance to the free floor, at the middle of the box, is no
// more than that. Summed over line work and areas, split as finely as the box
// deserves, this bounds the score of every placement in the box from above. Arcs
// are taken as chords within a millimetre, which the bound allows for. Good placements to compare
// with come from the middles of boxes, made better by sliding them against the
// walls. What is returned is scored exactly, by clipping; the bound is reported
// beside it, and when the search was not cut off the best lies within Gap of it.
package placement

import (
	"errors"
	"fmt"
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// touch is how far a line may overshoot a wall and still touch it, in metres; it
// is what package floor holds for touching.
const touch = 1e-4

// Case is one plan on one floor, made ready for scoring and searching. It does not
// change and may be used by several at once.
type Case struct {
	plan     *plan.Plan
	floor    *floor.Floor
	items    []item
	parts    []part
	pivot    plane.Point // the middle of the plan, plan axes
	radius   float64     // around the pivot
	free     *field
	seen     *field // nil: no front table, or sight counts nothing
	table    plane.Point
	hasTable bool
	sight    plane.Path // what the table sees of the floor
	worth    worth
	slack    float64 // by which chords may depart from curves, in metres
	granted  float64 // share of the score that is always taken as kept
}

// worth is what all of the plan comes to, and how the terms of the score are
// weighed; the weights add up to one.
type worth struct {
	length, area             float64
	lineW, areaW, sightWorth float64
}

// errNothing and errUnmeasured say why there is nothing to search.
var (
	errUnmeasured = errors.New("the floor has no walls yet: measure it first")
	errFar        = errors.New("the walls lie further than ten kilometres from where they are measured from: check the corners")
	errNothing    = errors.New("the floor lays nothing of the plan: there is nothing to place")
)

// New makes a case ready. It takes some milliseconds. An error says that the floor
// has no sound outline or lays nothing.
func New(pl *plan.Plan, f *floor.Floor) (*Case, error) {
	if len(f.Outline.Vertices) == 0 {
		return nil, errUnmeasured
	}
	if err := floor.CheckOutline(f.Outline); err != nil {
		return nil, fmt.Errorf("the walls make no room: %w", err)
	}
	for i := range f.Obstacles {
		if !sound(f.Obstacles[i].Shape) {
			return nil, fmt.Errorf("the obstacle %q has a corner that is no place on a floor", f.Obstacles[i].Name)
		}
	}
	for i := range f.KeepClears {
		if !sound(f.KeepClears[i].Shape) {
			return nil, fmt.Errorf("the area to keep clear %q has a corner that is no place on a floor", f.KeepClears[i].Name)
		}
	}
	if !sound(f.Outline) {
		return nil, errFar
	}
	c := &Case{plan: pl, floor: f, items: itemsOf(pl, f)}
	if !c.measure() {
		return nil, errNothing
	}
	c.findTable()
	c.weigh()
	c.free = newField([]plane.Path{f.Outline}, blocked(f))
	if c.worth.sightWorth > 0 {
		c.seen = newField([]plane.Path{f.Outline, c.sight}, blocked(f))
	}
	c.parts = c.split()
	c.slack = c.curves()
	return c, nil
}

// curves is what the bound has to allow for chords that stand for arcs: of the
// room, of the plan, and for how places along an arc and its chord differ.
func (c *Case) curves() float64 {
	curved := func(edges []plane.Edge) float64 {
		for _, e := range edges {
			if !e.Straight() {
				return 1.5 * chord
			}
		}
		return 0
	}
	var room, set []plane.Edge
	for _, p := range append(blocked(c.floor), c.floor.Outline) {
		room = append(room, p.Edges()...)
	}
	for _, it := range c.items {
		set = append(set, it.lines...)
		for _, a := range it.areas {
			set = append(set, a.Edges()...)
		}
	}
	return curved(room) + curved(set)
}

// measure finds the middle and the reach of the plan and what all of it comes to;
// false when there is none.
func (c *Case) measure() bool {
	var box plane.Box
	some := false
	for _, it := range c.items {
		for _, e := range it.lines {
			if !some {
				box, some = e.Bounds(), true
			}
			box = box.Union(e.Bounds())
			c.worth.length += it.worth * e.Length()
		}
		for _, a := range it.areas {
			c.worth.area += it.worth * a.Area()
			if b, ok := a.Bounds(); ok {
				if !some {
					box, some = b, true
				}
				box = box.Union(b)
			}
		}
	}
	c.pivot, c.radius = box.Centre(), box.Min.To(box.Max)/2
	return some && c.worth.length+c.worth.area > 0
}

// weigh spreads the score over its terms.
func (c *Case) weigh() {
	w, wish := &c.worth, c.floor.Wishes
	lines, area, sight := 1.0, counted(wish.Area), counted(wish.Sight)
	if w.length == 0 {
		lines, sight, area = 0, 0, 1
	}
	if w.area == 0 {
		area = 0
	}
	if !c.hasTable {
		sight = 0
	}
	sum := lines + area + sight
	w.lineW, w.areaW, w.sightWorth = lines/sum, area/sum, sight/sum
}

// counted is a weight that was typed, where it is one.
func counted(v float64) float64 {
	if v > 0 && v < 1e6 {
		return v
	}
	return 0
}

// farthest is how far from its origin anything of a floor or a plan is, in metres.
const farthest = 1e4

// sound tells whether all of a path lies where a floor can be.
func sound(p plane.Path) bool {
	for _, v := range p.Vertices {
		if !(math.Abs(v.X) < farthest && math.Abs(v.Y) < farthest && math.Abs(v.Bulge) < farthest) {
			return false
		}
	}
	return true
}

func blocked(f *floor.Floor) []plane.Path {
	var out []plane.Path
	for _, o := range f.Obstacles {
		out = append(out, o.Shape)
	}
	for _, k := range f.KeepClears {
		out = append(out, k.Shape)
	}
	return out
}
