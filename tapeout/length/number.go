package length

import (
	"strconv"
	"strings"
)

// quantity is a number as it was written.
type quantity struct {
	value   float64
	decimal string // digits with a point, when there was no fraction
	hyphen  bool   // a whole number and a fraction joined by a dash: 6-1/2
}

// whole tells whether the number was written without fraction or decimals.
func (q quantity) whole() bool { return q.decimal != "" && !strings.Contains(q.decimal, ".") }

// shifted returns the quantity times ten to the power. A decimal is shifted
// before it is made binary, so that 381.3 cm is the float64 nearest to 3.813.
func (q quantity) shifted(power int) float64 {
	if q.decimal != "" {
		if v, err := strconv.ParseFloat(q.decimal+"e"+strconv.Itoa(power), 64); err == nil {
			return v
		}
	}
	for ; power < 0; power++ {
		q.value /= 10
	}
	return q.value
}

// readQuantity takes a number, a fraction or both off the front of ts.
func readQuantity(ts []token) (q quantity, rest []token, why string) {
	if len(ts) == 0 {
		return q, nil, "a number is missing at the end"
	}
	switch ts[0].kind {
	case fraction:
		q.value, why = readFraction(ts[0].text)
		return q, ts[1:], why
	case number:
	default:
		return q, nil, "a number is missing before “" + ts[0].text + "”"
	}
	if q.decimal, why = readDecimal(ts[0].text); why != "" {
		return q, nil, why
	}
	var err error
	if q.value, err = strconv.ParseFloat(q.decimal, 64); err != nil {
		return q, nil, "“" + shown(ts[0].text) + "” is not a number"
	}
	rest = ts[1:]
	joint := 0
	if len(rest) > 1 && rest[0].kind == dash {
		joint = 1
	}
	if len(rest) <= joint || rest[joint].kind != fraction {
		return q, rest, ""
	}
	return addFraction(q, rest[joint], rest[joint+1:], joint == 1)
}

// addFraction makes the mixed number of a whole number and a fraction.
func addFraction(q quantity, f token, rest []token, hyphen bool) (quantity, []token, string) {
	part, why := readFraction(f.text)
	switch {
	case why != "":
		return q, nil, why
	case !q.whole():
		return q, nil, "it has both decimals and a fraction"
	case part >= 1:
		return q, nil, "the fraction " + f.text + " after a whole number is not below one"
	}
	return quantity{value: q.value + part, hyphen: hyphen}, rest, ""
}

// readFraction reads "n/d".
func readFraction(text string) (v float64, why string) {
	top, bottom, _ := strings.Cut(text, "/")
	n, errN := strconv.ParseFloat(strings.TrimSpace(top), 64)
	d, errD := strconv.ParseFloat(strings.TrimSpace(bottom), 64)
	switch {
	case errN != nil || errD != nil:
		return 0, "“" + shown(text) + "” is not a fraction"
	case d == 0:
		return 0, "the fraction " + text + " divides by zero"
	}
	return n / d, ""
}

// readDecimal returns digits with at most one point from digits with points and
// commas. Where both occur, the last one is the decimal sign and the others must
// group thousands. A single comma is a decimal sign unless exactly three digits
// follow one to three that do not begin with a zero: 3,810 is refused, because
// half the world would read it as 3.81 and the other half as 3810.
func readDecimal(text string) (decimal, why string) {
	text = strings.TrimSuffix(text, ".")
	commas, points := strings.Count(text, ","), strings.Count(text, ".")
	switch {
	case commas == 0 && points <= 1:
		return text, ""
	case commas == 1 && points == 0:
		before, after, _ := strings.Cut(text, ",")
		if len(after) == 3 && len(before) <= 3 && !strings.HasPrefix(before, "0") {
			return "", "it can mean " + before + "." + after + " or " + before + after +
				"; write one of these"
		}
		return before + "." + after, ""
	case points <= 1 && strings.LastIndex(text, ".") >= strings.LastIndex(text, ",") || points == 0:
		return ungroup(text, ",", ".")
	case commas == 1:
		return ungroup(text, ".", ",")
	}
	return "", "“" + shown(text) + "” has too many points and commas"
}

// ungroup takes out the signs that group thousands and makes the decimal sign a
// point.
func ungroup(text, group, decimal string) (string, string) {
	whole, part, _ := strings.Cut(text, decimal)
	for i, g := range strings.Split(whole, group) {
		if len(g) > 3 || len(g) == 0 || i > 0 && len(g) != 3 {
			return "", "the digits of “" + shown(text) + "” are not in groups of three"
		}
	}
	if strings.ContainsAny(part, ".,") {
		return "", "“" + shown(text) + "” has too many points and commas"
	}
	digits := strings.ReplaceAll(whole, group, "")
	if part == "" {
		return digits, ""
	}
	return digits + "." + part, ""
}
