package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// Budget is what makes a mark land beside its true place: each cause a standard
// deviation and a setting. The causes are taken to be independent, so that their
// variances add.
type Budget struct {
	Tape       Class
	Stretch    float64 // metres for each metre: uneven pull on a cloth tape, sag, a curved lie
	Reading    float64 // metres; reading one tape
	Placing    float64 // metres in each direction; putting the tab down
	Pivot      float64 // metres in each direction; setting a pivot or the datum
	RightAngle float64 // radians; the right angle of up and over
	Rounding   float64 // metres; the step to which printed measures are rounded
}

// DefaultBudget is common practice, no source, but for the tape's class: a steel
// tape, two millimetres for reading, placing and pivot each, a right angle good to
// two millimetres a metre, and measures rounded to five millimetres.
var DefaultBudget = Budget{
	Tape: ClassII, Reading: 0.002, Placing: 0.002, Pivot: 0.002, RightAngle: 0.002, Rounding: 0.005,
}

// Measure returns the standard deviation in metres of one distance of l metres
// laid off with the tape: its class, stretch, reading, and rounding, whose errors
// spread evenly over the step and so have the deviation step/√12.
func (b Budget) Measure(l float64) float64 {
	return rootSum(b.Tape.Sigma(l), b.Stretch*l, b.Reading, b.Rounding/math.Sqrt(12))
}

// TwoTape returns the covariance of the mark p placed from two pivots. Of the
// error of a pivot only what lies along its tape counts. ok is false where
// TwoTape.Covariance is.
func (b Budget) TwoTape(t TwoTape, p plane.Point) (Covariance2, bool) {
	c, ok := t.Covariance(p,
		rootSum(b.Measure(t.A.To(p)), b.Pivot),
		rootSum(b.Measure(t.B.To(p)), b.Pivot))
	if !ok {
		return Covariance2{}, false
	}
	return c.Plus(Round(b.Placing)), true
}

// UpOver returns the covariance of the mark p, in datum axes, placed by up and
// over.
func (b Budget) UpOver(p plane.Point) Covariance2 {
	up, over := b.Measure(p.Y), b.Measure(p.X)
	swing := p.X * b.RightAngle
	return Covariance2{XX: over * over, YY: up*up + swing*swing}.
		Plus(Round(b.Pivot)).Plus(Round(b.Placing))
}

// Method is a way to place a mark.
type Method string

// Methods of placing.
const (
	UpAndOver      Method = "up and over"
	TwoTapes       Method = "two tapes"
	WithGuideLines Method = "up and over from a guide line"
)

// Advice is how well each method places a mark, and which to use.
type Advice struct {
	Method   Method
	UpOver   Ellipse // 95 %
	TwoTape  Ellipse // 95 %; zero when Crossing is false
	Crossing bool    // the two tapes give the mark at all
	Good     bool    // the method stays within what is allowed
}

// Advise compares the two methods for the mark p (datum axes, pivots too) and
// recommends up and over while the longer half-axis of its 95 % ellipse is within
// allowed metres; else two tapes if that is within it; else guide lines, parallel
// to the centre line and true to it, which take the right angle's error away. Good
// tells whether even that is within what is allowed.
func (b Budget) Advise(t TwoTape, p plane.Point, allowed float64) Advice {
	a := Advice{Method: UpAndOver, UpOver: b.UpOver(p).Ellipse95()}
	if c, ok := b.TwoTape(t, p); ok {
		a.TwoTape, a.Crossing = c.Ellipse95(), true
	}
	switch {
	case a.UpOver.Major <= allowed:
		a.Good = true
	case a.Crossing && a.TwoTape.Major <= allowed:
		a.Method, a.Good = TwoTapes, true
	default:
		a.Method = WithGuideLines
		b.RightAngle = 0
		a.Good = b.UpOver(p).Ellipse95().Major <= allowed
	}
	return a
}

// rootSum returns the deviation of the sum of independent errors.
func rootSum(deviations ...float64) float64 {
	sum := 0.0
	for _, d := range deviations {
		sum += d * d
	}
	return math.Sqrt(sum)
}
