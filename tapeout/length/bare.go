package length

import (
	"math"
	"strconv"
	"strings"
)

// The text of an entry field departs from its length by no more than this many
// metres: a hundredth of a millimetre, and half a thousandth of an inch.
const (
	bareMetric = 0.00001
	bareInches = Inch / 1000
)

// Bare returns the text that stands for a length in an entry field: a number
// without its unit, or feet and inches. Parse with the style's unit reads it
// back. It is not rounded to the step, so that a field that is opened and left
// changes nothing: a length between two lines of the tape shows up to 0.01 mm or
// 0.001". Empty for a length that cannot be shown.
func (s Style) Bare(m float64) string {
	if !(math.Abs(m) <= Limit) {
		return ""
	}
	sign := ""
	text := s.bare(math.Abs(m))
	if m < 0 && strings.ContainsAny(text, "123456789") {
		sign = "-"
	}
	return sign + text
}

// bare writes a length that is not negative.
func (s Style) bare(m float64) string {
	if !s.Unit.Metric() {
		return bareFeet(m)
	}
	unit := s.Unit.InMetres()
	places := int(math.Round(math.Log10(unit / bareMetric)))
	return trimZeros(strconv.FormatFloat(m/unit, 'f', places, 64))
}

// bareFeet writes a length in sixteenths where it is one, and otherwise in feet
// and decimal inches.
func bareFeet(m float64) string {
	sixteenths := math.Round(m / finestInch)
	if math.Abs(m-sixteenths*finestInch) < bareInches/100 {
		return feetInches(int64(sixteenths))
	}
	thousandths := int64(math.Round(m / bareInches))
	feet, rest := thousandths/12_000, thousandths%12_000
	inch := strconv.FormatFloat(float64(rest)/1000, 'f', 3, 64)
	return strconv.FormatInt(feet, 10) + "' " + trimZeros(inch) + `"`
}

// trimZeros takes the zeros off the end of a number's decimals.
func trimZeros(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// StepText returns a rounding step as a choice is named: 1/8", 5 mm.
func StepText(u Unit, step float64) string {
	s := Style{Unit: u, Step: step}
	if u.Metric() {
		return strconv.FormatInt(s.grain(), 10) + " mm"
	}
	return strings.TrimPrefix(inchText(s.grain()), "0 ")
}
