package floorcanvas

import (
	"encoding/binary"
	"image"
	"image/color"
	"math"
)

// surface is an opaque picture of device pixels that is painted on within clip.
type surface struct {
	img  *image.RGBA
	clip image.Rectangle
}

// paint is an opaque colour.
type paint struct{ r, g, b int32 }

func paintOf(c color.Color) paint {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return paint{int32(n.R), int32(n.G), int32(n.B)}
}

func (p paint) mixed(with paint, share float64) paint {
	m := func(a, b int32) int32 { return a + int32(math.Round(float64(b-a)*share)) }
	return paint{m(p.r, with.r), m(p.g, with.g), m(p.b, with.b)}
}

// packed is a paint as pixels hold it, red and blue in one word so that both are
// mixed in one multiplication.
type packed struct{ redBlue, green uint32 }

func (p paint) packed() packed {
	return packed{uint32(p.r) | uint32(p.b)<<16, uint32(p.g) << 8}
}

// cover lays the paint over one pixel of four bytes; coverage runs from 0 to 256.
func (p packed) cover(px []uint8, coverage int32) {
	const rb, g, a = 0x00FF00FF, 0x0000FF00, 0xFF000000
	was, part := binary.LittleEndian.Uint32(px), uint32(coverage)
	r := (was&rb + ((p.redBlue-was&rb)*part)>>8) & rb
	m := (was&g + ((p.green-was&g)*part)>>8) & g
	binary.LittleEndian.PutUint32(px, r|m|a)
}

// cover lays paint over one pixel of the image.
func (s *surface) cover(x, y int, coverage int32, p packed) {
	i := y*s.img.Stride + x*4
	p.cover(s.img.Pix[i:i+4:i+4], coverage)
}

// flood paints a rectangle.
func (s *surface) flood(r image.Rectangle, p paint) {
	r = r.Intersect(s.clip)
	if r.Empty() {
		return
	}
	first := s.img.Pix[s.img.PixOffset(r.Min.X, r.Min.Y):]
	first = first[:r.Dx()*4]
	for i := 0; i < len(first); i += 4 {
		first[i], first[i+1], first[i+2], first[i+3] = uint8(p.r), uint8(p.g), uint8(p.b), 0xFF
	}
	for y := r.Min.Y + 1; y < r.Max.Y; y++ {
		copy(s.img.Pix[s.img.PixOffset(r.Min.X, y):], first)
	}
}

// stamp lays paint through a mask whose corner is put at (x, y).
func (s *surface) stamp(mask *image.Alpha, x, y int, p paint) {
	r := mask.Rect.Sub(mask.Rect.Min).Add(image.Pt(x, y))
	seen := r.Intersect(s.clip)
	ink := p.packed()
	for py := seen.Min.Y; py < seen.Max.Y; py++ {
		row := mask.Pix[(py-y)*mask.Stride+seen.Min.X-x:]
		for px := seen.Min.X; px < seen.Max.X; px++ {
			if a := row[px-seen.Min.X]; a != 0 {
				s.cover(px, py, int32(a)+int32(a>>7), ink)
			}
		}
	}
}
