package floorcanvas

import (
	"math"

	"groundrow/tapeout/plane"
)

// View is which part of a picture is looked at, and how.
type View struct {
	Centre plane.Point // in the middle of the drawing
	Scale  float64     // metres to one toolkit pixel; 0 or less asks for a fit
	Turn   float64     // radians by which the picture is turned counter-clockwise
}

// Bounds of the scale: a sixteenth of an inch fills a hand's breadth, or a town
// fits on the screen.
const (
	finest   = 1e-5
	coarsest = 5.0
)

func (v View) sound() View {
	if math.IsNaN(v.Scale) || v.Scale <= 0 {
		v.Scale = 0.02
	}
	v.Scale = min(max(v.Scale, finest), coarsest)
	if !v.Centre.Finite() {
		v.Centre = plane.Point{}
	}
	v.Centre.X = min(max(v.Centre.X, -farthest), farthest)
	v.Centre.Y = min(max(v.Centre.Y, -farthest), farthest)
	if math.IsNaN(v.Turn) || math.IsInf(v.Turn, 0) {
		v.Turn = 0
	}
	return v
}

// port is the part of the widget in which the picture is seen, in pixels.
type port struct{ x, y, w, h float64 }

// lens takes the picture's metres to pixels and back. Pixel y grows downwards.
type lens struct {
	view     View
	sin, cos float64
	cx, cy   float64
	per      float64 // pixels to a metre
}

// newLens looks through p; k is how many of its pixels make one of the toolkit's.
func newLens(v View, p port, k float64) lens {
	v = v.sound()
	s, c := math.Sincos(v.Turn)
	return lens{view: v, sin: s, cos: c, cx: p.x + p.w/2, cy: p.y + p.h/2, per: k / v.Scale}
}

// px returns the pixel of a point.
func (l *lens) px(p plane.Point) (x, y float64) {
	dx, dy := p.X-l.view.Centre.X, p.Y-l.view.Centre.Y
	return l.cx + (l.cos*dx-l.sin*dy)*l.per, l.cy - (l.sin*dx+l.cos*dy)*l.per
}

// point returns what is under a pixel.
func (l *lens) point(x, y float64) plane.Point {
	dx, dy := (x-l.cx)/l.per, (l.cy-y)/l.per
	return plane.Point{
		X: l.view.Centre.X + l.cos*dx + l.sin*dy,
		Y: l.view.Centre.Y - l.sin*dx + l.cos*dy,
	}
}

// direction returns where a displacement points on the screen, in pixels to a
// metre.
func (l *lens) direction(d plane.Point) (x, y float64) {
	return (l.cos*d.X - l.sin*d.Y) * l.per, -(l.sin*d.X + l.cos*d.Y) * l.per
}

// seen returns the smallest box of the picture that holds the whole port.
func (l *lens) seen(p port) plane.Box {
	b, _ := plane.BoxOf(l.point(p.x, p.y), l.point(p.x+p.w, p.y), l.point(p.x, p.y+p.h), l.point(p.x+p.w, p.y+p.h))
	return b
}

// zoomed returns the view at factor times the magnification that keeps the point
// under pixel (x, y) where it is.
func (l *lens) zoomed(factor, x, y float64) View {
	v := l.view
	fixed := l.point(x, y)
	v.Scale = min(max(v.Scale/factor, finest), coarsest)
	v.Centre = fixed.Add(v.Centre.Sub(fixed).Times(v.Scale / l.view.Scale))
	return v
}

// fitted returns the view of a box in a port of w by h toolkit pixels, with a
// margin, at the given turn.
func fitted(b plane.Box, turn, w, h float64) View {
	corners := []plane.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
	m := plane.Motion{Turn: turn}
	for i, c := range corners {
		corners[i] = m.Apply(c)
	}
	t, _ := plane.BoxOf(corners...)
	const margin = 1.1
	scale := max(t.Width()*margin/max(w, 1), t.Height()*margin/max(h, 1))
	if scale <= 0 {
		scale = 0.01
	}
	return View{Centre: b.Centre(), Scale: scale, Turn: turn}.sound()
}
