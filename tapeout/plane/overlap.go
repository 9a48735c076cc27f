package plane

import (
	"math"
	"slices"
)

// Overlap returns the area, in square metres, that two closed regions share, arcs
// exact. Their outlines must not cross themselves; an open path encloses nothing.
//
// The outlines are cut where they meet within a tenth of a micrometre; the area is
// the integral of ½(x·dy − y·dx) along those pieces that have both regions on one
// side and not on the other (Green's theorem).
func Overlap(a, b Path) float64 {
	if !a.Closed || !b.Closed {
		return 0
	}
	r, s := outlineOf(a), outlineOf(b)
	if len(r.edges) == 0 || len(s.edges) == 0 || !r.box.Meets(s.box) {
		return 0
	}
	r.area, s.area = a.SignedArea(), b.SignedArea()
	if !r.meets(&s) {
		switch {
		case winding(r.edges, s.edges[0].A) != 0:
			return math.Abs(s.area)
		case winding(s.edges, r.edges[0].A) != 0:
			return math.Abs(r.area)
		}
		return 0
	}
	return max(0, r.shared(&s))
}

// overlapTolerance is how near, in metres, two outlines are one.
const overlapTolerance = 1e-7

// outline is a closed path with what Overlap asks of it.
type outline struct {
	edges []Edge
	boxes []Box // of the edges
	box   Box
	area  float64 // signed; set once the boxes are known to meet
}

func outlineOf(p Path) outline {
	o := outline{edges: p.Edges()}
	o.boxes = make([]Box, len(o.edges))
	for i, e := range o.edges {
		o.boxes[i] = e.Bounds().Grow(overlapTolerance)
		if i == 0 {
			o.box = o.boxes[i]
		}
		o.box = o.box.Union(o.boxes[i])
	}
	return o
}

// meets tells whether the outlines cross or touch.
func (o *outline) meets(other *outline) bool {
	for i, e := range o.edges {
		if !o.boxes[i].Meets(other.box) {
			continue
		}
		for j, f := range other.edges {
			if o.boxes[i].Meets(other.boxes[j]) && len(Intersect(e, f, overlapTolerance)) > 0 {
				return true
			}
		}
	}
	return false
}

// shared integrates along the pieces of both outlines, about a corner of one.
func (o *outline) shared(other *outline) float64 {
	both := slices.Concat(o.edges, other.edges)
	origin := Motion{Shift: o.edges[0].A.Times(-1)}
	sum := 0.0
	for _, l := range Arrange(both, overlapTolerance).Links {
		mine, others := directions(l, both, len(o.edges))
		middle := l.At(0.5)
		leftA, rightA := o.sides(middle, mine)
		leftB, rightB := other.sides(middle, others)
		left, right := leftA && leftB, rightA && rightB
		if left == right {
			continue
		}
		area := l.Moved(origin).under()
		if right {
			area = -area
		}
		sum += area
	}
	return sum
}

// under returns the signed area between the edge and the origin.
func (e Edge) under() float64 {
	area := e.A.Cross(e.B) / 2
	if !e.Straight() {
		segment, _ := e.segment()
		area += segment
	}
	return area
}

// directions returns how often each outline runs along a link, less how often it
// runs against it; the first edges of both are the one's, the rest the other's.
func directions(l Link, both []Edge, first int) (one, other int) {
	for _, i := range l.Sources {
		if i < first {
			one += l.runs(both[i])
		} else {
			other += l.runs(both[i])
		}
	}
	return one, other
}

// runs is 1 when the edge, which covers the link, runs along it, and −1 when it
// runs against it.
func (l Link) runs(e Edge) int {
	_, t := e.Nearest(l.At(0.5))
	if e.Tangent(t).Dot(l.Tangent(0.5)) < 0 {
		return -1
	}
	return 1
}

// sides tells whether the region lies left and right of a piece with the given
// middle, along which its outline runs as often as directions says.
func (o *outline) sides(middle Point, runs int) (left, right bool) {
	if runs != 0 {
		left = (runs > 0) == (o.area > 0)
		return left, !left
	}
	in := winding(o.edges, middle) != 0
	return in, in
}
