package floorcanvas

import (
	"math"

	"groundrow/tapeout/plane"
)

// holds tells whether a point is inside a closed chain, by counting crossings
// with the chords that are painted.
func (c *chain) holds(p plane.Point) bool {
	if !c.box.Holds(p) {
		return false
	}
	in := false
	for _, e := range c.edges {
		ps := []plane.Point{e.A, e.B}
		if !e.Straight() {
			ps = e.Flatten(0.001)
		}
		for i := 0; i+1 < len(ps); i++ {
			a, b := ps[i], ps[i+1]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
	}
	return in
}

// How near the pointer must come, in toolkit pixels.
const (
	handleReach = 11
	dotReach    = 9
	lineReach   = 6
)

// pick returns what can be selected at a point of the picture: the nearest dot,
// else the nearest line, else the label there, else the smallest area around it.
// scale is metres to a toolkit pixel.
func (s *scene) pick(p plane.Point, scale float64, labels func(plane.Point) (string, bool)) (id string, ok bool) {
	if id, ok := s.pickDot(p, dotReach*scale); ok {
		return id, true
	}
	if id, ok := s.pickLine(p, lineReach*scale); ok {
		return id, true
	}
	if id, ok := labels(p); ok {
		return id, true
	}
	return s.pickArea(p, lineReach*scale)
}

// pick is what is under a point, labels where they were last painted included.
func (c *Canvas) pick(p plane.Point) string {
	id, _ := c.sc.pick(p, c.view.Scale, c.labelAt)
	return id
}

func (c *Canvas) labelAt(p plane.Point) (string, bool) {
	if c.painter.placedOn != c.sc {
		return "", false
	}
	l := c.lens()
	k := c.painter.placedAs.k
	x, y := l.px(p)
	ox, oy := l.px(plane.Point{})
	for _, w := range c.painter.labels {
		if w.ID != "" && !w.dropped && w.box.holds((x-ox)*k, (y-oy)*k) {
			return w.ID, true
		}
	}
	return "", false
}

func (s *scene) pickDot(p plane.Point, within float64) (id string, ok bool) {
	for _, d := range s.Dots {
		if n := d.At.To(p); d.ID != "" && n <= within {
			id, ok, within = d.ID, true, n
		}
	}
	return id, ok
}

func (s *scene) pickLine(p plane.Point, within float64) (id string, ok bool) {
	for i := len(s.shapes) - 1; i >= 0; i-- {
		c := &s.shapes[i]
		reach := max(within, 0)
		if c.id == "" || !c.box.Grow(reach).Holds(p) {
			continue
		}
		for _, e := range c.edges {
			if n := e.Distance(p); n < reach || (n == reach && !ok) {
				id, ok, reach, within = c.id, true, n, n
			}
		}
	}
	return id, ok
}

// pickArea takes an area by its inside when it is filled, and by its outline when
// it is not: an empty outline must not hide what it surrounds.
func (s *scene) pickArea(p plane.Point, within float64) (id string, ok bool) {
	least := math.Inf(1)
	for i := len(s.areas) - 1; i >= 0; i-- {
		c := &s.areas[i]
		size := c.box.Width() * c.box.Height()
		if c.id == "" || size >= least || !c.box.Grow(within).Holds(p) {
			continue
		}
		filled := s.Areas[c.index].Fill != NoFill
		if (filled && c.holds(p)) || c.rimNear(p, within) {
			id, ok, least = c.id, true, size
		}
	}
	return id, ok
}

func (c *chain) rimNear(p plane.Point, within float64) bool {
	for _, e := range c.edges {
		if e.Distance(p) <= within {
			return true
		}
	}
	return false
}

// pickHandle returns the nearest handle.
func (s *scene) pickHandle(p plane.Point, scale float64) (h Handle, ok bool) {
	within := handleReach * scale
	for _, g := range s.Handles {
		if n := g.At.To(p); n <= within {
			h, ok, within = g, true, n
		}
	}
	return h, ok
}

// selectable lists identifiers in the order given, each once.
func (s *scene) selectable() []string {
	var ids []string
	known := map[string]bool{"": true}
	add := func(id string) {
		if !known[id] {
			known[id] = true
			ids = append(ids, id)
		}
	}
	for i := range s.Shapes {
		add(s.Shapes[i].ID)
	}
	for i := range s.Dots {
		add(s.Dots[i].ID)
	}
	for i := range s.Areas {
		add(s.Areas[i].ID)
	}
	return ids
}
