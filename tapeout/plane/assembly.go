package plane

import (
	"cmp"
	"slices"
)

// assembly collects the links that are final from the passes of Arrange.
type assembly struct {
	points []Point // of each pass in turn; a place can be there more than once
	links  []Link  // with From and To as indices of points
}

// settle keeps the links of a round that did not move and are not near one that
// did, and returns the others for another round.
func (a *assembly) settle(r *round) (again []piece) {
	unsettled := r.nearMoved()
	base := len(a.points)
	a.points = append(a.points, r.nodes...)
	a.links = slices.Grow(a.links, len(r.links))
	for i, l := range r.links {
		if unsettled != nil && unsettled[i] {
			again = append(again, piece{l.curve(), l.Sources})
			continue
		}
		l.From += base
		l.To += base
		a.links = append(a.links, l.Link)
	}
	return again
}

// nearMoved tells for each link whether it moved or may meet one that did; it is
// nil when none moved.
func (r *round) nearMoved() []bool {
	if !slices.ContainsFunc(r.links, func(l stretch) bool { return l.moved }) {
		return nil
	}
	boxes := make([]Box, len(r.links))
	near := make([]bool, len(r.links))
	for i, l := range r.links {
		boxes[i] = l.Bounds().Grow(r.tol)
		near[i] = l.moved
	}
	eachPair(boxes, func(i, j int) {
		if r.links[i].moved || r.links[j].moved {
			near[i], near[j] = true, true
		}
	})
	return near
}

// arrangement numbers the nodes that have links, in order, and lists their links.
func (a *assembly) arrangement() Arrangement {
	out := Arrangement{Links: slices.Clip(a.links)}
	number := make([]int, len(a.points))
	order := a.order()
	for k, i := range order {
		if k == 0 || a.points[i] != out.Nodes[len(out.Nodes)-1].At {
			out.Nodes = append(out.Nodes, Node{At: a.points[i]})
		}
		number[i] = len(out.Nodes) - 1
	}
	degree := make([]int, len(out.Nodes))
	for i := range out.Links {
		l := &out.Links[i]
		l.From, l.To = number[l.From], number[l.To]
		degree[l.From]++
		degree[l.To]++
	}
	slices.SortFunc(out.Links, func(k, l Link) int {
		return cmp.Or(k.From-l.From, k.To-l.To, compare(k.Bulge, l.Bulge),
			comparePoints(k.A, l.A), comparePoints(k.B, l.B))
	})
	room := make([]int, 2*len(out.Links))
	for i, n := range degree {
		out.Nodes[i].Links, room = room[:0:n], room[n:]
	}
	for i, l := range out.Links {
		for _, n := range []int{l.From, l.To} {
			out.Nodes[n].Links = append(out.Nodes[n].Links, i)
		}
	}
	return out
}

// order returns the indices of points that have links, sorted by Y, then X.
func (a *assembly) order() []int {
	used := make([]bool, len(a.points))
	for _, l := range a.links {
		used[l.From], used[l.To] = true, true
	}
	order := make([]int, 0, len(a.points))
	for i := range a.points {
		if used[i] {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(i, j int) int {
		return compareRows(a.points[i], a.points[j])
	})
	return order
}
