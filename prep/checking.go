package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
)

// ChecksOf returns the distances to measure before the marks are joined up, in the
// order in which they are walked: in rows from downstage, to and fro. The indices
// are those of w.Marks. Rectangles that are laid get both diagonals, and any one
// mark that is misplaced by Blunder shows. No tape goes through a wall or a column,
// or over a step. For what Work returns it is computed once.
func ChecksOf(p *Production, w *FloorWork) []survey.Check {
	if w.checks != nil {
		return w.checks()
	}
	return checksOf(p, w)
}

// checkRow is how deep the rows are in which check measures are walked, in metres
// (common practice, no source).
const checkRow = 1.5

func checksOf(p *Production, w *FloorWork) []survey.Check {
	budget := ErrorBudget(p, w)
	c := survey.Checking{Squares: w.squares(), Sigma: budget.Measure, Shows: Blunder,
		Reach: p.Settings.TapeLength, Blocked: floor.SightOn(w.Floor, nil).Blocked}
	for _, m := range w.Marks {
		c.Marks = append(c.Marks, survey.Placed{At: m.At, Covariance: placing(m)})
	}
	list := survey.CheckList(c)
	middles := make([]plane.Point, len(list))
	for i, k := range list {
		middles[i] = w.Marks[k.From].At.Towards(w.Marks[k.To].At, 0.5)
	}
	out := make([]survey.Check, len(list))
	for i, k := range route.ByRows(plane.Point{}, middles, checkRow) {
		out[i] = list[k]
	}
	return out
}

// squares finds the paths of four straight lines that close, whose corners are
// all marks and whose diagonals are equal to a centimetre.
func (w *FloorWork) squares() [][4]int {
	var out [][4]int
	for i := 0; i+4 <= len(w.Lines); i++ {
		four := w.Lines[i : i+4]
		if !closesSquare(four) {
			continue
		}
		var corners [4]int
		whole := true
		for k, l := range four {
			corners[k] = w.markAt(l.A)
			whole = whole && corners[k] >= 0
		}
		if whole {
			out = append(out, corners)
		}
	}
	return out
}

// sameMark is how near, in metres, a corner of line work lies to its mark.
const sameMark = 0.01

func (w *FloorWork) markAt(at plane.Point) int {
	for i, m := range w.Marks {
		if m.Kind != marks.Spike && m.At.To(at) <= sameMark {
			return i
		}
	}
	return -1
}

// closesSquare tells whether four lines of one path go round a rectangle.
func closesSquare(four []floor.Line) bool {
	for i, l := range four {
		next := four[(i+1)%4]
		if l.Element != four[0].Element || l.Path != four[0].Path || !l.Straight() || l.B.To(next.A) > 1e-6 {
			return false
		}
	}
	a, b := four[0].A.To(four[2].A), four[1].A.To(four[3].A)
	return math.Abs(a-b) <= sameMark
}

// CheckAllowed is how far, in metres, a good reading between two good marks may
// depart from what is expected: twice the standard deviation of three independent
// errors of one reading, two marks' and its own, and of the rounding of both
// marks; rounded up to a whole rounding step.
func (p *Production) CheckAllowed() float64 {
	step := p.Style().Grain()
	variance := 3*p.Settings.TapeSigma*p.Settings.TapeSigma + 2*step*step/12
	return step * max(1, math.Ceil(2*math.Sqrt(variance)/step-1e-9))
}
