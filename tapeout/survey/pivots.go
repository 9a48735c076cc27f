package survey

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Limits are what the choice of pivots has to respect.
type Limits struct {
	Sigma   float64                         // metres; error of one reading
	Longest float64                         // metres of tape; zero: no limit
	Blocked func(from, to plane.Point) bool // a column is in the way; nil: nothing is
	Least   float64                         // radians; tapes that cross more flatly are weak, see Weak
	Keep    int                             // how many choices are wanted; zero: three
}

// Choice is one pair of pivots and what it does to the marks.
type Choice struct {
	A, B       int     // indices of the candidates, A < B
	Worst      float64 // metres; position error of the worst mark within reach
	Weakest    int     // index of that mark, or −1
	Flat       int     // marks whose tapes cross too flatly, see Weak
	OutOfReach int     // marks beyond the tape, behind something, or on the line of the pivots
}

// BestPair compares all pairs of candidates and returns the best few: first the
// pairs that reach most marks, among them those whose worst mark is best. A mark
// on a pivot needs no tape and has no error. Candidates within Near of each other
// are no pair.
func BestPair(candidates, points []plane.Point, limits Limits) ([]Choice, error) {
	if err := pairable(candidates, points); err != nil {
		return nil, fmt.Errorf("choose pivots: %w", err)
	}
	sights := make([][]sight, len(candidates))
	for i, c := range candidates {
		sights[i] = sightsFrom(c, points, limits)
	}
	var choices []Choice
	for a := range candidates {
		for b := a + 1; b < len(candidates); b++ {
			if base := candidates[a].To(candidates[b]); base >= Near {
				choices = append(choices, judge(Choice{A: a, B: b}, sights, base, limits))
			}
		}
	}
	if len(choices) == 0 {
		return nil, errors.New("choose pivots: all the places offered are the same one; offer two that are apart")
	}
	slices.SortStableFunc(choices, func(c, d Choice) int {
		return cmp.Or(cmp.Compare(c.OutOfReach, d.OutOfReach), cmp.Compare(c.Worst, d.Worst))
	})
	if choices[0].OutOfReach == len(points) {
		return nil, errors.New("choose pivots: no two of the places offered reach a single mark; offer nearer places, a longer tape, or places with a clear view")
	}
	keep := limits.Keep
	if keep <= 0 {
		keep = 3
	}
	return choices[:min(keep, len(choices))], nil
}

// pairable tells what is missing for a choice of pivots.
func pairable(candidates, points []plane.Point) error {
	switch {
	case len(candidates) < 2:
		return errors.New("two fixed places in the room are needed, and there are fewer; measure in at least two")
	case len(points) == 0:
		return errors.New("there are no marks to reach yet")
	}
	for i, p := range slices.Concat(candidates, points) {
		if !p.Finite() {
			return fmt.Errorf("place number %d has no position", i+1)
		}
	}
	return nil
}

// sight is the view from a candidate to a mark.
type sight struct {
	direction plane.Point // of length one; zero on the candidate itself
	distance  float64
	clear     bool
}

func sightsFrom(from plane.Point, points []plane.Point, limits Limits) []sight {
	out := make([]sight, len(points))
	for i, p := range points {
		d := from.To(p)
		s := sight{distance: d, clear: limits.Longest <= 0 || d <= limits.Longest}
		if d >= Near {
			s.direction = p.Sub(from).Times(1 / d)
			s.clear = s.clear && (limits.Blocked == nil || !limits.Blocked(from, p))
		}
		out[i] = s
	}
	return out
}

// judge fills in what the pair does to the marks. The distance of a mark from the
// line of the pivots is a·b·sin γ over the base: twice the triangle's area.
func judge(c Choice, sights [][]sight, base float64, limits Limits) Choice {
	c.Weakest = -1
	fromA, fromB := sights[c.A], sights[c.B]
	least, leastSine := 2.0, math.Sin(limits.Least)
	for i, a := range fromA {
		b := fromB[i]
		if a.distance < Near || b.distance < Near {
			continue
		}
		sine := math.Abs(a.direction.Cross(b.direction))
		if !a.clear || !b.clear || a.distance*b.distance*sine < Near*base {
			c.OutOfReach++
			continue
		}
		if sine < leastSine {
			c.Flat++
		}
		if sine < least {
			least, c.Weakest = sine, i
		}
	}
	if c.Weakest >= 0 {
		c.Worst = limits.Sigma * math.Sqrt2 / least
	}
	return c
}
