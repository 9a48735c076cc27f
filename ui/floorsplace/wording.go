package floorsplace

import (
	"fmt"
	"strconv"
	"unicode"
	"unicode/utf8"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
)

func number(n int) string { return strconv.Itoa(n) }

func sticking(n int) string {
	switch n {
	case 0:
		return "nothing sticks out undecided"
	case 1:
		return "1 sticks out and is not decided"
	}
	return number(n) + " stick out and are not decided"
}

// area writes the floor's area in the production's system of units.
func area(v *desk.View, f *floor.Floor) string { return areaOf(v, f.Outline.Area()) }

func areaOf(v *desk.View, m2 float64) string {
	if v.P.Unit() == length.FeetInches {
		return fmt.Sprintf("%.0f sq ft", m2/(length.Foot*length.Foot))
	}
	return fmt.Sprintf("%.1f m²", m2)
}

// capital begins a word with a capital letter.
func capital(word string) string {
	r, n := utf8.DecodeRuneInString(word)
	return string(unicode.ToUpper(r)) + word[n:]
}
