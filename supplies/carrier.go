package supplies

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// carrier is the endless line or the circle that a strip lies along. Places on
// it are metres from its origin, on a circle counter-clockwise.
type carrier struct {
	origin, along plane.Point // straight
	centre        plane.Point // circle
	radius        float64     // zero: straight
	start         float64     // radians; where the circle's metres begin
}

// span is a stretch of a carrier, from ≤ to.
type span struct{ from, to float64 }

// carrierOf returns the carrier that an edge of some length lies along.
func carrierOf(e plane.Edge) carrier {
	if centre, r, ok := e.Circle(); ok {
		a := e.A
		if e.Bulge < 0 {
			a = e.B
		}
		return carrier{centre: centre, radius: r, start: a.Sub(centre).Angle()}
	}
	u, _ := e.B.Sub(e.A).Unit()
	return carrier{origin: e.A, along: u}
}

// around returns the length of the circle; infinite for a line.
func (c carrier) around() float64 {
	if c.radius == 0 {
		return math.Inf(1)
	}
	return 2 * math.Pi * c.radius
}

// span returns where on the carrier the edge lies; ok is false when it departs
// from the carrier by more than the width at which lines count as the same.
func (c carrier) span(e plane.Edge) (s span, ok bool) {
	if c.radius == 0 {
		// Most edges lie elsewhere, so the cheap question comes first.
		if c.off(e.A) > same || c.off(e.B) > same || !e.Straight() {
			return span{}, false
		}
		a, b := e.A.Sub(c.origin).Dot(c.along), e.B.Sub(c.origin).Dot(c.along)
		// A short piece that stands across the line is not part of it.
		if math.Abs(b-a) < e.Chord()/2 {
			return span{}, false
		}
		return span{min(a, b), max(a, b)}, true
	}
	centre, r, curved := e.Circle()
	if !curved || centre.To(c.centre) > same || math.Abs(r-c.radius) > same {
		return span{}, false
	}
	a := e.A
	if e.Bulge < 0 {
		a = e.B
	}
	turn := math.Mod(a.Sub(c.centre).Angle()-c.start+4*math.Pi, 2*math.Pi)
	if 2*math.Pi-turn < 1e-9 {
		turn = 0
	}
	from := turn * c.radius
	return span{from, from + math.Abs(e.Sweep())*c.radius}, true
}

// off returns the distance of a point from a straight carrier.
func (c carrier) off(p plane.Point) float64 { return math.Abs(c.along.Cross(p.Sub(c.origin))) }

// join merges spans that touch or overlap, round the circle too.
func (c carrier) join(spans []span) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var out []span
	for _, s := range spans {
		if n := len(out); n > 0 && s.from <= out[n-1].to+same {
			out[n-1].to = max(out[n-1].to, s.to)
		} else {
			out = append(out, s)
		}
	}
	// On a circle the last stretch may reach past the origin into the first ones.
	for n := len(out); n > 1 && out[n-1].to >= out[0].from+c.around()-same; n = len(out) {
		out[n-1].to = max(out[n-1].to, out[0].to+c.around())
		out = out[1:]
	}
	return out
}

// strip returns the piece of tape on a stretch of the carrier.
func (c carrier) strip(s span) Strip {
	if s.to-s.from >= c.around()-same {
		half := span{s.from, s.from + c.around()/2}
		return Strip{Edge: c.edge(half), Whole: true}
	}
	return Strip{Edge: c.edge(s)}
}

// edge returns the stretch as an edge.
func (c carrier) edge(s span) plane.Edge {
	if c.radius == 0 {
		return plane.Edge{A: c.origin.Add(c.along.Times(s.from)), B: c.origin.Add(c.along.Times(s.to))}
	}
	at := func(m float64) plane.Point { return c.centre.Add(plane.Polar(c.radius, c.start+m/c.radius)) }
	return plane.Edge{A: at(s.from), B: at(s.to), Bulge: math.Tan((s.to - s.from) / c.radius / 4)}
}

// without returns what is left of p when cover is taken out of it. Crumbs
// shorter than the width at which lines count as the same are dropped.
func (c carrier) without(p, cover span) []plane.Edge {
	rest := []span{p}
	turns := []float64{0}
	if c.radius > 0 {
		turns = []float64{-c.around(), 0, c.around()}
	}
	for _, t := range turns {
		var next []span
		for _, r := range rest {
			next = append(next, span{r.from, min(r.to, cover.from+t)}, span{max(r.from, cover.to+t), r.to})
		}
		rest = slices.DeleteFunc(next, func(s span) bool { return s.to-s.from <= same })
	}
	edges := make([]plane.Edge, len(rest))
	for i, s := range rest {
		edges[i] = c.edge(s)
	}
	return edges
}
