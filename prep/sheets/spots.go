package sheets

import (
	"math"

	"groundrow/tapeout/plane"
)

// placing finds places for labels so that none covers another or a mark, and as
// few as possible cross a line. It looks at what is near by a grid of cells.
type placing struct {
	frame  inset
	taken  map[cellAt][]inset
	inked  map[cellAt][]segment
	hidden int // labels that found no free place
}

type cellAt struct{ x, y int }

// segment is a drawn line in millimetres on the page.
type segment struct{ x1, y1, x2, y2 float64 }

const cellSize = 6.0

func newPlacing(frame inset) *placing {
	return &placing{frame: frame, taken: map[cellAt][]inset{}, inked: map[cellAt][]segment{}}
}

// cellsOf calls visit for every cell that the rectangle touches.
func cellsOf(r inset, visit func(cellAt)) {
	for x := int(math.Floor(r.x / cellSize)); x <= int(math.Floor(r.right()/cellSize)); x++ {
		for y := int(math.Floor(r.y / cellSize)); y <= int(math.Floor(r.bottom()/cellSize)); y++ {
			visit(cellAt{x, y})
		}
	}
}

func (p *placing) take(r inset) {
	cellsOf(r, func(c cellAt) { p.taken[c] = append(p.taken[c], r) })
}

// ink notes a drawn edge, which labels avoid where they can.
func (p *placing) ink(e plane.Edge, v view) {
	if !drawableEdge(e) {
		return
	}
	points := e.Flatten(v.scale.OnFloor(0.0005))
	for i := range points[1:] {
		s := segment{v.x(points[i]), v.y(points[i]), v.x(points[i+1]), v.y(points[i+1])}
		p.inkSegment(s)
	}
}

// inkSegment files a segment under the cells along it, as far as it lies in the
// frame.
func (p *placing) inkSegment(s segment) {
	t0, t1, ok := s.within(p.frame)
	if !ok {
		return
	}
	dx, dy := s.x2-s.x1, s.y2-s.y1
	n := int(math.Hypot(dx, dy)*(t1-t0)/(cellSize/2)) + 1
	last := cellAt{math.MinInt, 0}
	for i := range n + 1 {
		t := t0 + (t1-t0)*float64(i)/float64(n)
		c := cellAt{int(math.Floor((s.x1 + dx*t) / cellSize)), int(math.Floor((s.y1 + dy*t) / cellSize))}
		if c != last {
			p.inked[c] = append(p.inked[c], s)
			last = c
		}
	}
}

// The prices of a place in the choice between several.
const (
	coversLabel = 1000.0
	outside     = 700.0
	crossesLine = 6.0
	perMM       = 1.0
)

// price says how bad a place is: what it covers, crosses and leaves the frame by.
func (p *placing) price(r inset) float64 {
	cost := 0.0
	if r.x < p.frame.x || r.y < p.frame.y || r.right() > p.frame.right() || r.bottom() > p.frame.bottom() {
		cost += outside
	}
	cellsOf(r, func(c cellAt) {
		for _, t := range p.taken[c] {
			if t.meets(r) {
				cost += coversLabel
			}
		}
		for _, s := range p.inked[c] {
			if _, _, ok := s.within(r); ok {
				cost += crossesLine
			}
		}
	})
	return cost
}

// within returns the part of the segment that lies in the rectangle, as fractions
// of its length; ok is false when it misses (Liang and Barsky's clipping).
func (s segment) within(r inset) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	dx, dy := s.x2-s.x1, s.y2-s.y1
	for _, e := range [4][2]float64{
		{-dx, s.x1 - r.x}, {dx, r.right() - s.x1}, {-dy, s.y1 - r.y}, {dy, r.bottom() - s.y1},
	} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return 0, 0, false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	return t0, t1, t0 <= t1
}

// near is the free paper between a spot and its label, in millimetres, tried in
// turn; from the second on a leader joins them.
var near = []float64{1.3, 3.5, 6.5, 10}

// bearings are the directions tried, the best to read first.
var bearings = []plane.Point{
	{X: 0.7, Y: -0.7}, {X: -0.7, Y: -0.7}, {X: 0.7, Y: 0.7}, {X: -0.7, Y: 0.7},
	{X: 1}, {X: -1}, {Y: -1}, {Y: 1},
}

// across are the directions for what stands in a row across the page.
var across = []plane.Point{{Y: -1}, {Y: 1}, {X: 0.7, Y: -0.7}, {X: -0.7, Y: -0.7}, {X: 0.7, Y: 0.7}, {X: -0.7, Y: 0.7}}

// beside are the directions for what is the middle of something.
var beside = []plane.Point{{X: 1}, {X: -1}, {Y: -1}, {Y: 1}}

// seeking is where a label is looked for: at which bearings and distances, in
// millimetres, beyond a clearance.
type seeking struct {
	ways      []plane.Point
	distances []float64
	clearance float64
}

// find returns the best place for a label of w by h millimetres at one of the
// bearings from x, y. lead tells whether it stands off so far that it needs a
// leader; clear is false when it would have to cover something.
func (p *placing) find(at inset, s seeking) (best inset, lead, clear bool) {
	x, y, w, h := at.x, at.y, at.w, at.h
	lowest := math.Inf(1)
	for i, d := range s.distances {
		d += s.clearance
		for j, b := range s.ways {
			r := inset{
				x + b.X*d - w/2 + sign(b.X)*w/2,
				y + b.Y*d - h/2 + sign(b.Y)*h/2, w, h,
			}
			cost := p.price(r) + d*perMM + float64(j)*0.1
			if cost < lowest {
				best, lowest, lead = r, cost, i > 0
			}
		}
		if lowest < crossesLine {
			break
		}
	}
	return best, lead, lowest < outside
}

func sign(x float64) float64 {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}
