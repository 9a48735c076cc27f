// Package length reads, rounds and writes lengths and scales as people in a
// theatre spell them. A length is a float64 in metres everywhere.
package length

// Foot and Inch in metres, exactly: the international foot of NIST SP 811,
// appendix B. The US survey foot is nowhere used.
const (
	Foot = 0.3048
	Inch = 0.0254
)

// fromInches returns inches in metres. For sixteenths the product is exact, so
// that the quotient is the float64 nearest to the true length.
func fromInches(v float64) float64 { return v * 254 / 10_000 }

// Limit is the longest length that is read or written, in metres: far beyond any
// floor, so that what exceeds it is a slip of the keyboard.
const Limit = 10_000

// Unit is how a production writes its lengths, and what a bare number counts as.
// An unknown unit, the empty one included, counts as metres.
type Unit string

// The units.
const (
	FeetInches  Unit = "ft"
	Metres      Unit = "m"
	Centimetres Unit = "cm"
	Millimetres Unit = "mm"
)

// Inches are for what is measured on paper with a ruler. They are not offered as
// a production's unit, and are shown as feet and inches are.
const Inches Unit = "in"

// Units in the order offered to a production.
var Units = []Unit{FeetInches, Metres, Centimetres, Millimetres}

// Name returns what a person calls the unit.
func (u Unit) Name() string {
	switch u {
	case FeetInches:
		return "feet and inches"
	case Inches:
		return "inches"
	case Centimetres:
		return "centimetres"
	case Millimetres:
		return "millimetres"
	default:
		return "metres"
	}
}

// Metric tells whether the unit is a decimal part of the metre.
func (u Unit) Metric() bool { return u != FeetInches && u != Inches }

// InMetres returns what one of the unit is in metres; a foot for feet and inches.
func (u Unit) InMetres() float64 {
	switch u {
	case FeetInches:
		return Foot
	case Inches:
		return Inch
	case Centimetres:
		return 0.01
	case Millimetres:
		return 0.001
	default:
		return 1
	}
}

// Steps returns the rounding steps offered for the unit, finest first, in metres.
func Steps(u Unit) []float64 {
	if u.Metric() {
		return []float64{0.001, 0.005, 0.010}
	}
	return []float64{Inch / 16, Inch / 8, Inch / 4, Inch / 2}
}

// DefaultStep returns the step to start with: 1/8" or 5 mm, in metres (common
// practice, no source).
func DefaultStep(u Unit) float64 {
	if u.Metric() {
		return 0.005
	}
	return Inch / 8
}
