package dxf

import (
	"math"

	"groundrow/tapeout/plane"
)

// vec is a point or a displacement in space, in drawing units, Z upwards.
type vec struct{ X, Y, Z float64 }

func (a vec) plus(b vec) vec               { return vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a vec) minus(b vec) vec              { return vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a vec) times(k float64) vec          { return vec{a.X * k, a.Y * k, a.Z * k} }
func (a vec) towards(b vec, t float64) vec { return a.times(1 - t).plus(b.times(t)) }
func (a vec) len() float64                 { return math.Sqrt(a.X*a.X + a.Y*a.Y + a.Z*a.Z) }
func (a vec) plan() plane.Point            { return plane.Point{X: a.X, Y: a.Y} }

func (a vec) cross(b vec) vec {
	return vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// affine is an affine map of space: where it takes the three axes, and the origin.
type affine struct{ X, Y, Z, O vec }

var identity = affine{X: vec{X: 1}, Y: vec{Y: 1}, Z: vec{Z: 1}}

// turn maps a displacement.
func (m affine) turn(p vec) vec {
	return m.X.times(p.X).plus(m.Y.times(p.Y)).plus(m.Z.times(p.Z))
}

// apply maps a point.
func (m affine) apply(p vec) vec { return m.turn(p).plus(m.O) }

// after returns the map that does n first and then m.
func (m affine) after(n affine) affine {
	return affine{m.turn(n.X), m.turn(n.Y), m.turn(n.Z), m.apply(n.O)}
}

func shift(by vec) affine {
	m := identity
	m.O = by
	return m
}

// spin turns about the Z axis, in radians.
func spin(angle float64) affine {
	s, c := math.Sincos(angle)
	return affine{X: vec{c, s, 0}, Y: vec{-s, c, 0}, Z: vec{Z: 1}}
}

// ownPlane maps an entity's own coordinates to those of the drawing, for the
// direction n that its plane faces: the arbitrary axis algorithm of the DXF
// reference. A direction without a length counts as straight up.
func ownPlane(n vec) affine {
	size := n.len()
	if size == 0 || n == (vec{Z: 1}) {
		return identity
	}
	n = n.times(1 / size)
	const near = 1.0 / 64
	x := vec{Y: 1}.cross(n)
	if math.Abs(n.X) >= near || math.Abs(n.Y) >= near {
		x = vec{Z: 1}.cross(n)
	}
	x = x.times(1 / x.len())
	return affine{X: x, Y: n.cross(x), Z: n}
}

// planMap is what an affine map does to the plane Z = 0, seen from above.
type planMap struct{ X, Y, O plane.Point }

func (m affine) plan() planMap { return planMap{m.X.plan(), m.Y.plan(), m.O.plan()} }

// level tells whether the map keeps the plane Z = 0 level.
func (m affine) level() bool {
	return math.Abs(m.X.Z) <= flat*m.X.len() && math.Abs(m.Y.Z) <= flat*m.Y.len()
}

// flat is the slope, and the relative difference of scales, below which something
// counts as level or as evenly scaled.
const flat = 1e-9

func (m planMap) apply(p plane.Point) plane.Point {
	return m.X.Times(p.X).Add(m.Y.Times(p.Y)).Add(m.O)
}

// even tells whether the map keeps circles circles. mirrored is -1 when it also
// turns left into right, else 1.
func (m planMap) even() (mirrored float64, ok bool) {
	x, y := m.X.Len(), m.Y.Len()
	size := max(x, y)
	if size == 0 || math.Abs(x-y) > flat*size || math.Abs(m.X.Dot(m.Y)) > flat*size*size {
		return 1, false
	}
	return math.Copysign(1, m.X.Cross(m.Y)), true
}

// stretch returns the largest factor by which the map lengthens anything: the
// larger singular value.
func (m planMap) stretch() float64 {
	a, b := m.X, m.Y
	sum := a.Dot(a) + b.Dot(b)
	det := a.Cross(b)
	return math.Sqrt((sum + math.Sqrt(max(0, sum*sum-4*det*det))) / 2)
}
