package floorcanvas

import (
	"image"
	"math"
	"sync"

	"groundrow/ui/theme"
)

// Look is how Render paints a picture without a window.
type Look struct {
	View    View // without a scale: everything fits
	Inks    theme.Inks
	Density float64 // device pixels to one of the toolkit's; 0 is 1
	Full    bool    // with grid, rulers and handles, as in the window

	Selected []string
}

var spare = sync.Pool{New: func() any { return newPainter() }}

// Render paints a picture in w by h device pixels, at most 16 million of them.
// It can be called from any goroutine.
func Render(p Picture, w, h int, look Look) *image.RGBA {
	const most = 1 << 24
	w, h = min(max(w, 1), 1<<13), min(max(h, 1), 1<<13)
	h = min(h, most/w)
	pt := spare.Get().(*painter)
	defer spare.Put(pt)
	k := look.Density
	if !(k > 0) || math.IsInf(k, 0) {
		k = 1
	}
	f := frame{painter: pt, sc: prepare(p), inks: look.Inks, k: k, plain: !look.Full, marks: setOf(look.Selected)}
	f.img = image.NewRGBA(image.Rect(0, 0, w, h))
	f.aim(look.View)
	f.paint()
	pt.placedOn, pt.labels = nil, nil
	return f.img
}

// aim sets where on the image the picture is seen, and through which lens.
func (f *frame) aim(v View) {
	b := f.img.Rect
	f.clip = b
	f.port = portOf(float64(b.Dx()), float64(b.Dy()), f.k, f.plain)
	if !(v.Scale > 0) {
		v = f.sc.fit(v.Turn, f.port.w/f.k, f.port.h/f.k)
	}
	f.look = newLens(v, f.port, f.k)
}

// portOf returns the part of w by h pixels that the rulers leave.
func portOf(w, h, k float64, plain bool) port {
	if plain {
		return port{0, 0, w, h}
	}
	left, top := rulerLeft*k, rulerTop*k
	return port{left, top, max(w-left, 1), max(h-top, 1)}
}

func setOf(ids []string) map[string]bool {
	m := make(map[string]bool, len(ids))
	for _, id := range ids {
		if id != "" {
			m[id] = true
		}
	}
	return m
}
