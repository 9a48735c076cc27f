package floorcanvas

import (
	"image"
	"math"
)

// line paints a straight line of the given half width with round ends. The
// coverage of a pixel is one pixel's ramp on its distance from the line, which
// for lines is as good as the exact area and many times faster.
func (s *surface) line(x0, y0, x1, y1, half float64, p paint) {
	x0, y0, x1, y1 = settled(x0, y0, x1, y1, half)
	reach := half + 0.5
	x0, y0, x1, y1, ok := s.trim(x0, y0, x1, y1, reach+1)
	if !ok {
		return
	}
	dx, dy := x1-x0, y1-y0
	length := math.Hypot(dx, dy)
	if length < 1e-6 {
		dx, dy, length = 1, 0, 0
	} else {
		dx, dy = dx/length, dy/length
	}
	st := strip{x: x0, y: y0, ux: dx, uy: dy, length: length, reach: reach, p: p, pix: s.img.Pix, along: 4, across: s.img.Stride, clip: s.clip}
	if math.Abs(dy) > math.Abs(dx) {
		st.transpose()
		x0, x1 = y0, y1
	}
	st.paint(min(x0, x1), max(x0, x1))
}

// settled puts upright and level lines on whole pixels, so that they are sharp
// and equally wide.
func settled(x0, y0, x1, y1, half float64) (float64, float64, float64, float64) {
	const slack = 0.02
	snap := func(v float64) float64 {
		if int(math.Round(half*2))%2 == 1 {
			return math.Floor(v) + 0.5
		}
		return math.Round(v)
	}
	switch {
	case math.Abs(y0-y1) < slack && math.Abs(x0-x1) > 1:
		y0 = snap(y0)
		y1 = y0
	case math.Abs(x0-x1) < slack && math.Abs(y0-y1) > 1:
		x0 = snap(x0)
		x1 = x0
	}
	return x0, y0, x1, y1
}

// trim cuts a line to the clip widened by margin, by the parametric method of
// Liang and Barsky; ok is false when nothing is left or a coordinate is no number.
func (s *surface) trim(x0, y0, x1, y1, margin float64) (_, _, _, _ float64, ok bool) {
	t0, t1, ok := s.window(x0, y0, x1, y1, margin)
	if !ok {
		return 0, 0, 0, 0, false
	}
	dx, dy := x1-x0, y1-y0
	return x0 + t0*dx, y0 + t0*dy, x0 + t1*dx, y0 + t1*dy, true
}

// window returns between which fractions of its length a line is within the clip
// widened by margin.
func (s *surface) window(x0, y0, x1, y1, margin float64) (t0, t1 float64, ok bool) {
	dx, dy := x1-x0, y1-y0
	if math.IsNaN(dx-dx) || math.IsNaN(dy-dy) || s.clip.Empty() {
		return 0, 0, false
	}
	t1 = 1
	sides := [4][2]float64{
		{-dx, x0 - (float64(s.clip.Min.X) - margin)},
		{dx, float64(s.clip.Max.X) + margin - x0},
		{-dy, y0 - (float64(s.clip.Min.Y) - margin)},
		{dy, float64(s.clip.Max.Y) + margin - y0},
	}
	for _, side := range sides {
		d, q := side[0], side[1]
		switch {
		case d == 0 && q < 0:
			return 0, 0, false
		case d < 0:
			t0 = max(t0, q/d)
		case d > 0:
			t1 = min(t1, q/d)
		}
	}
	return t0, t1, t0 <= t1
}

// strip is a line being painted: where it starts, its direction, and how far from
// it paint reaches. Its x is the axis along which it is longer.
type strip struct {
	x, y, ux, uy  float64
	length, reach float64
	p             paint
	pix           []uint8
	along, across int // bytes from one pixel to the next in x and in y
	clip          image.Rectangle
}

// transpose swaps the axes, so that a steep line is painted as a flat one is.
func (st *strip) transpose() {
	st.x, st.y, st.ux, st.uy = st.y, st.x, st.uy, st.ux
	st.along, st.across = st.across, st.along
	c := st.clip
	st.clip = image.Rect(c.Min.Y, c.Min.X, c.Max.Y, c.Max.X)
}

// paint covers the columns from one x to another.
func (st *strip) paint(from, to float64) {
	a := max(int(math.Floor(from-st.reach)), st.clip.Min.X)
	b := min(int(math.Ceil(to+st.reach)), st.clip.Max.X)
	slope, thick := st.uy/st.ux, st.reach/math.Abs(st.ux)
	lean := thick * math.Abs(st.uy)
	for x := a; x < b; x++ {
		px := float64(x) + 0.5 - st.x
		mid := st.y + px*slope
		lo := max(int(math.Floor(mid-thick)), st.clip.Min.Y)
		hi := min(int(math.Ceil(mid+thick)), st.clip.Max.Y)
		if at := px / st.ux; at >= lean && at <= st.length-lean {
			st.inside(x, lo, hi, px)
		} else {
			st.nearEnd(x, lo, hi, px)
		}
	}
}

// inside covers a column that no end of the line touches.
func (st *strip) inside(x, lo, hi int, px float64) {
	d := px*st.uy - (float64(lo)+0.5-st.y)*st.ux
	i := x*st.along + lo*st.across
	for range hi - lo {
		st.cover(i, st.reach-math.Abs(d))
		d -= st.ux
		i += st.across
	}
}

// nearEnd covers a column where the distance can be that from an end.
func (st *strip) nearEnd(x, lo, hi int, px float64) {
	for y := lo; y < hi; y++ {
		py := float64(y) + 0.5 - st.y
		d := px*st.uy - py*st.ux
		over := px*st.ux + py*st.uy
		over = max(-over, over-st.length, 0)
		st.cover(x*st.along+y*st.across, st.reach-math.Sqrt(d*d+over*over))
	}
}

// cover lays the paint over the pixel at byte i.
func (st *strip) cover(i int, coverage float64) {
	if coverage <= 0 {
		return
	}
	px := st.pix[i : i+3 : i+3]
	if coverage >= 1 {
		px[0], px[1], px[2] = uint8(st.p.r), uint8(st.p.g), uint8(st.p.b)
		return
	}
	a := int32(coverage * 256)
	px[0] += uint8((st.p.r - int32(px[0])) * a >> 8)
	px[1] += uint8((st.p.g - int32(px[1])) * a >> 8)
	px[2] += uint8((st.p.b - int32(px[2])) * a >> 8)
}
