package pagepicture

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/vector"
)

// surface is the picture that a page is drawn into.
type surface struct {
	img    *image.RGBA
	scale  float64 // pixels to a point
	height float64 // of the page, in points
	raster vector.Rasterizer
	faces  map[faceKey]*face
}

func newSurface(w, h int, scale, height float64) *surface {
	s := &surface{img: image.NewRGBA(image.Rect(0, 0, w, h)), scale: scale, height: height, faces: map[faceKey]*face{}}
	draw.Draw(s.img, s.img.Bounds(), image.White, image.Point{}, draw.Src)
	return s
}

// place takes points from the lower left corner of the page to pixels from the
// upper left one of the picture. What is far outside is held near the page, so
// that nothing overflows.
func (s *surface) place(x, y float64) point {
	far := func(v float64) float64 {
		if math.IsNaN(v) {
			return 0
		}
		return max(-maxDashed/4, min(maxDashed/4, v))
	}
	return point{far(x * s.scale), far((s.height - y) * s.scale)}
}

// mask covers what the outlines enclose; ok is false when that lies outside.
func (s *surface) mask(outlines [][]point) (m *image.Alpha, ok bool) {
	box := bounds(outlines).Intersect(s.img.Bounds())
	if box.Empty() {
		return nil, false
	}
	s.raster.Reset(box.Dx(), box.Dy())
	at := func(p point) (x, y float32) {
		return float32(p.x - float64(box.Min.X)), float32(p.y - float64(box.Min.Y))
	}
	for _, o := range outlines {
		x, y := at(o[0])
		s.raster.MoveTo(x, y)
		for _, p := range o[1:] {
			x, y := at(p)
			s.raster.LineTo(x, y)
		}
		s.raster.ClosePath()
	}
	m = image.NewAlpha(box)
	s.raster.Draw(m, box, image.Opaque, image.Point{})
	return m, true
}

// bounds is the box of pixels that the outlines touch.
func bounds(outlines [][]point) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, o := range outlines {
		for _, p := range o {
			x0, y0 = min(x0, p.x), min(y0, p.y)
			x1, y1 = max(x1, p.x), max(y1, p.y)
		}
	}
	if x0 > x1 {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1))+1, int(math.Ceil(y1))+1)
}

// paint lays a colour through a mask and the clip.
func (s *surface) paint(outlines [][]point, c color.NRGBA, clip *image.Alpha) {
	if m, ok := s.mask(outlines); ok {
		meet(m, clip)
		draw.DrawMask(s.img, m.Bounds(), image.NewUniform(c), image.Point{}, m, m.Bounds().Min, draw.Over)
	}
}

// meet takes from a mask what the clip does not let through.
func meet(m, clip *image.Alpha) {
	if clip == nil {
		return
	}
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			i := m.PixOffset(x, y)
			m.Pix[i] = uint8(int(m.Pix[i]) * int(clip.AlphaAt(x, y).A) / 255)
		}
	}
}

func (s *surface) fill(p path, c color.NRGBA, clip *image.Alpha) {
	s.paint(outlinesOf(p), c, clip)
}

func outlinesOf(p path) [][]point {
	var out [][]point
	for _, r := range p.runs {
		if len(r.points) > 2 {
			out = append(out, r.points)
		}
	}
	return out
}

// clipped returns the clip that remains when the path is added to it.
func (s *surface) clipped(p path, clip *image.Alpha) *image.Alpha {
	m, ok := s.mask(outlinesOf(p))
	if !ok {
		return image.NewAlpha(image.Rectangle{})
	}
	meet(m, clip)
	return m
}

// thinnest is how wide a line is drawn at least, in pixels: thinner ones would
// fade on a small picture.
const thinnest = 0.6

func (s *surface) stroke(p path, st state) {
	half := max(thinnest, st.width*s.scale) / 2
	var quads [][]point
	for _, r := range p.runs {
		pieces := r.pieces()
		if st.dash != nil {
			pattern := make([]float64, len(st.dash))
			for i, d := range st.dash {
				pattern[i] = d * s.scale
			}
			pieces = dashed(pieces, pattern)
		}
		for _, q := range pieces {
			if quad, ok := widened(q, half); ok {
				quads = append(quads, quad)
			}
		}
	}
	s.paint(quads, st.stroke, st.clip)
}

// widened returns the outline of a piece of a line, always turning the same way,
// so that overlapping pieces do not cancel out.
func widened(q [2]point, half float64) ([]point, bool) {
	length := q[0].to(q[1])
	if !(length > 0) {
		return nil, false
	}
	nx, ny := (q[1].y-q[0].y)/length*half, -(q[1].x-q[0].x)/length*half
	return []point{
		{q[0].x + nx, q[0].y + ny}, {q[1].x + nx, q[1].y + ny},
		{q[1].x - nx, q[1].y - ny}, {q[0].x - nx, q[0].y - ny},
	}, true
}
