package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// Weak tells whether tapes that meet at angle (radians, 0 to π) cross too flatly
// to be trusted: below least, or above π − least.
func Weak(angle, least float64) bool { return angle < least || angle > math.Pi-least }

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
