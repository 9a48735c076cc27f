package floor

import (
	"math"

	"groundrow/tapeout/plane"
)

// Boards returns the joints between the boards or tiles of the floor that lie within
// its walls, in floor axes: lines along BoardDirection, BoardModule apart, from the
// floor's origin. Where they would lie closer together than least metres only every
// second, fourth, … of them is returned. A floor without walls or boards has none.
func (f *Floor) Boards(least float64) []plane.Edge {
	box, ok := f.Outline.Bounds()
	if !ok || !(f.BoardModule > 0) || !(least > 0) || !box.Min.Finite() || !box.Max.Finite() {
		return nil
	}
	apart := f.BoardModule
	for apart < least {
		apart *= 2
	}
	turn := plane.Motion{Turn: f.BoardDirection * math.Pi / 180}
	along, _ := f.Outline.Moved(turn.Inverse()).Bounds()
	first, last := math.Ceil(along.Min.Y/apart), math.Floor(along.Max.Y/apart)
	if last-first > mostBoards {
		return nil
	}
	var out []plane.Edge
	for k := first; k <= last; k++ {
		joint := plane.Edge{A: plane.Point{X: along.Min.X - 1, Y: k * apart}, B: plane.Point{X: along.Max.X + 1, Y: k * apart}}
		inside, _ := plane.Clip(joint.Moved(turn), f.Outline, tight)
		out = append(out, inside...)
	}
	return out
}

// mostBoards bounds the joints of a floor whose walls are absurdly far apart.
const mostBoards = 5_000
