package tapeplace

import (
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/floorpicture"
	"groundrow/ui/suppliesplace/reckoning"
	"image/color"
)

// use is one of the uses that the tape of a run is split by.
type use int

const (
	useLines use = iota
	useOverlaps
	usePatches
	useTabs
	useSpikes
	useFigures
	useWear
	useWaste
	uses
)

// useNames in the order drawn.
var useNames = [uses]string{"lines", "overlaps", "patches", "tabs", "spikes", "figures", "laid again", "waste"}

// split returns the metres of a run by use.
func split(r supplies.Run) [uses]float64 {
	return [uses]float64{r.Lines, r.Overlaps, r.Patches, r.Tabs, r.Spikes, r.Figures, r.Wear, r.Waste}
}

// bar is one stock in the picture: its tape by use, and how much of it is there
// or coming, in metres.
type bar struct {
	row     string
	name    string
	swatch  color.Color // nil: none
	parts   [uses]float64
	total   float64
	covered float64 // on the shelf and coming; not more than what is shown
	stocked bool    // covered is known
	said    string
}

// chart is all bars and the metres that the longest takes.
type chart struct {
	bars    []bar
	longest float64
	used    [uses]bool // uses that something is needed for
	limited bool       // a bar shows how far what is there reaches
}

// chartOf shows the stocks that are needed, in their order.
func chartOf(p *prep.Production, runs []supplies.Run) chart {
	var c chart
	for _, r := range runs {
		if !(r.Total > 0) {
			continue
		}
		b := bar{row: rowOf(r.Stock), name: nameOf(p, r.Stock), parts: split(r), total: r.Total, said: barWords(p, r)}
		if s := p.Stock(r.Stock); s != nil {
			if sw, ok := floorpicture.Swatch(s.Swatch); ok {
				b.swatch = sw
			}
			b.covered, b.stocked = (r.Shelf+float64(r.Coming))*s.Roll, s.Roll > 0
		}
		for u, m := range b.parts {
			c.used[u] = c.used[u] || m > 0
		}
		c.limited = c.limited || b.short()
		c.longest = max(c.longest, b.total)
		c.bars = append(c.bars, b)
	}
	return c
}

// short tells whether what is there and coming ends within the bar.
func (b bar) short() bool { return b.stocked && b.covered > 0 && b.covered < b.total }

// limitName explains the upright that shows it.
const limitName = "shelf and orders reach to here"

// barWords says what must be done about a run.
func barWords(p *prep.Production, r supplies.Run) string {
	said := reckoning.Tape(p, r.Total)
	s := p.Stock(r.Stock)
	switch {
	case s == nil:
		return said + ": choose a tape"
	case !(s.Roll > 0):
		return said + ": roll length not known"
	case r.Buy > 0:
		return said + ": buy " + reckoning.Count(r.Buy, "roll")
	case r.Coming > 0:
		return said + ": enough with what is coming"
	}
	return said + ": enough on the shelf"
}

// Sizes of the picture, in the toolkit's units.
const (
	nameWidth   = 176
	saidWidth   = 196
	barHeight   = 15
	barRow      = 23
	keyRow      = 22
	keySide     = 13
	limitWidth  = 3
	swatchSide  = 13
	chartMargin = 6
)

// box is an upright rectangle in the toolkit's units.
type box struct{ x, y, w, h float32 }

// piece is one part of a bar, or of the key, as it is drawn.
type piece struct {
	box
	use use
}

// drawn is a chart laid out in a width.
type drawn struct {
	pieces []piece
	rows   []box // the whole row of each bar
	limits []box // the upright where what is there and coming ends; zero for none
	keys   []box // of the words of the key, by use, and of the upright; zero for what is not used
	limit  box   // the upright in the key
	height float32
}

// lay puts the chart into a width; measure tells how wide words are.
func (c chart) lay(width float32, measure func(string) float32) drawn {
	d, y := c.layKey(width, measure)
	y += keyRow + 2
	left := float32(chartMargin + nameWidth)
	room := max(40, width-left-saidWidth-chartMargin)
	for _, b := range c.bars {
		d.rows = append(d.rows, box{0, y, width, barRow})
		at := left
		for u, m := range b.parts {
			if m > 0 {
				w := room * float32(m/c.longest)
				d.pieces = append(d.pieces, piece{box{at, y + (barRow-barHeight)/2, w, barHeight}, use(u)})
				at += w
			}
		}
		limit := box{}
		if b.short() {
			limit = box{left + room*float32(b.covered/c.longest), y + 1, limitWidth, barRow - 2}
		}
		d.limits = append(d.limits, limit)
		y += barRow
	}
	d.height = y + chartMargin
	return d
}

// layKey puts the key on top and returns where its last row begins.
func (c chart) layKey(width float32, measure func(string) float32) (d drawn, y float32) {
	d.keys = make([]box, uses+1)
	x, y := float32(chartMargin), float32(chartMargin)
	put := func(name string) (sign, text box) {
		w := keySide + 5 + measure(name)
		if x+w > width-chartMargin && x > chartMargin {
			x, y = chartMargin, y+keyRow
		}
		sign, text = box{x, y + 3, keySide, keySide}, box{x + keySide + 5, y, w - keySide - 5, keyRow}
		x += w + 14
		return sign, text
	}
	for u := range uses {
		if c.used[u] {
			sign, text := put(useNames[u])
			d.pieces = append(d.pieces, piece{sign, u})
			d.keys[u] = text
		}
	}
	if c.limited {
		sign, text := put(limitName)
		d.limit = box{sign.x + keySide/2, sign.y - 2, limitWidth, keySide + 4}
		d.keys[uses] = text
	}
	return d, y
}
