package sense

import (
	"math"
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Sizes in metres by which shapes are told (common practice, no source).
const (
	leafLeast, leafMost   = 0.4, 1.8  // of a door
	treadLeast, treadMost = 0.15, 0.5 // from one tread to the next
	flatThick             = 0.25
	columnMost            = 0.3 // radius
	revolveLeast          = 1.2 // radius
	pieceMost             = 2.6 // the longer side of a piece of furniture
)

// doorSwings takes out of the loose items each quarter arc that has a leaf: a line
// from its centre to one of its ends. Other lines of the door stay with the wall.
func doorSwings(s *linework.Sheet, loose []int, o Options) (doors []group, rest []int) {
	tol := max(o.Join, 0.02) / o.PerUnit
	leaves := newLeaves(s, loose, tol)
	taken := map[int]bool{}
	for _, i := range loose {
		item := &s.Items[i]
		if len(item.Edges) != 1 {
			continue
		}
		e := item.Edges[0]
		centre, r, ok := e.Circle()
		if !ok || !quarter(e) || r*o.PerUnit < leafLeast || r*o.PerUnit > leafMost {
			continue
		}
		for _, end := range [2]plane.Point{e.A, e.B} {
			if k, ok := leaves.between(centre, end, taken); ok {
				taken[i], taken[k] = true, true
				doors = append(doors, group{items: []int{min(i, k), max(i, k)}, layer: item.Layer, door: true})
				break
			}
		}
	}
	for _, i := range loose {
		if !taken[i] {
			rest = append(rest, i)
		}
	}
	return doors, rest
}

func quarter(e plane.Edge) bool {
	turn := math.Abs(e.Sweep()) * 180 / math.Pi
	return turn > 60 && turn < 120
}

// leaves finds single lines, or thin closed leaves, by their ends.
type leaves struct {
	sheet *linework.Sheet
	tol   float64
	cells map[[2]int64][]int
}

func newLeaves(s *linework.Sheet, loose []int, tol float64) *leaves {
	l := &leaves{s, tol, map[[2]int64][]int{}}
	for _, i := range loose {
		if edges := s.Items[i].Edges; len(edges) == 1 && edges[0].Straight() {
			for _, p := range [2]plane.Point{edges[0].A, edges[0].B} {
				k := l.cell(p)
				l.cells[k] = append(l.cells[k], i)
			}
		}
	}
	return l
}

func (l *leaves) cell(p plane.Point) [2]int64 {
	return [2]int64{int64(math.Floor(p.X / l.tol)), int64(math.Floor(p.Y / l.tol))}
}

// between returns the item of one line from p to q.
func (l *leaves) between(p, q plane.Point, taken map[int]bool) (int, bool) {
	k := l.cell(p)
	for n := range int64(9) {
		for _, i := range l.cells[[2]int64{k[0] + n%3 - 1, k[1] + n/3 - 1}] {
			e := l.sheet.Items[i].Edges[0]
			there := e.A.To(p) <= l.tol && e.B.To(q) <= l.tol || e.B.To(p) <= l.tol && e.A.To(q) <= l.tol
			if there && !taken[i] {
				return i, true
			}
		}
	}
	return 0, false
}

// shapeKind tells a kind by shape alone.
func (c *Candidate) shapeKind() (kind plan.Kind, confidence float64, why string) {
	if c.swings() {
		return plan.Door, 0.8, "A quarter circle and a line from its centre make a door."
	}
	if n := c.treads(); n > 0 {
		return plan.Stair, 0.7, "It has parallel lines of one length at the distance of treads."
	}
	if r, ok := c.circle(); ok {
		switch {
		case r <= columnMost:
			return plan.Other, 0.2, "It is a small circle: a column, or a round piece."
		case r >= revolveLeast:
			return plan.Revolve, 0.4, "It is a large circle."
		}
		return plan.Furniture, 0.3, "It is a circle of the size of a table."
	}
	box, ok := c.bounds()
	if !ok {
		return plan.Other, 0, ""
	}
	short, long := min(box.Width(), box.Height()), max(box.Width(), box.Height())
	closed := slices.ContainsFunc(c.Paths, func(p plan.Path) bool { return p.Closed })
	switch {
	case short <= flatThick && long >= 2*flatThick:
		return plan.Wall, 0.3, "It is long and thin, like a flat."
	case closed && long <= pieceMost:
		return plan.Furniture, 0.2, "It is closed and of the size of a piece of furniture."
	case closed && len(c.Paths) == 1:
		return plan.Platform, 0.2, "It is closed and large, like a platform."
	}
	return plan.Other, 0.1, ""
}

func (c *Candidate) bounds() (plane.Box, bool) {
	var edges []plane.Edge
	for _, p := range c.Paths {
		edges = append(edges, p.Edges()...)
	}
	return plane.Bounds(edges)
}

// swings tells whether there is a quarter arc with a line from its centre to an
// end.
func (c *Candidate) swings() bool {
	var arcs, lines []plane.Edge
	for _, p := range c.Paths {
		for _, e := range p.Edges() {
			if e.Straight() {
				lines = append(lines, e)
			} else if quarter(e) {
				arcs = append(arcs, e)
			}
		}
	}
	const most = 12 // a thing with more arcs is no door
	if len(arcs) > most {
		return false
	}
	for _, a := range arcs {
		centre, r, ok := a.Circle()
		if !ok || r < leafLeast || r > leafMost {
			continue
		}
		for _, l := range lines {
			far := max(l.Distance(a.A), l.Distance(centre))
			if far < 0.05 || max(l.Distance(a.B), l.Distance(centre)) < 0.05 {
				return true
			}
		}
	}
	return false
}

// treads returns how many straight lines of one length and direction lie behind
// each other at even distances that feet take; zero below three.
func (c *Candidate) treads() int {
	type tread struct{ turn, offset, length float64 }
	var all []tread
	for _, p := range c.Paths {
		for _, e := range p.Edges() {
			if k, ok := strokeOf(e); ok && e.Straight() && k.length >= 0.5 {
				all = append(all, tread{float64(k.turn), k.offset, k.length})
			}
		}
	}
	slices.SortFunc(all, func(a, b tread) int {
		for _, d := range [3]float64{a.turn - b.turn, a.offset - b.offset, a.length - b.length} {
			if d != 0 {
				return int(math.Copysign(1, d))
			}
		}
		return 0
	})
	most, run, step := 0, 1, 0.0
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		gap := b.offset - a.offset
		if a.turn == b.turn && gap < 0.01 {
			continue // one line drawn twice, or an edge that ends where a tread lies
		}
		if a.turn == b.turn && gap >= treadLeast && gap <= treadMost && math.Abs(a.length-b.length) < 0.1*a.length &&
			(run == 1 || math.Abs(gap-step) < 0.1*step) {
			run, step = run+1, gap
		} else {
			run = 1
		}
		most = max(most, run)
	}
	if most < 4 {
		return 0
	}
	return most
}

// circle returns the radius of the one full circle that the candidate is, or that
// all of it lies in.
func (c *Candidate) circle() (radius float64, ok bool) {
	box, ok := c.bounds()
	if !ok {
		return 0, false
	}
	for _, p := range c.Paths {
		e := p.Edges()
		centre, r, curved := e[0].Circle()
		if !p.Closed || !curved {
			continue
		}
		whole := math.Abs(box.Width()-2*r) < 0.01*r && math.Abs(box.Height()-2*r) < 0.01*r
		for _, f := range e {
			o, q, ok := f.Circle()
			whole = whole && ok && o.To(centre) < 0.01*r && math.Abs(q-r) < 0.01*r
		}
		if whole {
			return r, true
		}
	}
	return 0, false
}
