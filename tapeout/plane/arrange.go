package plane

import (
	"math"
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
// No two links cross away from a node, but for one trace of rounding: an arc that
// leaves a node beside another link may cross it once more while they are within
// about an eighth of tol of each other.
//
// Leading edges through nodes moves them by up to tol and can make new meetings;
// these are arranged again until nothing moves (iterated snap rounding: Halperin
// and Packer, Computational Geometry 23, 2002; from memory).
func Arrange(edges []Edge, tol float64) Arrangement {
	pieces, span := usable(edges)
	tiny := rounding(span)
	tol = workingTolerance(tol, span)
	var out assembly
	for pass := range maxPasses {
		r := round{pieces: pieces, tol: tol, tiny: tiny}
		r.run()
		pieces = out.settle(&r)
		if len(pieces) == 0 {
			break
		}
		if pass >= fullPasses {
			tol = workingTolerance(tol/4, span)
		}
	}
	return out.arrangement()
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

// rounding is the movement, in metres, that computing with coordinates up to span
// can make.
func rounding(span float64) float64 { return max(1e-10, span*1e-14) }

// workingTolerance is tol, or the smallest that rounding allows.
func workingTolerance(tol, span float64) float64 {
	if least := 4 * rounding(span); !(tol > least) {
		return least
	}
	return tol
}

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
