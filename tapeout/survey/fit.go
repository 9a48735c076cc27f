package survey

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Fit is the turn, stretch and shift that carries one set of places onto another
// in the sense of least squares: q ≈ Motion(Scale·p).
type Fit struct {
	Motion   plane.Motion
	Scale    float64
	Residual []float64 // metres by which each place misses, the ones left out too
	Moved    []bool    // places that do not belong to the whole and were left out
	RMS      float64   // metres, root of the mean square of those that belong
}

// Apply returns where the fit carries p.
func (f Fit) Apply(p plane.Point) plane.Point { return f.Motion.Apply(p.Times(f.Scale)) }

// BestFit carries the places from onto the places to, one for one, and tells
// those that belong to the whole from pieces that moved by themselves: as many as
// possible are to miss by no more than allowed metres, and the fit is the least
// squares of those. With stretch it also finds one scale for all; else Scale is 1.
//
// The least squares are in closed form: about the centroids the turn is
// atan2(Σ p×q, Σ p·q), the scale the length of that vector over Σ p². Which places
// belong is found by trying the fits of pairs, every pair of up to eighty places.
func BestFit(from, to []plane.Point, allowed float64, stretch bool) (Fit, error) {
	if err := fittable(from, to); err != nil {
		return Fit{}, fmt.Errorf("fit the places: %w", err)
	}
	belongs := agreeing(from, to, allowed, stretch)
	f, ok := leastSquares(from, to, belongs, stretch)
	if !ok {
		return Fit{}, errors.New("fit the places: all of them are the same place; measure some that are apart")
	}
	// What the pair's own fit just missed may belong to the fit of all: once more.
	if again := f.within(from, to, allowed); count(again) >= count(belongs) {
		if better, ok := leastSquares(from, to, again, stretch); ok {
			f, belongs = better, again
		}
	}
	f.judge(from, to, belongs)
	return f, nil
}

func fittable(from, to []plane.Point) error {
	switch {
	case len(from) != len(to):
		return fmt.Errorf("there are %d places before and %d after; each needs its partner", len(from), len(to))
	case len(from) < 2:
		return errors.New("at least two places have to be measured on both floors")
	}
	for i := range from {
		if !from[i].Finite() || !to[i].Finite() {
			return fmt.Errorf("place number %d has no position", i+1)
		}
	}
	return nil
}

// mostPairs bounds how many pairs of places are tried as hypotheses.
const mostPairs = 80 * 79 / 2

// agreeing returns the largest set of places that the fit of some pair carries to
// within allowed metres of where they are; all of them if no pair gives a fit.
func agreeing(from, to []plane.Point, allowed float64, stretch bool) []bool {
	n := len(from)
	best := make([]bool, n)
	for i := range best {
		best[i] = true
	}
	whole, ok := leastSquares(from, to, best, stretch)
	if !ok || count(whole.within(from, to, allowed)) == n {
		return best
	}
	most, pair := 0, make([]bool, n)
	stride := 1 + n*(n-1)/2/mostPairs
	for at, i := 0, 0; i < n; i++ {
		for j := i + 1; j < n; j++ {
			if at++; at%stride != 0 {
				continue
			}
			clear(pair)
			pair[i], pair[j] = true, true
			f, ok := leastSquares(from, to, pair, stretch)
			if !ok {
				continue
			}
			if in := f.within(from, to, allowed); count(in) > most {
				best, most = in, count(in)
			}
		}
	}
	return best
}

// leastSquares returns the fit of the places wanted; ok is false if they are one.
func leastSquares(from, to []plane.Point, wanted []bool, stretch bool) (f Fit, ok bool) {
	var p0, q0 plane.Point
	n := float64(count(wanted))
	for i, yes := range wanted {
		if yes {
			p0, q0 = p0.Add(from[i].Times(1/n)), q0.Add(to[i].Times(1/n))
		}
	}
	var dot, cross, square float64
	for i, yes := range wanted {
		if yes {
			p, q := from[i].Sub(p0), to[i].Sub(q0)
			dot, cross, square = dot+p.Dot(q), cross+p.Cross(q), square+p.Dot(p)
		}
	}
	if square < Near*Near || math.Hypot(dot, cross) == 0 {
		return Fit{}, false
	}
	f = Fit{Scale: 1, Motion: plane.Motion{Turn: math.Atan2(cross, dot)}}
	if stretch {
		f.Scale = math.Hypot(dot, cross) / square
	}
	f.Motion.Shift = q0.Sub(f.Motion.Rotate(p0.Times(f.Scale)))
	return f, true
}

// Within tells whether every place is carried to within allowed metres.
func (f Fit) Within(allowed float64) bool {
	return !slices.ContainsFunc(f.Residual, func(miss float64) bool { return miss > allowed })
}

// within tells which places the fit carries to within allowed metres.
func (f Fit) within(from, to []plane.Point, allowed float64) []bool {
	in := make([]bool, len(from))
	for i, p := range from {
		in[i] = f.Apply(p).To(to[i]) <= allowed
	}
	return in
}

// judge fills in what each place misses by and which ones moved.
func (f *Fit) judge(from, to []plane.Point, belongs []bool) {
	f.Residual, f.Moved = make([]float64, len(from)), make([]bool, len(from))
	sum := 0.0
	for i, p := range from {
		f.Residual[i], f.Moved[i] = f.Apply(p).To(to[i]), !belongs[i]
		if belongs[i] {
			sum += f.Residual[i] * f.Residual[i]
		}
	}
	f.RMS = math.Sqrt(sum / float64(count(belongs)))
}

func count(set []bool) (n int) {
	for _, yes := range set {
		if yes {
			n++
		}
	}
	return n
}
