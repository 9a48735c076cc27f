package floorcanvas

import (
	"image"
	"math"
	"runtime"
	"sync"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// painter paints frames and keeps what can serve the next one.
type painter struct {
	words  *typesetter
	filler filler
	xy     []float64
	bands  []*painter // one for each goroutine that paints lines

	// where labels stand, and for what they were placed
	labels   []placed
	placedOn *scene
	placedAs placing
}

type placing struct{ per, turn, k float64 }

func newPainter() *painter { return &painter{words: newTypesetter()} }

// frame is one picture being painted.
type frame struct {
	*painter
	surface
	sc    *scene
	inks  theme.Inks
	look  lens
	port  port      // device pixels
	seen  plane.Box // of the picture, with a margin for wide lines
	k     float64
	plain bool // without grid, rulers and handles
	marks map[string]bool
}

func (f *frame) ink(i theme.Ink) paint { return paintOf(f.inks.Colour(i)) }

// paint paints everything, from the paper up.
func (f *frame) paint() {
	f.flood(f.img.Rect, f.ink(theme.Paper))
	f.clip = image.Rect(int(f.port.x), int(f.port.y), int(f.port.x+f.port.w), int(f.port.y+f.port.h)).Intersect(f.img.Rect)
	f.sc.flatten(1 / f.look.per)
	f.seen = f.look.seen(f.port).Grow(seenMargin * f.k / f.look.per)
	if f.sc.Backdrop != nil {
		f.banded((*frame).backdrop)
	}
	if !f.plain && !f.sc.Unscaled {
		f.grid()
	}
	f.areas()
	if !f.sc.HideDatum {
		f.datum()
	}
	f.washes()
	f.outlines()
	f.banded((*frame).lines)
	f.dots()
	f.selected()
	f.ellipses()
	f.writeLabels()
	if !f.plain {
		f.handles()
	}
	if !f.sc.Unscaled {
		f.audience()
	}
	f.clip = f.img.Rect
	if !f.plain {
		f.rulers()
	}
}

// pixels turns points into device pixels, in a buffer that the next call reuses.
func (f *frame) pixels(run []plane.Point) []float64 {
	f.xy = f.xy[:0]
	for _, p := range run {
		x, y := f.look.px(p)
		f.xy = append(f.xy, x, y)
	}
	return f.xy
}

// seenMargin is in toolkit pixels.
const seenMargin = 24

// visible tells whether anything of a chain can be seen.
func (f *frame) visible(c *chain) bool { return c.box.Meets(f.seen) }

// banded calls paint with copies of the frame, each of which may touch only its
// own rows, on as many goroutines as there are processors up to four.
func (f *frame) banded(paint func(*frame)) {
	n := min(runtime.GOMAXPROCS(0), 4)
	for len(f.bands) < n {
		f.bands = append(f.bands, &painter{})
	}
	var wg sync.WaitGroup
	top, high := f.clip.Min.Y, f.clip.Dy()
	for i := range n {
		part := *f
		part.painter = f.bands[i]
		part.clip.Min.Y, part.clip.Max.Y = top+high*i/n, top+high*(i+1)/n
		part.seen = f.look.seen(port{
			float64(part.clip.Min.X), float64(part.clip.Min.Y), float64(part.clip.Dx()), float64(part.clip.Dy()),
		}).Grow(seenMargin * f.k / f.look.per)
		wg.Go(func() { paint(&part) })
	}
	wg.Wait()
}

func (f *frame) runs(c *chain, n pen) {
	for _, run := range c.pieces {
		f.polyline(f.pixels(run), n)
	}
}

func (f *frame) pen(width float64, d Dash, p paint) pen {
	if math.IsNaN(width) {
		width = defaultWidth
	}
	pattern := d.pattern()
	for i := range pattern {
		pattern[i] *= f.k
	}
	return pen{half: max(min(width, 200)*f.k, 1) / 2, pattern: pattern, p: p}
}
