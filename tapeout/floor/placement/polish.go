package placement

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// reachOfSlide is how far a placement is slid to bring a line against a wall, in
// metres; slides bounds how many such places are tried at once.
const (
	reachOfSlide = 0.2
	slides       = 16
)

// polish makes a placement better in its neighbourhood: by sliding the plan until
// something of it touches a wall or clears an obstacle, and by steps along and
// across and turns that get ever smaller. Where the turn is fixed it stays.
func (p *probe) polish(s spot, swing float64) spot {
	free := swing > 0
	s = p.tried(s)
	step, angle := 0.12, 0.12/p.c.radius
	if free {
		angle = min(angle, max(swing, 1e-3))
	}
	for step > 4e-4 {
		t := p.stepped(s, step, angle, free)
		if t.better(s.quick) {
			s = t
			continue
		}
		step, angle = step/2, angle/2
	}
	return p.slide(s)
}

// tried scores a spot.
func (p *probe) tried(s spot) spot {
	p.at(&box{x: s.x, y: s.y, turn: s.turn})
	s.quick = p.quick()
	return s
}

// stepped is the best of a step each way.
func (p *probe) stepped(s spot, step, angle float64, free bool) spot {
	best := s
	try := func(dx, dy, turn float64) {
		if t := p.tried(spot{x: s.x + dx, y: s.y + dy, turn: s.turn + turn}); t.better(best.quick) {
			best = t
		}
	}
	for _, k := range []float64{-1, 1} {
		try(k*step, 0, 0)
		try(0, k*step, 0)
		if free {
			try(0, 0, k*angle)
		}
	}
	return best
}

// slide tries, in every direction square to a wall, all shifts that bring a point of
// the plan just against it, until none is better.
func (p *probe) slide(s spot) spot {
	for range 2 {
		before := s
		for _, n := range p.c.free.normals() {
			at := s
			for _, d := range p.contacts(s, n) {
				t := p.tried(spot{x: at.x + d*n.X, y: at.y + d*n.Y, turn: at.turn})
				if t.better(s.quick) {
					s = t
				}
			}
		}
		if !s.better(before.quick) {
			break
		}
	}
	return s
}

// normals are the directions square to the sides of the free floor, opposite ones
// once.
func (f *field) normals() []plane.Point {
	var out []plane.Point
	for _, r := range slices.Concat(f.within, f.blocked) {
		for _, e := range r.edges {
			n, _ := plane.Point{X: -e.dy, Y: e.dx}.Unit()
			if len(out) < 6 && !slices.ContainsFunc(out, func(o plane.Point) bool { return math.Abs(o.Cross(n)) < 1e-6 }) {
				out = append(out, n)
			}
		}
	}
	return out
}

// contacts are the shifts along a direction that bring an end of a part against a
// side square to it, within reach, the smallest first.
func (p *probe) contacts(s spot, n plane.Point) []float64 {
	p.at(&box{x: s.x, y: s.y, turn: s.turn})
	var walls []float64
	add := func(rings []ring, clear float64) {
		for _, r := range rings {
			for _, e := range r.edges {
				d, _ := plane.Point{X: e.dx, Y: e.dy}.Unit()
				if math.Abs(d.Dot(n)) > 1e-6 {
					continue
				}
				at := plane.Point{X: e.ax, Y: e.ay}.Dot(n)
				walls = append(walls, at-clear, at+clear)
			}
		}
	}
	add(p.c.free.within, 0)
	add(p.c.free.blocked, 1.5*touch)
	var out []float64
	last := math.NaN()
	for i := range p.c.parts {
		q := &p.c.parts[i]
		for _, end := range []plane.Point{q.a, q.b} {
			at := p.place(end).Dot(n)
			if at == last {
				continue
			}
			last = at
			for _, w := range walls {
				if d := w - at; math.Abs(d) < reachOfSlide {
					out = append(out, d)
				}
			}
		}
	}
	slices.SortFunc(out, func(a, b float64) int {
		switch {
		case math.Abs(a) < math.Abs(b):
			return -1
		case math.Abs(a) > math.Abs(b):
			return 1
		}
		return 0
	})
	out = slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(a-b) < 1e-5 })
	return out[:min(len(out), slides)]
}

// alongWalls are the turns at which a good part of the plan's line work lies along a
// wall.
func (c *Case) alongWalls() []float64 {
	lengths := map[int]float64{} // by direction of lines, in thousandths of a half turn
	ways := map[int]float64{}
	total := 0.0
	for _, it := range c.items {
		for _, e := range it.lines {
			if !e.Straight() {
				continue
			}
			way := math.Mod(e.B.Sub(e.A).Angle()+math.Pi, math.Pi)
			k := int(math.Round(way/math.Pi*1000)) % 1000
			lengths[k] += e.Length()
			ways[k] = way
			total += e.Length()
		}
	}
	var out []float64
	for k, l := range lengths {
		if l < 0.05*total {
			continue
		}
		for _, e := range c.free.within[0].edges {
			wall := math.Atan2(e.dy, e.dx)
			for _, half := range []float64{0, math.Pi} {
				t := math.Remainder(wall-ways[k]+half, 2*math.Pi)
				if !slices.ContainsFunc(out, func(o float64) bool { return apart(o, t) < 1e-4 }) {
					out = append(out, t)
				}
			}
		}
	}
	slices.Sort(out)
	return out[:min(len(out), 64)]
}
