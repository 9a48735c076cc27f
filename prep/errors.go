package prep

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/survey"
)

// Errors are what makes a mark land beside its true place, beside the error of one
// reading and the rounding of the figures, which are settings of their own. Each is
// one standard deviation.
type Errors struct {
	TapeClass string          // name of one of survey.Classes
	Stretch   float64         // metres for each metre: uneven pull on a cloth tape
	Placing   float64         // metres; putting the tab down
	Pivot     float64         // metres; setting a pivot or the datum
	Squaring  survey.Squaring // how the right angle is made
	ByEye     float64         // radians; a right angle made by eye
	BySquare  float64         // radians; by a framing square
	ByGrid    float64         // radians; by the floor's own grid
	Allowed   float64         // metres; a mark that may lie farther from its place is poor
}

// MarkTolerance is how far a mark may lie from its true place before it is called
// poor, in metres, unless the production says otherwise: an inch, the breadth of a
// usual tape (common practice, no source).
const MarkTolerance = 0.0254

// DefaultErrors are common practice, no source, but for the class of the tape: a
// steel tape that does not stretch, two millimetres each for putting a tab down and
// for setting a pivot, a right angle by the largest 3-4-5 that fits, and an inch
// allowed, the breadth of a usual tape. By eye a right angle is good to about a
// degree, by a framing square to 1/16″ over its longer arm, by the floor's boards
// or tiles to two millimetres in a metre.
var DefaultErrors = Errors{
	TapeClass: survey.ClassII.Name, Placing: 0.002, Pivot: 0.002, Squaring: survey.By345,
	ByEye: 0.02, BySquare: 0.003, ByGrid: 0.002, Allowed: MarkTolerance,
}

// ClothStretch is how far a cloth or fibreglass tape differs with the pull, in
// metres for each metre: common practice, no source.
const ClothStretch = 0.0005

// Errors returns the settings of the errors; the default ones where none are set, as
// in a production that was salvaged from a file older than they are.
func (p *Production) Errors() Errors {
	if p.Settings.Errors == (Errors{}) {
		return DefaultErrors
	}
	return p.Settings.Errors
}

// class returns the tape's class; the usual one where the name is none.
func (e Errors) class() survey.Class {
	i := slices.IndexFunc(survey.Classes, func(c survey.Class) bool { return c.Name == e.TapeClass })
	if i < 0 {
		return survey.ClassII
	}
	return survey.Classes[i]
}

// ErrorBudget is what makes a mark of this floor land beside its true place.
func ErrorBudget(p *Production, w *FloorWork) survey.Budget { return errorBudget(p, w.Floor) }

func errorBudget(p *Production, f *floor.Floor) survey.Budget {
	e := p.Errors()
	b := survey.Budget{
		Tape: e.class(), Stretch: e.Stretch, Reading: p.Settings.TapeSigma,
		Placing: e.Placing, Pivot: e.Pivot, Rounding: p.Style().Grain(),
	}
	b.RightAngle = angleBy(p, f, b)
	return b
}

// angleBy returns the error in radians of the right angle as it is made, with the
// tapes of b; by a framing square where no 3-4-5 fits.
func angleBy(p *Production, f *floor.Floor, b survey.Budget) float64 {
	e := p.Errors()
	switch e.Squaring {
	case survey.ByEye:
		return e.ByEye
	case survey.ByGrid:
		return e.ByGrid
	case survey.By345:
		if a, ok := squareOn(p, f); ok {
			return a.AngleError(b.Measure(a.Slope))
		}
	}
	return e.BySquare
}
