package plane

import (
	"cmp"
	"math"
	"slices"
)

// Arrangement is line work cut at every end, corner, crossing and touch, with
// each stretch kept once.
type Arrangement struct {
	Nodes []Node // sorted by Y, then X
	Links []Link // sorted by From, then To, then bulge
}

// Node is a place where links end. Links holds their indices, ascending; a link
// that leaves and comes back to the node is there twice.
type Node struct {
	At    Point
	Links []int
}

// Link is a piece between two neighbouring nodes, from the lower index to the
// higher. It starts and ends exactly at them, except that a loop, whose two ends
// are one node, keeps its own ends within the tolerance of it. Sources holds the
// indices of all edges given to Arrange that cover the link, ascending.
type Link struct {
	Edge
	From, To int
	Sources  []int
}

// Arrange cuts edges at all places where they meet. Points nearer than tol metres
// become one node, preferably an end that was drawn; an edge that passes a node
// nearer than tol is led through it. Stretches that then coincide within tol
// become one link. Edges shorter than the tolerance vanish into their node, as do
// circles of a circumference below four times tol; edges without length, or with
// coordinates that are no place on a floor, are dropped. The result does not depend
// on the order of edges, apart from Sources.
//
// Leading edges through nodes moves them by up to tol and can make new meetings;
// these are arranged again until nothing moves (iterated snap rounding: Halperin
// and Packer, Computational Geometry 23, 2002; from memory).
func Arrange(edges []Edge, tol float64) Arrangement {
	pieces, span := usable(edges)
	tiny := max(1e-10, span*1e-14)
	tol = max(tol, 4*tiny)
	if math.IsNaN(tol) {
		tol = 4 * tiny
	}
	var nodes []Point
	var links []Link
	for pass := range maxPasses {
		r := round{pieces: pieces, tol: tol, tiny: tiny}
		nodes, links = r.run()
		if !r.moved {
			break
		}
		if pass >= fullPasses {
			tol = max(tol/4, 4*tiny)
		}
		pieces = pieces[:0]
		for _, l := range links {
			pieces = append(pieces, piece{l.curve(), l.Sources})
		}
	}
	return assemble(nodes, links)
}

// Crowded line work can keep moving at the full tolerance; after fullPasses only
// ever closer meetings are led together.
const (
	fullPasses = 4
	maxPasses  = 24
)

// smallest is the length, in tolerances, below which a loop or an arc of more than
// half a turn is not kept as one.
const smallest = 4

// farthest is the largest coordinate, in metres, that is still a place on a floor.
const farthest = 1e9

// piece is an edge or part of one on its way through Arrange.
type piece struct {
	curve
	sources []int
}

// usable returns the edges that can be arranged, and the largest coordinate.
func usable(edges []Edge) (pieces []piece, span float64) {
	pieces = make([]piece, 0, len(edges))
	sources := make([]int, len(edges))
	for i, e := range edges {
		sources[i] = i
		reach := max(math.Abs(e.A.X), math.Abs(e.A.Y), math.Abs(e.B.X), math.Abs(e.B.Y))
		if !(reach <= farthest) || math.IsNaN(e.Bulge) || math.IsInf(e.Bulge, 0) {
			continue
		}
		c := e.curve()
		if c.length > 0 && c.length <= farthest && c.along != (Point{}) {
			pieces = append(pieces, piece{c, sources[i : i+1 : i+1]})
			span = max(span, reach)
		}
	}
	return pieces, span
}

// round is one pass of Arrange.
type round struct {
	pieces []piece
	tol    float64
	tiny   float64 // a movement that is only rounding
	moved  bool    // whether any edge moved by more

	nodes []Point
	links []Link
}

func (r *round) run() ([]Point, []Link) {
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
	r.links = make([]Link, 0, len(points))
	tree := newNearTree(r.nodes)
	var stops []stop
	for i := range r.pieces {
		p := &r.pieces[i]
		stops = r.stops(p, tree, node[2*i], node[2*i+1], stops[:0])
		r.cut(p, stops)
	}
	return r.nodes, r.merge()
}

// stop is a node on the way along a piece.
type stop struct {
	t    float64
	node int
}

// stops appends the nodes that a piece from one node to another is led through.
// A node beside an end is left out unless both parts come out shorter than the
// whole: that keeps the passes from going on for ever.
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
	return append(stops, stop{1, to})
}

// cut appends the links of a piece from stop to stop.
func (r *round) cut(p *piece, stops []stop) {
	for k, s := range stops[1:] {
		before := stops[k]
		part := p.Part(before.t, s.t)
		a, b := r.nodes[before.node], r.nodes[s.node]
		if before.node == s.node {
			if part.Length() < smallest*r.tol {
				r.moved = true
				continue
			}
			r.links = append(r.links, Link{part, before.node, s.node, p.sources})
			continue
		}
		if a.To(part.A) > r.tiny || b.To(part.B) > r.tiny {
			r.moved = true
		}
		link := Link{r.led(part, a, b), before.node, s.node, p.sources}
		if link.From > link.To {
			link.Edge, link.From, link.To = link.Reversed(), link.To, link.From
		}
		r.links = append(r.links, link)
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
func (r *round) merge() []Link {
	slices.SortFunc(r.links, func(k, l Link) int {
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
	return out
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

// assemble drops nodes without links and lists the links of each node.
func assemble(points []Point, links []Link) Arrangement {
	degree := make([]int, len(points))
	for _, l := range links {
		degree[l.From]++
		degree[l.To]++
	}
	room := make([]int, 0, 2*len(links))
	number := make([]int, len(points))
	out := Arrangement{Links: slices.Clip(links)}
	for i, p := range points {
		number[i] = len(out.Nodes)
		if n := degree[i]; n > 0 {
			out.Nodes = append(out.Nodes, Node{At: p, Links: room[:0:n]})
			room = room[:cap(room)][n:][:0]
		}
	}
	for i := range out.Links {
		l := &out.Links[i]
		l.From, l.To = number[l.From], number[l.To]
		for _, n := range []int{l.From, l.To} {
			out.Nodes[n].Links = append(out.Nodes[n].Links, i)
		}
	}
	return out
}
