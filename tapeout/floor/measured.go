package floor

import (
	"fmt"
	"slices"
	"strings"

	"groundrow/tapeout/plane"
)

// Measured is a room as a tape has found it: its walls in the order in which they
// are walked with the room on the left, and whatever was measured across. The
// outline that follows from it is worked out by package survey/room.
//
// A corner is where a wall begins, and is named by that wall: it keeps its
// measurements when another wall is put in before it.
type Measured struct {
	Walls     []MeasuredWall
	Points    []MeasuredPoint
	Diagonals []Diagonal
}

// MeasuredWall is one wall with what was found at the corner at its end.
type MeasuredWall struct {
	ID     string
	Name   string  // "windows"
	Length float64 // metres, straight from corner to corner, of a curved wall its chord; zero: not measured
	Turn   float64 // degrees at its end as the eye has it, to the left positive; zero: not known
	Square bool    // the corner at its end was found to be a right angle
	Rise   float64 // metres, of a curved wall, at the middle of its chord; positive: the room reaches beyond the chord
}

// MeasuredPoint is a place in the room that tapes were run to: the edge of a
// column, a hook in the floor.
type MeasuredPoint struct {
	ID   string
	Name string
}

// Diagonal is a length straight across, between two corners, two measured points
// or one of each.
type Diagonal struct {
	ID       string
	From, To string  // the wall that begins at the corner, or the point
	Length   float64 // metres
}

// Step is a line along which the floor changes its height. Nothing is worked out
// from it: it is there to be seen and kept.
type Step struct {
	ID   string
	Name string
	Line plane.Path // open, floor axes
	Rise float64    // metres by which the floor to the left of the line is higher
}

// Any tells whether anything has been measured.
func (m Measured) Any() bool { return len(m.Walls) > 0 }

// Corner returns the number of the corner at which the wall begins; ok is false
// when there is no such wall.
func (m Measured) Corner(wall string) (i int, ok bool) {
	i = slices.IndexFunc(m.Walls, func(w MeasuredWall) bool { return w.ID == wall })
	return i, i >= 0
}

// Point returns the number of a measured point; ok is false when there is none.
func (m Measured) Point(id string) (i int, ok bool) {
	i = slices.IndexFunc(m.Points, func(p MeasuredPoint) bool { return p.ID == id })
	return i, i >= 0
}

// Named returns the identifier of the place that a person calls so: of the corner
// with that letter, or of the point with that name, which is added when it is new.
// What is no corner and too short for a name, or has the look of a length, is refused.
func (m *Measured) Named(name string, letter func(corner int) string, newID func() string) (string, error) {
	for i, w := range m.Walls {
		if strings.EqualFold(letter(i), name) {
			return w.ID, nil
		}
	}
	for _, p := range m.Points {
		if strings.EqualFold(p.Name, name) {
			return p.ID, nil
		}
	}
	if len(name) < 3 || strings.ContainsAny(name[:1], "0123456789.-") {
		last := "none yet"
		if n := len(m.Walls); n > 0 {
			last = letter(0) + " to " + letter(n-1)
		}
		return "", fmt.Errorf("“%s” is no corner of this room (%s); a point in it is called by a word of three letters or more", name, last)
	}
	m.Points = append(m.Points, MeasuredPoint{ID: newID(), Name: name})
	return m.Points[len(m.Points)-1].ID, nil
}

// Drop takes out walls, points and diagonals, and the diagonals that went to what
// is gone.
func (m *Measured) Drop(ids []string) {
	gone := func(id string) bool { return slices.Contains(ids, id) }
	m.Walls = slices.DeleteFunc(m.Walls, func(w MeasuredWall) bool { return gone(w.ID) })
	m.Points = slices.DeleteFunc(m.Points, func(p MeasuredPoint) bool { return gone(p.ID) })
	m.Diagonals = slices.DeleteFunc(m.Diagonals, func(d Diagonal) bool {
		return gone(d.ID) || gone(d.From) || gone(d.To)
	})
}
