package room

import (
	"errors"
	"math"

	"groundrow/tapeout/plane"
)

const (
	mostRounds = 200
	still      = 1e-11 // metres; no unknown moves by more

	// With next to no damping a step that promises less than this share of the badness
	// has arrived: what the readings leave open goes on trembling in the last digits.
	noGain   = 1e-10
	undamped = 1e-9
)

var errUnsettled = errors.New("the measurements contradict each other too much to make a room: measure the longest lengths again")

// fit moves the places so that the badness of the readings is least: damped
// Gauss–Newton (K. Levenberg, Quart. Appl. Math. 2, 1944; D. Marquardt, SIAM J. 11,
// 1963, both from memory). What the readings leave open stays nearly where it was.
func (n *net) fit(reads []reading, at []plane.Point) ([]plane.Point, float64, error) {
	now, damp := badness(reads, at), 1e-3
	e := newEquations(n.unknowns())
	e.set(reads, at)
	for range mostRounds {
		scale := e.largest()
		if scale == 0 || math.IsNaN(scale) {
			return nil, 0, errUnsettled
		}
		step, ok := e.solve(damp * scale)
		if !ok {
			damp *= 10
			continue
		}
		size, gain := 0.0, dot(step, e.right)
		for _, s := range step {
			size = math.Max(size, math.Abs(s))
		}
		arrived := size < still || damp <= undamped && gain <= noGain*(1+now)
		next := moved(at, step)
		then := badness(reads, next)
		better := then <= now*(1+1e-12)
		if better {
			at, now, damp = next, then, math.Max(damp/10, 1e-13)
		} else {
			damp *= 10
		}
		if arrived {
			return at, now, nil
		}
		if better {
			e.set(reads, at)
		}
	}
	// In national figures of many walls the last digits may never come to rest.
	return at, now, nil
}
