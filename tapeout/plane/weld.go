package plane

import (
	"cmp"
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
		for at, i := range w.order {
			if w.node[i] < 0 && (i < ends) == drawn {
				w.absorb(at, len(seeds))
				seeds = append(seeds, i)
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
	order  []int     // indices of points, row by row
	row    []float64 // row of each place in the order
}

func (w *welder) sort() {
	rows := make([]float64, len(w.points))
	w.order = make([]int, len(w.points))
	for i, p := range w.points {
		rows[i] = math.Floor(p.Y / w.tol)
		w.order[i] = i
	}
	slices.SortFunc(w.order, func(i, j int) int {
		if rows[i] != rows[j] {
			return compare(rows[i], rows[j])
		}
		return comparePoints(w.points[i], w.points[j])
	})
	w.row = make([]float64, len(w.points))
	for at, i := range w.order {
		w.row[at] = rows[i]
	}
}

// absorb gives seed number to the point at a place of the order and to all that
// have none yet and are nearer than tol.
func (w *welder) absorb(at, seed int) {
	p := w.points[w.order[at]]
	take := func(k int) {
		i := w.order[k]
		if w.node[i] < 0 && (k == at || w.points[i].To(p) < w.tol) {
			w.node[i] = seed
		}
	}
	for k := at; k >= 0 && w.row[k] == w.row[at] && p.X-w.points[w.order[k]].X < w.tol; k-- {
		take(k)
	}
	for k := at + 1; k < len(w.order) && w.row[k] == w.row[at] && w.points[w.order[k]].X-p.X < w.tol; k++ {
		take(k)
	}
	for _, row := range []float64{w.row[at] - 1, w.row[at] + 1} {
		for k := w.find(row, p.X-w.tol); k < len(w.order) && w.row[k] == row && w.points[w.order[k]].X-p.X < w.tol; k++ {
			take(k)
		}
	}
}

// find returns the first place in the order that is in the row at x or beyond.
func (w *welder) find(row, x float64) int {
	low, high := 0, len(w.order)
	for low < high {
		k := int(uint(low+high) / 2)
		if w.row[k] < row || w.row[k] == row && w.points[w.order[k]].X < x {
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
		p, q := w.points[seeds[a]], w.points[seeds[b]]
		return cmp.Or(compare(p.Y, q.Y), compare(p.X, q.X))
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

// comparePoints orders by X, then by Y.
func comparePoints(p, q Point) int {
	return cmp.Or(compare(p.X, q.X), compare(p.Y, q.Y))
}
