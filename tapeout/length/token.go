package length

import "strings"

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

// tokens cuts a plain text into tokens. At something it does not know it stops,
// and why says so.
func tokens(text string) (ts []token, why string) {
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		t, ok := firstToken(text)
		if !ok {
			return nil, "“" + shown(text) + "” has no meaning here"
		}
		if t.kind == mark {
			t.unit = unitWords[strings.TrimSuffix(t.text, ".")]
			if t.unit == unmarked {
				return nil, "“" + shown(t.text) + "” is not a unit"
			}
		}
		ts = append(ts, t)
		text = text[len(t.text):]
	}
	return ts, ""
}

// firstToken returns the longest token that text begins with; ok is false when
// it begins with none. A fraction goes before the number above its line.
func firstToken(text string) (t token, ok bool) {
	if n := fractionAt(text); n > 0 {
		return token{kind: fraction, text: text[:n]}, true
	}
	if n := numberAt(text); n > 0 {
		return token{kind: number, text: text[:n]}, true
	}
	switch c := text[0]; {
	case c == '-':
		return token{kind: dash, text: text[:1]}, true
	case c == ',':
		return token{kind: comma, text: text[:1]}, true
	case c == '\'' || c == '"':
		return token{kind: mark, text: text[:1]}, true
	case letter(c):
		n := span(text, 0, letter)
		return token{kind: mark, text: text[:past(text, n, '.')]}, true
	}
	return token{}, false
}

// fractionAt returns the length of the fraction that text begins with: digits, a
// stroke with at most a space on either side, digits. Zero without one.
func fractionAt(text string) int {
	top := span(text, 0, digit)
	stroke := past(text, top, ' ')
	below := past(text, stroke, '/')
	if top == 0 || below == stroke {
		return 0
	}
	below = past(text, below, ' ')
	end := span(text, below, digit)
	if end == below {
		return 0
	}
	return end
}

// numberAt returns the length of the number that text begins with: digits, or a
// point and digits; further digits after a point or a comma; and a point at the
// end. Zero without one.
func numberAt(text string) int {
	from := past(text, 0, '.')
	end := span(text, from, digit)
	if end == from {
		return 0
	}
	for {
		from = end + 1
		if end == len(text) || text[end] != '.' && text[end] != ',' {
			return end
		}
		more := span(text, from, digit)
		if more == from {
			return past(text, end, '.')
		}
		end = more
	}
}

// span returns where the characters of a kind that begin at from end.
func span(text string, from int, is func(byte) bool) int {
	for from < len(text) && is(text[from]) {
		from++
	}
	return from
}

// past returns the place after c when it stands at from, and from otherwise.
func past(text string, from int, c byte) int {
	if from < len(text) && text[from] == c {
		return from + 1
	}
	return from
}

func digit(c byte) bool  { return '0' <= c && c <= '9' }
func letter(c byte) bool { return 'a' <= c && c <= 'z' }
