package dxf

import (
	"math"

	"groundrow/tapeout/plane"
)

// part is a piece of an entity's line work in its own coordinates.
type part interface {
	// place appends the edges of the part in the plan.
	place(m affine, f fineness, out []plane.Edge) []plane.Edge
	// level tells whether it lies level there, so that nothing is lost from above.
	level(m affine) bool
	// cost is the number of bytes that it takes.
	cost() int
}

// fineness says how far a chord may depart from its curve.
type fineness struct {
	tol      float64 // in drawing units; zero: the unit is not known, so
	relative float64 // this share of the curve's own size
}

func (f fineness) of(size float64) float64 {
	if f.tol > 0 {
		return f.tol
	}
	return f.relative * size
}

// sheetPart is edges in a plane of their own; frame maps that plane, Z = 0, into
// space. An ellipse is one: the unit circle with its two axes for a frame.
type sheetPart struct {
	edges []plane.Edge
	frame affine
}

// place keeps arcs where they stay circular. Otherwise they are flattened in their
// own plane, with a tolerance that the map cannot lengthen beyond the one asked for.
func (p *sheetPart) place(m affine, f fineness, out []plane.Edge) []plane.Edge {
	view := m.after(p.frame).plan()
	mirrored, even := view.even()
	for _, e := range p.edges {
		switch {
		case even || e.Straight():
			out = append(out, plane.Edge{A: view.apply(e.A), B: view.apply(e.B), Bulge: e.Bulge * mirrored})
		default:
			out = appendArc(out, e, view, f)
		}
	}
	return out
}

func appendArc(out []plane.Edge, e plane.Edge, view planMap, f fineness) []plane.Edge {
	_, radius, _ := e.Circle()
	stretch := view.stretch()
	if stretch == 0 {
		return out
	}
	tol := min(f.of(stretch*radius)/stretch, radius/8)
	points := e.Flatten(tol)
	for i, q := range points[1:] {
		out = append(out, plane.Edge{A: view.apply(points[i]), B: view.apply(q)})
	}
	return out
}

func (p *sheetPart) level(m affine) bool { return m.after(p.frame).level() }

func (p *sheetPart) cost() int { return costEdge*len(p.edges) + 120 }

// flatPart returns points in the plane Z = z facing n, joined by edges with the
// given bulges (nil: straight), closed or not.
func flatPart(corners []corner, closed bool, n vec, z float64) *sheetPart {
	p := &sheetPart{frame: ownPlane(n).after(shift(vec{Z: z}))}
	last := len(corners) - 1
	for i, c := range corners {
		if i < last {
			p.edges = append(p.edges, plane.Edge{A: c.at, B: corners[i+1].at, Bulge: c.bulge})
		} else if closed && last > 0 {
			p.edges = append(p.edges, plane.Edge{A: c.at, B: corners[0].at, Bulge: c.bulge})
		}
	}
	return p
}

// corner is a vertex of a polyline with the bulge of the edge that follows.
type corner struct {
	at    plane.Point
	bulge float64
}

// ellipsePart returns the arc of an ellipse from parameter start to end, in radians
// counter-clockwise; the same twice is the whole ellipse.
func ellipsePart(centre, major, minor vec, start, end float64) *sheetPart {
	frame := affine{X: major, Y: minor, O: centre}
	return &sheetPart{edges: plane.ArcOf(plane.Point{}, 1, start, forward(start, end)), frame: frame}
}

// forward returns the angle counter-clockwise from start to end, in (0, 2π].
func forward(start, end float64) float64 {
	sweep := math.Mod(end-start, 2*math.Pi)
	const whole = 1e-9 // radians: rounding in the file
	if sweep < whole {
		sweep += 2 * math.Pi
	}
	return min(sweep, 2*math.Pi)
}

// spacePart is a chain of points that need not lie in a plane.
type spacePart struct{ points []vec }

func (p *spacePart) place(m affine, _ fineness, out []plane.Edge) []plane.Edge {
	for i := 1; i < len(p.points); i++ {
		out = append(out, plane.Edge{A: m.apply(p.points[i-1]).plan(), B: m.apply(p.points[i]).plan()})
	}
	return out
}

func (p *spacePart) level(m affine) bool { return levelPoints(p.points, m) }

func (p *spacePart) cost() int { return costPoint*len(p.points) + 40 }

// levelPoints tells whether all points are at one height.
func levelPoints(points []vec, m affine) bool {
	if len(points) == 0 {
		return true
	}
	first := m.apply(points[0])
	for _, q := range points[1:] {
		p := m.apply(q)
		if math.Abs(p.Z-first.Z) > flat*p.minus(first).len() {
			return false
		}
	}
	return true
}
