package sheets

import (
	"math"

	"groundrow/prep"
	"groundrow/tapeout/plane"
)

// labelSizes are the sizes of the labels on a plan, in points: the first at
// which all find room is used, so that a plan is as large in figures as it can be.
var labelSizes = []float64{14, 12, 10, 8.5, 7}

// placed is a label that has found its place.
type placed struct {
	spot
	at    inset
	lead  bool
	clear bool
}

// shown returns the spots that lie in the view.
func (d drawing) shown(v view) []spot {
	var out []spot
	for _, list := range [][]spot{d.Pivots, d.Points, d.Numbers} {
		for _, s := range list {
			if s.seen(v) {
				out = append(out, s)
			}
		}
	}
	return out
}

// hidden counts the labels that find no room in the view, however small they are.
func (d drawing) hidden(v view) int {
	_, pl := d.label(d.shown(v), labelSizes[len(labelSizes)-1], v)
	return pl.hidden
}

// label finds the places of the labels of all spots at one size.
func (d drawing) label(shown []spot, size float64, v view) ([]placed, *placing) {
	pl := d.crowd(shown, v)
	labels := make([]placed, len(shown))
	for i, s := range shown {
		labels[i] = pl.label(s, size, v)
	}
	return labels, pl
}

// spots draws signs and their labels, and says in advice where to find those that
// have no room.
func (d drawing) spots(p *press, v view, advice string) {
	shown := d.shown(v)
	labels, size := d.arrange(shown, v)
	hidden := 0
	for _, l := range labels {
		if !l.clear {
			hidden++
			continue
		}
		if l.lead {
			p.leader(l, v)
		}
		p.fill(inset{l.at.x + 0.1, l.at.y + 0.1, l.at.w - 0.2, l.at.h - 0.2}, 255)
	}
	for _, s := range shown {
		p.spotSign(s.Kind, v.x(s.At), v.y(s.At))
	}
	for _, l := range labels {
		if l.clear {
			t := l.type_(size)
			p.text(l.at.x+0.4, l.at.bottom()-0.4, clean(l.Text), t)
		}
	}
	if hidden > 0 {
		note := prep.Counted(hidden, "label") + " without room at this scale. " + advice
		p.fill(inset{v.frame.x + 1, v.frame.bottom() - 6, strongType.width(note) + 3, 5}, 255)
		p.text(v.frame.x+2, v.frame.bottom()-2.2, note, strongType)
	}
}

func (s spot) seen(v view) bool {
	if !drawable(s.At) {
		return false
	}
	x, y := v.x(s.At), v.y(s.At)
	return x >= v.frame.x && x <= v.frame.right() && y >= v.frame.y && y <= v.frame.bottom()
}

// type_ is the type of a spot's text when marks have size points.
func (s spot) type_(size float64) type_ {
	switch s.Kind {
	case naming, written, breadth:
		return type_{size: min(size, 8.5)}
	case number:
		return type_{size: min(size, 9)}
	case pivot:
		return type_{bold: true, size: min(size, 10)}
	}
	return type_{bold: true, size: size}
}

// arrange finds the places of all labels at the largest size that has room for
// them, then those of the names in what room is left.
func (d drawing) arrange(shown []spot, v view) (labels []placed, size float64) {
	sizes := labelSizes
	// Marks so many that their labels would cover a third of the paper do not
	// find room at that size: it need not be tried.
	for len(sizes) > 1 && float64(len(shown))*sizes[0]*sizes[0]*ptMM*ptMM*1.6 > v.frame.w*v.frame.h/3 {
		sizes = sizes[1:]
	}
	var pl *placing
	for _, size = range sizes {
		labels, pl = d.label(shown, size, v)
		if pl.hidden == 0 {
			break
		}
	}
	for _, s := range d.Names {
		if !s.seen(v) {
			continue
		}
		if l, ok := pl.name(s, size, v); ok {
			labels = append(labels, l)
		}
	}
	return labels, size
}

// crowd starts a placing with everything that labels must keep clear of.
func (d drawing) crowd(shown []spot, v view) *placing {
	pl := newPlacing(v.frame)
	for _, e := range d.Walls.Edges() {
		pl.ink(e, v)
	}
	for _, s := range d.Strokes {
		for _, e := range s.Edges {
			pl.ink(e, v)
		}
	}
	x, y := v.x(plane.Point{}), v.y(plane.Point{})
	pl.inkSegment(segment{x, v.frame.y, x, v.frame.bottom()})
	pl.inkSegment(segment{v.frame.x, y, v.frame.right(), y})
	for _, s := range shown {
		pl.take(inset{v.x(s.At) - 0.9, v.y(s.At) - 0.9, 1.8, 1.8})
	}
	return pl
}

func (p *placing) label(s spot, size float64, v view) placed {
	t := s.type_(size)
	w, h := t.width(clean(s.Text))+0.8, t.cap()+0.8
	ways := bearings
	if s.Kind == number {
		ways = across
	}
	at, lead, clear := p.find(inset{v.x(s.At), v.y(s.At), w, h}, seeking{ways, near, 0})
	if clear {
		p.take(at)
	} else {
		p.hidden++
	}
	return placed{s, at, lead, clear}
}

// name places the name of an element in its middle or a little above or below,
// and that of a small thing beside it; ok is false when it would cover a label.
func (p *placing) name(s spot, size float64, v view) (l placed, ok bool) {
	t := s.type_(size)
	w, h := t.width(clean(s.Text))+0.8, t.cap()+0.8
	if half := v.mm(s.Half); half > 0 && 2*half < w {
		// A name that had to stand far off would explain less than its leader hides.
		at, lead, clear := p.find(inset{v.x(s.At), v.y(s.At), w, h}, seeking{beside, near[:2], half})
		if clear {
			p.take(at)
		}
		return placed{s, at, lead, true}, clear
	}
	lowest := outside
	for _, dy := range []float64{0, -4, 4, -8, 8} {
		for _, dx := range []float64{0, -w / 3, w / 3} {
			r := inset{v.x(s.At) + dx - w/2, v.y(s.At) + dy - h/2, w, h}
			if cost := p.price(r) + math.Abs(dy) + math.Abs(dx)*0.3; cost < lowest {
				l, lowest, ok = placed{s, r, false, true}, cost, true
			}
		}
	}
	if ok {
		p.take(l.at)
	}
	return l, ok
}

// leader joins a label to its spot.
func (p *press) leader(l placed, v view) {
	x, y := v.x(l.At), v.y(l.At)
	tx := min(max(x, l.at.x), l.at.right())
	ty := min(max(y, l.at.y), l.at.bottom())
	p.rule(x, y, tx, ty, 0.15)
}
