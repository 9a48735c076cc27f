package floorcanvas

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// scene is a picture made ready for painting and picking: unsound points
// dropped, edges chained, arcs turned into chords as fine as the zoom asks for.
type scene struct {
	Picture
	shapes []chain // by Z, then in the order given
	areas  []chain
	bounds plane.Box
	any    bool    // whether there is anything to see
	tol    float64 // metres by which the chords may depart from their arcs
}

// chain is the line work of one shape or area.
type chain struct {
	index  int // in Picture.Shapes or Picture.Areas
	id     string
	edges  []plane.Edge
	box    plane.Box
	arcs   bool
	pieces [][]plane.Point // what is painted
}

func prepare(p Picture) *scene {
	s := &scene{Picture: p}
	if !near(p.Datum.Shift) || math.IsNaN(p.Datum.Turn-p.Datum.Turn) {
		s.Datum = plane.Motion{}
	}
	for i := range p.Shapes {
		s.shapes = appendChain(s.shapes, i, p.Shapes[i].ID, p.Shapes[i].Edges)
	}
	for i := range p.Areas {
		path := p.Areas[i].Path
		path.Closed = true
		s.areas = appendChain(s.areas, i, p.Areas[i].ID, path.Edges())
	}
	slices.SortStableFunc(s.shapes, func(a, b chain) int { return p.Shapes[a.index].Z - p.Shapes[b.index].Z })
	slices.SortStableFunc(s.areas, func(a, b chain) int { return p.Areas[a.index].Z - p.Areas[b.index].Z })
	s.Dots = slices.DeleteFunc(slices.Clone(p.Dots), func(d Dot) bool { return !near(d.At) })
	s.Labels = slices.DeleteFunc(slices.Clone(p.Labels), func(l Label) bool { return !near(l.At) || l.Text == "" })
	s.Handles = slices.DeleteFunc(slices.Clone(p.Handles), func(h Handle) bool { return !near(h.At) })
	s.Ellipses = slices.DeleteFunc(slices.Clone(p.Ellipses), func(e Ellipse) bool { return !e.sound() })
	s.measureBounds()
	s.flatten(0.01)
	return s
}

func appendChain(to []chain, index int, id string, edges []plane.Edge) []chain {
	c := chain{index: index, id: id}
	for _, e := range edges {
		if !near(e.A) || !near(e.B) || math.IsNaN(e.Bulge) || math.IsInf(e.Bulge, 0) {
			continue
		}
		if len(c.edges) == 0 {
			c.box = e.Bounds()
		}
		c.box = c.box.Union(e.Bounds())
		c.arcs = c.arcs || !e.Straight()
		c.edges = append(c.edges, e)
	}
	if len(c.edges) == 0 {
		return to
	}
	return append(to, c)
}

// farthest is how many metres from the origin anything can be shown.
const farthest = 1e7

// near tells whether a point is finite and close enough to be painted without
// losing its last millimetre.
func near(p plane.Point) bool {
	return math.Abs(p.X) < farthest && math.Abs(p.Y) < farthest
}

func (s *scene) measureBounds() {
	add := func(b plane.Box) {
		if !s.any {
			s.bounds, s.any = b, true
		}
		s.bounds = s.bounds.Union(b)
	}
	for _, c := range s.shapes {
		add(c.box)
	}
	for _, c := range s.areas {
		add(c.box)
	}
	for _, d := range s.Dots {
		add(plane.Box{Min: d.At, Max: d.At})
	}
	for _, l := range s.Labels {
		add(plane.Box{Min: l.At, Max: l.At})
	}
	if s.Backdrop.sound() {
		add(s.Backdrop.bounds())
	}
	if b := s.Picture.Bounds; b != (plane.Box{}) && near(b.Min) && near(b.Max) {
		s.bounds, s.any = b, true
	}
}

// fit returns the view of everything, or of a stage's width around the datum
// when there is nothing, clear of the plate that says where the audience is.
func (s *scene) fit(turn, w, h float64) View {
	b := s.bounds
	if !s.any {
		at := s.Datum.Apply(plane.Point{Y: 3})
		b = plane.Box{Min: at, Max: at}.Grow(6)
	}
	d := plane.Motion{Turn: turn}.Rotate(s.towardsAudience())
	if math.Abs(d.Y) < math.Abs(d.X) {
		return fitted(b, turn, w, h)
	}
	v := fitted(b, turn, w, h-plateHigh)
	aside := plane.Point{Y: math.Copysign(plateHigh/2*v.Scale, d.Y)}
	v.Centre = v.Centre.Add(plane.Motion{Turn: -turn}.Rotate(aside))
	return v
}

// towardsAudience returns the direction of the audience in the picture's axes.
func (s *scene) towardsAudience() plane.Point {
	if u, ok := s.Audience.Unit(); ok && u.Finite() {
		return u
	}
	return s.Datum.Rotate(plane.Point{Y: -1})
}

// flatten makes the chords fine enough for a scale of metres to a device pixel.
// Steps of two keep a slow zoom from flattening at every frame.
func (s *scene) flatten(scale float64) {
	const pixels = 0.2
	tol := math.Exp2(math.Floor(math.Log2(scale * pixels)))
	first := s.tol == 0
	if tol == s.tol {
		return
	}
	s.tol = tol
	for _, of := range [][]chain{s.shapes, s.areas} {
		for i := range of {
			if first || of[i].arcs {
				of[i].pieces = piecesOf(of[i].edges, tol)
			}
		}
	}
}

// piecesOf joins edges that follow each other into runs of points, so that dashes
// go round corners.
func piecesOf(edges []plane.Edge, tol float64) [][]plane.Point {
	var out [][]plane.Point
	for _, e := range edges {
		ps := e.Flatten(tol)
		if n := len(out) - 1; n >= 0 && out[n][len(out[n])-1] == e.A {
			out[n] = append(out[n], ps[1:]...)
			continue
		}
		out = append(out, slices.Clone(ps))
	}
	return out
}
