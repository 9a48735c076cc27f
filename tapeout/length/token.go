package length

import (
	"regexp"
	"strings"
)

// spellings maps what keyboards, word processors and drawings write to the one
// spelling that the reader knows. A fraction in one character gets spaces around
// it, so that 6½ reads as 6 1/2.
var spellings = strings.NewReplacer(
	"″", `"`, "”", `"`, "“", `"`, "„", `"`, "ʺ", `"`, "˝", `"`, "＂", `"`,
	"′", "'", "’", "'", "‘", "'", "ʹ", "'", "ʼ", "'", "´", "'", "`", "'", "＇", "'",
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "‒", "-", "－", "-",
	"⁄", "/", "∕", "/",
	"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ",
	"⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
	"⅓", " 1/3 ", "⅔", " 2/3 ", "⅙", " 1/6 ", "⅚", " 5/6 ",
	"⅕", " 1/5 ", "⅖", " 2/5 ", "⅗", " 3/5 ", "⅘", " 4/5 ",
)

// plain returns text in lower case and in the one spelling of each sign, with
// every run of white space made one space. Two foot signs are an inch sign.
// What is plain already stays as it is.
func plain(text string) string {
	text = spellings.Replace(strings.ToLower(text))
	text = strings.ReplaceAll(text, "''", `"`)
	return strings.Join(strings.Fields(text), " ")
}

// token is the smallest piece of a length that means something.
type token struct {
	kind tokenKind
	text string
	unit unitMark // of a mark
}

type tokenKind int

// Kinds of token.
const (
	fraction tokenKind = iota // n/d
	number                    // digits with points and commas
	mark                      // a unit
	dash
	comma
)

// unitMark is the unit that a sign or a word stands for.
type unitMark int

// Units as they are written. unmarked is a number without any.
const (
	unmarked unitMark = iota
	footMark
	inchMark
	metreMark
	centimetreMark
	millimetreMark
)

// unitWords are the signs and words for units; a word may end in a full stop.
var unitWords = map[string]unitMark{
	"'": footMark, "ft": footMark, "foot": footMark, "feet": footMark,
	`"`: inchMark, "in": inchMark, "ins": inchMark, "inch": inchMark, "inches": inchMark,
	"m": metreMark, "metre": metreMark, "metres": metreMark,
	"meter": metreMark, "meters": metreMark,
	"cm": centimetreMark, "centimetre": centimetreMark, "centimetres": centimetreMark,
	"centimeter": centimetreMark, "centimeters": centimetreMark,
	"mm": millimetreMark, "millimetre": millimetreMark, "millimetres": millimetreMark,
	"millimeter": millimetreMark, "millimeters": millimetreMark,
}

// tokenForm has one group per kind of token, in the order of the kinds.
var tokenForm = regexp.MustCompile(`^(?:(\d+ ?/ ?\d+)|((?:\d+|\.\d+)(?:[.,]\d+)*\.?)|([a-z]+\.?|['"])|(-)|(,))`)

// tokens cuts a plain text into tokens. At something it does not know it stops,
// and why says so.
func tokens(text string) (ts []token, why string) {
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		at := tokenForm.FindStringSubmatchIndex(text)
		if at == nil {
			return nil, "“" + shown(text) + "” has no meaning here"
		}
		t := token{text: text[:at[1]]}
		for k := fraction; k <= comma; k++ {
			if at[2*k+2] >= 0 {
				t.kind = k
			}
		}
		if t.kind == mark {
			t.unit = unitWords[strings.TrimSuffix(t.text, ".")]
			if t.unit == unmarked {
				return nil, "“" + shown(t.text) + "” is not a unit"
			}
		}
		ts = append(ts, t)
		text = text[at[1]:]
	}
	return ts, ""
}
