package floorcanvas

import (
	"math"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// datum draws the centre line and the baseline right across, dash and dot, each
// with its name at the end.
func (f *frame) datum() {
	ink := f.ink(theme.Datum)
	reach := math.Hypot(f.port.w, f.port.h) / f.look.per
	at := f.sc.Datum.Inverse().Apply(f.look.view.Centre)
	name := f.sc.Baseline
	if name == "" {
		name = "baseline"
	}
	f.axis(plane.Point{Y: at.Y - reach}, plane.Point{Y: at.Y + reach}, "centre line", ink)
	f.axis(plane.Point{X: at.X - reach}, plane.Point{X: at.X + reach}, name, ink)
	x, y := f.look.px(f.sc.Datum.Shift)
	f.ring(x, y, 4*f.k, 0.6*f.k, ink)
}

// axis draws one line of the datum, dashed from the origin outwards so that its
// dashes stay put while the picture is panned.
func (f *frame) axis(a, b plane.Point, name string, ink paint) {
	n := f.pen(1.1, DashDot, ink)
	ox, oy := f.look.px(f.sc.Datum.Shift)
	ax, ay := f.look.px(f.sc.Datum.Apply(a))
	bx, by := f.look.px(f.sc.Datum.Apply(b))
	for _, end := range [][2]float64{{ax, ay}, {bx, by}} {
		f.dashes(stretch{ox, oy, end[0], end[1]}, 0, n)
	}
	if seen, ok := f.trim(stretch{ax, ay, bx, by}, 0); ok && !f.plain {
		f.nameAxis(seen, name)
	}
}

// nameAxis writes a name beside the upper or the left end of what is seen of a
// line, clear of the line and of the edges.
func (f *frame) nameAxis(l stretch, name string) {
	key := keyOf(name, leastText*f.k, false)
	w, h := f.words.width(key), height(key.faceKey)
	x, y := l.x0, l.y0
	upright := math.Abs(l.y1-l.y0) > math.Abs(l.x1-l.x0)
	if (upright && l.y1 < l.y0) || (!upright && l.x1 < l.x0) {
		x, y = l.x1, l.y1
	}
	gap := 5 * f.k
	x = min(max(x+gap, f.port.x+gap), f.port.x+f.port.w-w-gap)
	if upright {
		y += gap
	} else {
		y -= h + gap/2
	}
	y = min(max(y, f.port.y+gap), f.port.y+f.port.h-h-gap)
	f.writeClear(key, x, y, f.ink(theme.Datum))
}

// plateHigh is the height of the audience's plate in toolkit pixels.
const plateHigh = 18

// audience says at the edge of the picture which way the audience is: a plate with
// an arrow, as long as the whole edge where that is straight above or below.
func (f *frame) audience() {
	dx, dy := f.look.direction(f.sc.towardsAudience())
	n := math.Hypot(dx, dy)
	if n == 0 || math.IsNaN(n) {
		return
	}
	dx, dy = dx/n, dy/n
	key := keyOf("AUDIENCE", leastText*f.k, true)
	w, h := f.words.width(key)+34*f.k, plateHigh*f.k
	mx, my := f.port.x+f.port.w/2, f.port.y+f.port.h/2
	rx, ry := f.port.w/2-w/2, f.port.h/2-h/2
	t := min(ratio(rx, dx), ratio(ry, dy))
	x, y := mx+dx*t, my+dy*t
	plate := rect{x - w/2, y - h/2, x + w/2, y + h/2}
	if math.Abs(dx) < 0.02 {
		plate.x0, plate.x1 = f.port.x, f.port.x+f.port.w
	}
	f.plate(plate)
	ink := f.ink(theme.Label)
	f.write(key, x-w/2+25*f.k, y-height(key.faceKey)/2, ink)
	ax := x - w/2 + 13*f.k
	f.line(stretch{ax - dx*6*f.k, y - dy*6*f.k, ax + dx*2*f.k, y + dy*2*f.k}, 0.8*f.k, ink)
	f.arrow(ax+dx*6*f.k, y+dy*6*f.k, dx, dy, ink)
}

func ratio(reach, d float64) float64 {
	if d == 0 {
		return math.Inf(1)
	}
	return max(reach, 0) / math.Abs(d)
}

func (f *frame) plate(r rect) {
	f.filler.polygon(&f.surface, []float64{r.x0, r.y0, r.x1, r.y0, r.x1, r.y1, r.x0, r.y1}, f.ink(theme.AudienceBand), hatch{fill: Full})
	f.closed([]float64{r.x0, r.y0, r.x1, r.y0, r.x1, r.y1, r.x0, r.y1}, 0.5, f.ink(theme.FaintLine))
}
