package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// Chi95 is the 95 % quantile of chi-square with two degrees of freedom, exactly
// −2·ln 0.05 = 5.991…: its root scales a standard ellipse to the 95 % ellipse.
var Chi95 = -2 * math.Log(0.05)

// Covariance2 is the covariance of a place on the floor in square metres, in the
// frame of the points it was computed from. The zero value is no error at all;
// covariances of independent causes add.
type Covariance2 struct{ XX, XY, YY float64 }

// Round returns the covariance of an error with the same deviation sigma (metres)
// in every direction.
func Round(sigma float64) Covariance2 { return Covariance2{XX: sigma * sigma, YY: sigma * sigma} }

// outer returns the covariance of an error of one standard deviation along v.
func outer(v plane.Point) Covariance2 { return Covariance2{v.X * v.X, v.X * v.Y, v.Y * v.Y} }

// Plus returns the covariance of both errors together, if they are independent.
func (c Covariance2) Plus(d Covariance2) Covariance2 {
	return Covariance2{c.XX + d.XX, c.XY + d.XY, c.YY + d.YY}
}

// minus returns what cancels c in a sum.
func (c Covariance2) minus() Covariance2 { return Covariance2{-c.XX, -c.XY, -c.YY} }

// Position returns the position error √(XX + YY) in metres.
func (c Covariance2) Position() float64 { return math.Sqrt(c.XX + c.YY) }

// Along returns the standard deviation in the given direction (radians).
func (c Covariance2) Along(direction float64) float64 {
	s, k := math.Sincos(direction)
	return math.Sqrt(math.Max(0, c.XX*k*k+2*c.XY*s*k+c.YY*s*s))
}

// Moved returns the covariance after a motion of the floor: only its turn counts.
func (c Covariance2) Moved(m plane.Motion) Covariance2 {
	s, k := math.Sincos(m.Turn)
	return Covariance2{
		XX: k*k*c.XX - 2*s*k*c.XY + s*s*c.YY,
		XY: s*k*(c.XX-c.YY) + (k*k-s*s)*c.XY,
		YY: s*s*c.XX + 2*s*k*c.XY + k*k*c.YY,
	}
}

// Ellipse is an error ellipse about a place: semi-axes in metres, and the
// direction of the longer one in radians from the X axis, in (−π/2, π/2].
type Ellipse struct {
	Major, Minor float64
	Direction    float64
}

// Standard returns the ellipse of one standard deviation. A round error has the
// direction zero.
func (c Covariance2) Standard() Ellipse {
	mean, half := (c.XX+c.YY)/2, math.Hypot((c.XX-c.YY)/2, c.XY)
	major := mean + half
	if major <= 0 {
		return Ellipse{}
	}
	// The product of the eigenvalues is the determinant: no cancellation.
	minor := (c.XX*c.YY - c.XY*c.XY) / major
	e := Ellipse{Major: math.Sqrt(major), Minor: math.Sqrt(math.Max(0, minor))}
	if half > 1e-12*mean {
		e.Direction = math.Atan2(2*c.XY, c.XX-c.YY) / 2
	}
	return e
}

// Ellipse95 returns the ellipse that holds the place with 95 % probability if
// the errors are normal: the standard ellipse times √5.991.
func (c Covariance2) Ellipse95() Ellipse {
	e, k := c.Standard(), math.Sqrt(Chi95)
	return Ellipse{e.Major * k, e.Minor * k, e.Direction}
}
