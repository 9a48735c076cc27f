package length

import (
	"fmt"
	"math"
	"strconv"
)

// TrueScale returns the scale that a plot really has, from one dimension that is
// known on the floor and was measured on the paper, both in metres: a plot that
// was printed to fit is at no scale that it says. Lengths that were scaled off the
// paper at the nominal scale are right once multiplied by factor. ok is false when
// a length or the nominal scale is not above zero, or the result is not Valid.
func TrueScale(nominal Scale, known, measured float64) (actual Scale, factor float64, ok bool) {
	actual = Scale(known / measured)
	if !(known > 0) || !(measured > 0) || !nominal.Valid() || !actual.Valid() {
		return 0, 0, false
	}
	return actual, float64(actual / nominal), true
}

// trueWithin is how far off, as a share, a plot may be and still be called true:
// half a millimetre of reading error on half a metre of paper, and about what
// paper itself gives (common practice, no source).
const trueWithin = 0.001

// OffBy says in words how far a plot of the actual scale is from the nominal one,
// with what that does to a long dimension in the given style.
func (s Scale) OffBy(actual Scale, style Style) string {
	if !s.Valid() || !actual.Valid() {
		return "The scale is not known."
	}
	factor := float64(actual / s)
	if math.Abs(factor-1) <= trueWithin {
		return fmt.Sprintf("The plot is true to %s within 0.1 %%.", s)
	}
	size, wrong := "small", "short"
	if factor < 1 {
		size, wrong = "large", "long"
	}
	span := 9.0
	if !style.Unit.Metric() {
		span = 30 * Foot
	}
	// A paper length that should be span/s came out as span/actual.
	off := span * math.Abs(1/factor-1)
	return fmt.Sprintf("The plot is %s %% too %s: it is %s, not %s. Scaled off the paper, %s would come out %s too %s.",
		percent(math.Abs(1/factor-1)), size, actual.Ratio(), s, style.Format(span), style.Format(off), wrong)
}

// percent writes a share in per cent with two figures that count.
func percent(share float64) string {
	p := share * 100
	places := 0
	if p < 10 {
		places = 1
	}
	if p < 1 {
		places = 2
	}
	return strconv.FormatFloat(p, 'f', places, 64)
}
