// Package room finds the shape of a room from what a tape found of it: walls
// walked in order, lengths across, and corners that were found to be square.
//
// With more measurements than the shape needs it is the one for which the sum of
// the squares of the weighted residuals is least; every measurement then has a
// residual, and a wrong one can be named. With fewer, it says which are missing.
// An angle that was only guessed by eye is where the search begins and counts for
// nothing else.
package room

import (
	"errors"
	"fmt"
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// Most is how many walls and how many lengths across a room may have.
const (
	MostWalls  = 60
	MostAcross = 200
)

// Precision is how well a room was measured.
type Precision struct {
	Length float64 // metres; the standard error of one length
	Square float64 // radians; that of a corner which was found to be square
}

// WithTape returns the precision of a tape with the standard error sigma (metres):
// a corner that is called square was tried with a 3-4-5 in metres.
func WithTape(sigma float64) Precision {
	return Precision{Length: sigma, Square: survey.Triangle{Up: 4, Over: 3, Slope: 5}.AngleError(sigma)}
}

// Solution is a room as its measurements make it. Its axes begin at corner A, with
// the first wall along X and the room to the left of it.
type Solution struct {
	Outline  plane.Path           // closed; a vertex for each wall, where it begins
	Points   []plane.Point        // the measured points, in their order
	Likely   []survey.Covariance2 // of each corner, then each point, as seen from corner A and along the first wall
	Measures []Measure            // walls that were measured, diagonals, square corners

	Freedom int    // measurements beyond those that the shape needs
	Open    int    // measurements that the shape still needs
	Next    []Pair // what to measure next: what fixes the shape, else what checks it best
	Verdict Verdict
}

// Kind is what was measured.
type Kind string

// Kinds of measures.
const (
	Wall   Kind = "wall"
	Across Kind = "diagonal"
	Square Kind = "right angle"
)

// Measure is one measurement among all the others.
type Measure struct {
	Kind     Kind
	ID       string  // of the wall, or of the diagonal; of a right angle the wall at whose end it is
	Name     string  // "A–B"; of a right angle "B"
	Read     float64 // metres; of a right angle radians
	Adjusted float64 // what all measurements together make of it

	Redundancy   float64 // how much the others check it, 0 (not at all) to 1
	Standardised float64 // residual over its own deviation; zero when nothing checks it
	Shows        float64 // metres or radians; an error of this size would be found eight times in ten; +Inf: none would
}

// Residual is adjusted minus read.
func (m Measure) Residual() float64 { return m.Adjusted - m.Read }

// Pair is two places between which a length can be measured.
type Pair struct {
	From, To string // as floor.Diagonal has them
	Name     string // "A–C"
}

// ErrFew is the error of a room with fewer than three walls.
var ErrFew = errors.New("a room has at least three walls")

// Solve finds the room. The error says what is wrong with the measurements and
// what to do; lengths in it are in metres, since it may be read anywhere.
//
// A large room in which much is doubtful takes seconds, since every doubtful length is
// tried as the wrong one; Shape does not.
func Solve(m floor.Measured, with Precision) (Solution, error) {
	n, s, err := settled(m, with)
	if err != nil {
		return Solution{}, err
	}
	j := n.judge()
	s.Measures, s.Freedom, s.Open, s.Likely = j.measures, j.freedom, j.open, j.likely
	s.Next = n.next(j)
	s.Verdict = n.verdict(j)
	return s, nil
}

// settled returns the net at the shape that fits best, and that shape.
func settled(m floor.Measured, with Precision) (*net, Solution, error) {
	if err := check(m, with); err != nil {
		return nil, Solution{}, err
	}
	n, err := newNet(m, with)
	if err != nil {
		return nil, Solution{}, err
	}
	if err := n.contradiction(); err != nil {
		return nil, Solution{}, err
	}
	if err := n.settle(); err != nil {
		return nil, Solution{}, err
	}
	s := Solution{Outline: n.outline(n.at)}
	if err := n.crossing(s.Outline); err != nil {
		return nil, Solution{}, err
	}
	s.Points = append(s.Points, n.at[n.corners:]...)
	return n, s, nil
}

// check refuses what cannot be computed with.
func check(m floor.Measured, with Precision) error {
	switch {
	case len(m.Walls) < 3:
		return ErrFew
	case len(m.Walls) > MostWalls || len(m.Diagonals) > MostAcross || len(m.Points) > MostAcross:
		return fmt.Errorf("a room of more than %d walls or %d lengths across is not worked out: draw it, or measure it in parts", MostWalls, MostAcross)
	case !(with.Length > 0 && with.Square > 0) || math.IsInf(with.Length+with.Square, 0):
		return errors.New("the error of one tape reading must be above zero: see the settings")
	}
	for i, w := range m.Walls {
		name := wallName(m, i)
		switch {
		case !(w.Length >= 0 && w.Length <= longest):
			return fmt.Errorf("%s has no length that a wall can have", name)
		case !(math.Abs(w.Turn) <= 180):
			return fmt.Errorf("the turn at the end of %s is no angle from -180 to 180 degrees", name)
		case !(math.Abs(w.Rise) <= longest):
			return fmt.Errorf("%s is curved by no length that a wall can have", name)
		case w.Square && (w.Rise != 0 || m.Walls[(i+1)%len(m.Walls)].Rise != 0):
			return fmt.Errorf("corner %s is ticked as a right angle, and one of its walls is curved: only two straight walls have a right angle", corner(i+1, len(m.Walls)))
		}
	}
	return nil
}

// longest is the length in metres beyond which nothing in a room is.
const longest = 1000.0

// outline returns the walls between the corners, curved ones as arcs. Walked with
// the room on the left a wall that bulges outwards turns left, so that its bulge
// is positive: the tangent of a quarter of the arc is twice the rise over the chord.
func (n *net) outline(at []plane.Point) plane.Path {
	out := plane.Closed(at[:n.corners]...)
	for i, w := range n.room.Walls {
		if chord := at[i].To(at[(i+1)%n.corners]); w.Rise != 0 && chord > 0 {
			out.Vertices[i].Bulge = 2 * w.Rise / chord
		}
	}
	return out
}

// crossing says which walls of the outline cross.
func (n *net) crossing(outline plane.Path) error {
	edges := outline.Edges()
	for i := range edges {
		for j := i + 1; j < len(edges); j++ {
			beside := j == i+1 || i == 0 && j == len(edges)-1
			if p := plane.Intersect(edges[i], edges[j], touching); len(p) > 0 && !beside {
				return fmt.Errorf("%s and %s cross: look which way the room turns at their ends, and at their lengths", wallName(n.room, i), wallName(n.room, j))
			}
		}
	}
	if err := floor.CheckOutline(outline); err != nil {
		return fmt.Errorf("the measurements make no room: %w", err)
	}
	return nil
}

// touching is how near in metres two walls that do not follow each other may come.
const touching = 1e-6

// Corner returns the letter of the corner number i, where wall number i begins.
func Corner(i int) string { return marks.Label(i, true) }

// PlaceName is the letter of a corner or the name of a measured point, by its
// identifier; "gone" for what is not there any more.
func PlaceName(m floor.Measured, id string) string {
	if i, ok := m.Corner(id); ok {
		return Corner(i)
	}
	if i, ok := m.Point(id); ok {
		return m.Points[i].Name
	}
	return "gone"
}

// corner is Corner for a number that may have gone round.
func corner(i, of int) string { return Corner(i % of) }

// wallName is a wall by its corners, with its name when it has one.
func wallName(m floor.Measured, i int) string {
	name := "the wall " + span(Corner(i), corner(i+1, len(m.Walls)))
	if m.Walls[i].Name != "" {
		name += " (" + m.Walls[i].Name + ")"
	}
	return name
}

func span(from, to string) string { return from + "–" + to }
