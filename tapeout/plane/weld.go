package plane

import (
	"math"
	"slices"
)

// weld gathers points that are nearer than tol to one another. The nodes it
// returns, sorted by Y then X, are tol or more apart; each is one of the points,
// and every point is nearer than tol to the node whose index belongs to it.
//
// The first ends of the points are preferred as nodes: they were drawn, and the
// others only computed. Taking whole points, lowest first, rather than averages
// or chains keeps corners where they are and keeps a row of close points from
// shrinking to one.
func weld(points []Point, ends int, tol float64) (nodes []Point, node []int) {
	w := welder{points: points, tol: tol, node: make([]int, len(points))}
	w.sort()
	for i := range w.node {
		w.node[i] = -1
	}
	seeds := make([]int, 0, len(points))
	for _, drawn := range []bool{true, false} {
		for at, s := range w.spots {
			if w.node[s.index] < 0 && (s.index < ends) == drawn {
				w.absorb(at, len(seeds))
				seeds = append(seeds, s.index)
			}
		}
	}
	return w.number(seeds)
}

// welder keeps points in rows as high as the tolerance, each sorted by X, so that
// the neighbours of a point are in three short stretches of the order.
type welder struct {
	points []Point
	tol    float64
	node   []int
	spots  []spot
}

// spot is a point in its row.
type spot struct {
	Point
	row   float64
	index int
}

func (w *welder) sort() {
	w.spots = make([]spot, len(w.points))
	for i, p := range w.points {
		w.spots[i] = spot{p, math.Floor(p.Y / w.tol), i}
	}
	slices.SortFunc(w.spots, func(s, t spot) int {
		if s.row != t.row {
			return compare(s.row, t.row)
		}
		return comparePoints(s.Point, t.Point)
	})
}

// absorb gives seed number to the point at a place of the order and to all that
// have none yet and are nearer than tol.
func (w *welder) absorb(at, seed int) {
	p := w.spots[at]
	take := func(s spot) {
		if w.node[s.index] < 0 && s.To(p.Point) < w.tol {
			w.node[s.index] = seed
		}
	}
	w.node[p.index] = seed
	for k := at - 1; k >= 0 && w.spots[k].row == p.row && p.X-w.spots[k].X < w.tol; k-- {
		take(w.spots[k])
	}
	for _, s := range w.spots[at+1:] {
		if s.row != p.row || s.X-p.X >= w.tol {
			break
		}
		take(s)
	}
	for _, row := range []float64{p.row - 1, p.row + 1} {
		for _, s := range w.spots[w.find(row, p.X-w.tol):] {
			if s.row != row || s.X-p.X >= w.tol {
				break
			}
			take(s)
		}
	}
}

// find returns the first place in the order that is in the row at x or beyond.
func (w *welder) find(row, x float64) int {
	low, high := 0, len(w.spots)
	for low < high {
		k := int(uint(low+high) / 2)
		if s := &w.spots[k]; s.row < row || s.row == row && s.X < x {
			low = k + 1
		} else {
			high = k
		}
	}
	return low
}

// number turns seeds into nodes in their final order.
func (w *welder) number(seeds []int) (nodes []Point, node []int) {
	order := make([]int, len(seeds))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return compareRows(w.points[seeds[a]], w.points[seeds[b]])
	})
	rank := make([]int, len(seeds))
	nodes = make([]Point, len(seeds))
	for r, s := range order {
		rank[s] = r
		nodes[r] = w.points[seeds[s]]
	}
	for i := range w.node {
		w.node[i] = rank[w.node[i]]
	}
	return nodes, w.node
}

// compareRows orders by Y, then by X.
func compareRows(p, q Point) int {
	if p.Y != q.Y {
		return compare(p.Y, q.Y)
	}
	return compare(p.X, q.X)
}

// comparePoints orders by X, then by Y.
func comparePoints(p, q Point) int {
	if p.X != q.X {
		return compare(p.X, q.X)
	}
	return compare(p.Y, q.Y)
}
