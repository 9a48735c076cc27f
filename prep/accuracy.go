package prep

import (
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/survey"
)

// Accuracy is how well the marks of a floor will be placed, each by the method that
// is recommended or chosen for it. Marks that no method reaches are told apart: they
// will not be placed at all.
type Accuracy struct {
	Within  float64    // metres within which 95 % of the marks come to lie; zero without marks
	Worst   int        // index of the mark that is likely to be farthest off, or −1
	Limit   ErrorCause // what limits that mark most
	Poor    int        // marks that are placed, but not as well as is allowed
	Chosen  int        // marks whose method somebody has chosen
	Reached int        // marks that are placed
	Out     []string   // labels of those that no method reaches
}

// ErrorCause is one reason why marks land beside their true places.
type ErrorCause string

// Causes of error.
const (
	CauseReading    ErrorCause = "reading the tape"
	CauseTape       ErrorCause = "the tape measure itself"
	CausePlacing    ErrorCause = "putting the tab down"
	CausePivot      ErrorCause = "setting the pivots and the datum"
	CauseRightAngle ErrorCause = "the right angle at the datum"
	CauseRounding   ErrorCause = "the rounding of the figures"
)

// causes in the order that breaks a tie, each with how it is taken away.
var causes = []struct {
	cause ErrorCause
	away  func(*survey.Budget)
}{
	{CauseRightAngle, func(b *survey.Budget) { b.RightAngle = 0 }},
	{CauseReading, func(b *survey.Budget) { b.Reading = 0 }},
	{CauseRounding, func(b *survey.Budget) { b.Rounding = 0 }},
	{CausePivot, func(b *survey.Budget) { b.Pivot = 0 }},
	{CausePlacing, func(b *survey.Budget) { b.Placing = 0 }},
	{CauseTape, func(b *survey.Budget) { b.Tape, b.Stretch = survey.Class{}, 0 }},
}

// AccuracyOf tells how well the marks of the floor will be placed.
func AccuracyOf(p *Production, w *FloorWork) Accuracy {
	a := Accuracy{Worst: -1}
	var errors []float64
	for i, m := range w.Marks {
		if m.OutOfReach() {
			a.Out = append(a.Out, m.Label)
			continue
		}
		errors = append(errors, m.Error)
		if !m.Good {
			a.Poor++
		}
		if m.Chosen {
			a.Chosen++
		}
		if a.Worst < 0 || m.Error > w.Marks[a.Worst].Error {
			a.Worst = i
		}
	}
	a.Reached = len(errors)
	if a.Worst >= 0 {
		a.Within = within95(errors)
		a.Limit = limitOf(p, w, a.Worst)
	}
	return a
}

// placing returns the covariance in datum axes of a mark placed by its method.
func placing(m MeasuredMark) survey.Covariance2 { return m.Way(m.Method).Covariance }

// within95 returns the radius within which 95 % of the marks are expected: the
// mean over the marks of the chance to lie within it is 0.95. Each error is taken
// to be as large in every direction as along the longer axis of its ellipse, so
// that the figure is never too good; then its length has Rayleigh's distribution,
// with the chance 1 − exp(−ln 20 · r²/e²) within r for a 95 % radius of e.
func within95(errors []float64) float64 {
	share := func(r float64) float64 {
		sum := 0.0
		for _, e := range errors {
			if e <= 0 {
				sum++
				continue
			}
			sum += 1 - math.Exp(-math.Log(20)*(r/e)*(r/e))
		}
		return sum / float64(len(errors))
	}
	low, high := 0.0, slices.Max(errors)
	for range 60 {
		if middle := (low + high) / 2; share(middle) < 0.95 {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// limitOf returns the cause without which the mark would be placed best by its
// method.
func limitOf(p *Production, w *FloorWork, i int) ErrorCause {
	m := w.Marks[i]
	budget := errorBudget(p, w.Floor)
	least, limit := m.Error, ErrorCause("")
	for _, c := range causes {
		without := budget
		c.away(&without)
		if c.cause != CauseRightAngle {
			without.RightAngle = angleBy(p, w.Floor, without) // truer tapes make a truer 3-4-5
		}
		if e := errorBy(without, w.Frame, m); e < least-1e-9 {
			least, limit = e, c.cause
		}
	}
	return limit
}

// errorBy returns the longer half-axis of a mark's 95 % ellipse by its method with
// another budget.
func errorBy(b survey.Budget, frame survey.Frame, m MeasuredMark) float64 {
	c := b.UpOver(m.At)
	switch m.Method {
	case survey.TwoTapes:
		c, _ = b.TwoTape(m.Pair.Tapes, m.At)
	case survey.WithGuideLines:
		c = b.Guided(frame, m.At)
	}
	return c.Ellipse95().Major
}

// WithPivots returns the work as it would be with these pivots; only what is
// measured from them changes. It serves a pivot that is being dragged.
func (w *FloorWork) WithPivots(p *Production, pivots []floor.Pivot) *FloorWork {
	f := *w.Floor
	f.Pivots = pivots
	found := make([]marks.Mark, len(w.Marks))
	for i, m := range w.Marks {
		found[i] = m.Mark
	}
	out := *w
	out.Floor = &f
	out.measure(p, found)
	out.judgeLater()
	return &out
}
