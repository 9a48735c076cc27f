package survey

import "math"

// Triangle is a right angle to be laid with a tape: one leg along the centre
// line, one along the baseline, and the slope that closes them. All in metres.
type Triangle struct {
	Up, Over, Slope float64
	Multiple        int // how many times 3-4-5
}

// Square345 returns the largest whole multiple of the 3-4-5 triangle, in steps of
// unit metres (a foot, half a metre), whose legs fit into maxUp along the centre
// line and maxOver along the baseline, either way round; of two equal ones the
// one with its longer leg upstage. ok is false when not even 3-4-5 units fit.
//
// That 3² + 4² = 5² is arithmetic; that crews square with it is common practice.
func Square345(maxUp, maxOver, unit float64) (t Triangle, ok bool) {
	long := multiple(maxUp/4, maxOver/3, unit)
	flat := multiple(maxUp/3, maxOver/4, unit)
	k := max(long, flat)
	if k < 1 {
		return Triangle{}, false
	}
	step := float64(k) * unit
	t = Triangle{Up: 4 * step, Over: 3 * step, Slope: 5 * step, Multiple: k}
	if flat > long {
		t.Up, t.Over = t.Over, t.Up
	}
	return t, true
}

// multiple returns how often unit fits into both lengths, to a nanometre.
func multiple(a, b, unit float64) int {
	n := math.Floor((math.Min(a, b) + 1e-9) / unit)
	if !(unit > 0 && n >= 1 && n <= 1e6) {
		return 0
	}
	return int(n)
}

// AngleError returns the error in radians of the right angle when each of the
// three sides is laid with the independent error sigma (metres). It is the law of
// cosines differentiated at ninety degrees: c·dc = a·da + b·db + a·b·dθ.
func (t Triangle) AngleError(sigma float64) float64 {
	if t.Up*t.Over == 0 {
		return math.Inf(1)
	}
	return sigma * math.Sqrt(t.Up*t.Up+t.Over*t.Over+t.Slope*t.Slope) / (t.Up * t.Over)
}

// Squaring is how the right angle of up and over is made.
type Squaring string

// Ways to make the right angle.
const (
	ByEye    Squaring = "by eye"
	BySquare Squaring = "by a framing square"
	By345    Squaring = "by 3-4-5"
	ByGrid   Squaring = "by the floor's own grid"
)

// Squarings in the order offered.
var Squarings = []Squaring{By345, ByGrid, BySquare, ByEye}

// Across is how the baseline is laid square to the centre line at the datum, to
// both sides. From the datum measure Up along the centre line and mark it. To each
// side, the place at Over from the datum and at Slope from that mark is on the
// baseline. The two places must then be Between apart, in one line with the
// datum: the check that was not used to lay them.
type Across struct {
	Triangle
	Between float64 // metres from the place on one side to that on the other
}

// SquareAcross returns the recipe of the largest triangle that fits up from the
// datum and to both sides of it: up, left and right are the free metres there, and
// unit the step as in Square345. ok is false when none fits.
func SquareAcross(up, left, right, unit float64) (a Across, ok bool) {
	t, ok := Square345(up, math.Min(left, right), unit)
	return Across{Triangle: t, Between: 2 * t.Over}, ok
}

// AngleError returns the error in radians of the baseline drawn straight through
// both places, when every length is laid with the independent error sigma
// (metres). The mark on the centre line serves both sides, so that its error tilts
// the two legs alike and the line through their ends not at all; the rest is the
// mean of two triangles: σ·√((b² + c²)/2)/(a·b).
func (a Across) AngleError(sigma float64) float64 {
	if a.Up*a.Over == 0 {
		return math.Inf(1)
	}
	return sigma * math.Sqrt((a.Over*a.Over+a.Slope*a.Slope)/2) / (a.Up * a.Over)
}
