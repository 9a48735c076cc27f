package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// wholeUnit is the step in which squares and frames are laid: a foot or half a
// metre.
func (p *Production) wholeUnit() float64 {
	if p.Unit().Metric() {
		return 0.5
	}
	return length.Foot
}

// mostUnits bounds the size of a frame, in whole units.
const mostUnits = 60

// frameFor returns the truest frame of guide lines and a second baseline that fits
// the floor: in whole feet or half metres, no farther out and up than the marks
// need, its sides and diagonals clear of walls and obstacles and no longer than
// the longest tape. ok is false when none fits.
func frameFor(p *Production, s floor.Sight, found []marks.Mark, b survey.Budget) (best survey.Frame, ok bool) {
	unit := p.wholeUnit()
	across, up := 0.0, 0.0
	for _, m := range found {
		across, up = max(across, math.Abs(m.Over())), max(up, m.Up())
	}
	steps := func(l float64) int { return int(min(math.Ceil(l/unit-1e-9), mostUnits)) }
	least := math.Inf(1)
	for i := steps(across); i >= 1; i-- {
		for k := steps(up); k >= 1; k-- {
			f := survey.Frame{Half: float64(i) * unit, Up: float64(k) * unit}
			e := f.AngleError(b.Measure(f.Up), b.Measure(f.Diagonal()))
			if e >= least {
				break // a shallower frame is less true
			}
			if (p.Settings.TapeLength <= 0 || f.Diagonal() <= p.Settings.TapeLength) && holds(s, f) {
				best, least, ok = f, e, true
			}
		}
	}
	return best, ok
}

// holds tells whether the frame's sides and diagonals are clear.
func holds(s floor.Sight, f survey.Frame) bool {
	corners := []plane.Point{{X: -f.Half}, {X: f.Half}, {X: f.Half, Y: f.Up}, {X: -f.Half, Y: f.Up}}
	for i, a := range corners {
		for _, b := range corners[i+1:] {
			if s.Blocked(a, b) {
				return false
			}
		}
	}
	return true
}

// GuideLine is one guide line of a floor, or its second baseline, in datum axes.
type GuideLine struct {
	Name string
	Edge plane.Edge
}

// GuideLines returns what is laid besides the datum so that the marks which need
// it are square: two guide lines and a second baseline; none where every mark is
// good enough without.
func (w *FloorWork) GuideLines() (frame survey.Frame, lines []GuideLine) {
	if !w.Guided {
		return survey.Frame{}, nil
	}
	f := w.Frame
	side := func(x float64) plane.Edge { return plane.Edge{A: plane.Point{X: x}, B: plane.Point{X: x, Y: f.Up}} }
	return f, []GuideLine{
		{"guide line, stage right", side(-f.Half)},
		{"guide line, stage left", side(f.Half)},
		{"second baseline", plane.Edge{A: plane.Point{X: -f.Half, Y: f.Up}, B: plane.Point{X: f.Half, Y: f.Up}}},
	}
}
