package route

import (
	"math"
	"math/rand/v2"

	"groundrow/tapeout/plane"
)

const (
	near         = 8  // how many nearest stops are tried as new neighbours
	longestPiece = 3  // stops moved together by Or-opt
	reach        = 30 // stops that one disturbance may exchange
	kicksPerStop = 6  // disturbances tried for each stop …
	mostKicks    = 1200
)

// search is a closed walk through stops that is being shortened. An open walk is
// a closed one with the start and one more stop, the end, which is at distance
// zero of every stop and bound to the start.
type search struct {
	stops     []plane.Point
	end       int // index of the end, or -1
	bound     float64
	least     float64 // an improvement below this is rounding
	order     []int   // stops by position on the walk
	position  []int   // position by stop
	neighbour [][]int // nearest stops by stop, nearest first
	dirty     []int   // stops whose surroundings have changed
	isDirty   []bool
}

// newSearch prepares a walk through points, from start if there is one.
func newSearch(points []plane.Point, start *plane.Point) *search {
	s := &search{stops: append([]plane.Point(nil), points...), end: -1}
	first := 0
	if start != nil {
		first = len(points)
		s.end = first + 1
		s.stops = append(s.stops, *start, plane.Point{})
	}
	n := len(s.stops)
	if box, ok := plane.BoxOf(s.stops...); ok {
		span := box.Width() + box.Height()
		s.bound, s.least = 4*span, 1e-12*span
	}
	s.position, s.isDirty = make([]int, n), make([]bool, n)
	s.findNeighbours()
	s.nearestFirst(first)
	return s
}

// distance between two stops. The end pulls the start to itself by more than any
// change elsewhere could gain.
func (s *search) distance(i, j int) float64 {
	if i == s.end || j == s.end {
		if i == s.end-1 || j == s.end-1 {
			return -s.bound
		}
		return 0
	}
	dx, dy := s.stops[i].X-s.stops[j].X, s.stops[i].Y-s.stops[j].Y
	return math.Sqrt(dx*dx + dy*dy)
}

// findNeighbours lists the nearest stops of each stop by insertion.
func (s *search) findNeighbours() {
	n := len(s.stops)
	s.neighbour = make([][]int, n)
	away := make([]float64, 0, near+1)
	for i := range n {
		list := make([]int, 0, near+1)
		away = away[:0]
		for j := range n {
			d := s.distance(i, j)
			if j == i || len(list) == near && !(d < away[near-1]) {
				continue
			}
			at := len(list)
			for at > 0 && d < away[at-1] {
				at--
			}
			list, away = append(list, 0), append(away, 0)
			copy(list[at+1:], list[at:])
			copy(away[at+1:], away[at:])
			list[at], away[at] = j, d
			if len(list) > near {
				list, away = list[:near], away[:near]
			}
		}
		s.neighbour[i] = list
	}
}

// nearestFirst lays the walk from first to the nearest stop not yet visited, and
// so on, the end last.
func (s *search) nearestFirst(first int) {
	n := len(s.stops)
	left := make([]int, 0, n)
	for i := range n {
		if i != first && i != s.end {
			left = append(left, i)
		}
	}
	s.order = append(make([]int, 0, n), first)
	for here := first; len(left) > 0; {
		best := 0
		for k := range left {
			if s.distance(here, left[k]) < s.distance(here, left[best]) {
				best = k
			}
		}
		here = left[best]
		s.order = append(s.order, here)
		left = append(left[:best], left[best+1:]...)
	}
	if s.end >= 0 {
		s.order = append(s.order, s.end)
	}
	for at, stop := range s.order {
		s.position[stop] = at
	}
}

// run shortens the walk and returns it: a closed walk from stop 0, an open one
// from the start to the end, both included.
func (s *search) run() []int {
	n := len(s.stops)
	for _, stop := range s.order {
		s.touch(stop)
	}
	s.settle()
	if n >= 8 {
		s.disturb(min(kicksPerStop*n, mostKicks))
	}
	return s.fromFirst()
}

// disturb exchanges two neighbouring pieces of the walk, shortens it again, and
// keeps what became shorter.
func (s *search) disturb(kicks int) {
	n := len(s.order)
	rng := rand.New(rand.NewPCG(3, 5))
	keptOrder, keptPosition := append([]int(nil), s.order...), append([]int(nil), s.position...)
	longest := min(reach, (n-2)/2)
	for range kicks {
		change := s.exchange(rng.IntN(n), 1+rng.IntN(longest), 1+rng.IntN(longest))
		change += s.settle()
		if change < -s.least {
			copy(keptOrder, s.order)
			copy(keptPosition, s.position)
		} else {
			copy(s.order, keptOrder)
			copy(s.position, keptPosition)
		}
	}
}

// fromFirst returns the walk turned so that it begins at its first stop, and for
// an open walk so that the end comes last.
func (s *search) fromFirst() []int {
	n := len(s.order)
	first, step := 0, 1
	if s.end >= 0 {
		first = s.end - 1
		if s.stop(s.position[first]+1) == s.end {
			step = n - 1
		}
	}
	walk := make([]int, n)
	for i := range walk {
		walk[i] = s.stop(s.position[first] + i*step)
	}
	return walk
}
