package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// armRoom is what is left free before a wall so that a tape can be held and read
// there, in metres (common practice, no source).
const armRoom = 0.3

// farAway is longer than any floor, in metres.
const farAway = 1000

// SquareOn returns the largest 3-4-5 with which the right angle can be laid out
// at the floor's datum, to both sides: within the walls, clear of obstacles and
// no side longer than the longest tape, in whole feet or half metres. ok is false
// when the floor is not measured, or when none fits where its datum lies.
func SquareOn(p *Production, w *FloorWork) (a survey.Across, ok bool) {
	if w == nil {
		return survey.Across{}, false
	}
	return squareOn(p, w.Floor)
}

func squareOn(p *Production, f *floor.Floor) (a survey.Across, ok bool) {
	if len(f.Outline.Vertices) == 0 {
		return survey.Across{}, false
	}
	free := func(x, y float64) float64 { return freeWay(f, plane.Point{X: x, Y: y}, p.Settings.TapeLength) }
	return survey.SquareAcross(free(0, 1), free(1, 0), free(-1, 0), p.wholeUnit())
}

// freeWay returns how far one can measure from the datum in a direction (datum
// axes, of length one) as a leg of a 3-4-5 whose slope the longest tape reaches.
func freeWay(f *floor.Floor, direction plane.Point, longest float64) float64 {
	m := f.FloorToDatum()
	way := plane.Edge{B: direction.Times(farAway)}
	nearest := math.Inf(1)
	meet := func(shape plane.Path) {
		for _, e := range shape.Edges() {
			for _, at := range plane.Intersect(way, e.Moved(m), 1e-9) {
				if d := at.Len(); d > survey.Near {
					nearest = min(nearest, d)
				}
			}
		}
	}
	meet(f.Outline)
	if math.IsInf(nearest, 1) || !f.Outline.Contains(m.Inverse().Apply(direction.Times(nearest/2)), 0) {
		return 0
	}
	for _, o := range f.Obstacles {
		meet(o.Shape)
	}
	if longest > 0 {
		nearest = min(nearest-armRoom, longest*4/5)
	} else {
		nearest -= armRoom
	}
	return max(0, nearest)
}
