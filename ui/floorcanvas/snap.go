package floorcanvas

import (
	"math"

	"groundrow/tapeout/plane"
)

// Snap is a point that the pointer was drawn to, and in a word to what. Without a
// What nothing was near, and the point is the pointer's own.
type Snap struct {
	Point plane.Point
	What  string
	ID    string // of what it lies on
}

// What a point can be drawn to, from the strongest.
const (
	SnapMark     = "mark"
	SnapEnd      = "end"
	SnapCorner   = "corner"
	SnapCrossing = "crossing"
	SnapMiddle   = "middle"
	SnapCentre   = "centre"
	SnapLine     = "on line"
	SnapGrid     = "grid"
)

const snapReach = 9 // toolkit pixels

// snapper looks for what is near one point.
type snapper struct {
	s      *scene
	p      plane.Point
	within float64 // metres
	skip   map[string]bool
	best   Snap
	rank   int
	off    float64
}

// snap returns what a point is drawn to: a point of the drawing before a line of
// it, a line before the grid. scale is metres to a toolkit pixel; what has an
// identifier in skip is left out.
func (s *scene) snap(p plane.Point, scale float64, skip map[string]bool) Snap {
	n := snapper{s: s, p: p, within: snapReach * scale, skip: skip, best: Snap{Point: p}, rank: math.MaxInt}
	for _, d := range s.Dots {
		if !skip[d.ID] || d.ID == "" {
			n.offer(Snap{d.At, SnapMark, d.ID}, 0)
		}
	}
	near := n.chains(s.shapes)
	near = append(near, n.chains(s.areas)...)
	n.crossings(near)
	n.dark()
	n.grid(scale)
	return n.best
}

func (n *snapper) offer(at Snap, rank int) {
	off := at.Point.To(n.p)
	if off > n.within || rank > n.rank || (rank == n.rank && off >= n.off) {
		return
	}
	n.best, n.rank, n.off = at, rank, off
}

type ownedEdge struct {
	plane.Edge
	id string
}

// chains offers the points of every chain that is near, and returns its near edges.
func (n *snapper) chains(of []chain) []ownedEdge {
	var near []ownedEdge
	for i := range of {
		c := &of[i]
		if (n.skip[c.id] && c.id != "") || !c.box.Grow(n.within).Holds(n.p) {
			continue
		}
		for j, e := range c.edges {
			n.offer(Snap{e.A, c.corner(j, -1), c.id}, 0)
			n.offer(Snap{e.B, c.corner(j, 1), c.id}, 0)
			if q, _ := e.Nearest(n.p); q.To(n.p) <= n.within {
				near = append(near, ownedEdge{e, c.id})
				n.offer(Snap{e.At(0.5), SnapMiddle, c.id}, 1)
				n.offer(Snap{q, SnapLine, c.id}, 2)
			}
			if centre, _, ok := e.Circle(); ok {
				n.offer(Snap{centre, SnapCentre, c.id}, 1)
			}
		}
	}
	return near
}

// corner tells whether an end of an edge, before or after it, goes on in the
// next edge of its chain.
func (c *chain) corner(edge, side int) string {
	k := len(c.edges)
	other := c.edges[(edge+side+k)%k]
	if k > 1 && ((side < 0 && other.B == c.edges[edge].A) || (side > 0 && other.A == c.edges[edge].B)) {
		return SnapCorner
	}
	return SnapEnd
}

// crossings offers where near edges meet. So many edges that their pairs would
// make the pointer lag are too dense to aim at one crossing of them.
func (n *snapper) crossings(near []ownedEdge) {
	const most, tol = 40, 1e-6
	for i := range min(len(near), most) {
		for j := range i {
			for _, q := range plane.Intersect(near[i].Edge, near[j].Edge, tol) {
				n.offer(Snap{q, SnapCrossing, near[i].id}, 0)
			}
		}
	}
}

// dark offers the nearest drawn line of the backdrop.
func (n *snapper) dark() {
	if b := n.s.Backdrop; b.sound() && b.Snap != nil {
		if q, ok := b.Snap(n.p, n.within); ok && near(q) {
			n.offer(Snap{q, SnapDark, ""}, 2)
		}
	}
}

// grid offers the nearest crossing of the grid that is drawn.
func (n *snapper) grid(scale float64) {
	step := n.s.step(gridGap * scale)
	q := n.s.Datum.Inverse().Apply(n.p)
	q = plane.Point{X: math.Round(q.X/step) * step, Y: math.Round(q.Y/step) * step}
	n.offer(Snap{n.s.Datum.Apply(q), SnapGrid, ""}, 3)
}
