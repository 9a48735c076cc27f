package dxf

import (
	"math"

	"groundrow/tapeout/plane"
)

// hatch reads the boundaries of a HATCH, not the lines that fill it.
func (r *reader) hatch(e *record) []part {
	h := hatchReader{e: e, n: e.extrusion(), z: e.num(30, 0)}
	paths := 0
	for i := range e.tags {
		if e.tags[i].code == 91 {
			paths, h.i = e.whole(91, 0), i+1
			break
		}
	}
	for ; paths > 0 && h.seek(92); paths-- {
		const polyline = 2
		if int(h.take(92))&polyline != 0 {
			h.polyline()
			continue
		}
		if !h.seek(93) {
			break
		}
		for edges := int(h.take(93)); edges > 0 && h.edge(); edges-- {
		}
	}
	return h.parts
}

// hatchReader walks through the boundaries, whose codes mean different things from
// one stretch to the next, so that their order counts.
type hatchReader struct {
	e     *record
	i     int // the next tag
	n     vec
	z     float64
	parts []part
}

// seek goes on to the next tag with the code, not past the end of the boundaries.
func (h *hatchReader) seek(code int32) bool {
	const style = 75 // follows the last boundary
	for j := h.i; j < len(h.e.tags) && h.e.tags[j].code != style; j++ {
		if h.e.tags[j].code == code {
			h.i = j
			return true
		}
	}
	return false
}

// take reads the next tag if it has the code, else it is zero.
func (h *hatchReader) take(code int32) float64 {
	if h.i >= len(h.e.tags) || h.e.tags[h.i].code != code {
		return 0
	}
	h.i++
	return h.e.parse(h.e.value(h.e.tags[h.i-1]))
}

func (h *hatchReader) point(code int32) plane.Point {
	x := h.take(code)
	return plane.Point{X: x, Y: h.take(code + 10)}
}

func (h *hatchReader) is(code int32) bool {
	return h.i < len(h.e.tags) && h.e.tags[h.i].code == code
}

func (h *hatchReader) polyline() {
	h.take(72)
	closed := h.take(73) != 0
	h.take(93)
	var corners []corner
	for h.is(10) {
		c := corner{at: h.point(10)}
		c.bulge = h.take(42)
		corners = append(corners, c)
	}
	h.parts = append(h.parts, flatPart(corners, closed, h.n, h.z))
}

// edge reads one edge of a boundary; false when there is none.
func (h *hatchReader) edge() bool {
	if !h.seek(72) {
		return false
	}
	switch int(h.take(72)) {
	case 1:
		from, to := h.point(10), h.point(11)
		h.add(plane.Edge{A: from, B: to})
	case 2:
		centre, radius := h.point(10), h.take(40)
		start, end := h.angles()
		h.add(plane.ArcOf(centre, math.Abs(radius), start, forward(start, end))...)
	case 3:
		h.ellipse()
	case 4:
		h.spline()
	}
	return true
}

func (h *hatchReader) add(edges ...plane.Edge) {
	p := flatPart(nil, false, h.n, h.z)
	p.edges = edges
	h.parts = append(h.parts, p)
}

// angles reads start and end of an arc and returns them counter-clockwise. Those of
// a clockwise arc are written as they look from behind.
func (h *hatchReader) angles() (start, end float64) {
	start, end = radians(h.take(50)), radians(h.take(51))
	if h.take(73) == 0 {
		return -end, -start
	}
	return start, end
}

// ellipse has its angles as directions, not as parameters.
func (h *hatchReader) ellipse() {
	centre, major, ratio := h.point(10), h.point(11), h.take(40)
	start, end := h.angles()
	parameter := func(angle float64) float64 {
		s, c := math.Sincos(angle)
		return math.Atan2(s, c*ratio)
	}
	place := func(p plane.Point) vec { return vec{p.X, p.Y, 0} }
	p := ellipsePart(place(centre), place(major), place(major.Left().Times(ratio)), parameter(start), parameter(end))
	p.frame = h.own().after(p.frame)
	h.parts = append(h.parts, p)
}

func (h *hatchReader) own() affine { return ownPlane(h.n).after(shift(vec{Z: h.z})) }

func (h *hatchReader) spline() {
	degree := int(h.take(94))
	h.take(73)
	h.take(74)
	h.take(95)
	h.take(96)
	var knots, weights []float64
	var points []vec
	for h.is(40) {
		knots = append(knots, h.take(40))
	}
	for h.is(10) {
		p := h.point(10)
		points = append(points, h.own().apply(vec{p.X, p.Y, 0}))
		if h.is(42) {
			weights = append(weights, h.take(42))
		}
	}
	if p, ok := splinePart(degree, knots, control(points, weights)); ok {
		h.parts = append(h.parts, p)
	} else {
		h.e.bad = whyKnots
	}
}
