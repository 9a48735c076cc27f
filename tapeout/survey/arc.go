package survey

import "math"

// Ordinate returns the rise in metres of a circular arc above its chord at x
// metres from the middle of the chord, of the smaller of the two arcs:
// √(R² − x²) − √(R² − (c/2)²), which in the middle is the sagitta or middle
// ordinate (any route-surveying handbook). It is computed from the product of
// sum and difference, which keeps its figures where the arc is flat. ok is false
// when there is no such chord or x is beyond its ends.
func Ordinate(radius, chord, x float64) (rise float64, ok bool) {
	half := chord / 2
	if !(radius > 0 && half >= 0 && half <= radius && math.Abs(x) <= half) || math.IsInf(radius, 0) {
		return 0, false
	}
	root := func(y float64) float64 { return math.Sqrt((radius - y) * (radius + y)) }
	sum := root(x) + root(half)
	if sum == 0 {
		return 0, true
	}
	return (half - x) * (half + x) / sum, true
}
