package picture

import (
	"errors"
	"fmt"
	"math"

	"groundrow/tapeout/plane"
)

// Homography is a perspective transform from pixels to metres: the matrix, row by
// row, that takes (x, y, 1) to (u·w, v·w, w). It is scaled so that w is above zero
// in front of the camera. The zero value takes nothing anywhere.
type Homography [9]float64

// ErrFourPoints is the reason for which four points give no transform.
var ErrFourPoints = errors.New("these four points cannot straighten the picture")

// Limits of four points, as parts of how far they are apart. Nearer to degenerate,
// an error of one pixel in a point is many pixels elsewhere.
const (
	samePlace = 1e-3
	inALine   = 5e-3
)

// FourPoints returns the perspective transform that takes each pixel to its real
// point. It refuses, with an error that wraps ErrFourPoints and says which points
// are meant, points that coincide, three that lie in a line, and points in an order
// in which the picture would be mirrored or folded.
//
// Each set of points is first moved and scaled to about one, which keeps the figures
// sound (Hartley, In Defense of the Eight-Point Algorithm, 1997). The transform is
// then the one from the projective basis of one set to that of the other.
func FourPoints(pixels, real [4]plane.Point) (Homography, error) {
	if err := sound(pixels, "on the picture"); err != nil {
		return Homography{}, err
	}
	if err := sound(real, "on the floor"); err != nil {
		return Homography{}, err
	}
	if err := sameOrder(pixels, real); err != nil {
		return Homography{}, err
	}
	from, to := normaliser(pixels), normaliser(real)
	h := basis(real, to).times(basis(pixels, from).adjugate())
	h = to.inverse().times(h).times(from)
	return h.facing(pixels[0]), nil
}

// Apply returns where the pixel lies, in metres. ok is false for what lies on or
// beyond the horizon of a photograph: no point of the floor is seen there.
func (h Homography) Apply(pixel plane.Point) (real plane.Point, ok bool) {
	w := h[6]*pixel.X + h[7]*pixel.Y + h[8]
	real = plane.Point{
		X: (h[0]*pixel.X + h[1]*pixel.Y + h[2]) / w,
		Y: (h[3]*pixel.X + h[4]*pixel.Y + h[5]) / w,
	}
	return real, w > 0 && real.Finite()
}

// Inverse returns the transform from metres to pixels; ok is false when there is
// none, as of the zero value.
func (h Homography) Inverse() (inverse Homography, ok bool) {
	inverse = h.inverse()
	for _, v := range inverse {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return Homography{}, false
		}
	}
	return inverse, true
}

// facing returns the transform scaled so that w is one at the pixel.
func (h Homography) facing(pixel plane.Point) Homography {
	w := h[6]*pixel.X + h[7]*pixel.Y + h[8]
	return h.scaled(1 / w)
}

func (h Homography) scaled(k float64) Homography {
	for i := range h {
		h[i] *= k
	}
	return h
}

// times returns the matrix product h·g: g first, then h.
func (h Homography) times(g Homography) (out Homography) {
	for i := range 3 {
		for j := range 3 {
			out[3*i+j] = h[3*i]*g[j] + h[3*i+1]*g[3+j] + h[3*i+2]*g[6+j]
		}
	}
	return out
}

// adjugate returns the inverse times the determinant.
func (h Homography) adjugate() Homography {
	return Homography{
		h[4]*h[8] - h[5]*h[7], h[2]*h[7] - h[1]*h[8], h[1]*h[5] - h[2]*h[4],
		h[5]*h[6] - h[3]*h[8], h[0]*h[8] - h[2]*h[6], h[2]*h[3] - h[0]*h[5],
		h[3]*h[7] - h[4]*h[6], h[1]*h[6] - h[0]*h[7], h[0]*h[4] - h[1]*h[3],
	}
}

func (h Homography) inverse() Homography {
	a := h.adjugate()
	return a.scaled(1 / (h[0]*a[0] + h[1]*a[3] + h[2]*a[6]))
}

// normaliser returns the shift and scale that takes the points to a mean of zero
// and a mean distance from it of √2.
func normaliser(ps [4]plane.Point) Homography {
	var mean plane.Point
	for _, p := range ps {
		mean = mean.Add(p.Times(1.0 / 4))
	}
	far := 0.0
	for _, p := range ps {
		far += p.To(mean) / 4
	}
	k := math.Sqrt2 / far
	return Homography{k, 0, -k * mean.X, 0, k, -k * mean.Y, 0, 0, 1}
}

// basis returns the matrix that takes the three unit vectors and their sum to the
// four points after the normaliser.
func basis(ps [4]plane.Point, norm Homography) Homography {
	for i := range ps {
		ps[i], _ = norm.Apply(ps[i])
	}
	a := turned(ps[1], ps[2], ps[3])
	b := turned(ps[2], ps[0], ps[3])
	c := turned(ps[0], ps[1], ps[3])
	return Homography{
		a * ps[0].X, b * ps[1].X, c * ps[2].X,
		a * ps[0].Y, b * ps[1].Y, c * ps[2].Y,
		a, b, c,
	}
}

// turned returns twice the area of the triangle, positive counter-clockwise.
func turned(a, b, c plane.Point) float64 { return b.Sub(a).Cross(c.Sub(a)) }

// triples are the threes of four points.
var triples = [4][3]int{{0, 1, 2}, {0, 1, 3}, {0, 2, 3}, {1, 2, 3}}

// sound refuses points of which two coincide or three lie in a line.
func sound(ps [4]plane.Point, where string) error {
	apart := 0.0
	for i, p := range ps {
		if !p.Finite() {
			return fmt.Errorf("%w: point %d has no position %s", ErrFourPoints, i+1, where)
		}
		for _, q := range ps[:i] {
			apart = max(apart, p.To(q))
		}
	}
	for i, p := range ps {
		for j, q := range ps[:i] {
			if p.To(q) <= samePlace*apart {
				return fmt.Errorf("%w: points %d and %d are the same place %s", ErrFourPoints, j+1, i+1, where)
			}
		}
	}
	for _, t := range triples {
		a, b, c := ps[t[0]], ps[t[1]], ps[t[2]]
		if math.Abs(turned(a, b, c)) <= inALine*apart*max(a.To(b), b.To(c), c.To(a)) {
			return fmt.Errorf("%w: points %d, %d and %d lie in a line %s; choose four of which no three do, such as the corners of a rectangle",
				ErrFourPoints, t[0]+1, t[1]+1, t[2]+1, where)
		}
	}
	return nil
}

// sameOrder refuses points that run the other way round on the picture than on the
// floor. What is seen by a camera turns every three points alike.
func sameOrder(pixels, real [4]plane.Point) error {
	other := 0
	for _, t := range triples {
		onPicture := turned(seen(pixels[t[0]]), seen(pixels[t[1]]), seen(pixels[t[2]]))
		if onPicture*turned(real[t[0]], real[t[1]], real[t[2]]) < 0 {
			other++
		}
	}
	switch other {
	case 0:
		return nil
	case len(triples):
		return fmt.Errorf("%w: they run the other way round on the picture than on the floor, so that the plan would be mirrored; check left and right", ErrFourPoints)
	}
	return fmt.Errorf("%w: their order on the picture is not that on the floor; set them in the same order, corner by corner", ErrFourPoints)
}
