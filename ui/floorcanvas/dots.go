package floorcanvas

import (
	"math"

	"groundrow/ui/theme"
)

func sizeOf(d Dot) float64 {
	if d.Size <= 0 || math.IsNaN(d.Size) {
		return defaultDot
	}
	return min(d.Size, 100)
}

func (f *frame) dots() {
	for _, d := range f.sc.Dots {
		if !f.marks[d.ID] {
			f.dot(d, 1.4, f.colour(d.Colour, d.Ink))
		}
	}
}

// dot draws a sign with lines of a width in toolkit pixels.
func (f *frame) dot(d Dot, width float64, p paint) {
	x, y := f.look.px(d.At)
	r := sizeOf(d) / 2 * f.k
	if x < f.port.x-r || y < f.port.y-r || x > f.port.x+f.port.w+r || y > f.port.y+f.port.h+r {
		return
	}
	half := width * f.k / 2
	switch d.Sign {
	case Ring:
		f.ring(x, y, r-half, half, p)
	case Disc:
		f.line(stretch{x, y, x, y}, r*0.8, p)
	case Square:
		f.closed([]float64{x - r, y - r, x + r, y - r, x + r, y + r, x - r, y + r}, half, p)
	case Triangle:
		f.closed([]float64{x, y - r, x + r*0.95, y + r*0.75, x - r*0.95, y + r*0.75}, half, p)
	case Break:
		for _, dx := range [2]float64{-r / 3, r / 3} {
			f.line(stretch{x + dx - r/3, y + r, x + dx + r/3, y - r}, half*1.3, p)
		}
	case Target:
		f.ring(x, y, r*0.6, half, p)
		f.line(stretch{x - r, y, x + r, y}, half, p)
		f.line(stretch{x, y - r, x, y + r}, half, p)
	default:
		f.line(stretch{x - r, y, x + r, y}, half, p)
		f.line(stretch{x, y - r, x, y + r}, half, p)
	}
}

func (f *frame) closed(xy []float64, half float64, p paint) {
	n := len(xy)
	for i := 0; i < n; i += 2 {
		j := (i + 2) % n
		f.line(stretch{xy[i], xy[i+1], xy[j], xy[j+1]}, half, p)
	}
}

// ring paints a circle line of radius r by its distance from the middle.
func (f *frame) ring(x, y, r, half float64, p paint) {
	reach, ink := half+0.5, p.packed()
	for py := max(int(y-r-reach), f.clip.Min.Y); py < min(int(y+r+reach)+1, f.clip.Max.Y); py++ {
		for px := max(int(x-r-reach), f.clip.Min.X); px < min(int(x+r+reach)+1, f.clip.Max.X); px++ {
			d := math.Abs(math.Hypot(float64(px)+0.5-x, float64(py)+0.5-y) - r)
			if c := min(reach-d, 1); c > 0 {
				f.cover(px, py, int32(c*256), ink)
			}
		}
	}
}

func (f *frame) handles() {
	for _, h := range f.sc.Handles {
		x, y := f.look.px(h.At)
		f.handle(h.Kind, x, y)
	}
}

// handle draws one over a disc of paper, so that it is seen on any ground.
func (f *frame) handle(kind HandleKind, x, y float64) {
	k := f.k
	ink, paper := f.ink(theme.Selection), f.ink(theme.Paper)
	switch kind {
	case Pivot:
		f.line(stretch{x, y, x, y}, 9*k, paper)
		f.ring(x, y, 7*k, k, ink)
		f.line(stretch{x - 11*k, y, x + 11*k, y}, 0.7*k, ink)
		f.line(stretch{x, y - 11*k, x, y + 11*k}, 0.7*k, ink)
	case Turn:
		f.line(stretch{x, y, x, y}, 9*k, paper)
		f.ring(x, y, 6.5*k, 0.9*k, ink)
		f.arrow(x+6.5*k, y+2*k, 0, 1, ink)
		f.line(stretch{x, y, x, y}, 2*k, ink)
	case Shift:
		f.line(stretch{x, y, x, y}, 10*k, paper)
		for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			f.line(stretch{x, y, x + d[0]*6*k, y + d[1]*6*k}, 0.8*k, ink)
			f.arrow(x+d[0]*10*k, y+d[1]*10*k, d[0], d[1], ink)
		}
	default:
		f.filler.polygon(&f.surface, []float64{x - 4*k, y - 4*k, x + 4*k, y - 4*k, x + 4*k, y + 4*k, x - 4*k, y + 4*k}, paper, hatch{fill: Full})
		f.closed([]float64{x - 4*k, y - 4*k, x + 4*k, y - 4*k, x + 4*k, y + 4*k, x - 4*k, y + 4*k}, 0.8*k, ink)
	}
}

// arrow fills a head with its tip at (x, y), pointing along the unit vector d.
func (f *frame) arrow(x, y, dx, dy float64, p paint) {
	const long, wide = 5, 3.2
	bx, by := x-dx*long*f.k, y-dy*long*f.k
	wx, wy := -dy*wide*f.k, dx*wide*f.k
	f.filler.polygon(&f.surface, []float64{x, y, bx + wx, by + wy, bx - wx, by - wy}, p, hatch{fill: Full})
}
