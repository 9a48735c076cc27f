package picture

import (
	"image"
	"image/color"
)

// reader returns a way to read single pixels that does not allocate for the kinds
// of picture that the decoders make.
func reader(img image.Image) image.RGBA64Image {
	if r, ok := img.(image.RGBA64Image); ok {
		return r
	}
	return slow{img}
}

type slow struct{ image.Image }

func (s slow) RGBA64At(x, y int) color.RGBA64 {
	r, g, b, a := s.At(x, y).RGBA()
	return color.RGBA64{R: uint16(r), G: uint16(g), B: uint16(b), A: uint16(a)}
}

// darkness returns how dark a pixel is on white paper, from 0, white, to 1. What
// shows through is paper. The weights are those of ITU-R BT.601.
func darkness(c color.RGBA64) float64 {
	const full = 0xffff
	light := 0.299*float64(c.R) + 0.587*float64(c.G) + 0.114*float64(c.B) + full - float64(c.A)
	return min(max(1-light/full, 0), 1)
}
