package drawing

import (
	"errors"
	"io"
	"math"
	"strconv"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
)

// maxWalls bounds the walls or corners of a room.
const maxWalls = 1_000

var roomColumns = []string{"wall", "length", "turn", "square", "rise", "from", "to", "corner", "x", "y"}

// RoomOptions say how a table of a room is to be read.
type RoomOptions struct {
	Unit  length.Unit   // of bare numbers
	Scale length.Scale  // lengths are those on paper at this scale; zero: those on the floor
	NewID func() string // identifiers for the walls; nil: their numbers
}

// RoomTable is what a table of a room holds.
type RoomTable struct {
	Outline  plane.Path     // closed, floor axes, of a table of corners; no vertices when there are problems
	Measured floor.Measured // walls and lengths across, of a table of walls; nothing when there are problems
	Typed    []TypedLength  // the lengths of Measured as they were typed, unless they are those on paper
	Names    []string       // of the walls or corners, in their order; empty where none is given
	Gap      float64        // metres by which the walls, turned as they say, fail to come back to where they began
	Unused   []string       // columns that were not looked at, as the header spells them
	Problems []RowProblem   // all of them
}

// TypedLength is a length as it stands in the table.
type TypedLength struct {
	ID     string // of the wall, or of the length across
	Column string // "length" or "rise"
	Text   string
}

// ReadRoom reads a room from its walls or its corners, as the package comment
// describes it. Which shape the walls make is not worked out here. A room with any
// problem holds nothing, since one wrong wall moves all that follow. The error says why it is no such table at all.
func ReadRoom(r io.Reader, o RoomOptions) (RoomTable, error) {
	t, err := readTable(r, roomColumns, maxWalls)
	if err = errors.Join(err, checkScale(o.Scale)); err != nil {
		return RoomTable{}, err
	}
	_, byWalls := t.columns["length"]
	_, byX := t.columns["x"]
	_, byY := t.columns["y"]
	m := roomReader{options: o, RoomTable: RoomTable{Unused: t.unused, Problems: t.problems}}
	switch {
	case byWalls && (byX || byY):
		return RoomTable{}, errors.New("the table has both walls (length) and corners (x, y); a room is read from one of them")
	case byWalls:
		m.walls(t)
	case byX && byY:
		m.corners(t.rows)
	default:
		return RoomTable{}, errors.New("the first row has to name the column length, for walls, or x and y, for corners")
	}
	if len(m.Problems) > 0 {
		m.Outline, m.Measured, m.Gap = plane.Path{}, floor.Measured{}, 0
	}
	return m.RoomTable, nil
}

type roomReader struct {
	options RoomOptions
	made    int
	RoomTable
}

func (m *roomReader) problem(p RowProblem) { m.Problems = append(m.Problems, p) }

// length reads a length in the column, on the floor.
func (m *roomReader) length(r row, column string) (float64, bool) {
	text := r.cell(column)
	v, err := length.Parse(text, m.options.Unit)
	if err != nil {
		m.problem(lengthProblem(r.number, column, text, err))
		return 0, false
	}
	if v = onFloor(v, m.options.Scale); math.Abs(v) > length.Limit {
		m.problem(RowProblem{Row: r.number, Column: column, Got: text, Why: "at this scale it is beyond 10 km"})
		return 0, false
	}
	return v, true
}

// walls reads a room that is walked wall by wall, with what was measured across it.
func (m *roomReader) walls(t *table) {
	_, turns := t.columns["turn"]
	var across []row
	for _, r := range t.rows {
		if r.cell("from") != "" || r.cell("to") != "" {
			across = append(across, r)
			continue
		}
		m.wall(r, turns)
	}
	for _, r := range across {
		m.diagonal(r)
	}
	if len(m.Problems) > 0 {
		return
	}
	if len(m.Measured.Walls) < 3 {
		m.problem(RowProblem{Why: "a room has at least three walls"})
		return
	}
	m.Gap = m.gap()
}

// gap is how far the walls, turned as they say, end from where they began; nothing
// when one was not measured.
func (m *roomReader) gap() float64 {
	var walls []floor.Wall
	for _, w := range m.Measured.Walls {
		if w.Length == 0 {
			return 0
		}
		walls = append(walls, floor.Wall{Length: w.Length, Turn: w.Turn})
	}
	return floor.Walked(walls).Vertices[len(walls)].Len()
}

// wall reads one wall. A length that is missing was not measured; a turn that is
// missing is a quarter turn to the left, or not known when the table has none at all.
func (m *roomReader) wall(r row, turns bool) {
	w := floor.MeasuredWall{ID: m.newID(), Name: tidy(r.cell("wall"))}
	if r.cell("length") != "" {
		v, ok := m.length(r, "length")
		if ok && v <= 0 {
			m.problem(RowProblem{Row: r.number, Column: "length", Got: r.cell("length"), Why: "a wall is longer than nothing"})
		}
		w.Length = v
		m.typed(w.ID, "length", r)
	}
	if turns {
		turn, ok := readTurn(r.cell("turn"))
		if !ok {
			m.problem(RowProblem{Row: r.number, Column: "turn", Got: r.cell("turn"),
				Want: "degrees to the left at the wall's end, such as 90, -90 or 45 right; at most 360"})
		}
		w.Turn = math.Remainder(turn, 360)
	}
	if text := r.cell("square"); text != "" {
		var known bool
		if w.Square, known = yes(text); !known {
			m.problem(RowProblem{Row: r.number, Column: "square", Got: text, Want: "yes where a right angle was tried, or nothing"})
		}
	}
	if r.cell("rise") != "" {
		w.Rise, _ = m.length(r, "rise")
		m.typed(w.ID, "rise", r)
	}
	m.Measured.Walls = append(m.Measured.Walls, w)
	m.Names = append(m.Names, w.Name)
}

// diagonal reads a length across, from and to the letters of corners, A where the
// first wall begins, or other names for points in the room.
func (m *roomReader) diagonal(r row) {
	d := floor.Diagonal{ID: m.newID()}
	for _, end := range []struct {
		column string
		at     *string
	}{{"from", &d.From}, {"to", &d.To}} {
		name := tidy(r.cell(end.column))
		if name == "" {
			m.problem(RowProblem{Row: r.number, Column: end.column, Want: "the letter of a corner, or the name of a point"})
			continue
		}
		id, err := m.Measured.Named(name, cornerLetter, m.newID)
		if err != nil {
			m.problem(RowProblem{Row: r.number, Column: end.column, Got: name, Why: err.Error()})
		}
		*end.at = id
	}
	v, ok := m.length(r, "length")
	if ok && v <= 0 {
		m.problem(RowProblem{Row: r.number, Column: "length", Got: r.cell("length"), Why: "it is longer than nothing"})
	}
	d.Length = v
	m.typed(d.ID, "length", r)
	m.Measured.Diagonals = append(m.Measured.Diagonals, d)
}

// cornerLetter is what a room as measured calls its corners.
func cornerLetter(i int) string { return marks.Label(i, true) }

func (m *roomReader) typed(id, column string, r row) {
	if m.options.Scale == 0 {
		m.Typed = append(m.Typed, TypedLength{id, column, r.cell(column)})
	}
}

func (m *roomReader) newID() string {
	if m.options.NewID != nil {
		return m.options.NewID()
	}
	m.made++
	return strconv.Itoa(m.made)
}

// readTurn reads degrees to the left; a quarter turn when nothing stands there.
func readTurn(text string) (degrees float64, ok bool) {
	text = strings.NewReplacer("°", " ", "degrees", " ", "deg", " ").Replace(key(text))
	text = key(text)
	rest, right := strings.CutSuffix(text, "right")
	if !right {
		rest, _ = strings.CutSuffix(text, "left")
	}
	if strings.TrimSpace(rest) == "" {
		degrees, ok = 90, true
	} else {
		degrees, ok = decimal(rest)
	}
	if right {
		degrees = -degrees
	}
	return degrees, ok && math.Abs(degrees) <= 360
}

// corners reads a room by the places of its corners. The first may be repeated at
// the end.
func (m *roomReader) corners(rows []row) {
	var at []plane.Point
	for _, r := range rows {
		x, okX := m.length(r, "x")
		y, okY := m.length(r, "y")
		if okX && okY {
			at = append(at, plane.Point{X: x, Y: y})
			m.Names = append(m.Names, tidy(r.cell("corner")))
		}
	}
	if n := len(at); n > 3 && at[0].To(at[n-1]) <= joined {
		at, m.Names = at[:n-1], m.Names[:n-1]
	}
	if len(m.Problems) > 0 {
		return
	}
	m.Outline = plane.Closed(at...)
	m.check()
}

// check notes what keeps the outline from being a room.
func (m *roomReader) check() {
	if err := floor.CheckOutline(m.Outline); err != nil {
		m.problem(RowProblem{Why: err.Error()})
	}
}
