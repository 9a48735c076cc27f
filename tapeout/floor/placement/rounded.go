package placement

import (
	"math"

	"groundrow/tapeout/plane"
)

// tenth of a degree, in radians: to that a turn is said.
const tenth = math.Pi / 1800

// worthRounding is what part of a score may go for figures that can be read off a
// tape.
const worthRounding = 0.001

// Rounded returns the best allowed placement nearby whose datum lies at whole steps
// of the floor's axes, in metres, turned by whole tenths of a degree where the floor
// leaves the turn open. Where that costs more than a thousandth of the score, or
// there is none, it is the placement itself.
func (c *Case) Rounded(k Kept, step float64) Kept {
	if !(step > 0) {
		return k
	}
	best, found := Kept{}, false
	try := func(m plane.Motion) {
		if n := c.At(m); n.OK() && (!found || n.Score > best.Score) {
			best, found = n, true
		}
	}
	for _, turn := range roundTurns(k.Placement.Turn) {
		about := plane.Motion{Turn: turn}
		shift := k.Placement.Apply(c.pivot).Sub(about.Apply(c.pivot)) // turned about the middle of the plan
		for _, x := range roundAbout(shift.X, step) {
			for _, y := range roundAbout(shift.Y, step) {
				try(plane.Motion{Turn: turn, Shift: plane.Point{X: x, Y: y}})
			}
		}
	}
	if !found || best.Score < k.Score-worthRounding {
		return k
	}
	return best
}

// roundTurns are the turns to try: the nearest whole tenths of a degree, and the turn
// as it is, which may be that of a wall.
func roundTurns(turn float64) []float64 { return append(roundAbout(turn, tenth), turn) }

// roundAbout returns the three multiples of the step that are nearest to v.
func roundAbout(v, step float64) []float64 {
	n := math.Round(v / step)
	return []float64{(n - 1) * step, n * step, (n + 1) * step}
}
