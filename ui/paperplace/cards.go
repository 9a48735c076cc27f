package paperplace

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/draw"

	"groundrow/prep/sheets"
	"groundrow/ui/paperplace/pagepicture"
)

// card is one sheet in the list: what it is, its pages, and how what was printed
// stands.
type card struct {
	sheet  sheets.Sheet
	state  string // fingerprint of what doc shows
	doc    *pagepicture.Document
	small  image.Image // of its first page
	record record
	err    error  // why it could not be set
	key    string // what state, doc and small were made for
}

// keyOf tells when a card's pages have to be set anew: another content, paper,
// scale, floor or scene.
func keyOf(job sheets.Job, state string) string {
	return state + "|" + job.Size.Name + "|" + job.Scale.Ratio() + "|" + string(job.Floor) + "|" + string(job.Scene)
}

// prepare brings one card up to date; density is device pixels to one of the
// toolkit's. It can be called from any goroutine and leaves the card given alone.
func prepare(ctx context.Context, old card, job sheets.Job, density float64) card {
	c := card{sheet: old.sheet}
	c.state = sheets.State(c.sheet.Kind, job)
	c.record = recordOf(c.sheet, job, c.state)
	c.key = keyOf(job, c.state)
	if c.key == old.key && old.doc != nil {
		c.doc, c.small = old.doc, old.small
		return c
	}
	if ctx.Err() != nil {
		return c
	}
	var pdf bytes.Buffer
	if c.err = sheets.Write(&pdf, c.sheet.Kind, job); c.err != nil {
		return c
	}
	if c.doc, c.err = pagepicture.Read(pdf.Bytes()); c.err == nil {
		c.small = stacked(c.doc, density)
	}
	return c
}

// The room for the small picture of a sheet, in the toolkit's units.
const (
	smallWidth  = 164
	smallHeight = 112
	stackStep   = 3 // by which one page peeps out from behind the other
	stackMost   = 2
)

// stacked draws the first page of a sheet with the edges of some more behind it.
func stacked(d *pagepicture.Document, density float64) image.Image {
	behind := min(d.Pages()-1, stackMost)
	step := int(stackStep * density)
	w, h := d.Size()
	width := min(smallWidth*density, smallHeight*density*w/h) - float64(behind*step) - 2
	return framed(d.Render(0, max(8, int(width))), behind, step)
}

// framed puts an edge around a page, and those of so many pages behind it, each
// a step further down and right: white paper must be seen on a light ground.
func framed(page *image.RGBA, behind, step int) image.Image {
	size := page.Bounds().Size()
	out := image.NewRGBA(image.Rect(0, 0, size.X+2+behind*step, size.Y+2+behind*step))
	for i := behind; i >= 0; i-- {
		frame := image.Rect(0, 0, size.X+2, size.Y+2).Add(image.Pt(i*step, i*step))
		draw.Draw(out, frame, image.NewUniform(color.Gray{Y: 120}), image.Point{}, draw.Src)
		draw.Draw(out, frame.Inset(1), image.White, image.Point{}, draw.Src)
	}
	draw.Draw(out, image.Rect(1, 1, size.X+1, size.Y+1), page, image.Point{}, draw.Src)
	return out
}
