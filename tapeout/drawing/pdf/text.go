package pdf

import (
	"math"
	"strings"
	"unicode"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

const (
	// capHeight is that of capitals as a part of the font's size, in Helvetica (Adobe
	// font metrics: CapHeight 718). Other fonts differ by a tenth or so.
	capHeight = 0.718

	mostPieces = 20_000 // of text on a page; finding each takes a look at all characters
)

// words are the pieces of text on a page.
type words struct {
	text    references.FPDF_TEXTPAGE
	ok      bool
	pieces  []piece
	skipped int
}

// piece is what the file writes in one go: a line, a word, sometimes one letter.
type piece struct {
	linework.Text
	end plane.Point // of the baseline, on the paper
}

func openWords(s *session, index int) *words {
	r, err := s.lib.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: s.at(index)})
	if err != nil {
		return &words{}
	}
	return &words{text: r.TextPage, ok: true}
}

// text adds a piece of text that is seen. Its place is where its baseline starts.
func (r *reader) text(o object, in setting) {
	if !r.words.ok || len(r.words.pieces) >= mostPieces {
		r.words.skipped++
		return
	}
	mode, err := r.s.lib.FPDFTextObj_GetTextRenderMode(&requests.FPDFTextObj_GetTextRenderMode{PageObject: o.ref})
	if err == nil && (mode.TextRenderMode == enums.FPDF_TEXTRENDERMODE_INVISIBLE || mode.TextRenderMode == enums.FPDF_TEXTRENDERMODE_CLIP) {
		r.left.Add("words", "they are invisible", 1)
		return
	}
	content, err := r.s.lib.FPDFTextObj_GetText(&requests.FPDFTextObj_GetText{PageObject: o.ref, TextPage: r.words.text})
	if err != nil {
		return
	}
	text := plainText(content.Text)
	size, err := r.s.lib.FPDFTextObj_GetFontSize(&requests.FPDFTextObj_GetFontSize{PageObject: o.ref})
	place := o.matrix().then(in.place)
	at := place.apply(plane.Point{})
	if err != nil || strings.TrimSpace(text) == "" || !onPaper(at) || !r.page.visible.Grow(r.tol).Holds(at) {
		return
	}
	along := place.turn(plane.Point{X: 1})
	p := piece{Text: linework.Text{
		Text: text, At: at, Turn: along.Angle(), Layer: in.layer, Group: in.group, Hidden: r.off[in.layer],
		Height: math.Abs(float64(size.FontSize)) * place.turn(plane.Point{Y: 1}).Len() * capHeight,
	}}
	p.end = r.baselineEnd(o, in, &p)
	r.words.pieces = append(r.words.pieces, p)
}

// baselineEnd returns where a piece ends: as far along its baseline as its corners
// reach, which PDFium gives in the coordinates of the form that the text lies in.
func (r *reader) baselineEnd(o object, in setting, p *piece) plane.Point {
	along := plane.Polar(1, p.Turn)
	q, err := r.s.lib.FPDFPageObj_GetRotatedBounds(&requests.FPDFPageObj_GetRotatedBounds{PageObject: o.ref})
	if err != nil {
		return p.At
	}
	reach := 0.0
	c := q.QuadPoints
	for _, corner := range []plane.Point{{X: float64(c.X1), Y: float64(c.Y1)}, {X: float64(c.X2), Y: float64(c.Y2)},
		{X: float64(c.X3), Y: float64(c.Y3)}, {X: float64(c.X4), Y: float64(c.Y4)}} {
		reach = max(reach, in.place.apply(corner).Sub(p.At).Dot(along))
	}
	return p.At.Add(along.Times(reach))
}

// How pieces of one line follow each other, in heights of their capitals.
const (
	sameTurn   = math.Pi / 180
	sameHeight = 0.05
	offLine    = 0.2
	overlap    = 0.5 // a letter may reach back over the one before it
	wideGap    = 1.2 // more of it is another column
	space      = 0.25
)

// lines returns the pieces as texts, those that go on in one line being joined.
func (w *words) lines() []linework.Text {
	var out []linework.Text
	var last piece
	for _, p := range w.pieces {
		if len(out) > 0 {
			if gap, ok := last.goesOn(&p); ok {
				line := &out[len(out)-1]
				if gap > space*p.Height && !strings.HasSuffix(line.Text, " ") && !strings.HasPrefix(p.Text.Text, " ") {
					line.Text += " "
				}
				line.Text += p.Text.Text
				last = p
				continue
			}
		}
		out = append(out, p.Text)
		last = p
	}
	for i := range out {
		out[i].Text = strings.TrimSpace(footMarks(out[i].Text))
	}
	return out
}

// goesOn tells whether next stands right after p in one line, and how far after.
func (p *piece) goesOn(next *piece) (gap float64, ok bool) {
	along := plane.Polar(1, p.Turn)
	step := next.At.Sub(p.end)
	gap = step.Dot(along)
	h := max(p.Height, next.Height)
	return gap, math.Abs(math.Remainder(next.Turn-p.Turn, 2*math.Pi)) < sameTurn &&
		math.Abs(next.Height-p.Height) < sameHeight*h &&
		math.Abs(along.Cross(step)) < offLine*h &&
		gap > -overlap*h && gap < wideGap*h &&
		next.Layer == p.Layer && next.Group == p.Group
}

// plainText drops what is no character, and turns every kind of space into one.
func plainText(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), r == unicode.ReplacementChar, r == '\uFFFE', r == '\uFFFF', r == '\uFEFF':
			return -1
		}
		return r
	}, s)
}

// primes are the signs that fonts give for feet and inches: in the standard encoding
// the code of ' is a quotation mark.
var primes = map[rune]rune{'’': '\'', '‘': '\'', '′': '\'', '“': '"', '”': '"', '″': '"'}

// footMarks writes ' and " after figures as a keyboard does, so that 10’-6” reads
// 10'-6". Quotation marks elsewhere stay.
func footMarks(s string) string {
	var out strings.Builder
	afterFigure := false
	for _, r := range s {
		if plain, ok := primes[r]; ok && afterFigure {
			r = plain
		}
		out.WriteRune(r)
		if r != ' ' {
			afterFigure = unicode.IsNumber(r) || afterFigure && r == '\''
		}
	}
	return out.String()
}
