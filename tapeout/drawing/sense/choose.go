package sense

import (
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// pick returns the items that the test holds for.
func pick(s *linework.Sheet, test func(*linework.Item) bool) Set {
	var out Set
	for i := range s.Items {
		if test(&s.Items[i]) {
			out = append(out, i)
		}
	}
	return out
}

// Seen returns the items that are not hidden.
func Seen(s *linework.Sheet) Set { return pick(s, (*linework.Item).Shown) }

// Inside returns the items that lie in the area as a whole.
func Inside(s *linework.Sheet, area plane.Box) Set {
	return pick(s, func(i *linework.Item) bool {
		b, ok := plane.Bounds(i.Edges)
		return ok && holds(area, b)
	})
}

// Touching returns the set and what of the others touches it, or touches what does,
// within tol drawing units. Leave the centre line out of the others: it touches
// half of a plan.
func Touching(s *linework.Sheet, from, others Set, tol float64) Set {
	all := others.With(from)
	all = slices.DeleteFunc(all, func(i int) bool { return i < 0 || i >= len(s.Items) })
	wanted := map[int]bool{}
	groups := connected(s, all, tol)
	for k, i := range all {
		if from.Has(i) {
			wanted[groups[k]] = true
		}
	}
	var out Set
	for k, i := range all {
		if wanted[groups[k]] {
			out = append(out, i)
		}
	}
	return out
}

// holds tells whether the box lies in the area.
func holds(area, b plane.Box) bool { return area.Holds(b.Min) && area.Holds(b.Max) }
