package drawingfile

import (
	"context"
	"image"
	"image/draw"
	"math"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

// Page is one page of a file, as far as can be told without reading it.
type Page struct {
	Label         string  // as the file numbers it; empty: it does not
	Width, Height float64 // metres on paper; zero: there is no paper

	Counted                bool // false: what is on it is not known
	Lines, Texts, Pictures int
	Scan                   bool    // it is a picture and no drawing
	Picture                float64 // part of the page that its largest picture covers, 0 to 1
}

func pagesOf(ctx context.Context, engine *pdf.Engine, content []byte) ([]Page, error) {
	list, err := engine.Pages(ctx, content)
	if err != nil {
		return nil, err
	}
	pages := make([]Page, len(list))
	for i, p := range list {
		pages[i] = Page{Label: p.Label, Width: p.Width, Height: p.Height, Counted: p.Counted,
			Lines: p.Paths, Texts: p.Texts, Pictures: p.Images, Scan: p.Scan(), Picture: p.Picture}
	}
	return pages, nil
}

// Blank tells whether there is nothing on the page that a plan could be made of.
func (p Page) Blank() bool { return p.Counted && !p.Scan && p.Lines == 0 }

// What says in a few words what is on the page.
func (p Page) What() string {
	switch {
	case !p.Counted:
		return "not looked into"
	case p.Scan:
		return "a scan, to be traced"
	case p.Lines > 0 && p.Picture > 0.5:
		return prep.Counted(p.Lines, "line") + " on a picture"
	case p.Lines > 0:
		return prep.Counted(p.Lines, "line")
	case p.Texts > 0:
		return "words only"
	}
	return "nothing"
}

// Title is what a page calls itself in its largest letters; empty: nothing.
func Title(s *linework.Sheet) string {
	best, height := "", 0.0
	for _, t := range s.Texts {
		text := strings.Join(strings.Fields(t.Text), " ")
		if t.Height > height && len([]rune(text)) > 2 {
			best, height = text, t.Height
		}
	}
	if math.IsNaN(height) {
		return ""
	}
	if r := []rune(best); len(r) > 60 {
		best = string(r[:60]) + "…"
	}
	return best
}

// inGrey needs a quarter of the memory that colours do. The picture is opaque.
func inGrey(img image.Image) *image.Gray {
	size := img.Bounds().Size()
	out := image.NewGray(image.Rectangle{Max: size})
	rgba, ok := img.(*image.RGBA)
	if !ok {
		draw.Draw(out, out.Bounds(), img, img.Bounds().Min, draw.Src)
		return out
	}
	for y := range size.Y {
		from, to := rgba.Pix[y*rgba.Stride:], out.Pix[y*out.Stride:]
		for x := range size.X {
			// ITU-R BT.601, as image/color has it.
			to[x] = uint8((19595*uint32(from[4*x]) + 38470*uint32(from[4*x+1]) + 7471*uint32(from[4*x+2]) + 1<<15) >> 16)
		}
	}
	return out
}
