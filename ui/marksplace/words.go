package marksplace

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"groundrow/tapeout/survey"
)

// sentence makes a sentence of an error.
func sentence(err error) string {
	text := strings.TrimPrefix(err.Error(), "choose pivots: ")
	first, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[n:], ".") + "."
}

// cannotMeet says in the production's own lengths why two readings give no mark.
func cannotMeet(err error, base float64, format func(float64) string) string {
	var l *survey.LocateError
	if !errors.As(err, &l) {
		return sentence(err)
	}
	a, b := format(l.Reading.A), format(l.Reading.B)
	switch l.Fault {
	case survey.TapesTooShort:
		return fmt.Sprintf("Tapes of %s and %s cannot meet: the pivots are %s apart, and together the tapes are %s short of that. Read both again.", a, b, format(base), format(l.By))
	case survey.OneTapeTooLong:
		which := "first"
		if l.Reading.B > l.Reading.A {
			which = "second"
		}
		return fmt.Sprintf("Tapes of %s and %s cannot meet: the %s is %s too long for the other, with the pivots %s apart. Read both again.", a, b, which, format(l.By), format(base))
	case survey.OffTheLine:
		return fmt.Sprintf("Tapes of %s and %s meet beside the line of the pivots: say on which side.", a, b)
	}
	return sentence(err)
}
