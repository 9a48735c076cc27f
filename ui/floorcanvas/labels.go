package floorcanvas

import (
	"math"
	"slices"
	"unicode/utf8"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// placed is where a label stands. Its box is in device pixels from the picture's
// origin, so that it holds while the picture is only panned.
type placed struct {
	Label
	key     wordKey
	x, y    float64 // the point that it belongs to
	box     rect
	moved   bool // has a leader
	dropped bool // there was no place for it
}

type rect struct{ x0, y0, x1, y1 float64 }

func (r rect) grown(d float64) rect { return rect{r.x0 - d, r.y0 - d, r.x1 + d, r.y1 + d} }

func (r rect) meets(o rect) bool { return r.x0 < o.x1 && o.x0 < r.x1 && r.y0 < o.y1 && o.y0 < r.y1 }

func (r rect) holds(x, y float64) bool { return x >= r.x0 && x <= r.x1 && y >= r.y0 && y <= r.y1 }

// maxLetters bounds a label, since one must never be wider than a screen.
const maxLetters = 80

// allLabels are the labels of a picture with those of its areas.
func (s *scene) allLabels() []Label {
	out := make([]Label, 0, len(s.Labels)+len(s.areas))
	for _, l := range s.Labels {
		out = append(out, l.settled())
	}
	for _, c := range s.areas {
		a := s.Areas[c.index]
		if a.Label == "" {
			continue
		}
		l := Label{ID: a.ID, At: middleOf(c), Text: a.Label, Ink: theme.FaintLabel, Anchor: Centred, Priority: -1}
		out = append(out, l.settled())
	}
	return out
}

func (l Label) settled() Label {
	if l.Size == 0 {
		l.Size = defaultText
	}
	l.Size = min(max(l.Size, leastText), 96)
	if math.IsNaN(l.Size) {
		l.Size = defaultText
	}
	if l.Offset == 0 || math.IsNaN(l.Offset) {
		l.Offset = defaultGap
	}
	if l.Ink == theme.Line {
		l.Ink = theme.Label
	}
	if utf8.RuneCountInString(l.Text) > maxLetters {
		l.Text = string([]rune(l.Text)[:maxLetters-1]) + "…"
	}
	return l
}

// middleOf returns the centroid of an area's corners where that lies inside it,
// else the middle of its box.
func middleOf(c chain) plane.Point {
	var sum plane.Point
	for _, e := range c.edges {
		sum = sum.Add(e.At(0.5))
	}
	p := sum.Times(1 / float64(len(c.edges)))
	if c.holds(p) {
		return p
	}
	return c.box.Centre()
}

// place finds every label its place: the one asked for, else one of eight around
// the point, else one further out with a leader, else none. k is how many device
// pixels make one of the toolkit's.
func (s *scene) place(t *typesetter, l lens, k float64) []placed {
	l.view.Centre, l.cx, l.cy = plane.Point{}, 0, 0
	labels := s.allLabels()
	slices.SortStableFunc(labels, func(a, b Label) int {
		if a.Fixed != b.Fixed {
			if a.Fixed {
				return -1
			}
			return 1
		}
		return b.Priority - a.Priority
	})
	room := newCrowd(64 * k)
	for _, d := range s.Dots {
		x, y := l.px(d.At)
		h := sizeOf(d) * k * 0.4
		room.add(rect{x - h, y - h, x + h, y + h})
	}
	out := make([]placed, len(labels))
	for i, label := range labels {
		out[i] = placeOne(label, t, &l, room, k)
	}
	return append(out, s.placeEllipses(t, &l, room, k)...)
}

func placeOne(label Label, t *typesetter, l *lens, room *crowd, k float64) placed {
	p := placed{Label: label, key: keyOf(label.Text, label.Size*k, label.Bold)}
	p.x, p.y = l.px(label.At)
	size := extent{t.width(p.key), height(p.key.faceKey)}
	if label.Room > 0 && size.w > label.Room*l.per {
		p.dropped = true
		return p
	}
	if label.Fixed {
		p.box = anchored(label.Anchor, p.x, p.y, size, label.Offset*k)
		room.add(p.box)
		return p
	}
	for ring, gap := range [...]float64{label.Offset, 18, 34} {
		for i := range anchorCount {
			a := (label.Anchor + i) % anchorCount
			if a == Centred && (ring > 0 || label.Anchor != Centred) {
				continue
			}
			box := anchored(a, p.x, p.y, size, gap*k)
			if room.free(box) {
				room.add(box)
				p.box, p.moved = box, ring > 0
				return p
			}
		}
	}
	p.dropped = true
	return p
}

type extent struct{ w, h float64 }

// anchored returns the box of a word of that extent beside (x, y).
func anchored(a Anchor, x, y float64, of extent, gap float64) rect {
	w, h := of.w, of.h
	at := func(left, top float64) rect { return rect{left, top, left + w, top + h} }
	slant := gap * 0.75
	switch a {
	case AtLeft:
		return at(x-gap-w, y-h/2)
	case Above:
		return at(x-w/2, y-gap-h)
	case Below:
		return at(x-w/2, y+gap)
	case AboveRight:
		return at(x+slant, y-slant-h)
	case AboveLeft:
		return at(x-slant-w, y-slant-h)
	case BelowRight:
		return at(x+slant, y+slant)
	case BelowLeft:
		return at(x-slant-w, y+slant)
	case Centred:
		return at(x-w/2, y-h/2)
	}
	return at(x+gap, y-h/2)
}

// crowd knows which places are taken, by cells of a grid.
type crowd struct {
	cell  float64
	taken map[[2]int32][]rect
}

func newCrowd(cell float64) *crowd { return &crowd{cell, map[[2]int32][]rect{}} }

// cells calls with every cell that a box touches, until it is told to stop. A
// picture seen from so close that pixels run out of range has no free place.
func (c *crowd) cells(r rect, with func([2]int32) bool) bool {
	const far = 1 << 30
	x0, y0, x1, y1 := r.x0/c.cell, r.y0/c.cell, r.x1/c.cell, r.y1/c.cell
	if !(x0 > -far && y0 > -far && x1 < far && y1 < far) {
		return false
	}
	for x := int32(math.Floor(x0)); x <= int32(math.Floor(x1)); x++ {
		for y := int32(math.Floor(y0)); y <= int32(math.Floor(y1)); y++ {
			if !with([2]int32{x, y}) {
				return false
			}
		}
	}
	return true
}

func (c *crowd) add(r rect) {
	c.cells(r, func(at [2]int32) bool {
		c.taken[at] = append(c.taken[at], r)
		return true
	})
}

func (c *crowd) free(r rect) bool {
	return c.cells(r, func(at [2]int32) bool {
		return !slices.ContainsFunc(c.taken[at], r.meets)
	})
}
