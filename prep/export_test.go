package prep

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// Placing serves the simulation of a crew that places the demo's marks.
var Placing = placing

// MeasureAll measures marks by every method, for the benchmark.
func MeasureAll(p *Production, f *floor.Floor, found []marks.Mark) []MeasuredMark {
	w := &FloorWork{Floor: f}
	w.measure(p, found)
	return w.Marks
}
