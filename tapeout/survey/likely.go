package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// LeastAngle is the angle between two tapes, thirty degrees, below which (or
// above its supplement) a mark is called weak: common practice, no source.
const LeastAngle = math.Pi / 6

// Weak tells whether tapes that meet at angle (radians, 0 to π) cross too flatly
// to be trusted: below least, or above π − least.
func Weak(angle, least float64) bool { return angle < least || angle > math.Pi-least }

// TwoTapeError returns the position error in metres, σ·√2/sin γ, of a mark where
// the tapes meet at γ = r.Angle and each reads with the error sigma (metres):
// the root of the sum of the variances in two directions at right angles. Any
// surveying text on distance-distance intersection. ok is false on the line of
// the pivots, where nothing holds the mark across it.
func TwoTapeError(r Reading, sigma float64) (position float64, ok bool) {
	s := math.Sin(r.Angle)
	if r.Side == OnLine || !(s > 0) {
		return 0, false
	}
	return sigma * math.Sqrt2 / s, true
}

// Covariance returns the covariance of the mark p when the tapes from A and from
// B read with the independent errors sigmaA and sigmaB (metres). It solves
// a·d = εA, b·d = εB for the displacement d, with a and b the directions of the
// tapes. ok is false where Read fails or the mark is on the line.
func (t TwoTape) Covariance(p plane.Point, sigmaA, sigmaB float64) (c Covariance2, ok bool) {
	r, ok := t.Read(p)
	if !ok || r.Side == OnLine {
		return Covariance2{}, false
	}
	a, b := p.Sub(t.A).Times(1/r.A), p.Sub(t.B).Times(1/r.B)
	det := a.Cross(b)
	if det == 0 {
		return Covariance2{}, false
	}
	byA := b.Left().Times(-sigmaA / det)
	byB := a.Left().Times(sigmaB / det)
	return outer(byA).Plus(outer(byB)), true
}

// UpOverError returns the covariance, over on X and up on Y, of a mark placed by
// measuring up along the centre line and then over (metres) at right angles.
// Both measures have the error sigma (metres); the right angle has the error
// angleSigma (radians), which moves the mark up or down by over·angleSigma. How
// far up the mark is does not matter.
func UpOverError(over, sigma, angleSigma float64) Covariance2 {
	swing := over * angleSigma
	return Covariance2{XX: sigma * sigma, YY: sigma*sigma + swing*swing}
}

// GuideLine returns the over distance in metres beyond which up and over has a
// 95 % ellipse longer than allowed (metres), so that guide lines or two tapes
// are called for. ok is false when even the centre line is beyond it; without
// an error of the angle the distance is infinite.
func GuideLine(sigma, angleSigma, allowed float64) (over float64, ok bool) {
	spare := allowed*allowed/Chi95 - sigma*sigma
	if spare < 0 {
		return 0, false
	}
	if angleSigma == 0 {
		return math.Inf(1), true
	}
	return math.Sqrt(spare) / angleSigma, true
}
