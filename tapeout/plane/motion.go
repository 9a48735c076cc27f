package plane

import "math"

// Motion is a rigid motion of the floor: turn about the origin by Turn radians,
// then shift. It never mirrors. The zero value leaves everything in place.
type Motion struct {
	Turn  float64
	Shift Point
}

// Apply returns where p goes.
func (m Motion) Apply(p Point) Point { return m.Rotate(p).Add(m.Shift) }

// Rotate returns p turned but not shifted: the motion of a displacement.
func (m Motion) Rotate(p Point) Point {
	s, c := math.Sincos(m.Turn)
	return Point{c*p.X - s*p.Y, s*p.X + c*p.Y}
}

// Inverse returns the motion that takes m back.
func (m Motion) Inverse() Motion {
	back := Motion{Turn: -m.Turn}
	back.Shift = back.Rotate(m.Shift).Times(-1)
	return back
}

// Then returns the motion that does m first and next afterwards.
func (m Motion) Then(next Motion) Motion {
	return Motion{Turn: m.Turn + next.Turn, Shift: next.Apply(m.Shift)}
}

// IsZero tells whether m leaves everything in place.
func (m Motion) IsZero() bool { return m == Motion{} }

// About returns the turn by angle around a fixed centre.
func About(centre Point, angle float64) Motion {
	m := Motion{Turn: angle}
	m.Shift = centre.Sub(m.Rotate(centre))
	return m
}
