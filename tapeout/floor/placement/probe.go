package placement

import (
	"math"

	"groundrow/tapeout/plane"
)

// probe looks at all placements of a box: the pivot within reach metres of a point,
// the turn within swing radians of one. With neither it looks at one placement.
type probe struct {
	c        *Case
	x, y     float64 // where the pivot lies, floor axes
	sin, cos float64
	reach    float64 // metres, with the slack for curves
	swing    float64
	cuts     []float64 // room for quickSegment
	looks    int       // how often the grid was asked: the work done
}

// at sets the probe to a box.
func (p *probe) at(b *box) {
	p.x, p.y = b.x, b.y
	p.sin, p.cos = math.Sincos(b.turn)
	p.reach, p.swing = math.Hypot(b.dx, b.dy)+p.c.slack, b.swing
}

// place turns and shifts a place measured from the pivot.
func (p *probe) place(q plane.Point) plane.Point {
	return plane.Point{X: p.x + p.cos*q.X - p.sin*q.Y, Y: p.y + p.sin*q.X + p.cos*q.Y}
}

// moves is how far a point of the plan can move within the box: one whose place at
// the middle of the box is given, or any as far as r around it.
func (p *probe) moves(at plane.Point, r float64) float64 {
	if p.swing == 0 {
		return p.reach
	}
	return p.reach + p.swing*(between(at, plane.Point{X: p.x, Y: p.y})+r)
}

// depth returns bounds of how deep in its region a place lies, by the grid.
func (p *probe) about(at plane.Point, seen bool) (lo, hi float64) {
	p.looks++
	if !seen {
		return p.c.free.about(at.X, at.Y)
	}
	lo, hi = p.c.seen.about(at.X, at.Y)
	up := p.upstage(at)
	return min(lo, up), min(hi, up)
}

func (p *probe) depth(at plane.Point, seen bool) float64 {
	if !seen {
		return p.c.free.depth(at.X, at.Y)
	}
	return min(p.c.seen.depth(at.X, at.Y), p.upstage(at))
}

// upstage is how far upstage of the front table a place lies. Turning the plan
// within the box changes it by the swing of the way from the table to the place.
func (p *probe) upstage(at plane.Point) float64 {
	d := at.Sub(p.c.table)
	return d.X*-p.sin + d.Y*p.cos + p.swing*d.Len()
}

// finest is how small the pieces get into which a part is split, in metres.
const finest = 5e-4

// bound returns a score that no placement of the box passes; ok is false when none
// of them keeps whole all that must be whole.
func (p *probe) bound(enough float64) (score float64, ok bool) {
	score, left := p.c.granted, 1-p.c.granted
	for i := range p.c.parts {
		q := &p.c.parts[i]
		a, b, c := p.place(q.a), p.place(q.b), plane.Point{}
		if q.triangle {
			c = p.place(q.c)
		}
		if q.whole && p.out(a, b, c, q.triangle) {
			return 0, false
		}
		if q.share == 0 {
			continue
		}
		if q.triangle {
			score += p.triangle(a, b, c, q.share, q.seen)
		} else {
			score += p.segment(a, b, q.share, q.seen)
		}
		if left -= q.share; score+left <= enough {
			return score + left, true
		}
	}
	return score, true
}

// verdict of one look at a piece.
type verdict int8

const (
	unclear verdict = iota
	none            // none of it can be kept anywhere in the box
	all             // it may all be kept, or it is too small to be split
)

// look judges a piece within r of its middle.
func (p *probe) look(mid plane.Point, r float64, seen bool, fine float64) verdict {
	e := p.moves(mid, r)
	lo, hi := p.about(mid, seen)
	switch {
	case hi+r+e <= 0:
		return none
	case lo-r+e >= 0, r <= max(e*fine, finest):
		if lo-r+e < 0 && p.depth(mid, seen)+r+e <= 0 {
			return none
		}
		return all
	case r+e > 4*p.c.free.near:
		return unclear
	}
	d := p.depth(mid, seen)
	switch {
	case d+r+e <= 0:
		return none
	case d-r+e >= 0:
		return all
	}
	return unclear
}

// How small a piece is split, beside how far it can move in the box.
const (
	fineLine = 0.25
	fineArea = 0.7
)

func (p *probe) segment(a, b plane.Point, share float64, seen bool) float64 {
	mid := a.Towards(b, 0.5)
	switch p.look(mid, between(a, b)/2, seen, fineLine) {
	case none:
		return 0
	case all:
		return share
	}
	return p.segment(a, mid, share/2, seen) + p.segment(mid, b, share/2, seen)
}

func (p *probe) triangle(a, b, c plane.Point, share float64, seen bool) float64 {
	a, b, c = longestFirst(a, b, c)
	mid := a.Towards(b, 0.5)
	switch p.look(mid, max(between(a, b)/2, between(mid, c)), seen, fineArea) {
	case none:
		return 0
	case all:
		return share
	}
	return p.triangle(a, mid, c, share/2, seen) + p.triangle(mid, b, c, share/2, seen)
}

// longestFirst names the corners so that the longest side is from the first to the
// second.
func longestFirst(a, b, c plane.Point) (plane.Point, plane.Point, plane.Point) {
	ab, bc, ca := a.Sub(b), b.Sub(c), c.Sub(a)
	switch l := max(ab.Dot(ab), bc.Dot(bc), ca.Dot(ca)); l {
	case ab.Dot(ab):
		return a, b, c
	case bc.Dot(bc):
		return b, c, a
	}
	return c, a, b
}

// out tells whether some point of what must be whole is off the free floor in every
// placement of the box.
func (p *probe) out(a, b, c plane.Point, triangle bool) bool {
	if !triangle {
		mid := a.Towards(b, 0.5)
		return p.outWithin(mid, between(a, b)/2, func() bool {
			return p.out(a, mid, c, false) || p.out(mid, b, c, false)
		})
	}
	a, b, c = longestFirst(a, b, c)
	mid := a.Towards(b, 0.5)
	return p.outWithin(mid, max(between(a, b)/2, between(mid, c)), func() bool {
		return p.out(a, mid, c, true) || p.out(mid, b, c, true)
	})
}

func (p *probe) outWithin(mid plane.Point, r float64, halves func() bool) bool {
	e := p.moves(mid, 0)
	lo, _ := p.about(mid, false)
	if lo-r+e >= 0 {
		return false // by this look it may all be on the floor
	}
	d := p.depth(mid, false)
	switch {
	case d+e < 0:
		return true
	case d-r+e >= 0, r <= max(e*fineLine, finest):
		return false
	}
	return halves()
}
