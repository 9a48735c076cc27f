package passage

import (
	"math"

	"groundrow/tapeout/plane"
)

// Roomiest returns where in an area the widest person can stand, to within a
// millimetre of the best of a grid of places; ok is false where the area has no place
// that is free.
func (s *Space) Roomiest(area plane.Path) (at plane.Point, ok bool) {
	box, some := area.Bounds()
	if !some || !finite(area) {
		return plane.Point{}, false
	}
	best := 0.0
	try := func(p plane.Point) {
		if d, _, _ := s.Clear(p); d > best && area.Contains(p, 0) {
			if _, blocked := s.Blocked(p); !blocked {
				best, at, ok = min(d, math.MaxFloat64), p, true
			}
		}
	}
	const n = 12
	for i := range n {
		for j := range n {
			try(box.Min.Add(plane.Point{X: box.Width() * (float64(i) + 0.5) / n, Y: box.Height() * (float64(j) + 0.5) / n}))
		}
	}
	for step := max(box.Width(), box.Height()) / n; ok && step > 0.001; step /= 2 {
		from := at
		for _, d := range []plane.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {X: 1, Y: 1}, {X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1}} {
			try(from.Add(d.Times(step)))
		}
	}
	return at, ok
}
