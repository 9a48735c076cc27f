package floorcanvas

import (
	"image"
	"image/draw"
	"math"

	"golang.org/x/image/vector"
)

// filler fills polygons; it keeps its buffers from one to the next.
type filler struct {
	raster vector.Rasterizer
	mask   image.Alpha
}

// hatch is a pattern fixed to the picture: its lines pass through (x, y).
type hatch struct {
	fill   Fill
	x, y   float64
	period float64 // device pixels between lines
	half   float64 // half the width of a line
}

// polygon fills the inside of a closed run of device pixels, x and y in turn,
// with all of the paint, or with a hatch of it.
func (f *filler) polygon(s *surface, xy []float64, p paint, h hatch) {
	xy = clippedPolygon(xy, s.clip)
	if len(xy) < 6 {
		return
	}
	box := boundsOf(xy).Intersect(s.clip)
	if box.Empty() {
		return
	}
	f.trace(xy, box)
	ink := p.packed()
	for y := box.Min.Y; y < box.Max.Y; y++ {
		row := f.mask.Pix[(y-box.Min.Y)*f.mask.Stride:]
		for x := box.Min.X; x < box.Max.X; x++ {
			a := int32(row[x-box.Min.X])
			if a == 0 {
				continue
			}
			a += a >> 7
			if h.fill >= Rising {
				a = int32(float64(a) * h.at(x, y))
			}
			s.cover(x, y, a, ink)
		}
	}
}

func (f *filler) trace(xy []float64, box image.Rectangle) {
	w, h := box.Dx(), box.Dy()
	f.raster.Reset(w, h)
	f.raster.DrawOp = draw.Src
	ox, oy := float64(box.Min.X), float64(box.Min.Y)
	f.raster.MoveTo(float32(xy[0]-ox), float32(xy[1]-oy))
	for i := 2; i < len(xy); i += 2 {
		f.raster.LineTo(float32(xy[i]-ox), float32(xy[i+1]-oy))
	}
	f.raster.ClosePath()
	if cap(f.mask.Pix) < w*h {
		f.mask.Pix = make([]uint8, w*h)
	}
	f.mask = image.Alpha{Pix: f.mask.Pix[:w*h], Stride: w, Rect: image.Rect(0, 0, w, h)}
	f.raster.Draw(&f.mask, f.mask.Rect, image.Opaque, image.Point{})
}

// at returns how much of a pixel the hatch covers.
func (h hatch) at(x, y int) float64 {
	px, py := float64(x)+0.5-h.x, float64(y)+0.5-h.y
	var c float64
	if h.fill == Rising || h.fill == Crossed {
		c = h.stripe((px + py) * math.Sqrt2 / 2)
	}
	if h.fill == Falling || h.fill == Crossed {
		c = max(c, h.stripe((px-py)*math.Sqrt2/2))
	}
	return c
}

func (h hatch) stripe(d float64) float64 {
	d = math.Abs(d - math.Round(d/h.period)*h.period)
	return min(max(h.half+0.5-d, 0), 1)
}

func boundsOf(xy []float64) image.Rectangle {
	x0, y0, x1, y1 := xy[0], xy[1], xy[0], xy[1]
	for i := 2; i < len(xy); i += 2 {
		x0, x1 = min(x0, xy[i]), max(x1, xy[i])
		y0, y1 = min(y0, xy[i+1]), max(y1, xy[i+1])
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1)))
}

// clippedPolygon cuts a polygon to a rectangle, side by side, by the method of
// Sutherland and Hodgman. Far away corners would lose their precision in the
// rasteriser, and would make its buffer huge.
func clippedPolygon(xy []float64, r image.Rectangle) []float64 {
	sides := [4]struct {
		axis  int
		at    float64
		above bool
	}{{0, float64(r.Min.X), true}, {0, float64(r.Max.X), false}, {1, float64(r.Min.Y), true}, {1, float64(r.Max.Y), false}}
	for _, side := range sides {
		xy = cutPolygon(xy, side.axis, side.at, side.above)
	}
	return xy
}

func cutPolygon(xy []float64, axis int, at float64, above bool) []float64 {
	inside := func(v float64) bool { return (v >= at) == above || v == at }
	out := make([]float64, 0, len(xy)+8)
	for i := 0; i < len(xy); i += 2 {
		j := (i + len(xy) - 2) % len(xy)
		a, b := xy[j+axis], xy[i+axis]
		if inside(a) != inside(b) {
			t := (at - a) / (b - a)
			q := [2]float64{xy[j] + (xy[i]-xy[j])*t, xy[j+1] + (xy[i+1]-xy[j+1])*t}
			q[axis] = at
			out = append(out, q[0], q[1])
		}
		if inside(b) {
			out = append(out, xy[i], xy[i+1])
		}
	}
	return out
}
