package dxf

import (
	"math"

	"groundrow/tapeout/plane"
)

// shapes turn the record of one entity into its parts; none where there is nothing
// to draw. A record that cannot be used says so itself.
var shapes = map[string]func(*reader, *record) []part{
	"LINE":       (*reader).line,
	"ARC":        (*reader).arc,
	"CIRCLE":     (*reader).circle,
	"ELLIPSE":    (*reader).ellipse,
	"SPLINE":     (*reader).spline,
	"LWPOLYLINE": (*reader).lwpolyline,
	"SOLID":      (*reader).solid,
	"TRACE":      (*reader).solid,
	"3DFACE":     (*reader).face,
	"LEADER":     (*reader).leader,
	"HATCH":      (*reader).hatch,
}

func (r *reader) line(e *record) []part {
	return spatial(e.vec(10), e.vec(11))
}

// spatial joins points in space; where they are at one height they share a plane.
func spatial(points ...vec) []part {
	for _, p := range points {
		if p.Z != points[0].Z {
			return []part{&spacePart{points}}
		}
	}
	corners := make([]corner, len(points))
	for i, p := range points {
		corners[i].at = p.plan()
	}
	return []part{flatPart(corners, false, vec{Z: 1}, points[0].Z)}
}

func (r *reader) arc(e *record) []part {
	start, end := radians(e.num(50, 0)), radians(e.num(51, 360))
	return round(e, start, forward(start, end))
}

func (r *reader) circle(e *record) []part { return round(e, 0, 2*math.Pi) }

func round(e *record, start, sweep float64) []part {
	centre := e.vec(10)
	p := flatPart(nil, false, e.extrusion(), centre.Z)
	p.edges = plane.ArcOf(centre.plan(), math.Abs(e.num(40, 0)), start, sweep)
	return []part{p}
}

func radians(degrees float64) float64 { return math.Mod(degrees, 360) * math.Pi / 180 }

// ellipse has its centre and axes in the drawing's coordinates, and its angles as
// parameters in radians.
func (r *reader) ellipse(e *record) []part {
	major, ratio, n := e.vec(11), e.num(40, 1), e.extrusion()
	if size := n.len(); size > 0 {
		n = n.times(1 / size)
	}
	return []part{ellipsePart(e.vec(10), major, n.cross(major).times(ratio), e.num(41, 0), e.num(42, 2*math.Pi))}
}

func (r *reader) solid(e *record) []part {
	points := []vec{e.vec(10), e.vec(11), e.vec(13), e.vec(12)}
	if !e.has(13) {
		points[2] = points[3]
	}
	corners := make([]corner, 0, 4)
	for i, p := range points {
		if i == 0 || p.plan() != corners[len(corners)-1].at {
			corners = append(corners, corner{at: p.plan()})
		}
	}
	return []part{flatPart(corners, true, e.extrusion(), points[0].Z)}
}

// face draws the edges of a 3DFACE that are not marked as unseen.
func (r *reader) face(e *record) []part {
	points := []vec{e.vec(10), e.vec(11), e.vec(12), e.vec(13)}
	if !e.has(13) {
		points[3] = points[2]
	}
	unseen := e.whole(70, 0)
	var parts []part
	for i, p := range points {
		if q := points[(i+1)%4]; unseen>>i&1 == 0 && p != q {
			parts = append(parts, spatial(p, q)...)
		}
	}
	return parts
}

// leader draws the line of a LEADER, in the drawing's coordinates, without its arrow.
func (r *reader) leader(e *record) []part {
	points := e.points(10)
	if len(points) < 2 {
		return nil
	}
	const curved = 1
	if e.whole(72, 0) == curved {
		if p, ok := throughPoints(points, nil, nil); ok {
			return []part{p}
		}
	}
	return spatial(points...)
}

// points returns all points whose X has the code.
func (e *record) points(code int32) []vec {
	var out []vec
	for _, t := range e.tags {
		switch t.code {
		case code:
			out = append(out, vec{X: e.parse(e.value(t))})
		case code + 10:
			if len(out) > 0 {
				out[len(out)-1].Y = e.parse(e.value(t))
			}
		case code + 20:
			if len(out) > 0 {
				out[len(out)-1].Z = e.parse(e.value(t))
			}
		}
	}
	return out
}

func (e *record) numbers(code int32) []float64 {
	var out []float64
	for _, t := range e.tags {
		if t.code == code {
			out = append(out, e.parse(e.value(t)))
		}
	}
	return out
}

const (
	whyFit   = "only the points that it passes through are in the file; the curve between them may be drawn slightly differently elsewhere"
	whyKnots = "its degree, knots and control points do not fit together"
)

func (r *reader) spline(e *record) []part {
	points := e.points(10)
	if len(points) == 0 {
		return r.fitted(e)
	}
	p, ok := splinePart(e.whole(71, 3), e.numbers(40), control(points, e.numbers(41)))
	if !ok {
		e.bad = whyKnots
		return nil
	}
	return []part{p}
}

// control multiplies points by their weights; without as many weights, all are one.
// A weight that is not above zero gives nil: such a curve can run off to infinity.
func control(points []vec, weights []float64) []weighted {
	out := make([]weighted, len(points))
	for i, p := range points {
		w := 1.0
		if len(weights) == len(points) {
			w = weights[i]
		}
		if !(w > 0) {
			return nil
		}
		out[i] = weighted{p.times(w), w}
	}
	return out
}

func (r *reader) fitted(e *record) []part {
	points := e.points(11)
	p, ok := throughPoints(points, e.direction(12), e.direction(13))
	if !ok {
		return nil
	}
	r.note("exact shape of SPLINE", whyFit)
	return []part{p}
}

// direction returns the unit direction with the code, nil when there is none.
func (e *record) direction(code int) *vec {
	if !e.has(code) {
		return nil
	}
	v := e.vec(code)
	size := v.len()
	if size == 0 {
		return nil
	}
	v = v.times(1 / size)
	return &v
}
