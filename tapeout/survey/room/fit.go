package room

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"groundrow/tapeout/plane"
)

const (
	mostRounds = 200
	still      = 1e-11 // metres; no unknown moves by more
)

var errUnsettled = errors.New("the measurements contradict each other too much to make a room: measure the longest lengths again")

// fit moves the places so that the badness of the readings is least: damped
// Gauss–Newton (K. Levenberg, Quart. Appl. Math. 2, 1944; D. Marquardt, SIAM J. 11,
// 1963, both from memory). What the readings leave open stays nearly where it was.
func (n *net) fit(reads []reading, at []plane.Point) ([]plane.Point, float64, error) {
	now, damp := badness(reads, at), 1e-3
	for range mostRounds {
		a, miss := n.design(reads, at)
		var normal mat.SymDense
		normal.SymOuterK(1, a.T())
		var right mat.VecDense
		right.MulVec(a.T(), miss)
		scale := largest(&normal)
		if scale == 0 || math.IsNaN(scale) {
			return nil, 0, errUnsettled
		}
		next, step, ok := n.attempt(&normal, &right, damp*scale, at)
		if !ok {
			damp *= 10
			continue
		}
		then := badness(reads, next)
		switch {
		case then <= now*(1+1e-12):
			at, now, damp = next, then, math.Max(damp/10, 1e-13)
			if step < still {
				return at, now, nil
			}
		case step < still:
			return at, now, nil
		default:
			damp *= 10
		}
	}
	// In national figures of many walls the last digits may never come to rest.
	return at, now, nil
}

// attempt solves the damped normal equations once.
func (n *net) attempt(normal *mat.SymDense, right *mat.VecDense, damp float64, at []plane.Point) (next []plane.Point, step float64, ok bool) {
	k := normal.SymmetricDim()
	damped := mat.NewSymDense(k, nil)
	damped.CopySym(normal)
	for i := range k {
		damped.SetSym(i, i, damped.At(i, i)+damp)
	}
	var c mat.Cholesky
	if !c.Factorize(damped) {
		return nil, 0, false
	}
	var move mat.VecDense
	if err := c.SolveVecTo(&move, right); err != nil && !poorly(err) {
		return nil, 0, false
	}
	for i := range k {
		step = math.Max(step, math.Abs(move.AtVec(i)))
	}
	return moved(at, &move), step, !math.IsNaN(step)
}

// poorly tells a warning about a poor condition from a failure: the damping is
// there for that, and a step that makes it worse is not taken.
func poorly(err error) bool {
	var c mat.Condition
	return errors.As(err, &c)
}

func largest(m *mat.SymDense) float64 {
	most := 0.0
	for i := range m.SymmetricDim() {
		most = math.Max(most, m.At(i, i))
	}
	return most
}
