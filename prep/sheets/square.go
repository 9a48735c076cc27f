package sheets

import (
	"fmt"
	"math"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// squareRecipe says how the baseline is laid square to the centre line with the
// largest 3-4-5 triangle that fits the room; nothing where none does.
func squareRecipe(p *prep.Production, w *prep.FloorWork) []block {
	if w.Floor == nil || len(w.Floor.Outline.Vertices) == 0 {
		return nil
	}
	walls := w.Floor.Outline.Moved(w.Floor.FloorToDatum())
	up, right := freeWay(walls, plane.Point{Y: 1}), freeWay(walls, plane.Point{X: 1})
	left := freeWay(walls, plane.Point{X: -1})
	unit := 0.5
	if !p.Unit().Metric() {
		unit = length.Foot
	}
	if longest := p.Settings.TapeLength; longest > 0 {
		// The slope is five where the longer leg is four.
		up, right, left = min(up, longest*0.8), min(right, longest*0.8), min(left, longest*0.8)
	}
	a, ok := survey.SquareAcross(up, left, right, unit)
	if !ok {
		return nil
	}
	f := figuresOf(p)
	return []block{heading{"The right angle first"}, bullets{Tick: true, Items: []string{
		fmt.Sprintf("From the datum measure %s up along the centre line and mark it.", f.length(a.Up)),
		fmt.Sprintf("To each side find the place that is %s from the datum and %s from that mark: both are on the baseline.", f.length(a.Over), f.length(a.Slope)),
		fmt.Sprintf("Check: the two places are %s apart, in one line with the datum.", f.length(a.Between)),
	}}}
}

// freeWay returns how far one can go from the datum in the direction before
// coming too near to a wall, in metres; zero when the datum lies outside the walls or no
// wall is met.
func freeWay(walls plane.Path, direction plane.Point) float64 {
	nearest, met := math.Inf(1), 0
	for _, e := range walls.Edges() {
		if !drawableEdge(e) {
			continue
		}
		points := e.Flatten(0.01)
		for i := range points[1:] {
			if d, ok := rayMeets(direction, points[i], points[i+1]); ok {
				nearest, met = min(nearest, d), met+1
			}
		}
	}
	if met%2 == 0 {
		return 0
	}
	return max(0, nearest-elbowRoom)
}

// elbowRoom is what is left free before a wall, so that a tape can be held and
// read there, in metres (common practice, no source).
const elbowRoom = 0.3

// rayMeets returns at which distance the ray from the datum in the unit
// direction meets the segment from a to b, which counts with its first end and
// without its last.
func rayMeets(direction, a, b plane.Point) (d float64, ok bool) {
	sideA, sideB := direction.Cross(a), direction.Cross(b)
	if (sideA < 0) == (sideB < 0) {
		return 0, false
	}
	d = direction.Dot(a.Towards(b, sideA/(sideA-sideB)))
	return d, d > 0
}
