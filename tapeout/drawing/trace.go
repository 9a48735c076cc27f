package drawing

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// trace is one path as its rows give it.
type trace struct {
	role    plan.Role
	closed  bool
	stated  map[string]stated // what was said of it, by column
	corners []corner
	radius  float64 // of a circle, whose centre is the only corner
}

// corner is one row of a path.
type corner struct {
	row   int
	at    plane.Point
	curve curve
}

// joined is how near the last point must be to the first for the path to have
// come back to where it began, in metres.
const joined = 1e-6

// path joins the corners. What keeps it from being a line is returned as a
// problem, and then there is no path.
func (t *trace) path() (plane.Path, *RowProblem) {
	if t.radius > 0 {
		return plane.Circle(t.corners[0].at, t.radius), nil
	}
	corners := t.comeBack()
	out := plane.Path{Closed: t.closed}
	for i, c := range corners {
		if c.curve.kind != through {
			out.Vertices = append(out.Vertices, plane.Vertex{Point: c.at, Bulge: c.curve.bulge})
			continue
		}
		bulge, why := t.arc(corners, i)
		if why != "" {
			return plane.Path{}, &RowProblem{Row: c.row, Column: "curve", Got: "through", Why: why}
		}
		out.Vertices[len(out.Vertices)-1].Bulge = bulge
	}
	return out, tooShort(out, corners[0].row)
}

// comeBack returns the corners without a last one that repeats the first, and
// closes the path that has it, unless the rows say that it is open.
func (t *trace) comeBack() []corner {
	n := len(t.corners)
	last := t.corners[n-1]
	_, said := t.stated["close"]
	if n < 3 || last.curve.kind == through || last.at.To(t.corners[0].at) > joined || said && !t.closed {
		return t.corners
	}
	t.closed = true
	return t.corners[:n-1]
}

// arc returns the bulge of the edge that passes through corner i.
func (t *trace) arc(corners []corner, i int) (bulge float64, why string) {
	next := i + 1
	if next == len(corners) && t.closed {
		next = 0
	}
	switch {
	case i == 0 || next == len(corners):
		return 0, "an arc runs through it from the point before to the point after, and one is missing"
	case corners[i-1].curve.kind != straight || corners[next].curve.kind == through:
		return 0, "the point before and the one after must be corners without a curve of their own"
	}
	e, ok := plane.Through(corners[i-1].at, corners[i].at, corners[next].at)
	if !ok || e.Bulge > maxBulge || e.Bulge < -maxBulge {
		return 0, "no arc runs through these three points; a full circle is written as circle with its radius"
	}
	return e.Bulge, ""
}

// tooShort returns the problem of a path that draws nothing.
func tooShort(p plane.Path, row int) *RowProblem {
	if len(p.Vertices) < 2 {
		return &RowProblem{Row: row, Why: "one point makes no line",
			Want: "a second row of the same element and path, or circle with its radius in the column curve"}
	}
	if p.Closed && len(p.Vertices) == 2 && p.Vertices[0].Bulge == 0 && p.Vertices[1].Bulge == 0 {
		return &RowProblem{Row: row, Why: "two points cannot be closed", Want: "a third point, or close: no"}
	}
	return nil
}
