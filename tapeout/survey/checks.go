package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// Check is a distance between two marks that was not used to place either.
type Check struct {
	From, To int     // indices of the marks, From < To
	Expected float64 // metres
	Why      CheckReason
}

// CheckReason is what a check measure is for.
type CheckReason string

// Reasons of a check measure.
const (
	Diagonal  CheckReason = "diagonal of a rectangle"
	Longest   CheckReason = "longest distance of all"
	Neighbour CheckReason = "to a near mark"
)

// CheckList returns a short list of distances to measure before the marks are
// joined up: every mark is in at least one, as long as there are two.
//
// First come both diagonals of each square (four corners in order round it), then
// the longest distance between any two marks, which shows a stretched or turned
// whole; then the marks still in none are linked in pairs, in their order and each
// to the nearest, and the last one left, if any, to the nearest of all. Without
// squares that is half as many measures as marks, rounded up: the fewest possible.
//
// One distance shows an error along it and is blind to a small one across it: it
// catches slips (a foot, ten centimetres) rather than every millimetre. Pivots
// are no marks: their distance, TwoTape.Base, is a check of its own.
func CheckList(points []plane.Point, squares ...[4]int) []Check {
	list := checkList{points: points, covered: make([]bool, len(points)), listed: map[[2]int]bool{}}
	for _, s := range squares {
		list.add(s[0], s[2], Diagonal)
		list.add(s[1], s[3], Diagonal)
	}
	if a, b, ok := farthest(points); ok {
		list.add(a, b, Longest)
	}
	list.pairUp()
	return list.checks
}

type checkList struct {
	points  []plane.Point
	covered []bool
	listed  map[[2]int]bool
	checks  []Check
}

// add lists the distance from a to b once; what is no pair of marks is left out.
func (l *checkList) add(a, b int, why CheckReason) {
	if a > b {
		a, b = b, a
	}
	pair := [2]int{a, b}
	if a < 0 || a == b || b >= len(l.points) || l.listed[pair] {
		return
	}
	l.listed[pair], l.covered[a], l.covered[b] = true, true, true
	l.checks = append(l.checks, Check{a, b, l.points[a].To(l.points[b]), why})
}

// pairUp links the marks that are in no check yet: in their order, each with the
// nearest that is in none either, or with the nearest of all if it is the last.
func (l *checkList) pairUp() {
	for a := range l.points {
		if l.covered[a] {
			continue
		}
		near, ok := l.nearest(a, func(i int) bool { return !l.covered[i] })
		if !ok {
			near, ok = l.nearest(a, func(int) bool { return true })
		}
		if ok {
			l.add(a, near, Neighbour)
		}
	}
}

// nearest returns the mark nearest to mark a among the other ones wanted.
func (l *checkList) nearest(a int, wanted func(int) bool) (best int, ok bool) {
	least := math.Inf(1)
	for i, p := range l.points {
		if d := l.points[a].To(p); i != a && wanted(i) && d < least {
			best, least, ok = i, d, true
		}
	}
	return best, ok
}

// farthest returns the two points that are farthest apart.
func farthest(points []plane.Point) (a, b int, ok bool) {
	most := 0.0
	for i, p := range points {
		for j := i + 1; j < len(points); j++ {
			if d := p.To(points[j]); d > most {
				a, b, most, ok = i, j, d, true
			}
		}
	}
	return a, b, ok
}
