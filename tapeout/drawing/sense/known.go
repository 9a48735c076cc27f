package sense

import (
	"fmt"
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// Verdict is what one known dimension says about the scale of a drawing.
type Verdict struct {
	Usable   bool    // false: the dimension cannot tell anything; Sentence says why
	Agrees   bool    // the scale is right as far as the dimension can tell
	Measured float64 // metres between the two points at the scale that was assumed; 0: none was
	Factor   float64 // by which the assumed scale must be multiplied; 0: none was assumed
	PerUnit  float64 // metres in one drawing unit that make the dimension right
	Cause    string  // a clause on the likely cause; empty: none is known, or the scale agrees
	Sentence string  // for a person
}

// trueWithin is how far off, as a share, a scale may be and still be called right,
// and pointing what two clicked points may miss, in metres (common practice, no
// source).
const (
	trueWithin = 0.001
	pointing   = 0.002
)

// shortest is the least known length that says anything, in metres: on a shorter
// one the thickness of a line is per cents.
const shortest = 0.3

// cause is a mistake that makes a drawing this many times too small.
type cause struct {
	factor float64
	why    string
}

// causes in the order in which they are believed; the first that fits is named.
var causes = []cause{
	{12, "inches were taken where feet are meant, or 1 inch to the foot for full size"},
	{1.0 / 12, "feet were taken where inches are meant"},
	{25.4, "millimetres were taken where inches are meant"},
	{1 / 25.4, "inches were taken where millimetres are meant"},
	{304.8, "millimetres were taken where feet are meant"},
	{1 / 304.8, "feet were taken where millimetres are meant"},
	{2.54, "centimetres were taken where inches are meant"},
	{1 / 2.54, "inches were taken where centimetres are meant"},
	{30.48, "centimetres were taken where feet are meant"},
	{1 / 30.48, "feet were taken where centimetres are meant"},
	{1 / 0.3048, "feet were taken where metres are meant"},
	{0.3048, "metres were taken where feet are meant"},
	{1 / 0.0254, "inches were taken where metres are meant"},
	{0.0254, "metres were taken where inches are meant"},
	{1000, "millimetres were taken where metres are meant"},
	{0.001, "metres were taken where millimetres are meant"},
	{100, "centimetres were taken where metres are meant"},
	{0.01, "metres were taken where centimetres are meant"},
	{10, "millimetres were taken where centimetres are meant"},
	{0.1, "centimetres were taken where millimetres are meant"},
	{2, "it was printed at half size, or is at half the scale that was taken"},
	{0.5, "it was printed at double size, or is at twice the scale that was taken"},
	{math.Sqrt2, "it was printed one sheet size smaller"},
	{1 / math.Sqrt2, "it was printed one sheet size larger"},
	{4, "it was printed at quarter size, or is at a quarter of the scale that was taken"},
	{0.25, "it was printed at four times its size, or is at four times the scale that was taken"},
}

// CheckKnown compares a known length, in metres, with the distance of the points
// a and b at perUnit metres in a drawing unit. Where perUnit is not above zero, no
// scale was assumed, and the verdict is the scale that follows.
func CheckKnown(perUnit float64, a, b plane.Point, known float64, style length.Style) Verdict {
	units := a.To(b)
	if why := unusable(perUnit, units, known, style); why != "" {
		return Verdict{Sentence: why}
	}
	v := Verdict{Usable: true, PerUnit: known / units}
	if !(perUnit > 0) {
		v.Sentence = fmt.Sprintf("With %s between these points one unit of the drawing is %.6g m.", style.Format(known), v.PerUnit)
		return v
	}
	v.Measured, v.Factor = perUnit*units, known/(perUnit*units)
	off := v.Measured - known
	if math.Abs(off) <= max(trueWithin*known, pointing) {
		v.Agrees = true
		v.Sentence = fmt.Sprintf("The scale is right: %s was measured where %s is known.", style.Format(v.Measured), style.Format(known))
		return v
	}
	v.Cause = likelyCause(v.Factor, known)
	v.Sentence = fmt.Sprintf("The drawing measures %s where %s is known: %s.", style.Format(v.Measured), style.Format(known), v.byHowMuch())
	if v.Cause != "" {
		v.Sentence += " Likely " + v.Cause + "."
	}
	return v
}

// unusable says why the dimension cannot tell anything; empty when it can.
func unusable(perUnit, units, known float64, style length.Style) string {
	switch {
	case math.IsNaN(units) || math.IsInf(units, 0) || math.IsInf(perUnit, 0) || math.IsNaN(perUnit):
		return "One of the points is no place on the drawing; click both ends again."
	case !(known > 0) || math.IsInf(known, 0):
		return "The known length must be more than nothing; type what a tape reads there."
	case !(units > 0):
		return "Both points are the same place; click the two ends of the known length."
	case known < shortest:
		return fmt.Sprintf("%s is too short to tell a scale; choose a length of a few feet or metres, the longer the better.", style.Format(known))
	case known > length.Limit:
		return "The known length is longer than any stage; check its unit."
	case !(known/units < math.MaxFloat64/2):
		return "The points are too near to each other to tell a scale; click the two ends of the known length."
	}
	return ""
}

// likelyCause returns the first cause that explains the factor within what the
// points may miss and half a per cent.
func likelyCause(factor, known float64) string {
	slack := 0.005 + pointing/known
	for _, c := range causes {
		if math.Abs(factor/c.factor-1) <= slack {
			return c.why
		}
	}
	if factor > 0.8 && factor < 1.25 {
		return "it was printed to fit the paper, or the paper has stretched"
	}
	return ""
}

func (v *Verdict) byHowMuch() string {
	switch {
	case v.Factor >= 1.5:
		return fmt.Sprintf("it is %.4g times too small", v.Factor)
	case v.Factor > 1:
		return fmt.Sprintf("it is %.2g %% too small", (1-1/v.Factor)*100)
	case v.Factor > 1/1.5:
		return fmt.Sprintf("it is %.2g %% too large", (1/v.Factor-1)*100)
	}
	return fmt.Sprintf("it is %.4g times too large", 1/v.Factor)
}
