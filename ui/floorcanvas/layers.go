package floorcanvas

import (
	"image/color"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

func (f *frame) colour(over color.Color, ink theme.Ink) paint {
	if over == nil {
		return f.ink(ink)
	}
	return paintOf(over)
}

// needsCasing tells whether a tape colour is so near the paper's that its line
// wants an edge to be seen: below 3:1 (WCAG 2.2, success criterion 1.4.11).
func (f *frame) needsCasing(over color.Color) bool {
	return over != nil && theme.Contrast(over, f.inks.Colour(theme.Paper)) < 3
}

func (f *frame) areas() {
	for i := range f.sc.areas {
		c := &f.sc.areas[i]
		a := &f.sc.Areas[c.index]
		if a.Fill == NoFill || len(c.pieces) != 1 || !f.visible(c) {
			continue
		}
		p := f.colour(a.Colour, a.Ink)
		if a.Fill == Tint {
			p = f.ink(theme.Paper).mixed(p, 0.12)
		}
		x, y := f.look.px(plane.Point{})
		h := hatch{fill: a.Fill, x: x, y: y, period: 9 * f.k, half: 0.45 * f.k}
		f.filler.polygon(&f.surface, f.pixels(c.pieces[0]), p, h)
	}
}

func (f *frame) outlines() {
	for i := range f.sc.areas {
		c := &f.sc.areas[i]
		if a := &f.sc.Areas[c.index]; a.Outline > 0 && f.visible(c) {
			f.runs(c, f.pen(a.Outline, a.Dash, f.colour(a.Colour, a.Ink)))
		}
	}
}

func (f *frame) lines() {
	for i := range f.sc.shapes {
		c := &f.sc.shapes[i]
		if !f.visible(c) {
			continue
		}
		s := &f.sc.Shapes[c.index]
		w := f.widthOf(s)
		if f.needsCasing(s.Colour) {
			f.runs(c, f.pen(w+1.6, s.Dash, f.ink(theme.FaintLabel)))
		}
		f.runs(c, f.pen(w, s.Dash, f.colour(s.Colour, s.Ink)))
	}
}

// widthOf returns the width of a shape's lines in toolkit pixels.
func (f *frame) widthOf(s *Shape) float64 {
	w := s.Width
	if w <= 0 {
		w = defaultWidth
	}
	return max(w, s.Metres*f.look.per/f.k)
}

// washes puts a broad band under what is selected, so that it is found by more
// than its colour.
func (f *frame) washes() {
	if len(f.marks) == 0 {
		return
	}
	wash := f.ink(theme.SelectionWash)
	for i := range f.sc.areas {
		if c := &f.sc.areas[i]; f.marks[c.id] && f.visible(c) {
			f.runs(c, f.pen(9, Solid, wash))
		}
	}
	for i := range f.sc.shapes {
		if c := &f.sc.shapes[i]; f.marks[c.id] && f.visible(c) {
			f.runs(c, f.pen(f.widthOf(&f.sc.Shapes[c.index])+8, Solid, wash))
		}
	}
	for _, d := range f.sc.Dots {
		if f.marks[d.ID] {
			x, y := f.look.px(d.At)
			f.line(stretch{x, y, x, y}, (sizeOf(d)/2+5)*f.k, wash)
		}
	}
}

// selected draws what is selected once more, thicker and in the accent.
func (f *frame) selected() {
	if len(f.marks) == 0 {
		return
	}
	accent := f.ink(theme.Selection)
	for i := range f.sc.areas {
		if c := &f.sc.areas[i]; f.marks[c.id] && f.visible(c) {
			f.runs(c, f.pen(f.sc.Areas[c.index].Outline+1.5, Solid, accent))
		}
	}
	for i := range f.sc.shapes {
		c := &f.sc.shapes[i]
		if !f.marks[c.id] || !f.visible(c) {
			continue
		}
		s := &f.sc.Shapes[c.index]
		f.runs(c, f.pen(f.widthOf(s)+1.5, s.Dash, accent))
	}
	for _, d := range f.sc.Dots {
		if f.marks[d.ID] {
			d.Size = sizeOf(d) + 3
			f.dot(d, 2.2, accent)
		}
	}
}

func (f *frame) writeLabels() {
	as := placing{f.look.per, f.look.view.Turn, f.k}
	if f.placedOn != f.sc || f.placedAs != as {
		f.labels, f.placedOn, f.placedAs = f.sc.place(f.words, f.look, f.k), f.sc, as
	}
	ox, oy := f.look.px(plane.Point{})
	for i := range f.labels {
		l := &f.labels[i]
		if l.dropped {
			continue
		}
		if l.moved {
			f.leader(l, ox, oy)
		}
		ink := f.ink(l.Ink)
		if f.marks[l.ID] {
			ink = f.ink(theme.Selection)
		}
		f.writeClear(l.key, l.box.x0+ox, l.box.y0+oy, ink)
		if f.marks[l.ID] {
			f.underline(l.box, ox, oy, ink)
		}
	}
}

func (f *frame) leader(l *placed, ox, oy float64) {
	x := min(max(l.x, l.box.x0), l.box.x1)
	y := min(max(l.y, l.box.y0), l.box.y1)
	f.line(stretch{l.x + ox, l.y + oy, x + ox, y + oy}, 0.5*f.k, f.ink(theme.FaintLabel))
}

func (f *frame) underline(b rect, ox, oy float64, p paint) {
	y := b.y1 + oy + f.k
	f.line(stretch{b.x0 + ox, y, b.x1 + ox, y}, f.k, p)
}
