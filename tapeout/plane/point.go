// Package plane is geometry on a floor seen from above.
//
// Lengths are metres and angles radians, counter-clockwise as seen from above.
// X is the over axis and grows to stage left, Y is the up axis and grows away
// from the audience:
//
//	        Y, up
//	        ▲
//	        │        upstage
//	SR ─────┼─────▶ X, over (stage left)
//	        │        audience
//
// Values are plain and immutable: no method changes its receiver.
package plane

import "math"

// Point is a place on a floor, or the displacement between two places, in metres.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the displacement from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p scaled by k.
func (p Point) Times(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z component of the vector product: positive when q lies to
// the left of p.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Len returns the distance from the origin.
func (p Point) Len() float64 { return math.Hypot(p.X, p.Y) }

// To returns the distance from p to q.
func (p Point) To(q Point) float64 { return p.Sub(q).Len() }

// Angle returns the direction of p from the origin, in (−π, π].
func (p Point) Angle() float64 { return math.Atan2(p.Y, p.X) }

// Left returns p turned a quarter turn counter-clockwise.
func (p Point) Left() Point { return Point{-p.Y, p.X} }

// Unit returns the direction of p with length one; ok is false at the origin.
func (p Point) Unit() (u Point, ok bool) {
	n := p.Len()
	if n == 0 {
		return Point{}, false
	}
	return Point{p.X / n, p.Y / n}, true
}

// Towards returns the point at fraction t of the way from p to q.
func (p Point) Towards(q Point, t float64) Point { return p.Add(q.Sub(p).Times(t)) }

// Polar returns the point at distance r from the origin in direction angle.
func Polar(r, angle float64) Point {
	s, c := math.Sincos(angle)
	return Point{r * c, r * s}
}

// Finite tells whether both coordinates are numbers.
func (p Point) Finite() bool {
	return !math.IsNaN(p.X-p.X) && !math.IsNaN(p.Y-p.Y)
}
