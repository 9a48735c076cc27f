package passage

import (
	"math"

	"groundrow/tapeout/plane"
)

// Solid is something that nobody walks through: a closed path with all that it
// encloses, or a line.
type Solid struct {
	Name string
	Path plane.Path
}

// Walls stands for the walls of the room where a solid is named by its number.
const Walls = -1

// Space is the free floor: within the walls and off every solid. It is not safe for
// use by several goroutines at once.
type Space struct {
	outline plane.Path // no vertices: a floor without walls, which has no end
	solids  []Solid
	atoms   []atom

	gaps  []gap   // between atoms, ascending
	reach float64 // up to which the gaps are known
}

// atom is a piece of a wall or a solid: a segment, or a short piece of arc.
type atom struct {
	plane.Edge
	box plane.Box
	of  int // the solid, or Walls
}

// gap is the shortest way between two atoms.
type gap struct {
	i, j  int
	p, q  plane.Point // on i and on j
	width float64
}

// flat is how far a piece of arc may rise above its chord, in metres; no arc is cut
// into more than mostPieces, which serve the largest stage.
const (
	flat       = 0.002
	mostPieces = 500
)

// Of returns the free floor inside an outline and off the solids. A path with a
// corner that is not a place is left out.
func Of(outline plane.Path, solids []Solid) *Space {
	s := &Space{solids: solids, reach: -1}
	if len(outline.Vertices) > 1 && finite(outline) {
		s.outline = outline
		s.outline.Closed = true
		s.add(s.outline, Walls)
	}
	for i, solid := range solids {
		if finite(solid.Path) {
			s.add(solid.Path, i)
		}
	}
	return s
}

func finite(p plane.Path) bool {
	for _, v := range p.Vertices {
		if !v.Finite() || math.IsNaN(v.Bulge-v.Bulge) {
			return false
		}
	}
	return true
}

func (s *Space) add(p plane.Path, of int) {
	edges := p.Edges()
	if len(edges) == 0 && len(p.Vertices) == 1 {
		edges = []plane.Edge{{A: p.Vertices[0].Point, B: p.Vertices[0].Point}}
	}
	room, walled := s.outline.Bounds() // what lies beyond the walls is in nobody's way
	for _, e := range edges {
		n := float64(min(len(e.Flatten(flat))-1, mostPieces))
		for k := range int(n) {
			part := e.Part(float64(k)/n, float64(k+1)/n)
			if a := (atom{part, part.Bounds(), of}); !walled || room.Meets(a.box) {
				s.atoms = append(s.atoms, a)
			}
		}
	}
}

// Clear returns how far p is from what is nearest to it, the point there, and whose it
// is; without anything on the floor it is infinitely far.
func (s *Space) Clear(p plane.Point) (distance float64, at plane.Point, of int) {
	distance, of = math.Inf(1), Walls
	for i := range s.atoms {
		a := &s.atoms[i]
		if boxDistance(a.box, plane.Box{Min: p, Max: p}) >= distance {
			continue
		}
		q, _ := a.Nearest(p)
		if d := p.To(q); d < distance {
			distance, at, of = d, q, a.of
		}
	}
	return distance, at, of
}

// Blocked tells whether p is no place to stand: outside the walls, or in a solid,
// whose number it gives.
func (s *Space) Blocked(p plane.Point) (of int, blocked bool) {
	if !p.Finite() || len(s.outline.Vertices) > 0 && !s.outline.Contains(p, 0) {
		return Walls, true
	}
	for i, solid := range s.solids {
		if solid.Path.Closed && finite(solid.Path) && solid.Path.Contains(p, 0) {
			return i, true
		}
	}
	return 0, false
}

func boxDistance(a, b plane.Box) float64 {
	x := max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X)
	y := max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y)
	return math.Hypot(x, y)
}
