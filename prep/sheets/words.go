package sheets

import (
	"math"
	"time"
	"unicode"
	"unicode/utf8"
)

// capitalise returns s with its first letter large.
func capitalise(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// day writes a date, with a word for none.
func day(t time.Time) string {
	if t.IsZero() {
		return "not set"
	}
	return t.Format("Mon 2 Jan")
}

// unwound returns the angle plus the whole turns that bring it into the
// direction of sweep: from 0 up to a turn when sweep is positive.
func unwound(angle, sweep float64) float64 {
	a := math.Mod(angle, 2*math.Pi)
	if sweep > 0 && a < 0 {
		a += 2 * math.Pi
	}
	if sweep < 0 && a > 0 {
		a -= 2 * math.Pi
	}
	return a
}
