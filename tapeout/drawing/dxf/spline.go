package dxf

import (
	"math"

	"groundrow/tapeout/plane"
)

// weighted is a control point of a rational curve, already multiplied by its weight.
type weighted struct {
	vec
	w float64
}

// bezierPart is a spline as Bézier curves, each of degree+1 control points, one
// after the other.
type bezierPart struct {
	degree int
	points []weighted
}

// splinePart turns a rational B-spline into its Bézier curves, one for each span of
// its knots that is not empty. Their control points are the values of the spline's
// blossom with the two ends of the span for arguments (L. Ramshaw, Blossoming: a
// connect-the-dots approach to splines, 1987), so the ends need not be clamped.
// ok is false when degree, knots and points do not fit together.
func splinePart(degree int, knots []float64, control []weighted) (p *bezierPart, ok bool) {
	n := len(control)
	if degree < 1 || degree > maxDegree || n <= degree || n > maxSpline/(degree+1) || len(knots) != n+degree+1 {
		return nil, false
	}
	for i := 1; i < len(knots); i++ {
		if knots[i] < knots[i-1] {
			return nil, false
		}
	}
	p = &bezierPart{degree: degree}
	args := make([]float64, degree)
	work := make([]weighted, degree+1)
	for span := degree; span < n; span++ {
		from, to := knots[span], knots[span+1]
		if from == to {
			continue
		}
		for k := 0; k <= degree; k++ {
			for i := range args {
				args[i] = from
				if i < k {
					args[i] = to
				}
			}
			copy(work, control[span-degree:span+1])
			p.points = append(p.points, blossom(work, knots[span-degree+1:span+degree+1], args))
		}
	}
	return p, len(p.points) > 0
}

// blossom runs de Boor's algorithm with an argument of its own at each level. knots
// are the 2·degree knots around the span; d is overwritten.
func blossom(d []weighted, knots, args []float64) weighted {
	degree := len(args)
	for level, t := range args {
		for j := degree; j > level; j-- {
			low, high := knots[j-1], knots[j-1+degree-level]
			d[j] = d[j-1].towards(d[j], (t-low)/(high-low))
		}
	}
	return d[degree]
}

func (a weighted) towards(b weighted, t float64) weighted {
	return weighted{a.vec.towards(b.vec, t), a.w*(1-t) + b.w*t}
}

func (p *bezierPart) cost() int { return costPoint*len(p.points) + 60 }

func (p *bezierPart) level(m affine) bool {
	points := make([]vec, len(p.points))
	for i, q := range p.points {
		points[i] = q.times(1 / q.w)
	}
	return levelPoints(points, m)
}

// place flattens each Bézier curve.
func (p *bezierPart) place(m affine, f fineness, out []plane.Edge) []plane.Edge {
	flat := make([]flatPoint, len(p.points))
	var box plane.Box
	for i, q := range p.points {
		at := m.turn(q.vec).plus(m.O.times(q.w)).plan()
		flat[i] = flatPoint{at, q.w}
		here := plane.Box{Min: flat[i].plan(), Max: flat[i].plan()}
		if i == 0 {
			box = here
		}
		box = box.Union(here)
	}
	tol := f.of(math.Hypot(box.Width(), box.Height()) / 2)
	for n := p.degree + 1; len(flat) >= n; flat = flat[n:] {
		out = flatten(append([]flatPoint(nil), flat[:n]...), tol, maxHalvings, out)
	}
	return out
}

// flatPoint is a weighted control point seen from above.
type flatPoint struct {
	plane.Point
	w float64
}

func (a flatPoint) plan() plane.Point { return a.Times(1 / a.w) }

func (a flatPoint) middle(b flatPoint) flatPoint {
	return flatPoint{a.Towards(b.Point, 0.5), (a.w + b.w) / 2}
}

// maxHalvings bounds the chords of one Bézier curve at 65 536.
const maxHalvings = 16

// flatten halves the curve until every control point is within tol of the chord.
// With weights above zero a curve lies in the convex hull of its control points, so
// no point of it is further from the chord than that. c is overwritten.
func flatten(c []flatPoint, tol float64, depth int, out []plane.Edge) []plane.Edge {
	last := len(c) - 1
	chord := plane.Edge{A: c[0].plan(), B: c[last].plan()}
	if depth == 0 || near(c[1:last], chord, tol) {
		return append(out, chord)
	}
	// De Casteljau's algorithm at the middle: left gathers the first half's control
	// points, while the second half's stay behind in c.
	left := make([]flatPoint, len(c))
	for i := range left {
		left[i] = c[0]
		for j := 0; j < last-i; j++ {
			c[j] = c[j].middle(c[j+1])
		}
	}
	out = flatten(left, tol, depth-1, out)
	return flatten(c, tol, depth-1, out)
}

// near tells whether all control points are within tol of the chord.
func near(c []flatPoint, chord plane.Edge, tol float64) bool {
	d := chord.B.Sub(chord.A)
	size := d.Dot(d)
	for _, q := range c {
		v := q.plan().Sub(chord.A)
		if size > 0 {
			v = v.Sub(d.Times(min(1, max(0, v.Dot(d)/size))))
		}
		if v.Len() > tol {
			return false
		}
	}
	return true
}

// throughPoints returns the cubic spline through points whose parameter is the
// length along their chords. Where the direction at an end is not given (nil) the
// spline is natural there: it runs out straight. ok is false with fewer than two
// distinct points.
func throughPoints(points []vec, start, end *vec) (p *bezierPart, ok bool) {
	points = distinct(points)
	n := len(points) - 1
	if n < 1 {
		return nil, false
	}
	slopes := slopesThrough(points, start, end)
	p = &bezierPart{degree: 3}
	for i := range n {
		third := points[i+1].minus(points[i]).len() / 3
		for _, q := range []vec{
			points[i], points[i].plus(slopes[i].times(third)),
			points[i+1].minus(slopes[i+1].times(third)), points[i+1],
		} {
			p.points = append(p.points, weighted{q, 1})
		}
	}
	return p, true
}

// slopesThrough solves for the derivatives at the points that make the second
// derivative continuous: a tridiagonal system, by elimination and back substitution.
func slopesThrough(points []vec, start, end *vec) []vec {
	n := len(points) - 1
	h := func(i int) float64 { return points[i+1].minus(points[i]).len() }
	rise := func(i int) vec { return points[i+1].minus(points[i]).times(1 / h(i)) }
	slopes := make([]vec, n+1)
	upper := make([]float64, n+1)
	for i := range slopes {
		var low, mid, high float64
		var right vec
		switch {
		case i == 0 && start != nil:
			mid, right = 1, *start
		case i == 0:
			mid, high, right = 2, 1, rise(0).times(3)
		case i == n && end != nil:
			mid, right = 1, *end
		case i == n:
			low, mid, right = 1, 2, rise(n-1).times(3)
		default:
			a, b := h(i), h(i-1)
			low, mid, high = a, 2*(a+b), b
			right = rise(i - 1).times(3 * a).plus(rise(i).times(3 * b))
		}
		if i > 0 {
			mid -= low * upper[i-1]
			right = right.minus(slopes[i-1].times(low))
		}
		upper[i], slopes[i] = high/mid, right.times(1/mid)
	}
	for i := n - 1; i >= 0; i-- {
		slopes[i] = slopes[i].minus(slopes[i+1].times(upper[i]))
	}
	return slopes
}

// distinct drops points that are the same as the one before.
func distinct(points []vec) []vec {
	var out []vec
	for _, p := range points {
		if len(out) == 0 || p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}
