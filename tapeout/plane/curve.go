package plane

import "math"

// curve is an edge with what the geometry of pairs asks for again and again.
//
// An arc is described from its own middle rather than from its centre, since the
// centre of a shallow arc may be further away than a float64 can resolve: a point
// at displacement z from mid is on the circle when bend·|z|² + out·z = 0.
type curve struct {
	Edge
	straight bool
	length   float64
	along    Point   // unit direction from A to B
	sweep    float64 // zero when straight
	mid      Point   // halfway along the edge
	out      Point   // unit direction from the centre to mid
	bend     float64 // one over twice the radius
}

func (e Edge) curve() curve {
	c := curve{Edge: e, straight: e.Straight()}
	chord := e.B.Sub(e.A)
	c.along, _ = chord.Unit()
	if c.straight {
		c.length = chord.Len()
		return c
	}
	b := e.Bulge
	c.sweep = 4 * math.Atan(b)
	c.mid = e.A.Towards(e.B, 0.5).Sub(chord.Left().Times(b / 2))
	c.out = c.along.Left().Times(-math.Copysign(1, b))
	c.bend = 2 * math.Abs(b) / (chord.Len() * (1 + b*b))
	c.length = math.Abs(c.sweep) / (2 * c.bend)
	return c
}

// fraction returns where along the whole line or circle the point nearest to p
// is: in [0, 1] when it is on the edge.
func (c *curve) fraction(p Point) float64 {
	if c.straight {
		if c.length == 0 {
			return 0
		}
		return p.Sub(c.A).Dot(c.along) / c.length
	}
	z := p.Sub(c.mid)
	r := 1 / (2 * c.bend)
	return 0.5 + math.Atan2(z.Dot(c.along), r+z.Dot(c.out))/math.Abs(c.sweep)
}

func (c *curve) nearest(p Point) (q Point, t float64) {
	t = c.fraction(p)
	switch {
	case t > 0 && t < 1:
		return c.At(t), t
	case c.straight && t >= 1:
		return c.B, 1
	case c.straight:
		return c.A, 0
	case p.To(c.A) <= p.To(c.B):
		return c.A, 0
	}
	return c.B, 1
}

func (c *curve) distance(p Point) float64 {
	q, _ := c.nearest(p)
	return p.To(q)
}

// inCircle tells whether p is inside the circle of an arc.
func (c *curve) inCircle(p Point) bool {
	z := p.Sub(c.mid)
	return c.bend*z.Dot(z)+z.Dot(c.out) < 0
}

// Nearest returns the point of the edge nearest to p and its fraction of the
// length. From the centre of an arc, where all of it is equally near, it is the
// middle.
func (e Edge) Nearest(p Point) (q Point, t float64) {
	c := e.curve()
	return c.nearest(p)
}

// Distance returns how far p is from the nearest point of the edge, in metres.
func (e Edge) Distance(p Point) float64 {
	c := e.curve()
	return c.distance(p)
}
