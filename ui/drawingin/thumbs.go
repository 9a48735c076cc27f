package drawingin

import (
	"context"
	"image"
	"slices"

	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
)

// thumbs are the pages of a file in small. They are drawn one after the other in
// the background, those first that were looked at last.
type thumbs struct {
	desk    *desk.Desk
	file    *drawingfile.File
	done    map[int]image.Image // nil for a page that cannot be drawn
	wanted  []int
	drawing bool
	callOff func()
	drawn   func(page int) // is told when one is there
}

// of begins with a file; pages that have been drawn of the same one are kept.
func (t *thumbs) of(file *drawingfile.File) {
	t.rest()
	if t.file != file {
		t.file, t.done = file, map[int]image.Image{}
	}
}

// rest calls off what is being drawn, and forgets what is wanted.
func (t *thumbs) rest() {
	if t.callOff != nil {
		t.callOff()
	}
	t.callOff, t.wanted, t.drawing = nil, nil, false
}

// mostThumbs is how many pages are kept in small: 150 kB each.
const mostThumbs = 200

// picture returns a page in small; nil while it is not there.
func (t *thumbs) picture(n int) image.Image {
	img, ok := t.done[n]
	if !ok && t.file != nil && t.file.Format == drawingfile.PDF {
		t.wanted = append(slices.DeleteFunc(t.wanted, func(w int) bool { return w == n }), n)
		t.next()
	}
	return img
}

// next draws the page that was wanted last.
func (t *thumbs) next() {
	if t.drawing || len(t.wanted) == 0 {
		return
	}
	n, file := t.wanted[len(t.wanted)-1], t.file
	t.wanted = t.wanted[:len(t.wanted)-1]
	t.drawing = true
	var img image.Image
	t.callOff = t.desk.Quietly(func(ctx context.Context) {
		if drawn, err := file.Picture(ctx, n, smallDPI(file.Pages[n])); err == nil {
			img = drawn
		}
	}, func() {
		t.drawing = false
		if len(t.done) >= mostThumbs {
			clear(t.done)
		}
		t.done[n] = img
		t.drawn(n)
		t.next()
	})
}

// smallDPI draws a page twice as large as it is shown, for screens with fine dots.
func smallDPI(p drawingfile.Page) float64 {
	wide, high := p.Width/length.Inch, p.Height/length.Inch
	if !(wide > 0) || !(high > 0) {
		return 20
	}
	return 2 * min(float64(thumbSize.Width)/wide, float64(thumbSize.Height)/high)
}
