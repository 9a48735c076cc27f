package plane

import (
	"cmp"
	"math"
	"slices"
)

// round is one pass of Arrange.
type round struct {
	pieces []piece
	tol    float64
	tiny   float64 // a movement that is only rounding

	nodes []Point   // sorted by Y, then X
	links []stretch // sorted as in an Arrangement
}

// stretch is a link between nodes of a round.
type stretch struct {
	Link
	moved bool // by more than rounding
}

func (r *round) run() {
	points := make([]Point, 0, 4*len(r.pieces))
	boxes := make([]Box, len(r.pieces))
	for i := range r.pieces {
		p := &r.pieces[i]
		points = append(points, p.A, p.B)
		boxes[i] = p.Bounds().Grow(r.tol / 2)
	}
	ends := len(points)
	eachPair(boxes, func(i, j int) {
		points = meet(&r.pieces[i].curve, &r.pieces[j].curve, r.tol, points)
	})
	var node []int
	r.nodes, node = weld(points, ends, r.tol)
	r.links = make([]stretch, 0, len(points))
	tree := newNearTree(r.nodes)
	var stops []stop
	for i := range r.pieces {
		p := &r.pieces[i]
		stops = r.stops(p, tree, node[2*i], node[2*i+1], stops[:0])
		r.cut(p, stops)
	}
	r.merge()
}

// stop is a node on the way along a piece.
type stop struct {
	t    float64
	node int
}

// stops appends the nodes that a piece from one node to another is led through. A
// node is left out when one of the parts would come out no shorter than the whole,
// as beside an end or across from another node: since every part is shorter, the
// passes come to an end.
func (r *round) stops(p *piece, tree *nearTree, from, to int, stops []stop) []stop {
	stops = append(stops, stop{0, from})
	a, b := r.nodes[from], r.nodes[to]
	tree.each(&p.curve, r.tol, func(i int) {
		if i == from || i == to {
			return
		}
		at := r.nodes[i]
		t := p.fraction(at)
		if t > 0 && t < 1 && at.To(a) < p.length && at.To(b) < p.length {
			stops = append(stops, stop{t, i})
		}
	})
	slices.SortFunc(stops[1:], func(a, b stop) int {
		return cmp.Or(compare(a.t, b.t), a.node-b.node)
	})
	stops = append(stops, stop{1, to})
	for k := 1; k+2 < len(stops); k++ {
		if r.nodes[stops[k].node].To(r.nodes[stops[k+1].node]) >= p.length {
			stops = r.dropFarther(p, stops, k)
			k = 0
		}
	}
	return stops
}

// dropFarther removes the one of the stops k and k+1 that is further off the piece.
func (r *round) dropFarther(p *piece, stops []stop, k int) []stop {
	if math.Abs(p.offset(r.nodes[stops[k].node])) < math.Abs(p.offset(r.nodes[stops[k+1].node])) {
		k++
	}
	return slices.Delete(stops, k, k+1)
}

// cut appends the links of a piece from stop to stop.
func (r *round) cut(p *piece, stops []stop) {
	for k, s := range stops[1:] {
		before := stops[k]
		part := p.Part(before.t, s.t)
		a, b := r.nodes[before.node], r.nodes[s.node]
		link := Link{part, before.node, s.node, p.sources}
		if before.node == s.node {
			if part.Length() >= smallest*r.tol {
				r.links = append(r.links, stretch{Link: link})
			}
			continue
		}
		link.Edge = r.led(part, a, b)
		if link.From > link.To {
			link.Edge, link.From, link.To = link.Reversed(), link.To, link.From
		}
		moved := a.To(part.A) > r.tiny || b.To(part.B) > r.tiny
		r.links = append(r.links, stretch{link, moved})
	}
}

// led returns the part with its ends moved to a and b. An arc of up to half a turn
// keeps its bulge; a longer one its middle, since its ends may be too close
// together to say where its far side is, and one that is too small for that
// becomes straight.
func (r *round) led(part Edge, a, b Point) Edge {
	if math.Abs(part.Bulge) > 1 {
		if part.Length() < smallest*r.tol {
			return Edge{A: a, B: b}
		}
		if e, ok := Through(a, part.At(0.5), b); ok {
			return e
		}
	}
	return Edge{a, b, part.Bulge}
}

// merge sorts the links and joins those that coincide within the tolerance.
func (r *round) merge() {
	slices.SortFunc(r.links, func(k, l stretch) int {
		return cmp.Or(k.From-l.From, k.To-l.To, compare(k.Bulge, l.Bulge),
			comparePoints(k.A, l.A), comparePoints(k.B, l.B), k.Sources[0]-l.Sources[0])
	})
	out := r.links[:0]
	first := 0 // of the links kept between the same two nodes
next:
	for _, l := range r.links {
		if first < len(out) && (out[first].From != l.From || out[first].To != l.To) {
			first = len(out)
		}
		for k := first; k < len(out); k++ {
			if coincide(out[k].Edge, l.Edge, r.tol) {
				out[k].Sources = merged(out[k].Sources, l.Sources)
				continue next
			}
		}
		out = append(out, l)
	}
	r.links = out
}

// coincide tells whether two links between the same nodes are nearer than tol to
// each other all along.
func coincide(e, f Edge, tol float64) bool {
	for _, t := range []float64{0.5, 0.25, 0.75} {
		if f.Distance(e.At(t)) >= tol || e.Distance(f.At(t)) >= tol {
			return false
		}
	}
	return true
}

func merged(a, b []int) []int {
	both := slices.Concat(a, b)
	slices.Sort(both)
	return slices.Compact(both)
}
