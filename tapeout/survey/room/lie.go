package room

import (
	"math"

	"groundrow/tapeout/plane"
)

// Onto returns the motion that lays the solution on an outline of the same room:
// corner A on its first corner and the first wall along its first wall. What was
// set in the room since stays where it is. An outline without walls leaves the
// solution where it is.
func (s Solution) Onto(outline plane.Path) plane.Motion {
	if len(outline.Vertices) < 2 {
		return plane.Motion{}
	}
	a, b := outline.Vertices[0].Point, outline.Vertices[1].Point
	return plane.Motion{Turn: b.Sub(a).Angle(), Shift: a}
}

// Off returns the largest distance in metres between the corners of an outline and
// those of the solution laid onto it, curves included; +Inf when their corners
// are not the same in number.
func (s Solution) Off(outline plane.Path) float64 {
	if len(outline.Vertices) != len(s.Outline.Vertices) {
		return math.Inf(1)
	}
	laid := s.Outline.Moved(s.Onto(outline)).Edges()
	off := 0.0
	for i, e := range outline.Edges() {
		off = math.Max(off, math.Max(e.A.To(laid[i].A), e.At(0.5).To(laid[i].At(0.5))))
	}
	return off
}

// Same is how near in metres an outline must be to the solution to be its own.
const Same = 1e-4

// Moved returns the solution after the motion.
func (s Solution) Moved(m plane.Motion) Solution {
	s.Outline = s.Outline.Moved(m)
	points := make([]plane.Point, len(s.Points))
	for i, p := range s.Points {
		points[i] = m.Apply(p)
	}
	s.Points = points
	return s
}
