package sheets

import (
	"bytes"
	"fmt"
	"time"

	"github.com/jung-kurt/gofpdf"

	"groundrow/assets/fonts"
	"groundrow/tapeout/length"
)

// press sets content on pages. Places are millimetres from the top left corner
// of the page, y downwards.
type press struct {
	pdf   *gofpdf.Fpdf
	size  PageSize // as it lies
	body  inset
	y     float64      // where the next block begins
	scale length.Scale // wished for drawings; zero: what fits
}

// newPress opens a document of the size. Everything that would differ from run to run is
// fixed, so that the same content makes the same bytes.
func newPress(size PageSize, printed time.Time) *press {
	pdf := gofpdf.NewCustom(&gofpdf.InitType{
		OrientationStr: "P", UnitStr: "mm",
		Size: gofpdf.SizeType{Wd: size.Width, Ht: size.Height},
	})
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(printed)
	pdf.SetModificationDate(printed)
	pdf.SetProducer("Groundrow", true)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCellMargin(0)
	// The library pads a font's tables in place: each document has its own copy, so
	// that several can be made at once.
	pdf.AddUTF8FontFromBytes(family, "", bytes.Clone(fonts.Regular))
	pdf.AddUTF8FontFromBytes(family, "B", bytes.Clone(fonts.Bold))
	p := &press{pdf: pdf, size: size, body: size.body()}
	p.newPage()
	return p
}

// newPage starts a page with the cursor at the top of its body.
func (p *press) newPage() {
	p.pdf.AddPage()
	p.y = p.body.y
}

// left returns the height that is free below the cursor.
func (p *press) left() float64 { return p.body.bottom() - p.y }

// need starts a new page unless h millimetres are free. What is higher than a
// page starts at the top of one.
func (p *press) need(h float64) {
	if p.left() < h-1e-6 && p.y > p.body.y {
		p.newPage()
	}
}

// text draws one line of clean text with its baseline at y.
func (p *press) text(x, y float64, s string, t type_) {
	if s == "" {
		return
	}
	style := ""
	if t.bold {
		style = "B"
	}
	p.pdf.SetFont(family, style, t.size)
	p.pdf.Text(x, y, s)
}

// textIn draws one line in a band of width w: made smaller, then shortened, if
// it is too long.
func (p *press) textIn(r inset, baseline float64, s string, t type_, a align) {
	s = clean(s)
	t = t.fitted(s, r.w)
	s = t.shortened(s, r.w)
	free := r.w - t.width(s)
	p.text(r.x+a.offset(free), baseline, s, t)
}

// lines draws lines one under the other, over as many pages as they need.
func (p *press) lines(lines []string, t type_, x float64) {
	for _, l := range lines {
		p.need(t.line())
		p.text(x, p.y+t.line()*0.78, l, t)
		p.y += t.line()
	}
}

// rule draws a straight line of the width in millimetres.
func (p *press) rule(x1, y1, x2, y2, width float64) {
	p.pdf.SetDashPattern(nil, 0)
	p.pdf.SetLineWidth(width)
	p.pdf.Line(x1, y1, x2, y2)
}

// box draws the outline of a rectangle.
func (p *press) box(r inset, width float64) {
	p.pdf.SetDashPattern(nil, 0)
	p.pdf.SetLineWidth(width)
	p.pdf.Rect(r.x, r.y, r.w, r.h, "D")
}

// fill paints a rectangle in a grey, 0 black to 255 white.
func (p *press) fill(r inset, grey int) {
	p.pdf.SetFillColor(grey, grey, grey)
	p.pdf.Rect(r.x, r.y, r.w, r.h, "F")
}

// disc paints a black disc.
func (p *press) disc(x, y, radius float64) {
	p.pdf.SetFillColor(0, 0, 0)
	p.pdf.Circle(x, y, radius, "F")
}

// tickBox draws a box to tick, with its tick when that has been done already.
func (p *press) tickBox(x, y, side float64, done bool) {
	p.box(inset{x, y, side, side}, 0.35)
	if done {
		p.rule(x+side*0.18, y+side*0.55, x+side*0.42, y+side*0.82, 0.6)
		p.rule(x+side*0.42, y+side*0.82, x+side*0.85, y+side*0.15, 0.6)
	}
}

// err returns what went wrong while drawing, in words.
func (p *press) err() error {
	if err := p.pdf.Error(); err != nil {
		return fmt.Errorf("setting the page: %w", err)
	}
	return nil
}
