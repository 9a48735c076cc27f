package marksplace

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/length"
)

// quality says how good the floor will be, and what limits it.
func quality(p *prep.Production, w *prep.FloorWork, a prep.Accuracy) (good bool, text string) {
	switch {
	case len(a.Out) > 0 && a.Reached == 0:
		return false, fmt.Sprintf("No method reaches any of the %s here: look at the pivots, the longest tape and what stands in the way.", verb(len(a.Out), "mark", "marks"))
	case a.Worst < 0:
		return false, "No marks here yet: they follow from what is drawn on the plan and laid on this floor in this scene."
	}
	style := p.Fine
	worst := w.Marks[a.Worst]
	how := "as advised"
	if a.Chosen > 0 {
		how = "as chosen"
	}
	text = fmt.Sprintf("Placed %s, 95 %% of the marks will lie within %s of their true places. Least sure: %s, within %s, limited by %s.",
		how, style(a.Within), worst.Label, style(worst.Error), a.Limit)
	if a.Poor > 0 {
		text += fmt.Sprintf(" %s than %s, or not to be had by the method chosen: sort by Within.",
			verb(a.Poor, "mark is less sure", "marks are less sure"), style(p.Errors().Allowed))
	}
	if len(a.Out) > 0 {
		text += fmt.Sprintf(" No method reaches %s: select it to see why.", prep.MarksNamed(a.Out))
	}
	return a.Poor+len(a.Out) == 0, text
}

// rightAngle says how the right angle at the datum is laid out.
func rightAngle(p *prep.Production, w *prep.FloorWork) string {
	a, ok := prep.SquareOn(p, w)
	if !ok {
		if len(w.Floor.Outline.Vertices) == 0 {
			return "The floor has not been measured yet, so the largest 3-4-5 that fits is not known."
		}
		return "No 3-4-5 fits to both sides of the datum where it lies on this floor: square from a line farther upstage that is parallel to the baseline, and carry it down."
	}
	f := p.Style().Format
	out, span := prep.ErrorBudget(p, w).RightAngle, 10.0
	if !p.Unit().Metric() {
		span = 30 * length.Foot
	}
	return fmt.Sprintf("The largest 3-4-5 that fits is %d times as large. From the datum measure %s up along the centre line and mark it. "+
		"To each side, the place %s from the datum and %s from that mark is on the baseline. "+
		"Check: the two places are %s apart, in one line with the datum. So laid, the angle is good to about %s in %s.",
		a.Multiple, f(a.Up), f(a.Over), f(a.Slope), f(a.Between), p.Fine(span*out), f(span))
}

// guideWords say how the guide lines and the second baseline lie, where marks need them.
func guideWords(p *prep.Production, w *prep.FloorWork) string {
	frame, lines := w.GuideLines()
	if len(lines) == 0 {
		return ""
	}
	f := p.Style().Format
	return fmt.Sprintf(" Guide lines: %s to each side of the centre line, with a second baseline %s up; true when both diagonals are %s.",
		f(frame.Half), f(frame.Up), f(frame.Diagonal()))
}

func verb(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
