package length

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// sideWords are the words for one direction of the datum.
type sideWords struct {
	plus, minus, zero []string // longest spelling first
	accepts           string
}

var overWords = sideWords{
	plus:    []string{"stage left", "left", "s.l.", "sl", "l"},
	minus:   []string{"stage right", "right", "s.r.", "sr", "r"},
	zero:    []string{"on the centre line", "on the center line", "centre line", "center line", "on centre", "on center", "centre", "center", "c/l", "cl", "℄"},
	accepts: `SL or SR before or after the length, a minus sign for SR, CL or 0 for the centre line`,
}

var upWords = sideWords{
	plus:    []string{"upstage", "u.s.", "us", "up", "u"},
	minus:   []string{"downstage", "d.s.", "ds", "down", "d"},
	accepts: `US or DS before or after the length, a minus sign for DS`,
}

// ParseOver reads a distance from the centre line, positive to stage left. The
// side is a word before or after the length (SL, SR, L, R, stage left, right); a
// minus sign stands for stage right, and a length with neither is to stage left.
// CL and its like are zero. A length with both a side and a sign is refused.
func ParseOver(text string, bare Unit) (float64, error) {
	return overWords.parse(text, bare)
}

// ParseUp reads a distance from the baseline, positive upstage. US or DS may come
// before or after the length; a minus sign stands for downstage.
func ParseUp(text string, bare Unit) (float64, error) {
	return upWords.parse(text, bare)
}

func (w sideWords) parse(text string, bare Unit) (float64, error) {
	fail := func(why string) (float64, error) {
		return 0, &ParseError{Text: text, What: "length", Why: why, Accepts: accepts(bare) + "; " + w.accepts}
	}
	if len(text) > maxText {
		return fail("it is too long")
	}
	low := plain(text)
	for _, z := range w.zero {
		if low == z {
			return 0, nil
		}
	}
	rest, plus := cutWord(low, w.plus)
	minus := false
	if !plus {
		rest, minus = cutWord(low, w.minus)
	}
	r, why := read(rest, bare)
	switch {
	case why != "":
		return fail(why)
	case r.signed && (plus || minus):
		return fail("it has both a sign and a side")
	case minus && r.metres != 0:
		return -r.metres, nil
	}
	return r.metres, nil
}

// cutWord takes the first of words that begins or ends text off it. A letter
// next to the word makes it part of a longer one, which stays.
func cutWord(text string, words []string) (rest string, ok bool) {
	for _, w := range words {
		if rest, ok := strings.CutPrefix(text, w); ok {
			if r, _ := utf8.DecodeRuneInString(rest); !unicode.IsLetter(r) {
				return rest, true
			}
		}
		if rest, ok := strings.CutSuffix(text, w); ok {
			if r, _ := utf8.DecodeLastRuneInString(rest); !unicode.IsLetter(r) {
				return rest, true
			}
		}
	}
	return text, false
}
