package drawingin

import (
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plane"
)

// drawn is one page of a drawing on its way in, with what has been answered
// about it: which lines, what scale, where the datum is.
type drawn struct {
	sheet *linework.Sheet
	take  []bool   // by item: it comes in
	why   []string // by item: why it is proposed to leave it aside; empty: it is not
	scale scaleAnswer
	datum datumAnswer
}

// scaleAnswer is how long things really are.
type scaleAnswer struct {
	perUnit float64 // metres on the floor in one drawing unit; zero: nobody knows yet
	why     string  // a sentence on how it is known
	sure    bool    // a person has said so, or checked it
}

// datumAnswer is where the plan's axes lie in the drawing.
type datumAnswer struct {
	origin plane.Point // where the centre line meets the baseline, drawing units
	up     float64     // direction of upstage in the drawing, radians from its X
	why    string
	set    bool // false: nobody knows yet
	sure   bool // a person has said so
}

// newDrawn starts with everything that is seen coming in, the audience at the
// foot of the page.
func newDrawn(s *linework.Sheet) *drawn {
	d := &drawn{sheet: s, take: make([]bool, len(s.Items)), why: make([]string, len(s.Items))}
	d.datum.up = math.Pi / 2
	for i := range s.Items {
		d.take[i] = s.Items[i].Shown()
		if !d.take[i] {
			d.why[i] = "it is not seen in the drawing"
		}
	}
	return d
}

// scenery returns the lines that are not proposed to be left aside.
func (d *drawn) scenery() sense.Set {
	var out sense.Set
	for i, why := range d.why {
		if why == "" {
			out = append(out, i)
		}
	}
	return out
}

// perUnit is what the page is shown at: the scale as far as it is known, else
// as if the page were the floor.
func (d *drawn) perUnit() float64 {
	switch {
	case d.scale.perUnit > 0:
		return d.scale.perUnit
	case d.sheet.Unit > 0:
		return float64(d.sheet.Unit)
	}
	return 1
}

// shown returns the point of the picture, in metres, that stands for a point of
// the drawing.
func (d *drawn) shown(p plane.Point) plane.Point { return p.Times(d.perUnit()) }

// on returns the point of the drawing under a point of the picture.
func (d *drawn) on(p plane.Point) plane.Point { return p.Times(1 / d.perUnit()) }

// axes takes plan axes to the axes of the picture, both in metres.
func (d *drawn) axes() plane.Motion {
	return sense.Axes(d.datum.origin, d.datum.up-math.Pi/2, d.perUnit())
}

// set takes or leaves items.
func (d *drawn) set(items []int, on bool) {
	for _, i := range items {
		if i >= 0 && i < len(d.take) {
			d.take[i] = on
		}
	}
}

// taken counts the items that come in.
func (d *drawn) taken() int {
	n := 0
	for _, on := range d.take {
		if on {
			n++
		}
	}
	return n
}

// missing tells what is still to be answered before anything can come in; empty:
// nothing.
func (d *drawn) missing() string {
	switch {
	case d.taken() == 0:
		return "No line is taken. Tick the layers that the plan is drawn on, or click lines in the drawing."
	case !(d.scale.perUnit > 0):
		return "The scale is not known. Type it, or give one known dimension."
	case !d.datum.set:
		return "The datum is not known. Show where the centre line meets the baseline."
	}
	return ""
}
