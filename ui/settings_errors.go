package ui

import (
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/survey"
)

// leastAllowed is in metres: no tape on a floor is read finer.
const leastAllowed = length.Inch / 16

// errors are what the likely error of every mark is reckoned from.
func (s settingsForm) errors(p *prep.Production) {
	e := p.Errors()
	change := func(set func(*prep.Errors)) func(*prep.Settings) {
		return func(x *prep.Settings) {
			if x.Errors == (prep.Errors{}) {
				x.Errors = prep.DefaultErrors
			}
			set(&x.Errors)
		}
	}
	metres := func(label, column string, value float64, field func(*prep.Errors) *float64) {
		s.length(label, column, value, func(x *prep.Settings, v float64) { change(func(e *prep.Errors) { *field(e) = v })(x) })
	}
	thousandths := func(label string, value float64, field func(*prep.Errors) *float64) {
		s.number(label, "in a thousand", round6(1000*value), func(x *prep.Settings, v float64) { change(func(e *prep.Errors) { *field(e) = v / 1000 })(x) })
	}
	s.form.Section("Likely errors of placing marks, one standard deviation each")
	s.choice("Class of the tape measure", e.TapeClass, classNames(), func(x *prep.Settings, v string) { change(func(e *prep.Errors) { e.TapeClass = v })(x) })
	thousandths("Uneven pull (steel 0, cloth about 0.5)", e.Stretch, func(e *prep.Errors) *float64 { return &e.Stretch })
	s.length("One reading of the tape", "sigma", p.Settings.TapeSigma, func(x *prep.Settings, v float64) { x.TapeSigma = v })
	metres("Putting a tab down", "placing", e.Placing, func(e *prep.Errors) *float64 { return &e.Placing })
	metres("Setting a pivot or the datum", "pivot error", e.Pivot, func(e *prep.Errors) *float64 { return &e.Pivot })
	s.choice("The right angle is made", string(e.Squaring), squarings(), func(x *prep.Settings, v string) {
		change(func(e *prep.Errors) { e.Squaring = survey.Squaring(v) })(x)
	})
	thousandths("A right angle by eye", e.ByEye, func(e *prep.Errors) *float64 { return &e.ByEye })
	thousandths("A right angle by a framing square", e.BySquare, func(e *prep.Errors) *float64 { return &e.BySquare })
	thousandths("A right angle by the floor's grid", e.ByGrid, func(e *prep.Errors) *float64 { return &e.ByGrid })
	s.lengthFrom(leastAllowed, "A mark may be off by", "allowed", e.Allowed, func(x *prep.Settings, v float64) {
		change(func(e *prep.Errors) { e.Allowed = v })(x)
	})
}

// round6 takes away what binary fractions add to a number that is shown.
func round6(v float64) float64 { return float64(int64(v*1e6+0.5)) / 1e6 }

func classNames() []string {
	var out []string
	for _, c := range survey.Classes {
		out = append(out, c.Name)
	}
	return out
}

func squarings() []string {
	var out []string
	for _, q := range survey.Squarings {
		out = append(out, string(q))
	}
	return out
}
