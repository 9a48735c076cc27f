package floor

import (
	"fmt"
	"math"

	"groundrow/tapeout/plane"
)

// Wall is one wall as it is walked: its length, and the turn at its end on to
// the next wall.
type Wall struct {
	Length float64 // metres
	Turn   float64 // degrees, counter-clockwise positive; 90 at an inside corner walked with the room on the left
}

// Walked returns the way along the walls from the origin, in direction over at
// first; it ends where the last wall ends and is not closed.
func Walked(walls []Wall) plane.Path {
	at, heading := plane.Point{}, 0.0
	way := plane.Open(at)
	for _, w := range walls {
		at = at.Add(plane.Polar(w.Length, heading))
		heading += w.Turn * math.Pi / 180
		way.Vertices = append(way.Vertices, plane.Vertex{Point: at})
	}
	return way
}

// Walls returns the walls of an outline of straight walls, as Walked takes them.
// Turns are in (−180, 180].
func Walls(outline plane.Path) []Wall {
	edges := outline.Edges()
	out := make([]Wall, len(edges))
	for i, e := range edges {
		next := edges[(i+1)%len(edges)]
		here, there := e.B.Sub(e.A), next.B.Sub(next.A)
		turn := math.Atan2(here.Cross(there), here.Dot(there)) * 180 / math.Pi
		out[i] = Wall{Length: e.Length(), Turn: turn}
	}
	return out
}

// CheckOutline says what keeps the path from being a room: too few corners, no
// area, or walls that cross; nil when it is sound.
func CheckOutline(outline plane.Path) error {
	if len(outline.Vertices) < 3 {
		return fmt.Errorf("the outline has %d corners; a room needs at least three", len(outline.Vertices))
	}
	for i, v := range outline.Vertices {
		if !v.Finite() {
			return fmt.Errorf("corner %d of the outline is not a place", i+1)
		}
	}
	if p, crosses := outline.CrossesItself(tight); crosses {
		return fmt.Errorf("two walls cross near %.2f m over, %.2f m up: check the order of the corners", p.X, p.Y)
	}
	if outline.Area() < 0.01 {
		return fmt.Errorf("the outline encloses no floor: its corners lie in one line")
	}
	return nil
}

// CheckShape says what keeps the path from being an area of the floor; nil when
// it is sound.
func CheckShape(shape plane.Path) error {
	if err := CheckOutline(shape); err != nil {
		return fmt.Errorf("this is no area: %w", err)
	}
	return nil
}
