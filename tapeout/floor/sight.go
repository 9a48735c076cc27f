package floor

import (
	"math"

	"groundrow/tapeout/plane"
)

// touching is how near to its ends a tape may meet an obstacle or a wall without
// being stopped by it, in metres: a pivot is often on one.
const touching = 0.02

// roundWall is how far a straight tape may cut into a round column unseen, in
// metres.
const roundWall = 0.005

// Sight knows what stands in the way of a tape on a floor, in datum axes.
type Sight []barrier

// barrier is a straight piece of a wall or an obstacle.
type barrier struct {
	a, b plane.Point
	box  plane.Box
}

// SightOn returns what stops a tape on the floor: its walls, its obstacles, the
// steps at which it changes its height, since a tape measures true on one level
// only, and the pieces that stand there already.
func SightOn(f *Floor, pieces []Piece) Sight {
	m := f.FloorToDatum()
	var s Sight
	s.add(f.Outline.Moved(m))
	for _, o := range f.Obstacles {
		s.add(o.Shape.Moved(m))
	}
	for _, step := range f.Steps {
		s.add(step.Line.Moved(m))
	}
	for _, piece := range pieces {
		for _, path := range piece.Paths {
			s.add(path.Path)
		}
	}
	return s
}

func (s *Sight) add(shape plane.Path) {
	for _, e := range shape.Edges() {
		ps := e.Flatten(roundWall)
		for i := 1; i < len(ps); i++ {
			box, _ := plane.BoxOf(ps[i-1], ps[i])
			*s = append(*s, barrier{ps[i-1], ps[i], box})
		}
	}
}

// Blocked tells whether something stands between two places.
func (s Sight) Blocked(from, to plane.Point) bool {
	reach, _ := plane.BoxOf(from, to)
	way := to.Sub(from)
	long := way.Len()
	for i := range s {
		w := &s[i]
		if !w.box.Meets(reach) {
			continue
		}
		wall := w.b.Sub(w.a)
		across := way.Cross(wall)
		if math.Abs(across) < 1e-9*long*wall.Len() {
			continue // along a wall the tape passes; its ends are other walls
		}
		off := w.a.Sub(from)
		t, u := off.Cross(wall)/across, off.Cross(way)/across
		if u >= -1e-9 && u <= 1+1e-9 && t*long > touching && (1-t)*long > touching {
			return true
		}
	}
	return false
}
