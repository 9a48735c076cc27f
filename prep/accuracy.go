package prep

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/survey"
)

// MarkTolerance is how far a mark may lie from its true place before the method
// that puts it there is called too poor, in metres: an inch, the breadth of a
// usual tape (common practice, no source).
const MarkTolerance = 0.0254

// Accuracy is how well the marks of a floor can be placed, each by its better
// method.
type Accuracy struct {
	Marks   []MarkAccuracy // in the order of the marks
	Within  float64        // metres within which 95 % of the marks come to lie; zero without marks
	Worst   int            // index of the mark that is likely to be farthest off, or −1
	Limit   ErrorCause     // what limits that mark most
	Poor    int            // marks that no method places within MarkTolerance
	ByTapes int            // marks for which two tapes are the better method
}

// MarkAccuracy is how well one mark can be placed.
type MarkAccuracy struct {
	Method survey.Method
	Error  float64 // metres; the longer half-axis of the 95 % ellipse by that method
	Good   bool    // it is within MarkTolerance
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

// ErrorBudget is what makes a mark of this floor land beside its true place, from
// the production's own settings. The right angle is as good as the largest 3-4-5
// that fits at the datum; the usual figure where none does. Placing, pivots and
// the class of the tape are survey.DefaultBudget's.
func ErrorBudget(p *Production, w *FloorWork) survey.Budget {
	b := survey.DefaultBudget
	b.Reading, b.Rounding = p.Settings.TapeSigma, p.Style().Grain()
	if a, ok := SquareOn(p, w); ok {
		b.RightAngle = a.AngleError(b.Measure(a.Slope))
	}
	return b
}

// AccuracyOf tells how well the marks of the floor can be placed.
func AccuracyOf(p *Production, w *FloorWork) Accuracy {
	b := ErrorBudget(p, w)
	a := Accuracy{Worst: -1, Marks: make([]MarkAccuracy, len(w.Marks))}
	for i := range w.Marks {
		m := markAccuracy(b, w, i)
		a.Marks[i] = m
		if !m.Good {
			a.Poor++
		}
		if m.Method == survey.TwoTapes {
			a.ByTapes++
		}
		if a.Worst < 0 || m.Error > a.Marks[a.Worst].Error {
			a.Worst = i
		}
	}
	if a.Worst >= 0 {
		a.Within = within95(a.Marks)
		a.Limit = limitOf(b, w, a.Worst)
	}
	return a
}

func markAccuracy(b survey.Budget, w *FloorWork, i int) MarkAccuracy {
	m := w.Marks[i]
	var pair survey.TwoTape // without a base the tapes give no mark
	if m.HasTapes && !m.Far && !m.Weak {
		pair, _ = Pivots(w.Floor)
	}
	advice := b.Advise(pair, m.At, MarkTolerance)
	out := MarkAccuracy{Method: advice.Method, Good: advice.Good}
	switch advice.Method {
	case survey.TwoTapes:
		out.Error = advice.TwoTape.Major
	case survey.UpAndOver:
		out.Error = advice.UpOver.Major
	default:
		b.RightAngle = 0
		out.Error = b.UpOver(m.At).Ellipse95().Major
	}
	return out
}

// placing returns the covariance in datum axes of a mark placed by its better
// method.
func placing(b survey.Budget, w *FloorWork, i int) survey.Covariance2 {
	m := w.Marks[i]
	switch markAccuracy(b, w, i).Method {
	case survey.TwoTapes:
		pair, _ := Pivots(w.Floor)
		if c, ok := b.TwoTape(pair, m.At); ok {
			return c
		}
	case survey.WithGuideLines:
		b.RightAngle = 0
	}
	return b.UpOver(m.At)
}

// within95 returns the radius within which 95 % of the marks are expected: the
// mean over the marks of the chance to lie within it is 0.95. Each error is taken
// to be as large in every direction as along the longer axis of its ellipse, so
// that the figure is never too good; then its length has Rayleigh's distribution,
// with the chance 1 − exp(−ln 20 · r²/e²) within r for a 95 % radius of e.
func within95(list []MarkAccuracy) float64 {
	share := func(r float64) float64 {
		sum := 0.0
		for _, m := range list {
			if m.Error <= 0 {
				sum++
				continue
			}
			sum += 1 - math.Exp(-math.Log(20)*(r/m.Error)*(r/m.Error))
		}
		return sum / float64(len(list))
	}
	low := 0.0
	high := slices.MaxFunc(list, func(a, b MarkAccuracy) int { return cmp.Compare(a.Error, b.Error) }).Error
	for range 60 {
		if middle := (low + high) / 2; share(middle) < 0.95 {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// limitOf returns the cause without which the mark would be placed best.
func limitOf(b survey.Budget, w *FloorWork, i int) ErrorCause {
	least, limit := math.Inf(1), ErrorCause("")
	for _, c := range causes {
		without := b
		c.away(&without)
		if e := markAccuracy(without, w, i).Error; e < least-1e-9 {
			least, limit = e, c.cause
		}
	}
	return limit
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
	out.Floor, out.Marks = &f, measure(p, &f, found)
	out.judgeLater()
	return &out
}
