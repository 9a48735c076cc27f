package floor

import (
	"fmt"
	"math"

	"groundrow/tapeout/plane"
)

// Registration is a mark that is made on a cloth's edge and on the floor beneath it, so
// that the cloth lies the same way each time.
type Registration struct {
	Label  string
	At     plane.Point // datum axes
	Corner bool        // an L round the corner; else a tick across the edge
	Double bool        // two ticks side by side: the upstage end of the centre line
}

// Registrations returns the marks of a cloth: an L at every corner of its outline that
// turns, in order from its first, and a tick where the centre line leaves it, a double
// one upstage. A cloth that turns nowhere has ticks at the two ends of its centre line
// and where the across axis leaves it. More than the marks of mostCorners corners
// nobody looks for.
func (f *Floor) Registrations() []Registration {
	outline := f.Outline.Moved(f.FloorToDatum())
	edges := outline.Edges()
	var out []Registration
	for i, e := range edges {
		before := edges[(i+len(edges)-1)%len(edges)]
		if turn := before.Tangent(1).Cross(e.Tangent(0)); math.Abs(turn) > math.Sin(leastTurn) && len(out) < mostCorners {
			out = append(out, Registration{Label: fmt.Sprintf("R%d", len(out)+1), At: e.A, Corner: true})
		}
	}
	if down, up, ok := ends(edges, plane.Point{Y: 1}); ok {
		out = append(out, Registration{Label: "C1", At: down}, Registration{Label: "C2", At: up, Double: true})
	}
	if len(out) > 2 {
		return out
	}
	if right, left, ok := ends(edges, plane.Point{X: 1}); ok {
		out = append(out, Registration{Label: "A1", At: right}, Registration{Label: "A2", At: left})
	}
	return out
}

const (
	mostCorners = 12
	leastTurn   = 10 * math.Pi / 180 // of a corner that a person sees as one
)

// ends returns where the axis through the datum in a direction first and last meets
// the edges.
func ends(edges []plane.Edge, way plane.Point) (first, last plane.Point, ok bool) {
	box, some := plane.Bounds(edges)
	if !some {
		return first, last, false
	}
	far := box.Min.Len() + box.Max.Len() + 1
	axis := plane.Edge{A: way.Times(-far), B: way.Times(far)}
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range edges {
		for _, p := range plane.Intersect(axis, e, tight) {
			if t := p.Dot(way); t < low {
				low, first = t, p
			}
			if t := p.Dot(way); t > high {
				high, last = t, p
			}
		}
	}
	return first, last, low < high
}
