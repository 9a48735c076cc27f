package plane

import "slices"

// Clip cuts an edge at the outline of a closed region and returns the pieces
// inside and outside, each list in order along e. What runs along the outline
// within tol metres counts as inside. Pieces shorter than tol go with the piece
// before them, so that the two lists add up to the edge.
func Clip(e Edge, region Path, tol float64) (inside, outside []Edge) {
	c := e.curve()
	if c.length == 0 {
		return nil, nil
	}
	var previous bool
	start, end := 0.0, 0.0
	emit := func() {
		if end > start {
			list := &outside
			if previous {
				list = &inside
			}
			*list = append(*list, e.Part(start, end))
		}
		start = end
	}
	for _, t := range cuts(&c, region, tol) {
		if (t-end)*c.length < tol && (end > 0 || t < 1) {
			if t == 1 {
				end = 1
			}
			continue
		}
		in := region.Contains(e.At((end+t)/2), tol)
		if in != previous {
			emit()
		}
		previous, end = in, t
	}
	emit()
	return inside, outside
}

// cuts returns the fractions of an edge's length at which it meets the outline of
// a region, ascending, with its end as the last.
func cuts(c *curve, region Path, tol float64) []float64 {
	box := c.Bounds().Grow(tol)
	var points []Point
	for _, edge := range region.Edges() {
		if box.Meets(edge.Bounds()) {
			d := edge.curve()
			points = meet(c, &d, tol, points)
		}
	}
	at := make([]float64, 0, len(points)+1)
	for _, p := range points {
		if t := c.fraction(p); t > 0 && t < 1 {
			at = append(at, t)
		}
	}
	slices.Sort(at)
	return append(at, 1)
}
