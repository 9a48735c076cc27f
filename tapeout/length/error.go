package length

import (
	"fmt"
	"strings"
	"unicode"
)

// ParseError says which text could not be read, why, and what would have been.
type ParseError struct {
	Text    string // as it was typed
	What    string // what it was read as: "length", "scale"
	Why     string // one clause, without a full stop
	Accepts string // examples, without a full stop
}

// Error returns one sentence for the reason and one for what is accepted.
func (e *ParseError) Error() string {
	if strings.TrimSpace(e.Text) == "" {
		return fmt.Sprintf("A %s is missing. Accepted: %s.", e.What, e.Accepts)
	}
	return fmt.Sprintf("“%s” is not a %s: %s. Accepted: %s.", shown(e.Text), e.What, e.Why, e.Accepts)
}

// shownRunes bounds how much of a text a message repeats.
const shownRunes = 40

// shown returns text as a message can carry it: on one line, printable, short.
func shown(text string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r):
			return '\uFFFD'
		}
		return r
	}, strings.ToValidUTF8(strings.TrimSpace(text), "\uFFFD"))
	if runes := []rune(clean); len(runes) > shownRunes {
		return string(runes[:shownRunes]) + "…"
	}
	return clean
}

// accepts returns examples of a length for people who work in the unit.
func accepts(u Unit) string {
	switch u {
	case FeetInches:
		return `12' 6 1/2", 12-6 1/2, 6 1/2", 3.81 m; a bare number counts as feet`
	case Inches:
		return `6 1/2, 6.5, 6 1/2", 12' 6 1/2", 165 mm; a bare number counts as inches`
	case Centimetres:
		return `381, 381 cm, 3.81 m, 12' 6 1/2"; a bare number counts as centimetres`
	case Millimetres:
		return `3810, 381 cm, 3.81 m, 12' 6 1/2"; a bare number counts as millimetres`
	default:
		return `3.81, 3.81 m, 381 cm, 12' 6 1/2"; a bare number counts as metres`
	}
}
