package marks

import (
	"math"

	"groundrow/tapeout/plane"
)

// chain is a curve made of arcs, or of the chords it was drawn with, end to end.
type chain struct {
	parts []plane.Edge
	links []int // of the arrangement, one for each part
	nodes []int // between the parts
}

func (c chain) all(ok func(plane.Edge) bool) bool {
	for _, e := range c.parts {
		if !ok(e) {
			return false
		}
	}
	return true
}

// onChain is a place on a chain: a fraction of one of its parts.
type onChain struct {
	part int
	t    float64
	at   plane.Point
}

// points returns the places between the ends of the chain that must be marked so that
// no chord from one to the next departs from the curve by more than tol metres, and not
// one more than that needs: from each place the next is as far on as the tolerance
// allows, and then the tolerance is drawn in as far as the same number will do, so that
// the chords depart alike. A closed chain has its beginning for both ends. A tolerance that
// would take more than mostPoints is widened until it does not, so that the points are never
// missing from a part of the curve.
func (c chain) points(tol float64) []onChain {
	if tol <= 0 {
		return nil
	}
	if len(c.parts) == 1 {
		return evenly(c.parts[0], tol)
	}
	s := c.stretch()
	best, ended := s.march(tol)
	for !ended {
		tol *= 2
		best, ended = s.march(tol)
	}
	low, high := 0.0, tol
	for range 20 {
		middle := (low + high) / 2
		if got, ended := s.march(middle); !ended || len(got) > len(best) {
			low = middle
		} else {
			best, high = got, middle
		}
	}
	return best
}

// evenly are the points of one arc: equal chords are the fewest.
func evenly(e plane.Edge, tol float64) []onChain {
	ps := e.Flatten(tol)
	for len(ps)-2 > mostPoints {
		tol *= 2
		ps = e.Flatten(tol)
	}
	out := make([]onChain, 0, len(ps))
	for i := 1; i+1 < len(ps); i++ {
		out = append(out, onChain{0, float64(i) / float64(len(ps)-1), ps[i]})
	}
	return out
}

// stretch is a chain with the lengths along it.
type stretch struct {
	parts []plane.Edge
	from  []float64 // metres along the chain at the beginning of each part, and its end
}

func (c chain) stretch() stretch {
	s := stretch{parts: c.parts, from: make([]float64, 1, len(c.parts)+1)}
	for i, e := range c.parts {
		s.from = append(s.from, s.from[i]+e.Length())
	}
	return s
}

func (s stretch) length() float64 { return s.from[len(s.parts)] }

// at returns the place so many metres along; hint is a part at or before it.
func (s stretch) at(along float64, hint int) onChain {
	i := hint
	for i+1 < len(s.parts) && s.from[i+1] <= along {
		i++
	}
	t := 0.0
	if l := s.from[i+1] - s.from[i]; l > 0 {
		t = math.Min(1, (along-s.from[i])/l)
	}
	return onChain{i, t, s.parts[i].At(t)}
}

// mostPoints bounds what a tiny tolerance makes of a long curve.
const mostPoints = 2_000

// march returns the places between the ends, each as far from the last as tol allows. ended
// is false where there would be more than mostPoints, or where the tolerance is finer than
// floating point.
func (s stretch) march(tol float64) (out []onChain, ended bool) {
	here, along := s.at(0, 0), 0.0
	for {
		low, high := along, s.length()
		if s.departs(here, s.at(high, here.part)) <= tol {
			return out, true
		}
		if len(out) == mostPoints {
			return out, false
		}
		// A chord over one part can be as long as its own arc allows, so that the search
		// begins with a step that is sure to be short enough and doubles it.
		for step := (high - low) / 1024; low+step < high; step *= 2 {
			if s.departs(here, s.at(low+step, here.part)) > tol {
				high = low + step
				break
			}
			low += step
		}
		for range 40 {
			middle := (low + high) / 2
			if s.departs(here, s.at(middle, here.part)) > tol {
				high = middle
			} else {
				low = middle
			}
		}
		if low <= along {
			return out, false
		}
		along = low
		here = s.at(along, here.part)
		out = append(out, here)
	}
}

// departs returns how far in metres the chain departs from the chord between two of its
// places, the first before the second.
func (s stretch) departs(a, b onChain) float64 {
	chord := plane.Edge{A: a.at, B: b.at}
	most := 0.0
	for i := a.part; i <= b.part; i++ {
		from, to := 0.0, 1.0
		if i == a.part {
			from = a.t
		}
		if i == b.part {
			to = b.t
		}
		if to > from {
			most = max(most, farthestFrom(chord, s.parts[i].Part(from, to)))
		}
	}
	return most
}

// farthestFrom returns the largest distance of a piece from a chord: at its ends, or
// where an arc runs along the chord.
func farthestFrom(chord, piece plane.Edge) float64 {
	most := max(chord.Distance(piece.A), chord.Distance(piece.B))
	if piece.Straight() {
		return most
	}
	along, ok := chord.B.Sub(chord.A).Unit()
	if !ok {
		return max(most, chord.Distance(piece.At(0.5)))
	}
	centre, radius, _ := piece.Circle()
	for _, top := range []plane.Point{centre.Add(along.Left().Times(radius)), centre.Sub(along.Left().Times(radius))} {
		if on, _ := piece.Nearest(top); on.To(top) < 1e-9*max(1, radius) {
			most = max(most, chord.Distance(top))
		}
	}
	return most
}
