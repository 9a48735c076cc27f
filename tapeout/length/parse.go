package length

import (
	"math"
	"unicode/utf8"
)

// Parse reads a length in any of the usual spellings and returns metres:
//
//	12' 6 1/2"   12'6½″   12' 6.5   12-6 1/2   12'-6 1/2"   12ft 6in   6 1/2"
//	3.81m   3,81 m   381 cm   3810 mm   3 m 81 cm
//
// A number without a unit counts in bare: feet, when that is feet and inches, so
// that 6 1/2 is six and a half feet and not inches. Feet and a dash before a
// number mean inches in every unit. A comma is a decimal sign where it cannot be
// mistaken for one that groups thousands. A minus sign, hyphen or typographic,
// in front makes the whole length negative.
//
// The error is a *ParseError. The result is finite and within Limit of zero.
func Parse(text string, bare Unit) (float64, error) {
	r, why := read(text, bare)
	if why != "" {
		return 0, &ParseError{Text: text, What: "length", Why: why, Accepts: accepts(bare)}
	}
	return r.metres, nil
}

// maxText bounds what is looked at as a length, in bytes.
const maxText = 200

// reading is a length with what its spelling tells.
type reading struct {
	metres float64
	unit   unitMark // of its first number
	signed bool     // written with a plus or a minus
}

// read is Parse with the reason in words instead of an error.
func read(text string, bare Unit) (r reading, why string) {
	if len(text) > maxText || !utf8.ValidString(text) {
		return r, "it is too long or not text"
	}
	ts, why := tokens(plain(text))
	if why != "" {
		return r, why
	}
	if len(ts) == 0 {
		return r, "there is no number in it"
	}
	negative := ts[0].kind == dash
	if negative {
		ts = ts[1:]
	}
	first, second, why := readParts(ts)
	if why != "" {
		return r, why
	}
	r.unit, r.signed = first.unit, negative
	if second == nil {
		r.metres, why = first.alone(bare)
	} else {
		r.metres, why = together(first, *second)
	}
	if why == "" && !(r.metres <= Limit) {
		why = "it is longer than the 10 km that any length here can have"
	}
	if negative && r.metres != 0 {
		r.metres = -r.metres
	}
	return r, why
}

// part is a number and its unit, and whether a dash came before it.
type part struct {
	quantity
	unit   unitMark
	dashed bool
}

// readParts reads one part, or two with or without a dash or comma between them.
func readParts(ts []token) (first part, second *part, why string) {
	first, ts, why = readPart(ts)
	if why != "" || len(ts) == 0 {
		return first, nil, why
	}
	dashed := ts[0].kind == dash
	if dashed || ts[0].kind == comma {
		ts = ts[1:]
	}
	next, ts, why := readPart(ts)
	if why != "" {
		return first, nil, why
	}
	if len(ts) > 0 {
		return first, nil, "“" + ts[0].text + "” is one piece too many"
	}
	next.dashed = dashed
	return first, &next, ""
}

func readPart(ts []token) (p part, rest []token, why string) {
	p.quantity, rest, why = readQuantity(ts)
	if why == "" && len(rest) > 0 && rest[0].kind == mark {
		p.unit, rest = rest[0].unit, rest[1:]
	}
	return p, rest, why
}

// alone returns the metres of a length in one part.
func (p part) alone(bare Unit) (metres float64, why string) {
	unit := p.unit
	if unit == unmarked {
		if p.hyphen && bare != Inches {
			return 0, "the dash can join feet to inches or a whole number to its fraction; write the unit"
		}
		unit = markOf(bare)
	}
	switch unit {
	case footMark:
		return fromInches(p.value * 12), ""
	case inchMark:
		return fromInches(p.value), ""
	case centimetreMark:
		return p.shifted(-2), ""
	case millimetreMark:
		return p.shifted(-3), ""
	default:
		return p.shifted(0), ""
	}
}

func markOf(u Unit) unitMark {
	switch u {
	case FeetInches:
		return footMark
	case Inches:
		return inchMark
	case Centimetres:
		return centimetreMark
	case Millimetres:
		return millimetreMark
	default:
		return metreMark
	}
}

// together returns the metres of feet with inches or of metres with a smaller
// unit. Only the second part may have a fraction, and it must be less than one of
// the first: 12' 65" is a forgotten point, not seventeen feet and a bit.
func together(a, b part) (metres float64, why string) {
	foot := a.unit == footMark || a.unit == unmarked && b.dashed
	switch {
	case foot && (b.unit == inchMark || b.unit == unmarked):
		if !a.whole() {
			return 0, "feet that are followed by inches must be a whole number"
		}
		if !(b.value < 12) {
			return 0, "after feet, inches stay below 12"
		}
		return fromInches(a.value*12 + b.value), ""
	case a.unit == unmarked && b.unit != footMark:
		return 0, "it is two numbers; mark the feet, or write one number"
	case a.unit == metreMark && (b.unit == centimetreMark || b.unit == millimetreMark),
		a.unit == centimetreMark && b.unit == millimetreMark:
		return metricTogether(a, b)
	}
	return 0, "feet go with inches, and metres with centimetres or millimetres"
}

func metricTogether(a, b part) (metres float64, why string) {
	large, _ := a.alone(Metres)
	small, _ := b.alone(Metres)
	one, _ := part{quantity: quantity{value: 1, decimal: "1"}, unit: a.unit}.alone(Metres)
	if !a.whole() || !(small < one) {
		return 0, "the second number must be less than one of the first unit, and the first whole"
	}
	return math.Round((large+small)*1e9) / 1e9, ""
}
