package pagepicture

import (
	"image"
	"image/draw"
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"groundrow/assets/fonts"
)

// faceKey is a typeface at a size in eighths of a pixel.
type faceKey struct {
	bold    bool
	eighths int
}

type face struct{ font.Face }

// typefaces are those of the sheets, read once.
var typefaces = sync.OnceValues(func() (regular, bold *opentype.Font) {
	return parsed(fonts.Regular), parsed(fonts.Bold)
})

// parsed reads a font that is built in; nil when it cannot be read, which leaves
// the words out of the pictures.
func parsed(ttf []byte) *opentype.Font {
	f, err := opentype.Parse(ttf)
	if err != nil {
		return nil
	}
	return f
}

// face returns a typeface at a size in pixels; nil when there is none.
func (s *surface) face(bold bool, size float64) *face {
	key := faceKey{bold, int(math.Round(size * 8))}
	if key.eighths < 1 || key.eighths > 8*maxWidth {
		return nil
	}
	if f, ok := s.faces[key]; ok {
		return f
	}
	regular, heavy := typefaces()
	of := regular
	if bold {
		of = heavy
	}
	var made *face
	if of != nil {
		if f, err := opentype.NewFace(of, &opentype.FaceOptions{Size: float64(key.eighths) / 8, DPI: 72}); err == nil {
			made = &face{f}
		}
	}
	s.faces[key] = made
	return made
}

// write draws words from a place on their baseline, in points from the lower
// left corner of the page.
func (s *surface) write(words string, at [2]float64, st state, bold bool) {
	f := s.face(bold, st.size*s.scale)
	if f == nil {
		return
	}
	p := s.place(at[0], at[1])
	dot := fixed.Point26_6{X: fixed.Int26_6(math.Round(p.x * 64)), Y: fixed.Int26_6(math.Round(p.y * 64))}
	ink := image.NewUniform(st.fill)
	for _, r := range words {
		box, mask, from, advance, ok := f.Glyph(dot, r)
		if !ok {
			continue
		}
		if st.clip != nil {
			mask, from = clippedGlyph(mask, from, box, st.clip), box.Min
		}
		draw.DrawMask(s.img, box, ink, image.Point{}, mask, from, draw.Over)
		dot.X += advance
	}
}

// clippedGlyph copies a glyph's mask into place without what the clip hides.
func clippedGlyph(mask image.Image, from image.Point, box image.Rectangle, clip *image.Alpha) image.Image {
	m := image.NewAlpha(box)
	draw.Draw(m, box, mask, from, draw.Src)
	meet(m, clip)
	return m
}
