package revision

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// tries returns the motions worth trying, by how much they turn.
func tries(a, b *shape) []plane.Motion {
	out := []plane.Motion{{Shift: b.centre.Sub(a.centre)}}
	about := func(turn float64) plane.Motion {
		m := plane.About(a.centre, turn)
		m.Shift = m.Shift.Add(b.centre.Sub(a.centre))
		return m
	}
	if a.long && b.long {
		turn := math.Remainder(b.axis-a.axis, 2*math.Pi)
		out = append(out, about(turn), about(math.Remainder(turn+math.Pi, 2*math.Pi)))
	}
	key, partners := keyEdge(a, b)
	for _, e := range partners {
		for _, f := range []plane.Edge{e, e.Reversed()} {
			out = append(out, onto(key, f))
		}
	}
	slices.SortStableFunc(out, func(m, n plane.Motion) int {
		return cmp.Compare(math.Abs(m.Turn), math.Abs(n.Turn))
	})
	return out[:min(len(out), maxTries)]
}

// onto returns the motion that lays the chord of e on that of f, middle on middle.
func onto(e, f plane.Edge) plane.Motion {
	turn := math.Remainder(f.B.Sub(f.A).Angle()-e.B.Sub(e.A).Angle(), 2*math.Pi)
	m := plane.About(e.A.Towards(e.B, 0.5), turn)
	m.Shift = m.Shift.Add(f.A.Towards(f.B, 0.5).Sub(e.A.Towards(e.B, 0.5)))
	return m
}

// sameLength is how much edges that could be one may differ in length, in metres.
const sameLength = 0.005

// keyEdge returns the edge of a that has the fewest partners in b, the longest of
// those, and the partners.
func keyEdge(a, b *shape) (key plane.Edge, partners []plane.Edge) {
	type sized struct {
		plane.Edge
		chord float64
	}
	sorted := make([]sized, len(b.edges))
	for i, e := range b.edges {
		sorted[i] = sized{e, e.Chord()}
	}
	slices.SortStableFunc(sorted, func(e, f sized) int { return cmp.Compare(e.chord, f.chord) })
	first := func(chord float64) int {
		i, _ := slices.BinarySearchFunc(sorted, chord, func(e sized, c float64) int { return cmp.Compare(e.chord, c) })
		return i
	}
	from, to := 0, 0
	for _, e := range a.edges {
		c := e.Chord()
		low, high := first(c-sameLength), first(c+sameLength)
		if high <= low || c <= sameLength {
			continue
		}
		fewer := to == from || high-low < to-from
		if fewer || high-low == to-from && c > key.Chord() {
			key, from, to = e, low, high
		}
	}
	for _, e := range sorted[from:to] {
		partners = append(partners, e.Edge)
	}
	return key, partners
}
