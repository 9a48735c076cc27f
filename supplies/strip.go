package supplies

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Strip is one straight or swung piece of tape: as long as its line goes on
// without a corner, however many lines of the plan lie along it.
type Strip struct {
	plane.Edge // datum axes; for a whole circle, one half of it
	Stock      plan.StockID
	Dashed     bool
	Whole      bool // a whole circle, which closes on itself
}

// Length returns the length of the strip in metres, dashes and gaps alike.
func (s Strip) Length() float64 {
	if s.Whole {
		return 2 * s.Edge.Length()
	}
	return s.Edge.Length()
}

// same is how far apart two lines may lie, in metres, and still be taped once.
// It is the width of what a person can tell apart on the floor, and equals the
// usual weld of marks.
const same = 0.006

// Strips merges lines into pieces of tape, stock by stock. Where a dashed line
// lies along a whole one, the whole one counts and the dashes are dropped. A
// curve drawn as many chords stays as many strips, since it is joined point by
// point.
func Strips(lines []floor.Line) []Strip {
	var strips []Strip
	for _, g := range groups(lines) {
		whole := merge(g.whole)
		for _, e := range whole {
			e.Stock = g.stock
			strips = append(strips, e)
		}
		for _, e := range merge(uncovered(g.dashed, whole)) {
			e.Stock, e.Dashed = g.stock, true
			strips = append(strips, e)
		}
	}
	return strips
}

// group is what one stock draws.
type group struct {
	stock         plan.StockID
	whole, dashed []plane.Edge
}

// groups sorts lines by stock, in the order in which the stocks are met.
func groups(lines []floor.Line) []group {
	at := map[plan.StockID]int{}
	var gs []group
	for _, l := range lines {
		i, ok := at[l.Stock]
		if !ok {
			i = len(gs)
			at[l.Stock] = i
			gs = append(gs, group{stock: l.Stock})
		}
		if l.Role.Dashed() {
			gs[i].dashed = append(gs[i].dashed, l.Edge)
		} else {
			gs[i].whole = append(gs[i].whole, l.Edge)
		}
	}
	return gs
}

// merge joins edges that lie along one carrier and touch. Carriers are taken
// from the longest edge down, so that short pieces never turn a line.
func merge(edges []plane.Edge) []Strip {
	left := slices.DeleteFunc(slices.Clone(edges), func(e plane.Edge) bool {
		n := e.Length()
		return !(n > 0) || math.IsInf(n, 0)
	})
	slices.SortStableFunc(left, func(a, b plane.Edge) int { return cmp.Compare(b.Length(), a.Length()) })
	byWay := map[int][]int{}
	for i, e := range left {
		byWay[way(e)] = append(byWay[way(e)], i)
	}
	used := make([]bool, len(left))
	var strips []Strip
	for i, e := range left {
		if used[i] {
			continue
		}
		c := carrierOf(e)
		var spans []span
		for _, w := range ways(way(e)) {
			for _, j := range byWay[w] {
				if used[j] {
					continue
				}
				if s, ok := c.span(left[j]); ok {
					used[j] = true
					spans = append(spans, s)
				}
			}
		}
		for _, s := range c.join(spans) {
			strips = append(strips, c.strip(s))
		}
	}
	return strips
}

// Edges are compared only with those of about the same direction, sorted into
// waysRound classes over the half turn; curves are a class of their own.
const (
	waysRound = 60
	curves    = -1
)

func way(e plane.Edge) int {
	if !e.Straight() {
		return curves
	}
	turn := math.Mod(e.B.Sub(e.A).Angle()+2*math.Pi, math.Pi)
	return int(turn/math.Pi*waysRound) % waysRound
}

// ways returns the class and its neighbours.
func ways(w int) []int {
	if w == curves {
		return []int{curves}
	}
	return []int{w, (w + 1) % waysRound, (w + waysRound - 1) % waysRound}
}

// uncovered returns what of edges lies on none of the strips, as parts.
func uncovered(edges []plane.Edge, strips []Strip) []plane.Edge {
	for _, s := range strips {
		c := carrierOf(s.Edge)
		cover, _ := c.span(s.Edge)
		if s.Whole {
			cover = span{0, c.around()}
		}
		var rest []plane.Edge
		for _, e := range edges {
			if p, ok := c.span(e); ok {
				rest = append(rest, c.without(p, cover)...)
			} else {
				rest = append(rest, e)
			}
		}
		edges = rest
	}
	return edges
}
