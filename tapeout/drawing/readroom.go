package drawing

import (
	"errors"
	"io"
	"math"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// maxWalls bounds the walls or corners of a room.
const maxWalls = 1_000

var roomColumns = []string{"wall", "length", "turn", "corner", "x", "y"}

// RoomOptions say how a table of a room is to be read.
type RoomOptions struct {
	Unit  length.Unit  // of bare numbers
	Scale length.Scale // lengths are those on paper at this scale; zero: those on the floor
}

// RoomTable is what a table of a room holds.
type RoomTable struct {
	Outline  plane.Path   // closed, floor axes; no vertices when there are problems
	Walls    []floor.Wall // as they were measured; none when the table gives corners
	Names    []string     // of the walls or corners, in their order; empty where none is given
	Gap      float64      // metres by which the walls fail to come back to where they began
	Unused   []string     // columns that were not looked at, as the header spells them
	Problems []RowProblem // all of them
}

// ReadRoom reads the outline of a room from its walls or its corners, as the
// package comment describes it. A room with any problem has no outline, since one
// wrong wall moves all that follow. The error says why it is no such table at all.
func ReadRoom(r io.Reader, o RoomOptions) (RoomTable, error) {
	t, err := readTable(r, roomColumns, maxWalls)
	if err = errors.Join(err, checkScale(o.Scale)); err != nil {
		return RoomTable{}, err
	}
	_, byWalls := t.columns["length"]
	_, byX := t.columns["x"]
	_, byY := t.columns["y"]
	room := roomReader{options: o, RoomTable: RoomTable{Unused: t.unused, Problems: t.problems}}
	switch {
	case byWalls && (byX || byY):
		return RoomTable{}, errors.New("the table has both walls (length) and corners (x, y); a room is read from one of them")
	case byWalls:
		room.walls(t.rows)
	case byX && byY:
		room.corners(t.rows)
	default:
		return RoomTable{}, errors.New("the first row has to name the column length, for walls, or x and y, for corners")
	}
	if len(room.Problems) > 0 {
		room.Outline, room.Gap = plane.Path{}, 0
	}
	return room.RoomTable, nil
}

type roomReader struct {
	options RoomOptions
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

// walls reads a room that is walked wall by wall.
func (m *roomReader) walls(rows []row) {
	for _, r := range rows {
		v, ok := m.length(r, "length")
		if ok && v <= 0 {
			m.problem(RowProblem{Row: r.number, Column: "length", Got: r.cell("length"), Why: "a wall is longer than nothing"})
		}
		turn, ok := readTurn(r.cell("turn"))
		if !ok {
			m.problem(RowProblem{Row: r.number, Column: "turn", Got: r.cell("turn"),
				Want: "degrees to the left at the wall's end, such as 90, -90 or 45 right; at most 360"})
		}
		m.Walls = append(m.Walls, floor.Wall{Length: v, Turn: turn})
		m.Names = append(m.Names, tidy(r.cell("wall")))
	}
	if len(m.Problems) > 0 {
		return
	}
	var err error
	if m.Outline, m.Gap, err = floor.FromWalls(m.Walls); err != nil {
		m.problem(RowProblem{Why: err.Error()})
		return
	}
	m.check()
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
