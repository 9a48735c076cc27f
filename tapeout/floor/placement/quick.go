package placement

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// quick is the score of one placement as the search sees it on its way: pieces of
// line work are cut where the depth along them changes sign. lost is how many
// metres of what must be whole are off the floor.
type quick struct{ score, lost float64 }

// better compares first by what must be whole, then by score.
func (q quick) better(r quick) bool {
	if q.lost != r.lost {
		return q.lost < r.lost
	}
	return q.score > r.score
}

// The size of the smallest triangles that the quick score looks into, in metres;
// over one of them the depth is taken as even. Those that must be whole are looked
// into more closely, so that no column is missed.
const (
	quickArea  = 0.3
	quickWhole = 0.12
)

// quick scores the middle of the probe's box.
func (p *probe) quick() quick {
	var out quick
	p.swing, p.reach = 0, 0
	for i := range p.c.parts {
		q := &p.c.parts[i]
		a, b := p.place(q.a), p.place(q.b)
		var kept, size float64
		if q.triangle {
			c := p.place(q.c)
			fine := quickArea
			if q.whole {
				fine = quickWhole
			}
			kept, size = p.quickTriangle(a, b, c, fine), math.Sqrt(math.Abs(b.Sub(a).Cross(c.Sub(a)))/2)
		} else {
			kept, size = p.quickSegment(a, b, q.seen), between(a, b)
		}
		out.score += q.share * kept
		if q.whole && kept < 1 {
			out.lost += (1 - kept) * size
		}
	}
	return out
}

// quickLook is 1 or 0 when all or none of a piece is in its region, and less than 0
// when that is not clear.
func (p *probe) quickLook(mid plane.Point, r float64, seen bool) float64 {
	lo, hi := p.about(mid, seen)
	switch {
	case lo >= r:
		return 1
	case hi <= -r:
		return 0
	}
	return -1
}

func (p *probe) quickSegment(a, b plane.Point, seen bool) float64 {
	mid, r := a.Towards(b, 0.5), between(a, b)/2
	if k := p.quickLook(mid, r, seen); k >= 0 {
		return k
	}
	p.cuts = append(p.cuts[:0], 0, 1)
	if seen {
		p.cutAt(p.c.seen, a, b)
		p.cutAtTable(a, b)
	} else {
		p.cutAt(p.c.free, a, b)
	}
	slices.Sort(p.cuts)
	kept := 0.0
	for i, t := range p.cuts[1:] {
		from := p.cuts[i]
		if t-from > 1e-9 && p.in(a.Towards(b, (from+t)/2), seen) {
			kept += t - from
		}
	}
	return kept
}

// between is the distance of two points.
func between(a, b plane.Point) float64 { return math.Sqrt((b.X-a.X)*(b.X-a.X) + (b.Y-a.Y)*(b.Y-a.Y)) }

// in tells whether a place is in its region.
func (p *probe) in(at plane.Point, seen bool) bool {
	lo, hi := p.about(at, seen)
	if lo >= 0 || hi < 0 {
		return lo >= 0
	}
	return p.depth(at, seen) >= 0
}

// cutAt adds where a segment crosses the outlines of a field, as parts of it.
func (p *probe) cutAt(f *field, a, b plane.Point) {
	box, _ := plane.BoxOf(a, b)
	for _, rings := range [2][]ring{f.within, f.blocked} {
		for i := range rings {
			if !rings[i].box.Meets(box) {
				continue
			}
			p.cuts = rings[i].cut(p.cuts, a, b)
		}
	}
}

func (r *ring) cut(cuts []float64, a, b plane.Point) []float64 {
	ux, uy := b.X-a.X, b.Y-a.Y
	for i := range r.edges {
		e := &r.edges[i]
		across := ux*e.dy - uy*e.dx
		wx, wy := e.ax-a.X, e.ay-a.Y
		t, s := wx*e.dy-wy*e.dx, wx*uy-wy*ux
		if across < 0 {
			across, t, s = -across, -t, -s
		}
		if t > 0 && t < across && s >= 0 && s <= across {
			cuts = append(cuts, t/across)
		}
	}
	return cuts
}

// cutAtTable adds where a segment passes the front table, as seen up the stage.
func (p *probe) cutAtTable(a, b plane.Point) {
	u, v := p.upstage(a), p.upstage(b)
	if (u < 0) != (v < 0) {
		p.cuts = append(p.cuts, u/(u-v))
	}
}

func (p *probe) quickTriangle(a, b, c plane.Point, fine float64) float64 {
	a, b, c = longestFirst(a, b, c)
	mid := a.Towards(b, 0.5)
	r := max(between(a, b)/2, between(mid, c))
	if k := p.quickLook(mid, r, false); k >= 0 {
		return k
	}
	if r > fine {
		return (p.quickTriangle(a, mid, c, fine) + p.quickTriangle(mid, b, c, fine)) / 2
	}
	return positive(p.depth(a, false), p.depth(b, false), p.depth(c, false))
}

// positive is the part of a triangle over which an even slope with these heights at
// its corners is not below zero.
func positive(u, v, w float64) float64 {
	if u > v {
		u, v = v, u
	}
	if v > w {
		v, w = w, v
	}
	if u > v {
		u, v = v, u
	}
	switch {
	case u >= 0:
		return 1
	case w < 0:
		return 0
	case v < 0:
		return w * w / ((w - u) * (w - v))
	}
	return 1 - u*u/((v-u)*(w-u))
}
