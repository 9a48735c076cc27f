package sheets

import (
	"fmt"

	"groundrow/tapeout/length"
)

// key draws the scale bar and, beside it, what the signs mean.
func (d drawing) key(p *press, plan sheetPlan, v view) {
	p.scaleBar(plan.bar.x, plan.bar.y+2, v, d.Unit)
	rows := (len(d.Entries) + plan.columns - 1) / plan.columns
	if rows == 0 {
		return
	}
	w := plan.key.w / float64(plan.columns)
	for i, e := range d.Entries {
		x := plan.key.x + float64(i/rows)*w
		y := plan.key.y + 1 + float64(i%rows)*keyLine
		p.sign(e, x, y+keyLine/2)
		p.textIn(inset{x + keySample + 2, 0, w - keySample - 4, 0}, y+keyLine*0.72, e.Text, smallType, left)
	}
}

// sign draws the sample of an entry, its middle height at y.
func (p *press) sign(e entry, x, y float64) {
	switch e.Sign {
	case lineSign:
		p.take(e.Pen)
		p.pdf.Line(x, y, x+keySample, y)
		if e.Pen == wallPen {
			p.hollow()
			p.pdf.Line(x, y, x+keySample, y)
			p.filled()
		}
	case spotSign:
		p.spotSign(e.Spot, x+keySample/2, y)
	case solidSign, clearSign:
		r := inset{x + keySample/2 - 4, y - 1.6, 8, 3.2}
		p.pdf.ClipRect(r.x, r.y, r.w, r.h, false)
		p.take(pen{0.15, "solid"})
		for dx := -4.0; dx < 10; dx += 1.6 {
			p.pdf.Line(r.x+dx, r.y, r.x+dx+r.h, r.bottom())
			if e.Sign == solidSign {
				p.pdf.Line(r.x+dx+r.h, r.y, r.x+dx, r.bottom())
			}
		}
		p.pdf.ClipEnd()
		p.box(r, 0.25)
	}
}

// spotSign draws the sign of a spot.
func (p *press) spotSign(k spotKind, x, y float64) {
	p.take(pen{0.3, "solid"})
	switch k {
	case dot:
		p.disc(x, y, 0.75)
	case weak:
		p.pdf.SetFillColor(255, 255, 255)
		p.pdf.Circle(x, y, 1.1, "FD")
		p.disc(x, y, 0.45)
	case ring:
		p.rule(x-1.1, y-1.1, x+1.1, y+1.1, 0.35)
		p.rule(x-1.1, y+1.1, x+1.1, y-1.1, 0.35)
	case pivot:
		p.pdf.SetFillColor(0, 0, 0)
		p.pdf.MoveTo(x, y-2.2)
		p.pdf.LineTo(x+2, y+1.3)
		p.pdf.LineTo(x-2, y+1.3)
		p.pdf.ClosePath()
		p.pdf.DrawPath("F")
	case number:
		p.rule(x, y-1.3, x, y+1.3, 0.3)
	case broken:
		p.rule(x-1.1, y+1.5, x+0.1, y-1.5, 0.4)
		p.rule(x-0.1, y+1.5, x+1.1, y-1.5, 0.4)
	case stopping:
		p.box(inset{x - 1, y - 1, 2, 2}, 0.35)
	case target:
		p.pdf.Circle(x, y, 1.3, "D")
		p.rule(x-2.2, y, x+2.2, y, 0.3)
		p.rule(x, y-2.2, x, y+2.2, 0.3)
	}
}

// barLengths are what a scale bar may stand for, in feet or metres.
var barLengths = []float64{1, 2, 4, 5, 10, 20, 40, 50, 100, 200, 500, 1000, 2000}

// longestBar is the room for the bar itself, in millimetres.
const longestBar = 80.0

// barOf returns the longest usual bar that there is room for, in feet or metres.
func barOf(v view, unit float64) float64 {
	best := barLengths[0]
	for _, n := range barLengths {
		if v.mm(n*unit) <= longestBar {
			best = n
		}
	}
	return best
}

// scaleBar draws a bar that stands for a round length, and says how long it must
// be on the paper.
func (p *press) scaleBar(x, y float64, v view, u length.Unit) {
	unit, name := 1.0, "m"
	if !u.Metric() {
		unit, name = length.Foot, "ft"
	}
	n := barOf(v, unit)
	w := v.mm(n * unit)
	const h, parts = 2.6, 4
	for i := range parts {
		if i%2 == 0 {
			p.fill(inset{x + w*float64(i)/parts, y, w / parts, h}, 0)
		}
	}
	p.box(inset{x, y, w, h}, 0.1)
	t := type_{bold: true, size: 9}
	base := y + h + 3.6
	for i := range parts + 1 {
		if i%2 == 1 {
			continue
		}
		s := fmt.Sprintf("%g", n*float64(i)/parts)
		if i == parts {
			s += " " + name
		}
		at := x + w*float64(i)/parts - t.width(s)/2
		p.text(max(at, x), base, s, t)
	}
	p.text(x, base+4.4, clean("Scale "+v.scale.String()+" on "+p.size.Name+"."), strongType)
	// A step is written in inches without feet, which is how a ruler is read.
	ruler := length.StepText(length.FeetInches, w/1000)
	p.text(x, base+8.4, clean(fmt.Sprintf("The bar is %.1f mm (%s) long on paper. If not, the print is not to scale.", w, ruler)), type_{size: 8})
}
