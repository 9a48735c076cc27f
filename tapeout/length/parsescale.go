package length

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

const acceptsScale = `1/4" = 1'-0", 1/4", 3/32", 1:48, 1:50, 1 cm = 0.5 m`

// ParseScale reads a scale:
//
//	1/4" = 1'-0"   1/4"=1'   1/4" to the foot   2 cm = 1 m   one length for another
//	1/4"   3/32"   1 1/2"   1/4                              inches to the foot
//	1:50   1 : 48   1/50   50                                a ratio
//
// Of the two things that a bare fraction can mean, those on an architect's rule,
// with 2, 4, 8, 16 or 32 below the line, are inches to the foot; 1 over anything
// else is a ratio. A bare whole number from 10 up is a ratio, a smaller one could
// be either and is refused. A ratio in brackets after the rest, as Scale.String
// writes it, must agree with it.
//
// The error is a *ParseError. The result is Valid.
func ParseScale(text string) (Scale, error) {
	s, why := readScale(text)
	if why == "" && !s.Valid() {
		why = "a plan's scale lies between 1:1 and 1:10000"
	}
	if why != "" {
		return 0, &ParseError{Text: text, What: "scale", Why: why, Accepts: acceptsScale}
	}
	return s, nil
}

var (
	inBrackets = regexp.MustCompile(`^(.*\S) ?\(([^()]*)\)$`)
	footWords  = regexp.MustCompile(` ?(?:to|per|=) ?(?:the|a|one|1)? ?(?:foot|ft\.?)$`)
	scaleWord  = regexp.MustCompile(`^scale ?:? ?| ?scale$`)
	ratioForm  = regexp.MustCompile(`^(\d[\d.,]*) ?: ?(\d[\d.,]*)$`)
	overForm   = regexp.MustCompile(`^(\d+) ?/ ?(\d+)$`)
	wholeForm  = regexp.MustCompile(`^\d+(?:\.\d*)?$`)
)

func readScale(text string) (s Scale, why string) {
	if len(text) > maxText || !utf8.ValidString(text) {
		return 0, "it is too long or not text"
	}
	low := strings.TrimSpace(scaleWord.ReplaceAllString(plain(text), ""))
	if in := inBrackets.FindStringSubmatch(low); in != nil {
		return readBoth(in[1], in[2])
	}
	low = footWords.ReplaceAllString(low, " = 1'")
	paper, floor, equation := strings.Cut(low, "=")
	ratio := ratioForm.FindStringSubmatch(low)
	over := overForm.FindStringSubmatch(low)
	switch {
	case equation:
		return readEquation(paper, floor)
	case ratio != nil:
		return readRatio(ratio[1], ratio[2])
	case over != nil && !onRule(over[2]):
		if over[1] != "1" {
			return 0, "such a fraction is on no scale rule; write a ratio like 1:50"
		}
		return readRatio(over[1], over[2])
	case wholeForm.MatchString(low):
		return readWhole(low)
	}
	return readEquation(low, "1'")
}

// readBoth reads a scale that is stated twice.
func readBoth(first, second string) (Scale, string) {
	a, why := readScale(first)
	if why != "" {
		return 0, why
	}
	b, why := readScale(second)
	if why != "" {
		return 0, why
	}
	// Three decimals is what Ratio writes.
	if d := float64(a - b); d > 0.0006 || d < -0.0006 {
		return 0, first + " is " + a.Ratio() + " and not " + b.Ratio()
	}
	return a, ""
}

// readEquation reads a length on paper and the length on the floor that it stands
// for. Without units they are inches and feet, unless the other one is metric.
func readEquation(paper, floor string) (Scale, string) {
	p, why := read(paper, FeetInches)
	if why != "" {
		return 0, why
	}
	f, why := read(floor, FeetInches)
	if why != "" {
		return 0, why
	}
	switch {
	case p.unit == unmarked && f.unit >= metreMark, f.unit == unmarked && p.unit >= metreMark:
		return 0, "both lengths need a unit"
	case p.metres <= 0 || f.metres <= 0:
		return 0, "both lengths must be more than nothing"
	case p.unit == unmarked:
		p.metres /= 12
	}
	return exact(f.metres / p.metres), ""
}

// readRatio reads n:m.
func readRatio(n, m string) (Scale, string) {
	paper, why := readPlainNumber(n)
	if why != "" {
		return 0, why
	}
	floor, why := readPlainNumber(m)
	if why != "" {
		return 0, why
	}
	if paper <= 0 {
		return 0, "its first number must be more than nothing"
	}
	return Scale(floor / paper), ""
}

// readPlainNumber reads a number with nothing else.
func readPlainNumber(text string) (float64, string) {
	decimal, why := readDecimal(text)
	if why != "" {
		return 0, why
	}
	if v, err := strconv.ParseFloat(decimal, 64); err == nil && wholeForm.MatchString(decimal) {
		return v, ""
	}
	return 0, "“" + shown(text) + "” is not a number"
}

// readWhole reads a number without anything that tells what it is.
func readWhole(text string) (Scale, string) {
	v, why := readPlainNumber(text)
	if why == "" && v < 10 {
		why = `it can mean ` + text + `" to the foot or 1:` + text + `; write one of these`
	}
	return Scale(v), why
}

// onRule tells whether fractions with this below the line are inches to the foot.
func onRule(bottom string) bool {
	switch strings.TrimLeft(bottom, "0") {
	case "2", "4", "8", "16", "32":
		return true
	}
	return false
}

// exact returns the whole number that the quotient of two lengths in binary
// misses by an error of rounding.
func exact(v float64) Scale {
	if whole := float64(int64(v + 0.5)); v < 1e6 && v-whole < 1e-9*v && whole-v < 1e-9*v {
		return Scale(whole)
	}
	return Scale(v)
}
