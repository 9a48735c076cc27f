package sheets

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/bidi"

	"groundrow/assets/fonts"
)

// font families as the PDF library knows them.
const family = "sheet"

// ptMM is a typographic point in millimetres.
const ptMM = 25.4 / 72

// type_ is a size and weight of text.
type type_ struct {
	bold bool
	size float64 // points
}

// The sizes used. Figures that are read from standing height are floorType.
var (
	bodyType    = type_{size: 10}
	strongType  = type_{bold: true, size: 10}
	smallType   = type_{size: 8.5}
	headingType = type_{bold: true, size: 13}
	titleType   = type_{bold: true, size: 17}
	floorType   = type_{bold: true, size: 14}
	labelType   = type_{bold: true, size: 17}
)

// line returns the height of a line of the type in millimetres.
func (t type_) line() float64 { return t.size * ptMM * 1.25 }

// cap returns the height of its capitals and figures in millimetres.
func (t type_) cap() float64 { return t.size * ptMM * 0.73 }

// width returns the length of a line of clean text in millimetres.
func (t type_) width(s string) float64 {
	widths := advances()
	w := 0
	for _, r := range s {
		w += widths.of(r, t.bold)
	}
	return float64(w) / 1000 * t.size * ptMM
}

// fitted returns the type made smaller until the text is no wider than w, but
// not below 6 points.
func (t type_) fitted(s string, w float64) type_ {
	if natural := t.width(s); natural > w && natural > 0 {
		t.size = max(6, t.size*w/natural)
	}
	return t
}

// shortened returns the text cut to the width, with an ellipsis where it was cut.
func (t type_) shortened(s string, w float64) string {
	if t.width(s) <= w {
		return s
	}
	used := t.width("…")
	for i, r := range s {
		if used += t.width(string(r)); used > w {
			return s[:i] + "…"
		}
	}
	return s
}

// noGlyph stands for a character that the typeface does not have.
const noGlyph = '□'

// advanceTable has, for the characters that PDF text can carry here, their widths in
// thousandths of the size; zero when the typeface lacks one.
type advanceTable struct{ regular, strong [1 << 16]uint16 }

func (a *advanceTable) of(r rune, bold bool) int {
	if r >= 1<<16 {
		r = noGlyph
	}
	if bold {
		return int(a.strong[r])
	}
	return int(a.regular[r])
}

// has tells whether both weights can show r.
func (a *advanceTable) has(r rune) bool {
	return r < 1<<16 && a.regular[r] > 0 && a.strong[r] > 0
}

// advances reads the widths once; it fails only if the program was built with a
// broken typeface.
var advances = sync.OnceValue(func() *advanceTable {
	t := new(advanceTable)
	readAdvances(fonts.Regular, &t.regular)
	readAdvances(fonts.Bold, &t.strong)
	return t
})

func readAdvances(data []byte, into *[1 << 16]uint16) {
	f, err := sfnt.Parse(data)
	if err != nil {
		panic("sheets: built-in typeface: " + err.Error())
	}
	var buf sfnt.Buffer
	for r := rune(' '); r < 1<<16; r++ {
		g, err := f.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		if adv, err := f.GlyphAdvance(&buf, g, fixed.I(1000), font.HintingNone); err == nil {
			into[r] = uint16(adv.Round())
		}
	}
}

// clean returns text that can be set on one line: in the order in which it is
// drawn from left to right, without controls, and with a box for what the
// typeface lacks, so that nothing goes missing without a trace.
func clean(s string) string { return ordered(settable(s)) }

// settable is clean but for the order, which is that of reading.
func settable(s string) string {
	if plainASCII(s) {
		return s
	}
	have := advances()
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r), unicode.IsControl(r):
			return ' '
		case unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
			return -1 // joiners and directions: no ink of their own
		case !have.has(r):
			return noGlyph
		}
		return r
	}, strings.ToValidUTF8(s, string(noGlyph)))
}

// plainASCII tells whether s has nothing in it that could need cleaning, which is
// so for almost all text.
func plainASCII(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// leftToRight is an invisible character that makes a line run from left to
// right, however its text begins.
const leftToRight = "\u200e"

// ordered turns a line with right-to-left parts into the order in which its
// characters stand on it. Letters are not joined.
func ordered(s string) string {
	if strings.IndexFunc(s, rightToLeft) < 0 {
		return s
	}
	var p bidi.Paragraph
	if _, err := p.SetString(leftToRight + s); err != nil {
		return s
	}
	order, err := p.Order()
	if err != nil {
		return s
	}
	var b strings.Builder
	for i := range order.NumRuns() {
		run := order.Run(i)
		if run.Direction() == bidi.RightToLeft {
			b.WriteString(bidi.ReverseString(run.String()))
		} else {
			b.WriteString(run.String())
		}
	}
	return strings.ReplaceAll(b.String(), leftToRight, "")
}

func rightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.R || p.Class() == bidi.AL
}
