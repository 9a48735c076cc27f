package sense

import (
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

// holds tells whether the box lies in the area.
func holds(area, b plane.Box) bool { return area.Holds(b.Min) && area.Holds(b.Max) }
