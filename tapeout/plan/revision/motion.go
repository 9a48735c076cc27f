package revision

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// apart returns how far, in metres, the two shapes are from each other at worst
// once the motion has been done to a: the larger distance of a point of either
// from the lines of the other. Infinite where only one has lines.
func apart(a, b *shape, m plane.Motion) float64 { return apartBelow(a, b, m, math.Inf(1)) }

// apartBelow is apart that gives up at limit and returns it or more.
func apartBelow(a, b *shape, m plane.Motion, limit float64) float64 {
	if len(a.edges) == 0 || len(b.edges) == 0 {
		if len(a.edges) == len(b.edges) {
			return 0
		}
		return math.Inf(1)
	}
	if m.IsZero() && slices.Equal(a.edges, b.edges) {
		return 0
	}
	worst := farthest(a.samples, b.edges, m, limit)
	if worst >= limit {
		return worst
	}
	return max(worst, farthest(b.samples, a.edges, m.Inverse(), limit))
}

// nothing is what rounding leaves between a point and the line it lies on, in
// metres. It is no reason to look for a nearer line.
const nothing = 1e-9

// farthest returns the greatest distance of a point, once moved, from the edges.
func farthest(points []plane.Point, edges []plane.Edge, m plane.Motion, limit float64) float64 {
	worst, last := nothing, 0
	for _, p := range points {
		p = m.Apply(p)
		// The edge that was nearest to the neighbour is likely to be so again.
		d := edges[last].Distance(p)
		for k := 0; k < len(edges) && d > worst; k++ {
			if n := edges[k].Distance(p); n < d {
				d, last = n, k
			}
		}
		if worst = max(worst, d); worst >= limit {
			return worst
		}
	}
	return worst
}

// maxTries bounds the motions that are tried for one element.
const maxTries = 160

// fitted is a motion that was tried, and how far apart it leaves the shapes.
type fitted struct {
	plane.Motion
	off float64
}

// bestMotion returns the rigid motion that carries a onto b, and how far apart
// they stay at worst. Motions are tried that lay the centres on each other, that
// align the longest spreads, and that lay an edge of a on each equally long edge
// of b; so that of two equal shapes the motion is found exactly.
//
// Where the shapes agree within tol it is the motion with the least turn that does
// so: a square table has not been turned by a right angle. Where they do not, it
// is the one that lays most lines on each other, and none at all where that is as
// good: a platform that is longer at one end has stayed where it was.
func bestMotion(a, b *shape, tol float64) (plane.Motion, float64) {
	if len(a.edges) == 0 || len(b.edges) == 0 {
		return plane.Motion{}, apart(a, b, plane.Motion{})
	}
	var all []fitted
	least := math.Inf(1)
	for _, m := range tries(a, b) {
		m = polish(a, b, m)
		d := apartBelow(a, b, m, least+tol)
		all = append(all, fitted{m, d})
		least = min(least, d)
	}
	if least > tol {
		m := mostCommon(a, b, all, tol)
		return m, apart(a, b, m)
	}
	best := leastTurn(all, least+tol/2)
	return best.Motion, best.off
}

// sameTurn is how much motions may differ in turn, in radians, and still be one
// that was met less or more well.
const sameTurn = 2 * math.Pi / 180

// leastTurn returns, of the motions that leave no more than good, the one that
// turns least; and of those that turn almost as much the one that fits best.
func leastTurn(all []fitted, good float64) fitted {
	var least *fitted
	for i := range all {
		if all[i].off <= good && (least == nil || math.Abs(all[i].Turn) < math.Abs(least.Turn)) {
			least = &all[i]
		}
	}
	best := *least
	for _, f := range all {
		if math.Abs(f.Turn-least.Turn) < sameTurn && f.off < best.off {
			best = f
		}
	}
	return best
}

// Shares of the points of a reshaped element that lie on its new lines.
const (
	asGood  = 0.1 // so much more must a motion bring together to be believed
	tooFew  = 0.2 // with less in common there is no telling how it has moved
	noShare = -1
)

// mostCommon returns the motion that brings most points of a onto lines of b;
// none where standing still is as good, and where too little agrees that which
// lays the centres on each other.
func mostCommon(a, b *shape, all []fitted, tol float64) plane.Motion {
	still := share(a, b, plane.Motion{}, tol)
	best, most := plane.Motion{}, float64(noShare)
	for _, f := range all {
		if s := share(a, b, f.Motion, tol); s > most+1e-9 {
			best, most = f.Motion, s
		}
	}
	switch {
	case max(still, most) < tooFew:
		return plane.Motion{Shift: b.centre.Sub(a.centre)}
	case still+asGood >= most:
		return plane.Motion{}
	}
	return best
}

// share returns which share of the points of a the motion brings onto lines of b.
func share(a, b *shape, m plane.Motion, tol float64) float64 {
	n := 0
	for _, p := range a.samples {
		p = m.Apply(p)
		for k := range b.edges {
			if b.edges[k].Distance(p) <= tol {
				n++
				break
			}
		}
	}
	return float64(n) / float64(len(a.samples))
}

// polishReach is how near a corner must come to a corner of the other shape to
// count as that one, in metres.
const polishReach = 0.05

// polish returns the motion that carries corners onto those that m brings them
// near, in the sense of least squares: about the centroids the turn is
// atan2(Σ p×q, Σ p·q). Where too few corners have partners it is m itself.
func polish(a, b *shape, m plane.Motion) plane.Motion {
	from, to := partners(a, b, m)
	if len(from) < 2 {
		return m
	}
	var p0, q0 plane.Point
	share := 1 / float64(len(from))
	for i := range from {
		p0, q0 = p0.Add(from[i].Times(share)), q0.Add(to[i].Times(share))
	}
	cross, dot := 0.0, 0.0
	for i := range from {
		p, q := from[i].Sub(p0), to[i].Sub(q0)
		cross, dot = cross+p.Cross(q), dot+p.Dot(q)
	}
	if cross == 0 && dot == 0 {
		return m
	}
	out := plane.About(p0, math.Atan2(cross, dot))
	out.Shift = out.Shift.Add(q0.Sub(p0))
	return out
}

// maxCorners bounds how many corners a fit is polished with.
const maxCorners = 64

// partners returns corners of a, and for each the corner of b that m brings it
// nearest to, in reach.
func partners(a, b *shape, m plane.Motion) (from, to []plane.Point) {
	step := (len(a.edges) + maxCorners - 1) / maxCorners
	for i := 0; i < len(a.edges); i += step {
		p := a.edges[i].A
		at := m.Apply(p)
		best, reach := plane.Point{}, polishReach
		for _, e := range b.edges {
			for _, q := range [2]plane.Point{e.A, e.B} {
				if d := at.To(q); d < reach {
					best, reach = q, d
				}
			}
		}
		if reach < polishReach {
			from, to = append(from, p), append(to, best)
		}
	}
	return from, to
}
