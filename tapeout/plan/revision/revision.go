// Package revision tells what the designer changed between two plans and takes
// over what the team accepts.
//
// Elements of a new drawing come with identifiers of their own, so they are
// recognised by name, kind, shape and place. Everything is in plan axes, in metres.
package revision

import (
	"math"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Outcome is what became of one element.
type Outcome string

// Outcomes.
const (
	Unchanged Outcome = "unchanged"
	Moved     Outcome = "moved"    // the same shape at another place
	Reshaped  Outcome = "reshaped" // other lines, perhaps at another place too
	New       Outcome = "new"
	Gone      Outcome = "gone"
)

// Outcomes in the order in which a person looks them through.
var Outcomes = []Outcome{Gone, New, Reshaped, Moved, Unchanged}

// Tolerance says what is too little to be a change. Values that are not above
// zero count as those of DefaultTolerance.
type Tolerance struct {
	Place float64 // metres by which any point of an element may lie elsewhere
	Shape float64 // metres by which two shapes may differ once laid on each other
}

// DefaultTolerance is what tape laid by hand cannot show: about a quarter of an
// inch (common practice, no source).
var DefaultTolerance = Tolerance{Place: 0.006, Shape: 0.006}

// orDefault returns the tolerance with its gaps filled.
func (t Tolerance) orDefault() Tolerance {
	if !(t.Place > 0) {
		t.Place = DefaultTolerance.Place
	}
	if !(t.Shape > 0) {
		t.Shape = DefaultTolerance.Shape
	}
	return t
}

// Change is what became of one element.
type Change struct {
	Outcome Outcome
	Before  plan.Element // zero when new
	After   plan.Element // zero when gone

	// Motion carries the old lines onto the new ones as well as a rigid motion
	// can; of several that do so equally well it is the one that turns least. It
	// is zero unless the element has moved or is reshaped.
	Motion plane.Motion

	// Shift and Turn are Motion as a person does it: turn about the anchor of the
	// old element, then shift. Turn is in radians, counter-clockwise.
	Shift plane.Point
	Turn  float64

	// Off is how far, in metres, the two shapes are from each other at worst once
	// Motion has been done.
	Off float64

	Renamed bool // names differ in more than capitals and spaces
	Rekind  bool // kinds differ
	Redrawn bool // the same lines have other roles: solid has become broken, an outline an inner line
}

// Changes are what became of all elements: those of the old plan in its order,
// then the new ones in theirs.
type Changes []Change

// Count returns how many elements have the outcome.
func (c Changes) Count(o Outcome) int {
	n := 0
	for i := range c {
		if c[i].Outcome == o {
			n++
		}
	}
	return n
}

// Compare tells what became of each element of the old list in the new one.
// Elements of both lists are paired off so that differences in shape, place, name
// and kind together are as small as can be; a pair that would differ more than
// two elements that have nothing to do with each other is one gone and one new.
// Identifiers play no part. The order of the lists decides between elements that
// are alike in everything only.
func Compare(before, after []plan.Element, tol Tolerance) Changes {
	tol = tol.orDefault()
	old, young := shapesOf(before), shapesOf(after)
	partner := pair(old, young)
	taken := make([]bool, len(after))
	out := make(Changes, 0, max(len(before), len(after)))
	for i, j := range partner {
		if j < 0 {
			out = append(out, Change{Outcome: Gone, Before: before[i]})
			continue
		}
		taken[j] = true
		out = append(out, compareOne(&old[i], &young[j], tol))
	}
	for j := range after {
		if !taken[j] {
			out = append(out, Change{Outcome: New, After: after[j]})
		}
	}
	return out
}

// compareOne tells what became of an element whose partner is known.
func compareOne(a, b *shape, tol Tolerance) Change {
	c := Change{
		Outcome: Unchanged, Before: *a.element, After: *b.element,
		Renamed: a.name != b.name, Rekind: a.element.Kind != b.element.Kind,
	}
	here := apart(a, b, plane.Motion{})
	if here <= tol.Place {
		c.Off = here
		if rolesDiffer(a, b, tol.Shape) {
			c.Outcome, c.Redrawn = Reshaped, true
		}
		return c
	}
	c.Outcome = Moved
	c.Motion, c.Off = bestMotion(a, b, tol.Shape)
	if c.Off > tol.Shape {
		c.Outcome = Reshaped
	}
	if rolesDiffer(a, b, tol.Shape) && c.Outcome == Moved {
		c.Outcome, c.Redrawn = Reshaped, true
	}
	c.Turn = math.Remainder(c.Motion.Turn, 2*math.Pi)
	if anchor, ok := a.element.Anchor(); ok {
		c.Shift = c.Motion.Apply(anchor).Sub(anchor)
	}
	return c
}

// rolesDiffer tells whether lines have changed their role: whether the length of
// any role differs by more than the tolerance for every edge allows.
func rolesDiffer(a, b *shape, tol float64) bool {
	slack := 2 * tol * float64(max(len(a.edges), len(b.edges), 1))
	for _, r := range plan.Roles {
		if math.Abs(a.byRole[r]-b.byRole[r]) > slack && math.Abs(a.total-b.total) <= slack {
			return true
		}
	}
	return false
}
