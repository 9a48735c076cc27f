package room

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// net is the corners and points of a room, and what holds them together. Corner A
// stays at the origin and corner B on the X axis, so that the unknowns are X of B
// and both coordinates of all others, and what is left open is the shape alone.
type net struct {
	room    floor.Measured
	with    Precision
	corners int
	places  int
	at      []plane.Point
	reads   []reading
}

// reading is one measurement: a length from a to b, or, when square, the angle by
// which the way from a to b turns there on to c.
type reading struct {
	kind    Kind
	id      string
	a, b, c int
	value   float64 // metres; radians
	sigma   float64
}

func newNet(m floor.Measured, with Precision) (*net, error) {
	n := &net{room: m, with: with, corners: len(m.Walls), places: len(m.Walls) + len(m.Points)}
	for i, w := range m.Walls {
		if w.Length > 0 {
			n.reads = append(n.reads, reading{kind: Wall, id: w.ID, a: i, b: (i + 1) % n.corners, value: w.Length, sigma: with.Length})
		}
	}
	if len(n.reads) == 0 {
		return nil, errors.New("no wall has a length yet")
	}
	for i, d := range m.Diagonals {
		from, okFrom := n.place(d.From)
		to, okTo := n.place(d.To)
		switch {
		case !okFrom || !okTo:
			return nil, fmt.Errorf("diagonal %d goes to a place that is not there any more: choose its ends again, or take it out", i+1)
		case from == to:
			return nil, fmt.Errorf("diagonal %d goes from %s to itself: it needs two places", i+1, n.name(from))
		case !(d.Length > 0 && d.Length <= longest):
			return nil, fmt.Errorf("the diagonal %s has no length yet", span(n.name(from), n.name(to)))
		}
		n.reads = append(n.reads, reading{kind: Across, id: d.ID, a: from, b: to, value: d.Length, sigma: with.Length})
	}
	for i, w := range m.Walls {
		if w.Square {
			b := (i + 1) % n.corners
			n.reads = append(n.reads, reading{kind: Square, id: w.ID, a: i, b: b, c: (b + 1) % n.corners,
				value: math.Copysign(math.Pi/2, w.Turn), sigma: with.Square})
		}
	}
	return n, nil
}

// place returns the number of a corner or a measured point.
func (n *net) place(id string) (int, bool) {
	if i, ok := n.room.Corner(id); ok {
		return i, true
	}
	i, ok := n.room.Point(id)
	return n.corners + i, ok
}

// name is what a place is called.
func (n *net) name(place int) string {
	if place < n.corners {
		return Corner(place)
	}
	return n.room.Points[place-n.corners].Name
}

// idOf is the inverse of place.
func (n *net) idOf(place int) string {
	if place < n.corners {
		return n.room.Walls[place].ID
	}
	return n.room.Points[place-n.corners].ID
}

func (n *net) unknowns() int { return 2*n.places - 3 }

// column returns the first of a place's two columns; that of corner B's X is 0 and
// its Y has none, and corner A has none at all.
func column(place int) (x, y int) {
	switch place {
	case 0:
		return -1, -1
	case 1:
		return 0, -1
	}
	return 2*place - 3, 2*place - 2
}

// model returns what a reading would be with the places at at, and its derivative
// by each place. A length between places on one spot has none.
func (r reading) model(at []plane.Point) (value float64, by [3]plane.Point) {
	first := at[r.b].Sub(at[r.a])
	if r.kind != Square {
		u, _ := first.Unit()
		return first.Len(), [3]plane.Point{u.Times(-1), u, {}}
	}
	second := at[r.c].Sub(at[r.b])
	p, q := swing(first), swing(second)
	turn := math.Atan2(first.Cross(second), first.Dot(second))
	return turn, [3]plane.Point{p, p.Times(-1).Sub(q), q}
}

// swing is how the direction of v turns as its end moves.
func swing(v plane.Point) plane.Point {
	squared := v.Dot(v)
	if squared == 0 {
		return plane.Point{}
	}
	return v.Left().Times(1 / squared)
}

// miss is by how much a reading falls short of the model, a turn by the shorter way.
func (r reading) miss(model float64) float64 {
	if r.kind == Square {
		return math.Remainder(r.value-model, 2*math.Pi)
	}
	return r.value - model
}

// term is one derivative of a reading: an unknown, and how the reading changes with it.
type term struct {
	column int
	by     float64
}

// terms returns the weighted derivatives of a reading at a shape, of which there are
// six at most, and its weighted miss. No unknown comes twice, unless a right angle
// turns back to where it began.
func (r reading) terms(at []plane.Point, room []term) (out []term, miss float64) {
	value, by := r.model(at)
	out = room[:0]
	for k, place := range [3]int{r.a, r.b, r.c} {
		if k == 2 && r.kind != Square {
			break
		}
		x, y := column(place)
		if x >= 0 {
			out = append(out, term{x, by[k].X / r.sigma})
		}
		if y >= 0 {
			out = append(out, term{y, by[k].Y / r.sigma})
		}
	}
	return out, r.miss(value) / r.sigma
}

// design returns the weighted derivatives of the readings at a shape.
func (n *net) design() *mat.Dense {
	a := mat.NewDense(len(n.reads), n.unknowns(), nil)
	var room [6]term
	for row, r := range n.reads {
		terms, _ := r.terms(n.at, room[:])
		for _, t := range terms {
			a.Set(row, t.column, a.At(row, t.column)+t.by)
		}
	}
	return a
}

// badness is the weighted sum of the squares of what the readings miss.
func badness(reads []reading, at []plane.Point) float64 {
	sum := 0.0
	for _, r := range reads {
		value, _ := r.model(at)
		w := r.miss(value) / r.sigma
		sum += w * w
	}
	return sum
}

// moved returns the places after a step of the unknowns.
func moved(at []plane.Point, step []float64) []plane.Point {
	out := make([]plane.Point, len(at))
	for i, p := range at {
		x, y := column(i)
		if x >= 0 {
			p.X += step[x]
		}
		if y >= 0 {
			p.Y += step[y]
		}
		out[i] = p
	}
	return out
}
