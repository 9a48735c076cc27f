package tapeplace

import (
	"image"
	"image/color"
	"math"
)

// pattern tells whether the ink covers a point of a part of a bar; places are in
// the toolkit's units, so that a hatch is as coarse on every screen.
type pattern func(x, y float64) bool

// stripes are lines of a width that repeat every pitch, across the direction.
func stripes(dx, dy, pitch, width float64) pattern {
	return func(x, y float64) bool {
		return math.Mod(math.Abs(x*dx+y*dy)+pitch*1000, pitch) < width
	}
}

// patterns give every use a look of its own, told apart without colour.
var patterns = [uses]pattern{
	useLines:    func(x, y float64) bool { return true },
	useOverlaps: stripes(math.Sqrt2/2, math.Sqrt2/2, 4.5, 2),
	usePatches: func(x, y float64) bool {
		return stripes(1, 0, 4, 1.2)(x, y) || stripes(0, 1, 4, 1.2)(x, y)
	},
	useTabs:    stripes(1, 0, 4, 1.6),
	useSpikes:  stripes(math.Sqrt2/2, -math.Sqrt2/2, 4.5, 2),
	useFigures: stripes(0, 1, 4, 1.6),
	useWear: func(x, y float64) bool {
		return math.Hypot(math.Mod(x, 4)-2, math.Mod(y, 4)-2) < 1.1
	},
	useWaste: func(x, y float64) bool { return false },
}

// paint fills the pieces into a picture of w by h device pixels, scale of them to
// a unit: the pattern in ink, the ground between in a tone, an edge around.
func paint(pieces []piece, w, h int, scale float64, ink, tone color.NRGBA) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for _, p := range pieces {
		x0, x1 := int(math.Round(float64(p.x)*scale)), int(math.Round(float64(p.x+p.w)*scale))
		y0, y1 := int(math.Round(float64(p.y)*scale)), int(math.Round(float64(p.y+p.h)*scale))
		x1 = max(x1, x0+1)
		for y := max(0, y0); y < min(h, y1); y++ {
			for x := max(0, x0); x < min(w, x1); x++ {
				edge := y == y0 || y == y1-1 || x == x0 || x == x1-1
				if edge || patterns[p.use](float64(x-x0)/scale, float64(y-y0)/scale) {
					img.SetNRGBA(x, y, ink)
				} else {
					img.SetNRGBA(x, y, tone)
				}
			}
		}
	}
	return img
}
