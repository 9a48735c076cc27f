package room

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"groundrow/tapeout/plane"
)

// equations are the normal equations of readings at a shape, N·step = right. A reading
// has six derivatives at most, so that N is made from those and not from the whole
// design, and only its lower half is kept.
type equations struct {
	normal [][]float64
	right  []float64

	factor [][]float64 // Cholesky's, of the damped ones
	step   []float64
}

func newEquations(unknowns int) *equations {
	return &equations{normal: lowerHalf(unknowns), right: make([]float64, unknowns),
		factor: lowerHalf(unknowns), step: make([]float64, unknowns)}
}

func lowerHalf(size int) [][]float64 {
	out := make([][]float64, size)
	for i := range out {
		out[i] = make([]float64, i+1)
	}
	return out
}

// set makes the equations of the readings at a shape.
func (e *equations) set(reads []reading, at []plane.Point) {
	for _, row := range e.normal {
		clear(row)
	}
	clear(e.right)
	var room [6]term
	for _, r := range reads {
		terms, miss := r.terms(at, room[:])
		for _, s := range terms {
			e.right[s.column] += s.by * miss
			for _, t := range terms {
				if t.column <= s.column {
					e.normal[s.column][t.column] += s.by * t.by
				}
			}
		}
	}
}

func (e *equations) largest() float64 {
	most := 0.0
	for i, row := range e.normal {
		most = math.Max(most, row[i])
	}
	return most
}

// solve returns the step with damp added to the diagonal, which is good until the next
// call (A.-L. Cholesky's method, from memory). ok is false when the damping is too
// little for the equations to be solved.
func (e *equations) solve(damp float64) (step []float64, ok bool) {
	for i, row := range e.factor {
		for j := range i {
			above := e.factor[j]
			row[j] = (e.normal[i][j] - floats.Dot(row[:j], above[:j])) / above[j]
		}
		rest := e.normal[i][i] + damp - floats.Dot(row[:i], row[:i])
		if !(rest > 0) || math.IsInf(rest, 1) {
			return nil, false
		}
		row[i] = math.Sqrt(rest)
		e.step[i] = (e.right[i] - floats.Dot(row[:i], e.step[:i])) / row[i]
	}
	for i := len(e.step) - 1; i >= 0; i-- {
		e.step[i] /= e.factor[i][i]
		floats.AddScaled(e.step[:i], -e.step[i], e.factor[i][:i])
	}
	return e.step, true
}
