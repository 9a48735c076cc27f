package floorcanvas

import (
	"image"
	"math"

	"groundrow/ui/theme"
)

// painter paints frames and keeps what can serve the next one.
type painter struct {
	words  *typesetter
	filler filler
	xy     []float64

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
	port  port // device pixels
	k     float64
	plain bool // without grid, rulers and handles
	marks map[string]bool
}

func (f *frame) ink(i theme.Ink) paint { return paintOf(f.inks.Colour(i)) }

// paint paints everything, from the paper up.
func (f *frame) paint() {
	f.flood(f.img.Rect, f.ink(theme.Paper))
	f.clip = image.Rect(int(f.port.x), int(f.port.y), int(f.port.x+f.port.w), int(f.port.y+f.port.h)).Intersect(f.img.Rect)
	f.sc.flatten(f.k / f.look.per / f.k)
	if !f.plain {
		f.grid()
	}
	f.areas()
	if !f.sc.HideDatum {
		f.datum()
	}
	f.washes()
	f.outlines()
	f.lines()
	f.dots()
	f.selected()
	f.writeLabels()
	if !f.plain {
		f.handles()
	}
	f.audience()
	f.clip = f.img.Rect
	if !f.plain {
		f.rulers()
	}
}

// pixels turns points into device pixels, in a buffer that the next call reuses.
func (f *frame) pixels(run []pointXY) []float64 {
	f.xy = f.xy[:0]
	for _, p := range run {
		x, y := f.look.px(p)
		f.xy = append(f.xy, x, y)
	}
	return f.xy
}

// visible tells whether anything of a chain can be in the port.
func (f *frame) visible(c *chain) bool {
	const margin = 24 // toolkit pixels, for wide lines and washes
	return c.box.Meets(f.look.seen(f.port).Grow(margin * f.k / f.look.per))
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
