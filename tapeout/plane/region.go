package plane

import "math"

// SignedArea returns the area that a closed path encloses, in square metres, arcs
// exact: positive when it runs counter-clockwise. An open path encloses nothing.
func (p Path) SignedArea() float64 {
	area, _ := p.moments()
	return area
}

// Area returns the area that a closed path encloses, in square metres.
func (p Path) Area() float64 { return math.Abs(p.SignedArea()) }

// Centroid returns the centre of the area that a closed path encloses; ok is
// false where that is nothing.
func (p Path) Centroid() (c Point, ok bool) {
	area, moment := p.moments()
	if area == 0 {
		return Point{}, false
	}
	c = p.Vertices[0].Add(moment.Times(1 / area))
	return c, c.Finite()
}

// moments returns the signed area and its first moment about the first vertex:
// the triangles from there to each chord, and the circular segments on them.
func (p Path) moments() (area float64, moment Point) {
	if !p.Closed {
		return 0, Point{}
	}
	for _, e := range p.Edges() {
		a, b := e.A.Sub(p.Vertices[0].Point), e.B.Sub(p.Vertices[0].Point)
		triangle := a.Cross(b) / 2
		area += triangle
		moment = moment.Add(a.Add(b).Times(triangle / 3))
		if e.Straight() {
			continue
		}
		segment, lever := e.segment()
		area += segment
		c := e.curve()
		middle := a.Towards(b, 0.5)
		moment = moment.Add(middle.Times(segment)).Add(c.out.Times(math.Copysign(lever, segment)))
	}
	return area, moment
}

// segment returns the area between an arc and its chord, positive for a
// counter-clockwise arc, and its first moment about the chord, positive away from
// the centre.
//
// With x half the angle of the arc and r the radius the area is
// r²·(x − sin x·cos x) and the moment about the centre is ⅔·r³·sin³x. Both are
// differences of nearly equal numbers in a shallow arc, which takes their series.
func (e Edge) segment() (area, lever float64) {
	c := e.curve()
	r, x := 1/(2*c.bend), math.Abs(c.sweep)/2
	sin, cos := math.Sincos(x)
	area, lever = r*r*(x-sin*cos), r*r*r*(2./3*sin*sin*sin-(x-sin*cos)*cos)
	if x < 0.02 {
		x2 := x * x
		area = r * r * x * x2 * (2./3 - x2*(2./15-x2*4/315))
		lever = r * r * r * x * x2 * x2 * (2./15 - x2*11/315)
	}
	return math.Copysign(area, e.Bulge), lever
}

// Contains tells whether q is inside the closed path, or on its edge within tol
// metres. Arcs are exact. Inside is where the path winds round q at least once; an
// open path has only its edge.
func (p Path) Contains(q Point, tol float64) bool {
	edges := p.Edges()
	if len(edges) == 0 {
		return len(p.Vertices) == 1 && p.Vertices[0].To(q) <= tol
	}
	for _, e := range edges {
		if e.Distance(q) <= tol {
			return true
		}
	}
	return p.Closed && winding(edges, q) != 0
}

// winding returns how often closed edges go round q counter-clockwise: the winding
// of their chords, and one turn for every arc that has q between it and its chord.
// A point on a chord is taken as lying a little to stage left, or upstage of a
// level chord, for both counts, so that they agree.
func winding(edges []Edge, q Point) int {
	turns := 0
	for _, e := range edges {
		side := e.B.Sub(e.A).Cross(q.Sub(e.A))
		falls := e.B.Y < e.A.Y || e.B.Y == e.A.Y && e.B.X > e.A.X
		left := side > 0 || side == 0 && falls
		switch {
		case e.A.Y <= q.Y && q.Y < e.B.Y && left:
			turns++
		case e.B.Y <= q.Y && q.Y < e.A.Y && !left:
			turns--
		}
		if e.Straight() || left == (e.Bulge > 0) {
			continue
		}
		if c := e.curve(); c.inCircle(q) {
			turns += int(math.Copysign(1, e.Bulge))
		}
	}
	return turns
}

// Reversed returns the same path walked the other way, starting at the last
// vertex.
func (p Path) Reversed() Path {
	n := len(p.Vertices)
	out := Path{Vertices: make([]Vertex, n), Closed: p.Closed}
	for i := range out.Vertices {
		v := p.Vertices[n-1-i]
		before := p.Vertices[(2*n-2-i)%n]
		out.Vertices[i] = Vertex{v.Point, -before.Bulge}
	}
	return out
}

// Flatten returns points along the path such that no chord departs from an edge
// by more than tol metres. A closed path does not repeat its first point.
func (p Path) Flatten(tol float64) []Point {
	edges := p.Edges()
	if len(edges) == 0 {
		return p.Points()
	}
	out := []Point{edges[0].A}
	for _, e := range edges {
		out = append(out, e.Flatten(tol)[1:]...)
	}
	if p.Closed {
		out = out[:len(out)-1]
	}
	return out
}

// CrossesItself returns the first place, along the path, where it crosses or
// touches itself: where two points of it that are further than four times tol
// apart along the path meet within tol. Folding back on itself counts.
func (p Path) CrossesItself(tol float64) (at Point, ok bool) {
	edges := p.Edges()
	curves := make([]curve, len(edges))
	starts := make([]float64, len(edges))
	boxes := make([]Box, len(edges))
	total := 0.0
	for i, e := range edges {
		curves[i] = e.curve()
		boxes[i] = e.Bounds().Grow(tol)
		starts[i] = total
		total += curves[i].length
	}
	best := math.Inf(1)
	eachPair(boxes, func(i, j int) {
		for _, q := range meet(&curves[i], &curves[j], tol, nil) {
			s := starts[i] + clamp(curves[i].fraction(q))*curves[i].length
			t := starts[j] + clamp(curves[j].fraction(q))*curves[j].length
			apart := math.Abs(s - t)
			if p.Closed {
				apart = min(apart, total-apart)
			}
			if apart > 4*tol && min(s, t) < best {
				best, at = min(s, t), q
			}
		}
	})
	return at, !math.IsInf(best, 1)
}
