package revision

import (
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// shape is what is compared of an element.
type shape struct {
	element *plan.Element
	name    string // in lower case, spaces single
	edges   []plane.Edge
	samples []plane.Point
	centre  plane.Point // centre of the line work, by length
	total   float64     // metres of line work
	byRole  map[plan.Role]float64
	profile [profileSize]float64
	axis    float64 // direction of the longest spread of the line work
	long    bool    // the spread has a direction: false for squares and circles
}

// profileSize is how many figures describe a shape whichever way it is turned.
const profileSize = 16

// sampleCount is about how many points stand for the line work of an element
// where two shapes are compared, besides the ends of its edges.
const sampleCount = 96

// maxSamples bounds them for an element with a great many edges.
const maxSamples = 600

func shapesOf(elements []plan.Element) []shape {
	out := make([]shape, len(elements))
	for i := range elements {
		out[i] = shapeOf(&elements[i])
	}
	return out
}

func shapeOf(e *plan.Element) shape {
	s := shape{element: e, name: plainName(e.Name), byRole: map[plan.Role]float64{}}
	for _, path := range e.Paths {
		for _, edge := range path.Edges() {
			length := edge.Length()
			if !(length > 0) || math.IsInf(length, 0) {
				continue
			}
			s.edges = append(s.edges, edge)
			s.byRole[path.Role] += length
			s.total += length
		}
	}
	if len(s.edges) == 0 {
		return s
	}
	s.sample()
	s.describe()
	return s
}

func plainName(name string) string { return strings.Join(strings.Fields(strings.ToLower(name)), " ") }

// sample puts points on the ends of every edge and evenly between.
func (s *shape) sample() {
	step := s.total / sampleCount
	for _, e := range s.edges {
		n := 1 + int(min(e.Length()/step, sampleCount))
		for k := range n + 1 {
			s.samples = append(s.samples, e.At(float64(k)/float64(n)))
		}
	}
	if skip := (len(s.samples) + maxSamples - 1) / maxSamples; skip > 1 {
		thin := s.samples[:0]
		for i := 0; i < len(s.samples); i += skip {
			thin = append(thin, s.samples[i])
		}
		s.samples = thin
	}
}

// describe computes what tells shapes apart without laying them on each other.
func (s *shape) describe() {
	const parts = 8
	type grain struct {
		at     plane.Point
		length float64
	}
	var grains []grain
	for _, e := range s.edges {
		part := e.Length() / parts
		for k := range parts {
			at := e.At((float64(k) + 0.5) / parts)
			grains = append(grains, grain{at, part})
			s.centre = s.centre.Add(at.Times(part / s.total))
		}
	}
	// The spread of the line work: its second moments about its centre.
	var xx, yy, xy float64
	radii := make([]grain, len(grains))
	for i, g := range grains {
		d := g.at.Sub(s.centre)
		xx, yy, xy = xx+g.length*d.X*d.X, yy+g.length*d.Y*d.Y, xy+g.length*d.X*d.Y
		radii[i] = grain{plane.Point{X: d.Len()}, g.length}
	}
	s.axis = math.Atan2(2*xy, xx-yy) / 2
	s.long = math.Hypot(2*xy, xx-yy) > 0.01*(xx+yy)

	slices.SortFunc(radii, func(a, b grain) int {
		switch {
		case a.at.X < b.at.X:
			return -1
		case a.at.X > b.at.X:
			return 1
		}
		return 0
	})
	// The distances from the centre at even shares of the length.
	k, run := 0, 0.0
	for _, g := range radii {
		run += g.length
		for k < profileSize && run >= (float64(k)+0.5)/profileSize*s.total-1e-12 {
			s.profile[k] = g.at.X
			k++
		}
	}
}
