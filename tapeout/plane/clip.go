package plane

import (
	"math"
	"slices"
)

// Clip cuts an edge at the outline of a closed region and returns the pieces
// inside and outside, each list in order along e. What runs along the outline
// within tol metres counts as inside. Pieces shorter than tol go with the piece
// before them, so that the two lists add up to the edge.
func Clip(e Edge, region Path, tol float64) (inside, outside []Edge) {
	c := e.curve()
	if c.length == 0 {
		return nil, nil
	}
	var previous bool
	start, end := 0.0, 0.0
	emit := func() {
		if end > start {
			list := &outside
			if previous {
				list = &inside
			}
			*list = append(*list, e.Part(start, end))
		}
		start = end
	}
	for _, t := range cuts(&c, region, tol) {
		if (t-end)*c.length < tol && (end > 0 || t < 1) {
			if t == 1 {
				end = 1
			}
			continue
		}
		in := region.Contains(e.At((end+t)/2), tol)
		if in != previous {
			emit()
		}
		previous, end = in, t
	}
	emit()
	return inside, outside
}

// cuts returns the fractions of an edge's length at which it meets the outline of
// a region, ascending, with its end as the last.
func cuts(c *curve, region Path, tol float64) []float64 {
	box := c.Bounds().Grow(tol)
	var points []Point
	for _, edge := range region.Edges() {
		if box.Meets(edge.Bounds()) {
			d := edge.curve()
			points = meet(c, &d, tol, points)
		}
	}
	at := make([]float64, 0, len(points)+1)
	for _, p := range points {
		if t := c.fraction(p); t > 0 && t < 1 {
			at = append(at, t)
		}
	}
	slices.Sort(at)
	return append(at, 1)
}

// Overlap returns the area, in square metres, that two closed regions share, arcs
// exact. Their outlines must not cross themselves; an open path encloses nothing.
//
// The outlines are cut where they meet within a tenth of a micrometre; the area is
// the integral of ½(x·dy − y·dx) along those pieces that have both regions on one
// side and not on the other (Green's theorem).
func Overlap(a, b Path) float64 {
	boxA, okA := a.Bounds()
	boxB, okB := b.Bounds()
	if !okA || !okB || !a.Closed || !b.Closed || !boxA.Meets(boxB) {
		return 0
	}
	edgesA, edgesB := a.Edges(), b.Edges()
	both := slices.Concat(edgesA, edgesB)
	sides := overlapSides{both: both, split: len(edgesA), a: a, b: b}
	sum := 0.0
	for _, l := range Arrange(both, overlapTolerance).Links {
		left, right := sides.of(l)
		if left == right {
			continue
		}
		piece := l.Moved(Motion{Shift: boxA.Min.Times(-1)})
		area := piece.A.Cross(piece.B) / 2
		if !piece.Straight() {
			segment, _ := piece.segment()
			area += segment
		}
		if left {
			sum += area
		} else {
			sum -= area
		}
	}
	return max(0, sum)
}

const overlapTolerance = 1e-7

type overlapSides struct {
	both  []Edge // a's edges, then b's
	split int    // where b's start
	a, b  Path
}

// of tells on which sides of a link both regions lie.
func (s overlapSides) of(l Link) (left, right bool) {
	middle, along := l.At(0.5), l.Tangent(0.5)
	onA, onB := 0, 0
	for _, i := range l.Sources {
		_, t := s.both[i].Nearest(middle)
		way := 1
		if s.both[i].Tangent(t).Dot(along) < 0 {
			way = -1
		}
		if i < s.split {
			onA += way
		} else {
			onB += way
		}
	}
	leftA, rightA := regionSides(s.a, onA, s.both[:s.split], middle)
	leftB, rightB := regionSides(s.b, onB, s.both[s.split:], middle)
	return leftA && leftB, rightA && rightB
}

// regionSides tells whether a region lies left and right of a piece with the given
// middle, which its outline runs along the given number of times.
func regionSides(p Path, along int, edges []Edge, middle Point) (left, right bool) {
	if along != 0 {
		left = (along > 0) == (p.SignedArea() > 0)
		return left, !left
	}
	in := winding(edges, middle) != 0
	return in, in
}

// DistanceBetween returns the smallest distance between two paths in metres. A
// closed path counts with all that it encloses: where one path is inside the
// other, or they meet, it is zero. It is infinite when one has no vertex.
func DistanceBetween(a, b Path) float64 {
	if len(a.Vertices) == 0 || len(b.Vertices) == 0 {
		return math.Inf(1)
	}
	if a.Contains(b.Vertices[0].Point, 0) || b.Contains(a.Vertices[0].Point, 0) {
		return 0
	}
	best := math.Inf(1)
	for _, e := range edgesOrPoint(a) {
		for _, f := range edgesOrPoint(b) {
			best = min(best, e.DistanceTo(f))
		}
	}
	return best
}

// edgesOrPoint returns the edges of a path, or its only vertex as one.
func edgesOrPoint(p Path) []Edge {
	if len(p.Vertices) == 1 {
		v := p.Vertices[0].Point
		return []Edge{{A: v, B: v}}
	}
	return p.Edges()
}

// DistanceTo returns the smallest distance between two edges in metres, zero where
// they cross.
func (e Edge) DistanceTo(f Edge) float64 {
	c, d := e.curve(), f.curve()
	if c.length > 0 && d.length > 0 && len(crossings(&c, &d, 0, nil)) > 0 {
		return 0
	}
	best := min(c.distance(f.A), c.distance(f.B), d.distance(e.A), d.distance(e.B))
	for _, p := range facing(&c, &d) {
		best = min(best, d.distance(p))
	}
	for _, p := range facing(&d, &c) {
		best = min(best, c.distance(p))
	}
	return best
}

// facing returns the points of an arc, besides its ends, that can be the nearest
// to another edge: those on the perpendicular to a line, or in line with the
// centre of the other arc.
func facing(arc, other *curve) []Point {
	if arc.straight || other.length == 0 {
		return nil
	}
	centre := arc.mid.Sub(arc.out.Times(1 / (2 * arc.bend)))
	way := other.along.Left()
	if !other.straight {
		u, ok := other.mid.Sub(other.out.Times(1 / (2 * other.bend))).Sub(centre).Unit()
		if !ok {
			return nil
		}
		way = u
	}
	var points []Point
	for _, w := range []Point{way, way.Times(-1)} {
		if q, t := arc.nearest(centre.Add(w.Times(1 / (2 * arc.bend)))); t > 0 && t < 1 {
			points = append(points, q)
		}
	}
	return points
}
