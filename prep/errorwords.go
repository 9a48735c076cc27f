package prep

import (
	"fmt"

	"groundrow/tapeout/length"
	"groundrow/tapeout/survey"
)

// ErrorModelInWords states what the likely errors of the marks are computed from.
func ErrorModelInWords(p *Production, w *FloorWork) string {
	e, b := p.Errors(), ErrorBudget(p, w)
	text := fmt.Sprintf("Within: 95 times in 100 the mark lies no farther from its true place. Reckoned from a tape measure of class %s (OIML R 35-1, Directive 2014/32/EU: ±(%s + %s for each metre))",
		b.Tape.Name, millimetres(b.Tape.A), millimetres(b.Tape.B))
	if e.Stretch > 0 {
		text += fmt.Sprintf(", a pull that differs by %s in %s", p.Fine(e.Stretch*p.span()), p.spanWords())
	}
	return text + fmt.Sprintf(", and as one standard deviation each: %s for a reading, %s for putting the tab down, %s for setting a pivot or the datum, a right angle made %s that is good to %s in %s. Figures are rounded to %s.",
		p.Fine(b.Reading), p.Fine(b.Placing), p.Fine(b.Pivot), p.squaringWords(w), p.Fine(b.RightAngle*p.span()), p.spanWords(), p.Fine(b.Rounding))
}

func millimetres(m float64) string { return fmt.Sprintf("%.1f mm", 1000*m) }

// squaringWords says how the right angle is made on a floor.
func (p *Production) squaringWords(w *FloorWork) string {
	e := p.Errors()
	if _, fits := squareOn(p, w.Floor); e.Squaring == survey.By345 && !fits {
		return string(survey.BySquare) + ", since no 3-4-5 fits"
	}
	return string(e.Squaring)
}

// span is the length over which a slope is told: ten metres, or thirty feet.
func (p *Production) span() float64 {
	if p.Unit().Metric() {
		return 10
	}
	return 30 * length.Foot
}

func (p *Production) spanWords() string { return p.Style().Format(p.span()) }
