package length

import (
	"math"
	"strconv"
	"strings"
)

// Style is how lengths are shown: in which unit, and rounded to which step.
type Style struct {
	Unit Unit
	Step float64 // metres; see Grain for what counts
}

// Unreadable is shown in place of a length that is no number or beyond Limit.
const Unreadable = "?"

// The finest that is shown: 1/16" on a tape in inches, a millimetre on any other.
const (
	finestInch = Inch / 16
	finest     = 0.001
)

// Grain returns the rounding step in metres that is in force: Step as a whole
// number of sixteenths of an inch or of millimetres, at least one. So a step left
// over from another unit still gives lengths that the tape has lines for.
func (s Style) Grain() float64 { return s.fine(s.grain()) }

// grain is Grain as a count of the finest division.
func (s Style) grain() int64 {
	fine := finest
	if !s.Unit.Metric() {
		fine = finestInch
	}
	n := s.Step / fine
	if !(n > 1) || n > 1e6 {
		return 1
	}
	return int64(math.Round(n))
}

// fine returns n of the finest division in metres, as Parse would.
func (s Style) fine(n int64) float64 {
	if s.Unit.Metric() {
		return float64(n) / 1000
	}
	return fromInches(float64(n) / 16)
}

// tie is how far below half a step, in steps, still counts as half: it takes up
// the binary error of lengths that were typed in decimals.
const tie = 1e-7

// count returns m rounded to the grain, half away from zero, as a count of the
// finest division; ok is false for what cannot be shown.
func (s Style) count(m float64) (n int64, ok bool) {
	if !(math.Abs(m) <= Limit) {
		return 0, false
	}
	grain := s.grain()
	steps := m / s.fine(grain)
	return grain * int64(math.Round(steps+math.Copysign(tie, steps))), true
}

// Round returns m, in metres, rounded to the grain, half away from zero. What is
// shown is always this value; a length beyond Limit comes back as it is.
func (s Style) Round(m float64) float64 {
	n, ok := s.count(m)
	if !ok {
		return m
	}
	return s.fine(n)
}

// Format returns the length as it is read off a tape: 12' 6 1/2", 0' 6", 3.810 m,
// 381.0 cm, 3810 mm. Metric figures have the decimals of the step. There is no
// negative zero.
func (s Style) Format(m float64) string {
	n, ok := s.count(m)
	if !ok {
		return Unreadable
	}
	return s.text(n)
}

// FormatSmall is Format for tolerances and the like: no feet where there are none,
// and no inches beside a bare fraction: 1/2", 2 1/4", 5 mm.
func (s Style) FormatSmall(m float64) string {
	text, feetless := strings.CutPrefix(s.Format(m), "0' ")
	if feetless {
		text = strings.TrimPrefix(text, "0 ")
	}
	return text
}

// FormatOver returns a distance from the centre line with its side, SL for
// positive; "on centre" when it rounds to zero.
func (s Style) FormatOver(m float64) string {
	n, ok := s.count(m)
	switch {
	case !ok:
		return Unreadable
	case n == 0:
		return "on centre"
	case n < 0:
		return s.text(-n) + " SR"
	}
	return s.text(n) + " SL"
}

// FormatUp returns a distance up from the baseline; one that lies downstage is
// positive with DS after it.
func (s Style) FormatUp(m float64) string {
	n, ok := s.count(m)
	switch {
	case !ok:
		return Unreadable
	case n < 0:
		return s.text(-n) + " DS"
	}
	return s.text(n)
}

// text writes a count of the finest division.
func (s Style) text(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	if !s.Unit.Metric() {
		return sign + feetInches(n)
	}
	return sign + s.metric(n) + " " + s.symbol()
}

// symbol is the unit as written after a number.
func (s Style) symbol() string {
	switch s.Unit {
	case Centimetres, Millimetres:
		return string(s.Unit)
	default:
		return string(Metres)
	}
}

// metric writes n millimetres in the style's unit, with the decimals of its step.
func (s Style) metric(n int64) string {
	places := map[string]int{"m": 3, "cm": 1, "mm": 0}[s.symbol()]
	digits := strconv.FormatInt(n, 10)
	if pad := places + 1 - len(digits); pad > 0 {
		digits = strings.Repeat("0", pad) + digits
	}
	whole, part := digits[:len(digits)-places], digits[len(digits)-places:]
	for step := s.grain(); part != "" && step%10 == 0; step /= 10 {
		part = part[:len(part)-1]
	}
	if part == "" {
		return whole
	}
	return whole + "." + part
}

// feetInches writes n sixteenths of an inch.
func feetInches(n int64) string {
	feet, rest := n/(12*16), n%(12*16)
	return strconv.FormatInt(feet, 10) + "' " + inchText(rest)
}

// inchText writes n sixteenths of an inch as inches and a fraction in its lowest
// terms: 6 1/2".
func inchText(n int64) string {
	whole, part := n/16, n%16
	text := strconv.FormatInt(whole, 10)
	if part != 0 {
		text += " " + fractionText(part)
	}
	return text + `"`
}

// fractionText writes n sixteenths, 0 < n < 16, in its lowest terms.
func fractionText(n int64) string {
	d := int64(16)
	for n%2 == 0 {
		n, d = n/2, d/2
	}
	return strconv.FormatInt(n, 10) + "/" + strconv.FormatInt(d, 10)
}
