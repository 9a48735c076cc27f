package planplace

import (
	"errors"
	"math"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

var (
	errTooNear = errors.New("there is no room for it on that side: some of its edges would turn inside out")
	errCurved  = errors.New("only straight lines and circles can be copied at a distance")
)

// offset returns a line at a distance in metres to the left of another, or to the
// right for a negative one. Straight edges meet again where they cross; a circle
// or an arc of one stays about its centre. Other mixtures are refused.
func offset(path plane.Path, by float64) (plane.Path, error) {
	edges := path.Edges()
	if by == 0 || len(edges) == 0 {
		return plane.Path{}, errors.New("type how far from the line, with its side: 6\" left")
	}
	if centre, ok := sameCentre(edges); ok {
		return offsetRound(path, centre, by)
	}
	for _, e := range edges {
		if !e.Straight() {
			return plane.Path{}, errCurved
		}
	}
	return offsetStraight(path, edges, by)
}

// addCopies draws a line count times more on its element, each the given distance
// beyond the one before; none is drawn when one of them cannot be.
func addCopies(e *plan.Element, path plan.Path, by float64, count int, id newID) error {
	var copies []plane.Path
	for n := range count {
		beside, err := offset(path.Path, by*float64(n+1))
		if err != nil {
			return err
		}
		copies = append(copies, beside)
	}
	for _, beside := range copies {
		addPath(e, path.Role, beside, id)
	}
	return nil
}

// sameCentre returns the centre that all edges turn about.
func sameCentre(edges []plane.Edge) (plane.Point, bool) {
	centre, _, ok := edges[0].Circle()
	for _, e := range edges[1:] {
		c, _, round := e.Circle()
		if !round || c.To(centre) > 1e-6 {
			return plane.Point{}, false
		}
	}
	return centre, ok
}

func offsetRound(path plane.Path, centre plane.Point, by float64) (plane.Path, error) {
	if path.Vertices[0].Bulge < 0 {
		by = -by // turning right: the left side is outside
	}
	out := plane.Path{Closed: path.Closed}
	for _, v := range path.Vertices {
		away := v.Sub(centre)
		radius := away.Len()
		if radius-by <= 1e-6 {
			return plane.Path{}, errTooNear
		}
		out.Vertices = append(out.Vertices, plane.Vertex{
			Point: centre.Add(away.Times((radius - by) / radius)), Bulge: v.Bulge,
		})
	}
	return out, nil
}

func offsetStraight(path plane.Path, edges []plane.Edge, by float64) (plane.Path, error) {
	out := plane.Path{Closed: path.Closed}
	n := len(path.Vertices)
	for i, v := range path.Vertices {
		var before, after plane.Point
		if path.Closed || i > 0 {
			before = edges[(i+n-1)%n].Tangent(0)
		}
		if path.Closed || i < n-1 {
			after = edges[i].Tangent(0)
		}
		shift, ok := mitre(before, after)
		if !ok {
			return plane.Path{}, errTooNear
		}
		out.Vertices = append(out.Vertices, plane.Vertex{Point: v.Add(shift.Times(by))})
	}
	for i, e := range out.Edges() {
		if e.B.Sub(e.A).Dot(edges[i].Tangent(0)) <= 0 {
			return plane.Path{}, errTooNear
		}
	}
	return out, nil
}

// mitre returns where a corner goes for an offset of one to the left, between the
// directions of the edges before and after it, either of which may be missing.
// With n the left normals it is (n1+n2)/(1+n1·n2).
func mitre(before, after plane.Point) (plane.Point, bool) {
	none := plane.Point{}
	switch {
	case before == none && after == none:
		return none, false
	case before == none:
		return after.Left(), true
	case after == none:
		return before.Left(), true
	}
	a, b := before.Left(), after.Left()
	across := 1 + a.Dot(b)
	if math.Abs(across) < 1e-6 {
		return none, false
	}
	return a.Add(b).Times(1 / across), true
}
