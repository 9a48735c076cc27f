package prep

import (
	"fmt"
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// PivotPair is two pivots of a floor, by their order of use, from which two tapes
// are pulled.
type PivotPair struct {
	A, B  int // indices of the floor's pivots, A < B
	Tapes survey.TwoTape
}

// blockedOne returns the pivot that does not reach a mark.
func (p PivotPair) blockedOne(first bool) int {
	if first {
		return p.A
	}
	return p.B
}

// Words names the pivots by their numbers: "1 and 3".
func (p PivotPair) Words() string { return fmt.Sprintf("%d and %d", p.A+1, p.B+1) }

// TapeFigures writes what the two tapes read for the mark; both are empty where no two
// pivots serve it. From others than the first two pivots each figure names its own:
// `12' 6" (pivot 3)`.
func (m MeasuredMark) TapeFigures(write func(metres float64) string) (a, b string) {
	if !m.HasTapes {
		return "", ""
	}
	a, b = write(m.Tapes.A), write(m.Tapes.B)
	if m.Pair.A != 0 || m.Pair.B != 1 {
		a, b = fmt.Sprintf("%s (pivot %d)", a, m.Pair.A+1), fmt.Sprintf("%s (pivot %d)", b, m.Pair.B+1)
	}
	return a, b
}

// OnCentreLine tells whether both pivots stand on the centre line: then the same
// two readings fit a mark to the left and one to the right, and the two sets must
// never be mixed.
func (p PivotPair) OnCentreLine() bool {
	const near = 0.01
	return math.Abs(p.Tapes.A.X) < near && math.Abs(p.Tapes.B.X) < near
}

// mostPivots bounds how many pivots are paired; nobody pulls tapes from more.
const mostPivots = 8

// pivotPairs returns the pairs of a floor's pivots in the order of their use: the
// first two, then each later one with those before it. Two in one place are no pair.
func pivotPairs(f *floor.Floor) []PivotPair {
	m := f.FloorToDatum()
	var at []plane.Point
	for _, v := range f.Pivots[:min(len(f.Pivots), mostPivots)] {
		at = append(at, m.Apply(v.At))
	}
	var out []PivotPair
	for b := range at {
		for a := range b {
			if t := (survey.TwoTape{A: at[a], B: at[b]}); t.Base() >= survey.Near {
				out = append(out, PivotPair{a, b, t})
			}
		}
	}
	return out
}

// Pairs returns the pairs of pivots that the marks are measured from, in the order
// of their use; a pair that no mark needs is not among them.
func (w *FloorWork) Pairs() []PivotPair {
	used := map[[2]int]bool{}
	for _, m := range w.Marks {
		if m.HasTapes {
			used[[2]int{m.Pair.A, m.Pair.B}] = true
		}
	}
	var out []PivotPair
	for _, p := range pivotPairs(w.Floor) {
		if used[[2]int{p.A, p.B}] {
			out = append(out, p)
		}
	}
	return out
}
