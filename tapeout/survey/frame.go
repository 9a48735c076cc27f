package survey

import "math"

// Frame is a rectangle laid on the floor to keep long over-measurements square:
// the baseline, a second baseline Up metres upstage of it, and two guide lines
// parallel to the centre line, Half metres to either side. It is true when its two
// diagonals are equal.
//
//	  ┌──────── second baseline ────────┐
//	  │                │                │
//	guide line    centre line      guide line      Up
//	  │                │                │
//	  └──────────── baseline ───────────┘
//	       Half                Half
type Frame struct{ Half, Up float64 }

// Diagonal returns the length in metres of both diagonals.
func (f Frame) Diagonal() float64 { return math.Hypot(2*f.Half, f.Up) }

// AngleError returns the error in radians of the angle between baseline and guide
// lines when the sides and the diagonals are laid with the independent errors side
// and diagonal (metres). With the width a and the depth b the diagonals of a frame
// that leans by θ satisfy d₁² − d₂² = 4·a·b·sin θ, to which two sides that differ
// by e add 2·b·e: the law of cosines, differentiated at ninety degrees.
func (f Frame) AngleError(side, diagonal float64) float64 {
	a, b := 2*f.Half, f.Up
	if !(a > 0 && b > 0) {
		return math.Inf(1)
	}
	return rootSum(f.Diagonal()*diagonal*math.Sqrt2/(2*a*b), side*math.Sqrt2/(2*a))
}
