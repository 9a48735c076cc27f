package floorsplace

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/grid"
)

// begunAcross is a length across that is being typed and has not all of its three
// parts yet.
type begunAcross struct{ from, to, length string }

func (b begunAcross) whole() bool { return b.from != "" && b.to != "" && b.length != "" }

// typedWall is one cell of the table of walls, typed.
type typedWall struct {
	id     string
	column int
	text   string
	metres float64 // of a length or a rise
	turn   float64 // degrees
}

// readWall reads what was typed into a cell of a wall.
func readWall(id string, column int, text string, unit length.Unit) (c typedWall, err error) {
	c = typedWall{id: id, column: column, text: strings.TrimSpace(text)}
	switch column {
	case wallLength, wallRise:
		if c.text != "" {
			c.metres, err = length.Parse(c.text, unit)
		}
		if err == nil && column == wallLength && (c.metres < 0 || c.text != "" && c.metres == 0) {
			err = errors.New("a wall needs a length above zero; leave it empty if it was not measured")
		}
	case wallTurn:
		c.turn, err = readTurn(c.text)
	}
	return c, err
}

// readTurn reads degrees to the left; nothing when the turn is not known.
func readTurn(text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	turn, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(strings.TrimSuffix(text, "°")), ",", ".", 1), 64)
	if err != nil || !(turn >= -180 && turn <= 180) {
		return 0, fmt.Errorf("“%s” is no turn; degrees such as 90 (to the left) or -90 (to the right) are needed, or nothing", text)
	}
	return turn, nil
}

// apply changes the wall, which is added when it is not there yet.
func (c typedWall) apply(p *prep.Production, id floor.ID) error {
	return p.Measure(id, func(m *floor.Measured) error {
		i, there := m.Corner(c.id)
		if !there {
			i = len(m.Walls)
			m.Walls = append(m.Walls, floor.MeasuredWall{ID: c.id})
		}
		w := &m.Walls[i]
		switch c.column {
		case wallLength:
			w.Length = c.metres
			p.KeepTyped(w.ID, "length", c.text)
		case wallRise:
			w.Rise = c.metres
			p.KeepTyped(w.ID, "rise", c.text)
		case wallTurn:
			w.Turn = c.turn
		case wallSquare:
			w.Square = grid.Ticked(c.text)
		case wallName:
			w.Name = c.text
		}
		return nil
	})
}

// wallBefore puts a wall that was not measured yet before another one, whose corner
// it takes over: what was measured to that corner is measured to the new wall's
// beginning.
func wallBefore(m *floor.Measured, id, fresh string) error {
	i, ok := m.Corner(id)
	if !ok {
		return errGone("the wall")
	}
	m.Walls = slices.Insert(m.Walls, i, floor.MeasuredWall{ID: fresh})
	for k := range m.Diagonals {
		d := &m.Diagonals[k]
		if d.From == id {
			d.From = fresh
		}
		if d.To == id {
			d.To = fresh
		}
	}
	return nil
}

// setAcross puts a length across into the production, or changes the one that is
// there. A name that is no corner's letter is that of a point, which is added when
// it is new.
func setAcross(p *prep.Production, on floor.ID, id string, b begunAcross) error {
	metres, err := length.Parse(b.length, p.Unit())
	if err != nil {
		return err
	}
	if metres <= 0 {
		return errors.New("a length across must be above zero")
	}
	return p.Measure(on, func(m *floor.Measured) error {
		from, err := m.Named(strings.TrimSpace(b.from), room.Corner, uuid.NewString)
		if err != nil {
			return err
		}
		to, err := m.Named(strings.TrimSpace(b.to), room.Corner, uuid.NewString)
		if err != nil {
			return err
		}
		if from == to {
			return fmt.Errorf("a length across needs two places, and both are %s", strings.TrimSpace(b.to))
		}
		d := floor.Diagonal{ID: id, From: from, To: to, Length: metres}
		if i := slices.IndexFunc(m.Diagonals, func(o floor.Diagonal) bool { return o.ID == id }); i >= 0 {
			m.Diagonals[i] = d
		} else {
			m.Diagonals = append(m.Diagonals, d)
		}
		p.KeepTyped(id, "length", b.length)
		forgetPoints(m)
		return nil
	})
}

// forgetPoints drops the points that no length goes to any more.
func forgetPoints(m *floor.Measured) {
	m.Points = slices.DeleteFunc(m.Points, func(p floor.MeasuredPoint) bool {
		return !slices.ContainsFunc(m.Diagonals, func(d floor.Diagonal) bool { return d.From == p.ID || d.To == p.ID })
	})
}

// asDrawn begins the measuring of a room that was drawn: its walls with the turns
// that they have, to the nearest five degrees, and no length yet.
func asDrawn(f *floor.Floor) []floor.MeasuredWall {
	var out []floor.MeasuredWall
	for _, w := range floor.Walls(f.Outline) {
		out = append(out, floor.MeasuredWall{ID: uuid.NewString(), Turn: math.Round(w.Turn/5) * 5})
	}
	return out
}
