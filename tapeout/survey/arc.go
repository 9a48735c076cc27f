package survey

import "math"

// Sagitta returns the rise in metres of a circular arc above the middle of its
// chord, R − √(R² − (c/2)²), of the smaller of the two arcs: any route-surveying
// handbook. It is computed as (c/2)²/(R + √…), which keeps its figures where the
// arc is flat. ok is false when no circle of that radius has such a chord.
func Sagitta(radius, chord float64) (rise float64, ok bool) {
	return Ordinate(radius, chord, 0)
}

// Ordinate returns the rise in metres of a circular arc above its chord at x
// metres from the middle of the chord: √(R² − x²) − (R − s) with the sagitta s.
// ok is false when there is no such chord or x is beyond its ends.
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
