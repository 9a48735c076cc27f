package room

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// next returns what to measure next. While the shape is open that is as many
// lengths as fix it, each the one that holds the widest of what can still move;
// then the one length that checks the others best, until all are checked.
func (n *net) next(j *judged) []Pair {
	candidates := n.candidates()
	if j.open > 0 {
		return n.fixing(j, candidates)
	}
	if best, ok := n.checking(j, candidates); ok {
		return []Pair{best}
	}
	return nil
}

// candidates are the lengths that were not measured and can be: walls, and what
// runs through the room from one place to another.
func (n *net) candidates() []reading {
	have := map[[2]int]bool{}
	for _, r := range n.reads {
		if r.kind != Square {
			have[[2]int{min(r.a, r.b), max(r.a, r.b)}] = true
		}
	}
	outline := n.outline(n.at)
	var out []reading
	for a := range n.places {
		for b := a + 1; b < n.places; b++ {
			wall := b < n.corners && (b == a+1 || a == 0 && b == n.corners-1)
			if !have[[2]int{a, b}] && (wall || n.clear(outline, a, b)) {
				out = append(out, reading{kind: Across, a: a, b: b, sigma: n.with.Length})
			}
		}
	}
	return out
}

// shortest is the length in metres below which a diagonal tells little.
const shortest = 0.5

// clear tells whether a tape can run straight from one place to the other.
func (n *net) clear(outline plane.Path, a, b int) bool {
	line := plane.Edge{A: n.at[a], B: n.at[b]}
	if line.Length() < shortest {
		return false
	}
	_, outside := plane.Clip(line, outline, 1e-3)
	return len(outside) == 0
}

func (n *net) pair(r reading) Pair {
	return Pair{From: n.idOf(r.a), To: n.idOf(r.b), Name: n.nameOf(r)}
}

// fixing returns lengths that hold what can still move, one for each way in which
// the shape can. Held ways are taken out of the rest, so that the next one is new.
func (n *net) fixing(j *judged, candidates []reading) []Pair {
	var free [][]float64
	for k := j.rank; k < n.unknowns(); k++ {
		way := make([]float64, n.unknowns())
		for i := range way {
			way[i] = j.v.At(i, k)
		}
		free = append(free, way)
	}
	var out []Pair
	terms := n.lengthTerms(candidates)
	for range j.open {
		best, most := -1, 1e-3
		for i, of := range terms {
			sum := 0.0
			for _, way := range free {
				held := along(of, way)
				sum += held * held
			}
			if size := math.Sqrt(sum); size > most*(1+1e-9) {
				best, most = i, size
			}
		}
		if best < 0 {
			break
		}
		out = append(out, n.pair(candidates[best]))
		held := make([]float64, len(free))
		for k, way := range free {
			held[k] = along(terms[best], way)
		}
		candidates, terms = slices.Delete(candidates, best, best+1), slices.Delete(terms, best, best+1)
		free = withoutWay(free, held)
	}
	return out
}

// along returns how a length changes, in metres, as the shape moves along a way.
func along(of []term, way []float64) float64 {
	sum := 0.0
	for _, t := range of {
		sum += t.by * way[t.column]
	}
	return sum
}

// lengthTerms are the derivatives of lengths by the unknowns, not weighted.
func (n *net) lengthTerms(of []reading) [][]term {
	out := make([][]term, len(of))
	for i, r := range of {
		r.sigma = 1
		out[i], _ = r.terms(n.at, nil)
	}
	return out
}

// withoutWay returns an orthonormal set of the ways that leave held still: the
// combination of the ways by held is taken out of every one of them.
func withoutWay(free [][]float64, held []float64) [][]float64 {
	size := math.Sqrt(dot(held, held))
	gone := make([]float64, len(free[0]))
	for k, way := range free {
		for i := range gone {
			gone[i] += way[i] * held[k] / size
		}
	}
	var out [][]float64
	for _, way := range free {
		rest := slices.Clone(way)
		for _, other := range append([][]float64{gone}, out...) {
			along := dot(rest, other)
			for i := range rest {
				rest[i] -= along * other[i]
			}
		}
		if l := math.Sqrt(dot(rest, rest)); l > 1e-6 && len(out) < len(free)-1 {
			for i := range rest {
				rest[i] /= l
			}
			out = append(out, rest)
		}
	}
	return out
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// wellChecked is the redundancy beyond which more of it is worth nothing more: an
// error of eight times a reading's own deviation is found.
const wellChecked = 0.3

// checking returns the length that checks the others best. A further reading with
// t = S⁻¹·Vᵀ·a raises the redundancy of reading i by (uᵢ·t)²/(1+t·t).
func (n *net) checking(j *judged, candidates []reading) (Pair, bool) {
	weak := func(r float64) float64 { return math.Min(r, wellChecked) }
	if !slices.ContainsFunc(j.measures, func(m Measure) bool { return m.Redundancy < wellChecked/3 }) {
		return Pair{}, false
	}
	best, most := -1, 1e-3
	for c, of := range n.lengthTerms(candidates) {
		t, tt := make([]float64, j.rank), 0.0
		for k := range t {
			for _, a := range of {
				t[k] += j.v.At(a.column, k) * a.by
			}
			t[k] /= n.with.Length * j.values[k]
			tt += t[k] * t[k]
		}
		gain := 0.0
		for i, m := range j.measures {
			ut := 0.0
			for k := range t {
				ut += j.u.At(i, k) * t[k]
			}
			gain += weak(m.Redundancy+ut*ut/(1+tt)) - weak(m.Redundancy)
		}
		if gain > most*(1+1e-9) {
			best, most = c, gain
		}
	}
	if best < 0 {
		return Pair{}, false
	}
	return n.pair(candidates[best]), true
}
