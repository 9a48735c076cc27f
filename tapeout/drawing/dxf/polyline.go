package dxf

import "groundrow/tapeout/plane"

// polylineClosed is the flag of a polyline that returns to its first point.
const polylineClosed = 1

const whyWide = "lines with a width of their own are read along their middle"

func (r *reader) lwpolyline(e *record) []part {
	var corners []corner
	wide := e.num(43, 0) > 0
	for _, t := range e.tags {
		last := len(corners) - 1
		switch {
		case t.code == 10:
			corners = append(corners, corner{at: plane.Point{X: e.parse(e.value(t))}})
		case last < 0:
		case t.code == 20:
			corners[last].at.Y = e.parse(e.value(t))
		case t.code == 42:
			corners[last].bulge = e.parse(e.value(t))
		case t.code == 40 || t.code == 41:
			wide = wide || e.parse(e.value(t)) > 0
		}
	}
	if wide {
		r.note("widths of LWPOLYLINE", whyWide)
	}
	closed := e.whole(70, 0)&polylineClosed != 0
	return []part{flatPart(corners, closed, e.extrusion(), e.num(38, 0))}
}

// polyline gathers a POLYLINE, whose vertices are entities of their own.
type polyline struct {
	entity  *entity
	flags   int
	n       vec
	z       float64
	corners []corner
	points  []vec
	bad     string
	wide    bool
}

// Flags of a POLYLINE and of its vertices.
const (
	polyline3D     = 8
	polygonMesh    = 16
	polyfaceMesh   = 64
	vertexOfFrame  = 16 // a control point of the curve, which is not on it
	whyMesh        = "it is a mesh, a surface in space"
	verticesAtMost = 250_000
)

func (r *reader) startPolyline(e *record) error {
	s, err := r.style(e)
	if err != nil {
		return err
	}
	p := &polyline{
		entity: &entity{kind: "POLYLINE", style: s},
		flags:  e.whole(70, 0), n: e.extrusion(), z: e.num(30, 0),
		wide: e.num(40, 0) > 0 || e.num(41, 0) > 0,
	}
	p.bad = e.bad
	r.open = p
	return nil
}

func (p *polyline) add(r *reader, e *record) error {
	if e.kind != "VERTEX" || e.whole(70, 0)&vertexOfFrame != 0 {
		return nil
	}
	at := e.vec(10)
	p.points = append(p.points, at)
	p.corners = append(p.corners, corner{at.plan(), e.num(42, 0)})
	if e.bad != "" {
		p.bad = e.bad
	}
	if len(p.points) > verticesAtMost {
		p.bad, p.points, p.corners = whyLong, nil, nil
	}
	return nil
}

// close hands over the finished polyline.
func (p *polyline) close(r *reader) error {
	switch {
	case p.bad != "":
		r.note("POLYLINE", p.bad)
		return nil
	case p.flags&(polygonMesh|polyfaceMesh) != 0:
		r.note("POLYLINE", whyMesh)
		return nil
	case p.wide:
		r.note("widths of POLYLINE", whyWide)
	}
	closed := p.flags&polylineClosed != 0
	if p.flags&polyline3D == 0 {
		p.entity.parts = []part{flatPart(p.corners, closed, p.n, p.z)}
		return r.take(p.entity)
	}
	if closed && len(p.points) > 0 {
		p.points = append(p.points, p.points[0])
	}
	if len(p.points) > 0 {
		p.entity.parts = spatial(p.points...)
	}
	return r.take(p.entity)
}
