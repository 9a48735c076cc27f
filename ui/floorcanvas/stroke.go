package floorcanvas

import (
	"image"
	"math"
)

// stretch is a straight line from one place to another, in device pixels.
type stretch struct{ x0, y0, x1, y1 float64 }

// line paints a straight line of the given half width with round ends. The
// coverage of a pixel is one pixel's ramp on its distance from the line, which
// for lines is as good as the exact area and many times faster.
func (s *surface) line(l stretch, half float64, p paint) {
	reach := half + 0.5
	l, ok := s.trim(l.settled(half), reach+1)
	if !ok {
		return
	}
	dx, dy := l.x1-l.x0, l.y1-l.y0
	length := math.Hypot(dx, dy)
	if length < 1e-6 {
		dx, dy, length = 1, 0, 0
	} else {
		dx, dy = dx/length, dy/length
	}
	st := strip{x: l.x0, y: l.y0, ux: dx, uy: dy, length: length, reach: reach, ink: p.packed(), pix: s.img.Pix, along: 4, across: s.img.Stride, clip: s.clip}
	if math.Abs(dy) > math.Abs(dx) {
		st.transpose()
		l = stretch{l.y0, l.x0, l.y1, l.x1}
	}
	st.paint(min(l.x0, l.x1), max(l.x0, l.x1))
}

// settled puts upright and level lines on whole pixels, so that they are sharp
// and equally wide.
func (l stretch) settled(half float64) stretch {
	const slack = 0.02
	snap := func(v float64) float64 {
		if int(math.Round(half*2))%2 == 1 {
			return math.Floor(v) + 0.5
		}
		return math.Round(v)
	}
	switch {
	case math.Abs(l.y0-l.y1) < slack && math.Abs(l.x0-l.x1) > 1:
		l.y0 = snap(l.y0)
		l.y1 = l.y0
	case math.Abs(l.x0-l.x1) < slack && math.Abs(l.y0-l.y1) > 1:
		l.x0 = snap(l.x0)
		l.x1 = l.x0
	}
	return l
}

// part returns the line between two fractions of its length.
func (l stretch) part(t0, t1 float64) stretch {
	dx, dy := l.x1-l.x0, l.y1-l.y0
	return stretch{l.x0 + t0*dx, l.y0 + t0*dy, l.x0 + t1*dx, l.y0 + t1*dy}
}

// trim cuts a line to the clip widened by margin; ok is false when nothing is
// left or a coordinate is no number.
func (s *surface) trim(l stretch, margin float64) (_ stretch, ok bool) {
	t0, t1, ok := s.window(l, margin)
	return l.part(t0, t1), ok
}

// window returns between which fractions of its length a line is within the clip
// widened by margin, by the parametric method of Liang and Barsky.
func (s *surface) window(l stretch, margin float64) (t0, t1 float64, ok bool) {
	dx, dy := l.x1-l.x0, l.y1-l.y0
	if math.IsNaN(dx-dx) || math.IsNaN(dy-dy) || s.clip.Empty() {
		return 0, 0, false
	}
	t1 = 1
	sides := [4][2]float64{
		{-dx, l.x0 - (float64(s.clip.Min.X) - margin)},
		{dx, float64(s.clip.Max.X) + margin - l.x0},
		{-dy, l.y0 - (float64(s.clip.Min.Y) - margin)},
		{dy, float64(s.clip.Max.Y) + margin - l.y0},
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
	ink           packed
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

// paint covers the columns from one x to another. A pixel is painted when its
// centre is within reach; rounding towards zero serves for the rows, since those
// below zero are out of the clip.
func (st *strip) paint(from, to float64) {
	a := max(int(math.Floor(from-st.reach)), st.clip.Min.X)
	b := min(int(math.Ceil(to+st.reach)), st.clip.Max.X)
	slope, thick := st.uy/st.ux, st.reach/math.Abs(st.ux)
	lean := thick * math.Abs(st.uy)
	for x := a; x < b; x++ {
		px := float64(x) + 0.5 - st.x
		mid := st.y + px*slope
		lo := max(int(mid-thick+0.5), st.clip.Min.Y)
		hi := min(int(mid+thick+0.5), st.clip.Max.Y)
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
		if c := st.reach - math.Abs(d); c > 0 {
			st.ink.cover(st.pix[i:i+4:i+4], int32(min(c, 1)*256))
		}
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
		if c := st.reach - math.Sqrt(d*d+over*over); c > 0 {
			i := x*st.along + y*st.across
			st.ink.cover(st.pix[i:i+4:i+4], int32(min(c, 1)*256))
		}
	}
}
