package floorcanvas

import (
	"encoding/binary"
	"image"
	"math"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// Backdrop is a scanned drawing that lies under everything else, to be traced. It
// is seen in the ink of faint words on the paper, so that lines drawn over it stand
// out by day and by night.
type Backdrop struct {
	Scan *Scan

	// PerPixel is how many metres a pixel is wide. Place takes the scan's axes to the
	// picture's: the origin at its upper left corner, Y upwards, metres.
	PerPixel float64
	Place    plane.Motion

	// Snap, when there is one, offers a point of the scan near p, no farther off than
	// within metres.
	Snap func(p plane.Point, within float64) (plane.Point, bool)
}

// SnapDark is what the pointer is drawn to on a backdrop.
const SnapDark = "dark line"

// Scan is a picture made ready to be seen at any size. Making one takes a while;
// it is never changed and can be in any number of pictures.
type Scan struct {
	levels []shades // each half the size of the one before
}

// shades are how dark the pixels of a picture are, row by row, 255 being black.
type shades struct {
	w, h int
	dark []uint8
}

// NewScan makes a picture ready. What shows through counts as white paper.
func NewScan(img image.Image) *Scan {
	s := &Scan{levels: []shades{shadesOf(img)}}
	for {
		last := s.levels[len(s.levels)-1]
		if last.w < 64 || last.h < 64 {
			return s
		}
		s.levels = append(s.levels, last.halved())
	}
}

// Size returns the width and height of the scan in pixels.
func (s *Scan) Size() (w, h int) { return s.levels[0].w, s.levels[0].h }

func shadesOf(img image.Image) shades {
	b := img.Bounds()
	s := shades{w: b.Dx(), h: b.Dy(), dark: make([]uint8, b.Dx()*b.Dy())}
	if g, ok := img.(*image.Gray); ok {
		for y := range s.h {
			for x, v := range g.Pix[y*g.Stride : y*g.Stride+s.w] {
				s.dark[y*s.w+x] = 255 - v
			}
		}
		return s
	}
	for y := range s.h {
		for x := range s.w {
			r, g, bl, a := img.At(b.Min.X+x, b.Min.Y+y).RGBA()
			light := (19595*r+38470*g+7471*bl)>>16 + 0xffff - a // ITU-R BT.601, as image/color has it
			s.dark[y*s.w+x] = uint8((0xffff - min(light, 0xffff)) >> 8)
		}
	}
	return s
}

// halved returns the picture at half its size. Of each four pixels the darkest
// counts for more than their mean, so that a thin line does not fade away.
func (s shades) halved() shades {
	out := shades{w: s.w / 2, h: s.h / 2, dark: make([]uint8, (s.w/2)*(s.h/2))}
	for y := range out.h {
		up, down := s.dark[2*y*s.w:], s.dark[(2*y+1)*s.w:]
		for x := range out.w {
			most := int(max(up[2*x], up[2*x+1], down[2*x], down[2*x+1]))
			sum := int(up[2*x]) + int(up[2*x+1]) + int(down[2*x]) + int(down[2*x+1])
			out.dark[y*out.w+x] = uint8((sum/4 + 3*most) / 4)
		}
	}
	return out
}

// sound tells whether there is something that can be seen.
func (b *Backdrop) sound() bool {
	return b != nil && b.Scan != nil && b.PerPixel > 0 && !math.IsInf(b.PerPixel, 0) &&
		near(b.Place.Shift) && !math.IsNaN(b.Place.Turn-b.Place.Turn) && len(b.Scan.levels[0].dark) > 0
}

// bounds returns the box around the scan.
func (b *Backdrop) bounds() plane.Box {
	w, h := b.Scan.Size()
	x, y := float64(w)*b.PerPixel, -float64(h)*b.PerPixel
	box, _ := plane.BoxOf(b.Place.Shift, b.Place.Apply(plane.Point{X: x}), b.Place.Apply(plane.Point{Y: y}), b.Place.Apply(plane.Point{X: x, Y: y}))
	return box
}

// backdrop paints the scan on the rows of the frame's clip.
func (f *frame) backdrop() {
	b := f.sc.Backdrop
	if !b.sound() {
		return
	}
	level, per := b.Scan.levels[0], b.PerPixel
	for _, next := range b.Scan.levels[1:] {
		if f.look.per*per >= 1 { // no pixel of the level is skipped
			break
		}
		level, per = next, per*2
	}
	tones := f.tones()
	at := b.Place.Inverse()
	source := func(x, y int) plane.Point {
		p := at.Apply(f.look.point(float64(x)+0.5, float64(y)+0.5)).Times(1 / per)
		return plane.Point{X: p.X, Y: -p.Y}
	}
	for y := f.clip.Min.Y; y < f.clip.Max.Y; y++ {
		p := source(f.clip.Min.X, y)
		step := source(f.clip.Min.X+1, y).Sub(p)
		row := f.img.Pix[f.img.PixOffset(f.clip.Min.X, y):]
		for i := range f.clip.Dx() {
			sx, sy := p.X+float64(i)*step.X, p.Y+float64(i)*step.Y
			if sx < 0 || sy < 0 || sx >= float64(level.w) || sy >= float64(level.h) {
				continue
			}
			binary.LittleEndian.PutUint32(row[4*i:], tones[level.dark[int(sy)*level.w+int(sx)]])
		}
	}
}

// tones are the pixels for every shade, from the paper to the ink of faint words.
func (f *frame) tones() *[256]uint32 {
	var out [256]uint32
	paper, ink := f.ink(theme.Paper), f.ink(theme.FaintLabel)
	for i := range out {
		p := paper.mixed(ink, float64(i)/255)
		out[i] = uint32(p.r) | uint32(p.g)<<8 | uint32(p.b)<<16 | 0xFF<<24
	}
	return &out
}
