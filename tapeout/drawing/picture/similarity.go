package picture

import (
	"errors"
	"math"

	"groundrow/tapeout/plane"
)

// Similarity takes pixels to the plan without distortion: the Y axis is turned over,
// then everything scaled, turned about the origin and shifted.
type Similarity struct {
	Scale float64 // metres for one pixel, above zero
	Turn  float64 // radians counter-clockwise, by which the picture is turned
	Shift plane.Point
}

// TwoPoints returns the similarity that takes pixel a to realA and pixel b to realB.
// Points of a pair that coincide, closer than a thousandth of a pixel or of a
// millimetre, give none.
func TwoPoints(a, b, realA, realB plane.Point) (Similarity, error) {
	for _, p := range []plane.Point{a, b, realA, realB} {
		if !p.Finite() {
			return Similarity{}, errors.New("a point has no position; set both points again")
		}
	}
	const tight = 1e-3
	from, to := seen(b).Sub(seen(a)), realB.Sub(realA)
	switch {
	case from.Len() < tight:
		return Similarity{}, errors.New("both points are the same place on the picture; set them as far apart as the plan allows")
	case to.Len() < tight/1000:
		return Similarity{}, errors.New("both points are the same place on the floor; check what was typed for them")
	}
	s := Similarity{Scale: to.Len() / from.Len(), Turn: math.Remainder(to.Angle()-from.Angle(), 2*math.Pi)}
	s.Shift = realA.Sub(s.Apply(a))
	return s, nil
}

// seen returns the pixel with its Y axis up.
func seen(pixel plane.Point) plane.Point { return plane.Point{X: pixel.X, Y: -pixel.Y} }

// Apply returns where the pixel lies, in metres.
func (s Similarity) Apply(pixel plane.Point) plane.Point {
	return plane.Motion{Turn: s.Turn, Shift: s.Shift}.Apply(seen(pixel).Times(s.Scale))
}

// Pixel returns the pixel at which the point lies. A similarity without a scale has
// none: the result is not finite.
func (s Similarity) Pixel(real plane.Point) plane.Point {
	return seen(plane.Motion{Turn: s.Turn, Shift: s.Shift}.Inverse().Apply(real).Times(1 / s.Scale))
}

// Homography returns the same as a perspective transform.
func (s Similarity) Homography() Homography {
	c, n := s.Scale*math.Cos(s.Turn), s.Scale*math.Sin(s.Turn)
	return Homography{
		c, n, s.Shift.X,
		n, -c, s.Shift.Y,
		0, 0, 1,
	}
}
