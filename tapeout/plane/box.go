package plane

import "math"

// Box is an upright rectangle from Min to Max.
type Box struct{ Min, Max Point }

func (b Box) with(p Point, started bool) (Box, bool) {
	if !started {
		return Box{p, p}, true
	}
	return b.Union(Box{p, p}), true
}

// Union returns the smallest box around both.
func (b Box) Union(c Box) Box {
	return Box{
		Point{math.Min(b.Min.X, c.Min.X), math.Min(b.Min.Y, c.Min.Y)},
		Point{math.Max(b.Max.X, c.Max.X), math.Max(b.Max.Y, c.Max.Y)},
	}
}

// Grow returns the box widened by d on every side.
func (b Box) Grow(d float64) Box {
	return Box{Point{b.Min.X - d, b.Min.Y - d}, Point{b.Max.X + d, b.Max.Y + d}}
}

// Meets tells whether the boxes share a point.
func (b Box) Meets(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// Holds tells whether p is in the box or on its edge.
func (b Box) Holds(p Point) bool { return b.Meets(Box{p, p}) }

// Centre returns the middle of the box.
func (b Box) Centre() Point { return b.Min.Towards(b.Max, 0.5) }

// Width and height along the over and up axes, in metres.
func (b Box) Width() float64  { return b.Max.X - b.Min.X }
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// BoxOf returns the smallest box around points; ok is false when there are none.
func BoxOf(points ...Point) (b Box, ok bool) {
	for _, p := range points {
		b, ok = b.with(p, ok)
	}
	return b, ok
}
