package floorcanvas

import (
	"image"
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// Thickness of the rulers in toolkit pixels.
const (
	rulerLeft = 46
	rulerTop  = 20
)

// Divisions that a tape measure has, in metres. Each is a whole part of a later
// one, so that a fine grid falls in with a coarse one.
var (
	feetSteps  = []float64{1. / 192, 1. / 96, 1. / 48, 1. / 24, 1. / 12, 0.25, 0.5, 1, 2, 4, 10, 20, 40, 100, 200, 400, 1000}
	metreSteps = []float64{0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500}
)

// step returns the smallest division that is at least so many metres long.
func (s *scene) step(least float64) float64 {
	steps, unit := metreSteps, 1.0
	if !s.Style.Unit.Metric() {
		steps, unit = feetSteps, length.Foot
	}
	for _, d := range steps {
		if d*unit >= least {
			return d * unit
		}
	}
	return steps[len(steps)-1] * unit * math.Ceil(least/(steps[len(steps)-1]*unit))
}

// Toolkit pixels between figures and between ticks, at least.
const (
	figureGap   = 70
	figureGapUp = 40
	tickGap     = 7
	gridGap     = 14
)

// rulers show distances from the datum along the two directions of the screen.
func (f *frame) rulers() {
	left, top := int(math.Round(rulerLeft*f.k)), int(math.Round(rulerTop*f.k))
	w, h := f.img.Rect.Dx(), f.img.Rect.Dy()
	strip := f.ink(theme.Ruler)
	f.flood(image.Rect(0, 0, w, top), strip)
	f.flood(image.Rect(0, 0, left, h), strip)
	if f.sc.Unscaled {
		return
	}
	x0, y0 := f.look.px(f.sc.Datum.Shift)

	f.clip = image.Rect(left, 0, w, top).Intersect(f.img.Rect)
	f.ticks(x0, float64(left), float64(w), figureGap, func(at, size float64, figure string) {
		f.line(stretch{at, float64(top) - size, at, float64(top)}, 0.5, f.ink(theme.RulerText))
		if figure != "" {
			f.write(f.figure(figure), at+3*f.k, 2*f.k, f.ink(theme.RulerText))
		}
	})
	f.clip = image.Rect(0, top, left, h).Intersect(f.img.Rect)
	f.ticks(y0, float64(top), float64(h), figureGapUp, func(at, size float64, figure string) {
		f.line(stretch{float64(left) - size, at, float64(left), at}, 0.5, f.ink(theme.RulerText))
		key := f.figure(figure)
		if y := at - height(key.faceKey) - f.k; figure != "" && y > float64(top) {
			x := max(float64(left)-4*f.k-f.words.width(key), 2)
			f.write(key, x, y, f.ink(theme.RulerText))
		}
	})
	f.clip = f.img.Rect
	edge := f.ink(theme.FaintLine)
	f.line(stretch{0, float64(top), float64(w), float64(top)}, 0.5, edge)
	f.line(stretch{float64(left), 0, float64(left), float64(h)}, 0.5, edge)
	f.flood(image.Rect(0, 0, left, top), strip)
	unit := f.figure(f.sc.unitWord())
	f.write(unit, (float64(left)-f.words.width(unit))/2, 3*f.k, f.ink(theme.RulerText))
}

func (f *frame) figure(text string) wordKey { return keyOf(text, leastText*f.k, false) }

// ticks calls with every division between two pixels, how long its tick is, and
// the figure if it has one. zero is the pixel of the datum.
func (f *frame) ticks(zero, from, to, gap float64, draw func(at, size float64, figure string)) {
	big := f.sc.step(gap * f.k / f.look.per)
	small := f.sc.step(tickGap * f.k / f.look.per)
	every := int(math.Round(big / small))
	if every < 1 || math.Abs(big/small-float64(every)) > 1e-6 {
		small, every = big/2, 2
	}
	first := math.Ceil((from - zero) / f.look.per / small)
	for i := first; ; i++ {
		at := zero + i*small*f.look.per
		if !(at <= to) {
			return
		}
		size, figure := 4*f.k, ""
		if math.Mod(i, float64(every)) == 0 {
			size, figure = 9*f.k, f.sc.figureOf(math.Abs(i*small))
		}
		draw(at, size, figure)
	}
}

// grid lies along the datum's axes, so it turns with them.
func (f *frame) grid() {
	fine := f.sc.step(gridGap * f.k / f.look.per)
	coarse := f.sc.step(figureGap * f.k / f.look.per)
	f.gridLines(fine, f.ink(theme.Grid))
	f.gridLines(coarse, f.ink(theme.GridMajor))
}

func (f *frame) gridLines(step float64, p paint) {
	back := f.sc.Datum.Inverse()
	seen := f.look.seen(f.port)
	b, _ := plane.BoxOf(back.Apply(seen.Min), back.Apply(seen.Max),
		back.Apply(plane.Point{X: seen.Min.X, Y: seen.Max.Y}), back.Apply(plane.Point{X: seen.Max.X, Y: seen.Min.Y}))
	draw := func(a, c plane.Point) {
		x0, y0 := f.look.px(f.sc.Datum.Apply(a))
		x1, y1 := f.look.px(f.sc.Datum.Apply(c))
		f.line(stretch{x0, y0, x1, y1}, 0.5, p)
	}
	for i := math.Floor(b.Min.X / step); i <= b.Max.X/step; i++ {
		draw(plane.Point{X: i * step, Y: b.Min.Y}, plane.Point{X: i * step, Y: b.Max.Y})
	}
	for i := math.Floor(b.Min.Y / step); i <= b.Max.Y/step; i++ {
		draw(plane.Point{X: b.Min.X, Y: i * step}, plane.Point{X: b.Max.X, Y: i * step})
	}
}
