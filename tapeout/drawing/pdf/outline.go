package pdf

import (
	"math"

	"groundrow/tapeout/plane"
)

// segment is a straight line or a curve to the last of its points; curves have two
// control points before it.
type segment struct {
	points [3]plane.Point
	curve  bool
}

func lineTo(p plane.Point) segment { return segment{points: [3]plane.Point{2: p}} }

func (s segment) end() plane.Point { return s.points[2] }

// outline is one part of a path, drawn without lifting the pen.
type outline struct {
	start  plane.Point
	rest   []segment
	closed bool
}

// moved returns the outline after a matrix.
func (o *outline) moved(m matrix) outline {
	out := outline{start: m.apply(o.start), rest: make([]segment, len(o.rest)), closed: o.closed}
	for i, s := range o.rest {
		for k, p := range s.points {
			s.points[k] = m.apply(p)
		}
		out.rest[i] = s
	}
	return out
}

// finite tells whether every point is a place on paper. PDFium passes on what stands
// in the file.
func (o *outline) finite() bool {
	if !onPaper(o.start) {
		return false
	}
	for _, s := range o.rest {
		for _, p := range s.points {
			if !onPaper(p) {
				return false
			}
		}
	}
	return true
}

// furthest is how many points from the origin anything is looked at: 35 km of paper.
const furthest = 1e8

func onPaper(p plane.Point) bool { return math.Abs(p.X) < furthest && math.Abs(p.Y) < furthest }

// edges returns what is drawn: segments, circular arcs, and other curves flattened,
// within tol. Steps that lead nowhere are left out.
func (o *outline) edges(tol float64) []plane.Edge {
	var out chain
	at := o.start
	for _, s := range o.rest {
		if s.curve {
			b := bezier{at, s.points[0], s.points[1], s.points[2]}
			for _, e := range b.edges(tol) {
				out.add(e, tol)
			}
		} else {
			out.add(plane.Edge{A: at, B: s.end()}, tol)
		}
		at = s.end()
	}
	if n := len(out.edges); n > 0 && at.To(o.start) <= FinestTolerance { // closed but for rounding
		out.edges[n-1].B = o.start
	} else if o.closed {
		out.add(plane.Edge{A: at, B: o.start}, tol)
	}
	return out.edges
}

// chain joins arcs of one circle that follow each other.
type chain struct {
	edges []plane.Edge
	on    []plane.Point // ends and middles of the arcs that make up the last edge
}

func (c *chain) add(e plane.Edge, tol float64) {
	if e.A == e.B {
		return
	}
	if joint, ok := c.joined(e, tol); ok {
		c.edges[len(c.edges)-1] = joint
		c.on = append(c.on, e.At(0.5), e.B)
		return
	}
	c.edges = append(c.edges, e)
	c.on = append(c.on[:0], e.A, e.At(0.5), e.B)
}

// joined returns the last edge and e as one arc of up to half a turn, if both are of
// one circle within tol.
func (c *chain) joined(e plane.Edge, tol float64) (joint plane.Edge, ok bool) {
	if len(c.edges) == 0 || len(c.on) > mostParts {
		return plane.Edge{}, false
	}
	last := c.edges[len(c.edges)-1]
	_, r, curved := last.Circle()
	sweep, slack := last.Sweep()+e.Sweep(), min(0.3, 4*tol/r) // rounding turns small arcs further
	if !curved || e.Straight() || last.Sweep()*e.Sweep() < 0 || math.Abs(sweep) > math.Pi+slack {
		return plane.Edge{}, false
	}
	joint, ok = plane.Through(last.A, last.B, e.B)
	if !ok || math.Abs(joint.Sweep()-sweep) > slack {
		return plane.Edge{}, false
	}
	for _, p := range append(c.on, e.At(0.5), e.B) {
		if joint.Distance(p) > tol {
			return plane.Edge{}, false
		}
	}
	return joint, true
}
