package plane

import (
	"cmp"
	"slices"
)

// UnionLength returns the length in metres of all edges together, with stretches
// that coincide within tol counted once. A stretch coincides when it lies between
// two ends, of either edge, that are nearer than tol to the other edge; lines that
// only cross at a small angle both count in full.
//
// It moves nothing, so it differs from the length of the links of Arrange by what
// that moves: up to some tolerances a node, and stretches between nodes of a third
// edge that joins two nearly parallel ones.
func UnionLength(edges []Edge, tol float64) float64 {
	pieces, span := usable(edges)
	tol = workingTolerance(tol, span)
	slices.SortFunc(pieces, beforeInUnion)
	boxes := make([]Box, len(pieces))
	for i := range pieces {
		boxes[i] = pieces[i].Bounds().Grow(tol / 2)
	}
	covered := make([][]interval, len(pieces))
	eachPair(boxes, func(i, j int) {
		first, second := min(i, j), max(i, j)
		covered[second] = coveredBy(&pieces[second].curve, &pieces[first].curve, tol, covered[second])
	})
	// Every edge counts except where one that comes before it covers it.
	sum := 0.0
	for i := range pieces {
		sum += pieces[i].length * (1 - measure(covered[i]))
	}
	return sum
}

// beforeInUnion orders longer edges first, and equal ones by where they are, so that
// the order in which they were given plays no part.
func beforeInUnion(a, b piece) int {
	low := func(p piece) (Point, Point) {
		if compareRows(p.A, p.B) > 0 {
			return p.B, p.A
		}
		return p.A, p.B
	}
	a1, a2 := low(a)
	b1, b2 := low(b)
	return cmp.Or(compare(b.length, a.length), compareRows(a1, b1), compareRows(a2, b2), compare(a.bend, b.bend))
}

// interval is a stretch of an edge from one fraction of its length to another.
type interval struct{ from, to float64 }

// coveredBy appends the stretches of e along which f is nearer than tol.
func coveredBy(e, f *curve, tol float64, out []interval) []interval {
	if e.straight && f.straight {
		if _, decided, _ := crossClear(e, f, tol); decided {
			return out
		}
	}
	var room [4]Point
	ends := endsOn(e, f, tol, room[:0])
	if len(ends) < 2 {
		return out
	}
	slices.SortFunc(ends, func(p, q Point) int { return compare(e.fraction(p), e.fraction(q)) })
	for i, p := range ends[1:] {
		if joined(e, f, ends[i], p, tol) {
			out = append(out, interval{clamp(e.fraction(ends[i])), clamp(e.fraction(p))})
		}
	}
	return out
}

// measure returns the length of a union of intervals, which it sorts.
func measure(stretches []interval) float64 {
	slices.SortFunc(stretches, func(a, b interval) int { return compare(a.from, b.from) })
	sum, end := 0.0, 0.0
	for _, s := range stretches {
		if s.to > end {
			sum += s.to - max(s.from, end)
			end = s.to
		}
	}
	return sum
}
