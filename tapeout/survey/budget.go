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
	RightAngle float64 // radians; between the centre line and what over is measured along
	Rounding   float64 // metres; the step to which printed measures are rounded
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

// Guided returns the covariance of the mark p, in datum axes, placed by up and over
// from guide lines: up is read on the centre line and on the guide line of p's
// side, and over from centre along the tape stretched through both. Between the
// two the errors of up are shared out, beyond the guide line they grow; the angle
// is the frame's.
func (b Budget) Guided(f Frame, p plane.Point) Covariance2 {
	up, over := b.Measure(p.Y), b.Measure(p.X)
	far := math.Abs(p.X) / f.Half
	swing := p.X * f.AngleError(rootSum(b.Measure(f.Up), b.Pivot), rootSum(b.Measure(f.Diagonal()), b.Pivot))
	return Covariance2{XX: over * over, YY: (far*far+(1-far)*(1-far))*up*up + swing*swing}.
		Plus(Round(b.Pivot)).Plus(Round(b.Placing))
}

// rootSum returns the deviation of the sum of independent errors.
func rootSum(deviations ...float64) float64 {
	sum := 0.0
	for _, d := range deviations {
		sum += d * d
	}
	return math.Sqrt(sum)
}
