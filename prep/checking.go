package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// Checks returns the distances to measure before the marks are joined up; the
// indices are those of w.Marks. Rectangles that are laid get both diagonals.
func (w *FloorWork) Checks() []survey.Check {
	points := make([]plane.Point, len(w.Marks))
	for i, m := range w.Marks {
		points[i] = m.At
	}
	return survey.CheckList(points, w.squares()...)
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
