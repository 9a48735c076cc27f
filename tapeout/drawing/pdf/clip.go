package pdf

import (
	"groundrow/tapeout/plane"
)

// window is a closed outline outside of which nothing is seen.
type window struct {
	region  plane.Path
	box     plane.Box
	upright bool // the region is its box
}

// mostSides of a window that is cut along; a clip along a picture's contour has
// thousands.
const mostSides = 64

// windowOf returns the window within an outline, ok false when it has too many
// sides or none.
func windowOf(o *outline, tol float64) (w window, ok bool) {
	closed := *o
	closed.closed = true
	edges := closed.edges(tol)
	if len(edges) < 2 || len(edges) > mostSides {
		return window{}, false
	}
	w.region = plane.Path{Closed: true}
	for _, e := range edges {
		w.region.Vertices = append(w.region.Vertices, plane.Vertex{Point: e.A, Bulge: e.Bulge})
	}
	w.box, _ = w.region.Bounds()
	w.upright = len(edges) == 4 && w.region.Area() >= w.box.Width()*w.box.Height()*(1-1e-9)
	return w, true
}

// cut returns the parts of the edges that are seen through the window. What runs
// along its frame is seen.
func (w *window) cut(edges []plane.Edge, tol float64) []plane.Edge {
	if b, ok := plane.Bounds(edges); ok && w.upright && holds(w.box.Grow(tol), b) {
		return edges
	}
	var out []plane.Edge
	for _, e := range edges {
		switch b := e.Bounds(); {
		case !w.box.Grow(tol).Meets(b):
		case w.upright && holds(w.box.Grow(tol), b):
			out = append(out, e)
		default:
			inside, _ := plane.Clip(e, w.region, tol)
			out = append(out, inside...)
		}
	}
	return out
}

func holds(outer, inner plane.Box) bool { return outer.Holds(inner.Min) && outer.Holds(inner.Max) }
