package plane

import (
	"math"
	"slices"
)

// Intersect returns the points, in order along e, where e and f cross or come
// nearer than tol metres to touching: crossings, touches along a curve, and ends
// of one on the other. Where they coincide over a stretch these are its two ends.
// An end stands for a crossing that e and f reach from it without parting by tol,
// so that a wall that overshoots its neighbour meets it once.
func Intersect(e, f Edge, tol float64) []Point {
	c, d := e.curve(), f.curve()
	return meet(&c, &d, tol, nil)
}

// meet appends the points of Intersect to points.
func meet(e, f *curve, tol float64, points []Point) []Point {
	if e.straight && f.straight {
		if p, decided, ok := crossClear(e, f, tol); decided {
			if ok {
				points = append(points, p)
			}
			return points
		}
	}
	slack := tol
	if !e.straight || !f.straight {
		slack = tol / touchShare
	}
	first := len(points)
	points = endsOn(e, f, tol, points)
	ends := len(points)
	var room [2]Point
	for _, p := range crossings(e, f, tol, room[:0]) {
		if !slices.ContainsFunc(points[first:ends], func(q Point) bool { return p.To(q) < tol || joined(e, f, p, q, slack) }) {
			points = append(points, p)
		}
	}
	found := points[first:]
	if len(found) > 1 {
		slices.SortStableFunc(found, func(p, q Point) int {
			return compare(clamp(e.fraction(p)), clamp(e.fraction(q)))
		})
	}
	return points
}

// touchShare is the part of the tolerance by which an arc may dip across another
// edge and still touch it only once.
const touchShare = 8

// crossClear settles the common cases of two straight edges: ends on one side of
// the other edge's line and further than tol from it, or a crossing with all four
// ends further away than tol.
func crossClear(e, f *curve, tol float64) (p Point, decided, ok bool) {
	a, b := e.along.Cross(f.A.Sub(e.A)), e.along.Cross(f.B.Sub(e.A))
	if a >= tol && b >= tol || a <= -tol && b <= -tol {
		return p, true, false
	}
	c, d := f.along.Cross(e.A.Sub(f.A)), f.along.Cross(e.B.Sub(f.A))
	if c >= tol && d >= tol || c <= -tol && d <= -tol {
		return p, true, false
	}
	if min(math.Abs(a), math.Abs(b), math.Abs(c), math.Abs(d)) < tol {
		return p, false, false
	}
	return f.A.Towards(f.B, a/(a-b)), true, true
}

// endsOn appends the ends of either edge that are nearer than tol to the other,
// leaving out those nearer than tol to one found before.
func endsOn(e, f *curve, tol float64, points []Point) []Point {
	first := len(points)
	try := func(p Point, on *curve) {
		near := func(q Point) bool { return p.To(q) < tol }
		if on.distance(p) < tol && !slices.ContainsFunc(points[first:], near) {
			points = append(points, p)
		}
	}
	try(e.A, f)
	try(e.B, f)
	try(f.A, e)
	try(f.B, e)
	return points
}

// joined tells whether e and f stay nearer than tol between p and q. They may cross
// there once more, so it takes more than a look at the middle.
func joined(e, f *curve, p, q Point, tol float64) bool {
	from, to := clamp(e.fraction(p)), clamp(e.fraction(q))
	for _, t := range []float64{0.5, 0.25, 0.75} {
		if f.distance(e.At(from+(to-from)*t)) >= tol {
			return false
		}
	}
	return true
}

// crossings appends the points inside both edges where their lines or circles
// cross. Two of an arc are one touch, halfway between them, when it hardly parts
// from the other edge there; so is a miss by less than tol.
func crossings(e, f *curve, tol float64, points []Point) []Point {
	var p, q, foot Point
	var real bool
	switch {
	case e.straight && f.straight:
		return crossStraight(e, f, points)
	case e.straight:
		p, q, foot, real = cutCircle(f, e.A, e.along)
	case f.straight:
		p, q, foot, real = cutCircle(e, f.A, f.along)
	default:
		base, dir, ok := radicalLine(e, f)
		if !ok {
			return points
		}
		tight := e
		if f.bend > e.bend {
			tight = f
		}
		p, q, foot, real = cutCircle(tight, base, dir)
	}
	if !real {
		if e.distance(foot) < tol && f.distance(foot) < tol {
			points = append(points, foot)
		}
		return points
	}
	onP, onQ := within(e, f, p), within(e, f, q)
	switch {
	case onP && onQ && joined(e, f, p, q, tol/touchShare):
		return append(points, e.At((e.fraction(p)+e.fraction(q))/2))
	case onP && onQ:
		return append(points, p, q)
	case onP:
		return append(points, p)
	case onQ:
		return append(points, q)
	}
	return points
}

func within(e, f *curve, p Point) bool {
	s, t := e.fraction(p), f.fraction(p)
	return s >= 0 && s <= 1 && t >= 0 && t <= 1
}

func crossStraight(e, f *curve, points []Point) []Point {
	a, b := e.along.Cross(f.A.Sub(e.A)), e.along.Cross(f.B.Sub(e.A))
	if a == b || a*b > 0 {
		return points
	}
	p := f.A.Towards(f.B, a/(a-b))
	if t := e.fraction(p); t < 0 || t > 1 {
		return points
	}
	return append(points, p)
}

// cutCircle returns the two points where the line through base in unit direction
// dir cuts the circle of arc c, and the point of the line nearest to its centre.
// real is false when it passes the circle by.
//
// With z the displacement from c.mid, bend·|z|² + out·z = 0 along the line is a
// quadratic in the distance from base; its roots are taken without cancellation.
func cutCircle(c *curve, base, dir Point) (p, q, foot Point, real bool) {
	z := base.Sub(c.mid)
	// Starting from the point of the line nearest to mid keeps the terms small.
	base = base.Sub(dir.Times(z.Dot(dir)))
	z = base.Sub(c.mid)
	half := dir.Dot(c.out) / 2
	rest := c.bend*z.Dot(z) + z.Dot(c.out)
	disc := half*half - c.bend*rest
	foot = base.Add(dir.Times(-half / c.bend))
	if disc < 0 {
		return p, q, foot, false
	}
	s := -(half + math.Copysign(math.Sqrt(disc), half))
	p = base.Add(dir.Times(s / c.bend))
	q = p
	if s != 0 {
		q = base.Add(dir.Times(rest / s))
	}
	return p, q, foot, true
}

// radicalLine returns the line through the crossings of two circles: what is left
// when bend·|z|² is eliminated between their equations. ok is false for circles
// with one centre.
func radicalLine(e, f *curve) (base, dir Point, ok bool) {
	d := f.mid.Sub(e.mid)
	w := e.out.Times(f.bend).Sub(f.out.Times(e.bend)).Add(d.Times(2 * e.bend * f.bend))
	n, ok := w.Unit()
	if !ok {
		return base, dir, false
	}
	k := e.bend*f.bend*d.Dot(d) - e.bend*f.out.Dot(d)
	return e.mid.Add(n.Times(k / w.Len())), n.Left(), true
}

func clamp(t float64) float64 { return max(0, min(1, t)) }

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
