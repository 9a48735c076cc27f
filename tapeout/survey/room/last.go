package room

import (
	"reflect"
	"slices"
	"sync"

	"groundrow/tapeout/floor"
)

// last is the shape that was asked for last. An edit asks for the shape before it, which
// the window has shown, and leaves the shape after it, which the window asks for next.
var last struct {
	sync.Mutex
	known bool
	of    floor.Measured
	with  Precision
	s     Solution
	err   error
}

// Shape finds the outline and the points that Solve finds, and judges nothing: it is
// quick enough to be asked at every edit, and at once when it is asked again.
func Shape(m floor.Measured, with Precision) (Solution, error) {
	last.Lock()
	defer last.Unlock()
	if !last.known || last.with != with || !reflect.DeepEqual(last.of, m) {
		_, s, err := settled(m, with)
		m.Walls, m.Diagonals, m.Points = slices.Clone(m.Walls), slices.Clone(m.Diagonals), slices.Clone(m.Points)
		last.known, last.of, last.with, last.s, last.err = true, m, with, s, err
	}
	s := last.s
	s.Outline.Vertices, s.Points = slices.Clone(s.Outline.Vertices), slices.Clone(s.Points)
	return s, last.err
}
