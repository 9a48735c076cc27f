package sense

import (
	"math"

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

// OnLayer returns the items on the layer of exactly that name.
func OnLayer(s *linework.Sheet, name string) Set {
	return pick(s, func(i *linework.Item) bool { return i.Layer == name })
}

// InColour returns the items drawn in the colour.
func InColour(s *linework.Sheet, c linework.Colour) Set {
	return pick(s, func(i *linework.Item) bool { return i.Colour == c })
}

// OfWidth returns the items whose pen is as wide as that within a twentieth of a
// millimetre on paper; width is in metres.
func OfWidth(s *linework.Sheet, width float64) Set {
	return pick(s, func(i *linework.Item) bool { return math.Abs(i.Width-width) <= 5e-5 })
}

// Inside returns the items that lie in the area as a whole.
func Inside(s *linework.Sheet, area plane.Box) Set {
	return pick(s, func(i *linework.Item) bool {
		b, ok := plane.Bounds(i.Edges)
		return ok && holds(area, b)
	})
}

// Reaching returns the items of which any part lies in the area.
func Reaching(s *linework.Sheet, area plane.Box) Set {
	outline := plane.Rectangle(area.Min, area.Max).Edges()
	return pick(s, func(i *linework.Item) bool {
		for _, e := range i.Edges {
			if !e.Bounds().Meets(area) {
				continue
			}
			if area.Holds(e.A) || area.Holds(e.B) {
				return true
			}
			for _, side := range outline {
				if e.DistanceTo(side) <= 0 {
					return true
				}
			}
		}
		return false
	})
}

// Touching returns the set and all items that touch it, or touch what does,
// within tol drawing units.
func Touching(s *linework.Sheet, from Set, tol float64) Set {
	all := make([]int, len(s.Items))
	for i := range all {
		all[i] = i
	}
	groups := connected(s, all, tol)
	wanted := map[int]bool{}
	for _, i := range from {
		if i >= 0 && i < len(groups) {
			wanted[groups[i]] = true
		}
	}
	var out Set
	for i, g := range groups {
		if wanted[g] {
			out = append(out, i)
		}
	}
	return out
}

// holds tells whether the box lies in the area.
func holds(area, b plane.Box) bool { return area.Holds(b.Min) && area.Holds(b.Max) }
