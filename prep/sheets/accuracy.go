package sheets

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/survey"
)

// usesWords are the methods in a narrow column.
var usesWords = map[survey.Method]string{
	survey.UpAndOver: "u/o", survey.TwoTapes: "tapes", survey.WithGuideLines: "guides",
}

// useOf says on a list by some methods whether the mark is to be placed from it:
// "yes", or the other method in short.
func useOf(m prep.MeasuredMark, here ...survey.Method) string {
	if m.OutOfReach() {
		return "none"
	}
	for _, h := range here {
		if m.Method == h {
			return "yes"
		}
	}
	return usesWords[m.Method]
}

// withinOf is how far a mark comes to lie from its place 95 times in a hundred by a
// method.
func withinOf(p *prep.Production, m prep.MeasuredMark, method survey.Method) string {
	way := m.Way(method)
	if !(way.Ellipse.Major > 0) {
		return "–"
	}
	return p.Fine(way.Ellipse.Major)
}

// errorNotes states the error model behind the columns “within”.
func errorNotes(p *prep.Production, w *prep.FloorWork) []block {
	return []block{heading{"How sure the marks are"}, paragraph{Text: prep.ErrorModelInWords(p, w)}}
}

// usesNote explains the column “use” before the list begins.
const usesNote = "Under “use”: yes, the mark is best placed from this list; u/o by up and over; tapes by two tapes; guides from guide lines; none, nothing reaches it."

// zeroEnds says who holds the zero ends of the tapes.
func zeroEnds(p *prep.Production) string {
	if !p.FewHands() {
		return ""
	}
	n, _ := p.Hands()
	return fmt.Sprintf("Fewer than four people place (%d), so a weighted stand holds the zero end of each tape: set its ring over the point, and look at it again before each row.", n)
}

// guideNotes says how the guide lines and the second baseline are laid; nothing where
// no mark needs them.
func guideNotes(p *prep.Production, w *prep.FloorWork) []block {
	frame, lines := w.GuideLines()
	if len(lines) == 0 {
		return nil
	}
	f := figuresOf(p)
	return []block{heading{"Guide lines and second baseline"}, bullets{Tick: true, Items: []string{
		fmt.Sprintf("On the baseline mark %s to each side of the datum: the feet of the guide lines.", f.length(frame.Half)),
		fmt.Sprintf("From each foot and from the datum measure %s up and mark it; the three are the second baseline, its ends %s apart.", f.length(frame.Up), f.length(2*frame.Half)),
		fmt.Sprintf("Move the second baseline sideways until both diagonals are equal: %s.", f.length(frame.Diagonal())),
		"Snap both guide lines and the second baseline. For a mark with “guides” read up on the centre line and on the guide line of its side, stretch the tape through both, and read over from the centre line.",
	}}}
}
