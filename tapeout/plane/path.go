package plane

// Vertex is a corner of a path, with the bulge of the edge that leaves it: the
// tangent of a quarter of the arc's angle, positive counter-clockwise, zero for
// a straight edge. This is the convention of the published DXF reference.
type Vertex struct {
	Point
	Bulge float64
}

// Path is a chain of straight and circular edges. When Closed, an edge joins the
// last vertex to the first; the bulge of an open path's last vertex is unused.
type Path struct {
	Vertices []Vertex
	Closed   bool
}

// Open returns the open path of straight edges through points.
func Open(points ...Point) Path { return Path{Vertices: corners(points)} }

// Closed returns the closed path of straight edges through points.
func Closed(points ...Point) Path { return Path{Vertices: corners(points), Closed: true} }

// Rectangle returns the closed rectangle with one corner at min and the other at
// max, counter-clockwise from min.
func Rectangle(min, max Point) Path {
	return Closed(min, Point{max.X, min.Y}, max, Point{min.X, max.Y})
}

// Circle returns the closed path of two half circles, counter-clockwise from the
// point at stage left of the centre.
func Circle(centre Point, radius float64) Path {
	r := Point{radius, 0}
	return Path{Closed: true, Vertices: []Vertex{{centre.Add(r), 1}, {centre.Sub(r), 1}}}
}

func corners(points []Point) []Vertex {
	vs := make([]Vertex, len(points))
	for i, p := range points {
		vs[i].Point = p
	}
	return vs
}

// Points returns the vertices without their bulges.
func (p Path) Points() []Point {
	ps := make([]Point, len(p.Vertices))
	for i, v := range p.Vertices {
		ps[i] = v.Point
	}
	return ps
}

// Edges returns the edges in order; none for a path of fewer than two vertices.
func (p Path) Edges() []Edge {
	n := len(p.Vertices)
	if n < 2 {
		return nil
	}
	last := n - 1
	if p.Closed {
		last = n
	}
	es := make([]Edge, last)
	for i := range es {
		v := p.Vertices[i]
		es[i] = Edge{v.Point, p.Vertices[(i+1)%n].Point, v.Bulge}
	}
	return es
}

// Moved returns the path after the motion.
func (p Path) Moved(m Motion) Path {
	out := Path{Vertices: make([]Vertex, len(p.Vertices)), Closed: p.Closed}
	for i, v := range p.Vertices {
		out.Vertices[i] = Vertex{m.Apply(v.Point), v.Bulge}
	}
	return out
}

// Length returns the length of all edges in metres.
func (p Path) Length() float64 {
	sum := 0.0
	for _, e := range p.Edges() {
		sum += e.Length()
	}
	return sum
}

// Bounds returns the smallest box around the path; ok is false without vertices.
func (p Path) Bounds() (b Box, ok bool) {
	for _, v := range p.Vertices {
		b, ok = b.with(v.Point, ok)
	}
	for _, e := range p.Edges() {
		b = b.Union(e.Bounds())
	}
	return b, ok
}
