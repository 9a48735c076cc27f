package floor

import (
	"math"

	"groundrow/tapeout/plane"
)

// Front returns the direction in which actors face who face the audience, in floor
// axes with length one.
func (f *Floor) Front() plane.Point { return f.Placement.Rotate(plane.Point{Y: -1}) }

// Mirror is a mirror of the room and how the actors see it who face front.
type Mirror struct {
	ID    string
	Name  string
	Ahead float64 // radians between the way they face and the way to the mirror: 0 before them, π behind
}

// facing is the angle within which a mirror counts as before, or behind, the actors.
const facing = math.Pi / 3

// Faced tells whether actors who face front see themselves in it.
func (m Mirror) Faced() bool { return m.Ahead < facing }

// Behind tells whether the audience sees itself in it.
func (m Mirror) Behind() bool { return m.Ahead > math.Pi-facing }

// Mirrors returns the mirrors of the room, on its walls or standing, as seen from the
// middle of the room, or from the plan's datum where the room has no walls. A mirror is
// before the actors where the line to its nearest point is.
func (f *Floor) Mirrors() []Mirror {
	from, ok := f.Outline.Centroid()
	if !ok {
		from = f.Placement.Shift
	}
	var out []Mirror
	add := func(id, name string, edges []plane.Edge) {
		best, at := math.Inf(1), from
		for _, e := range edges {
			q, _ := e.Nearest(from)
			if d := q.To(from); d < best {
				best, at = d, q
			}
		}
		way, ok := at.Sub(from).Unit()
		if !ok {
			return
		}
		front := f.Front()
		out = append(out, Mirror{id, name, math.Abs(math.Atan2(front.Cross(way), front.Dot(way)))})
	}
	for _, o := range f.Obstacles {
		if o.Kind == "mirror" {
			add(o.ID, o.Name, o.Shape.Edges())
		}
	}
	for _, t := range f.Features {
		if t.Kind == WallMirror {
			add(t.ID, t.Name, t.Shape.Edges())
		}
	}
	return out
}
