package floorsplace

import (
	"math"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of walls as measured.
const (
	wallCorners = iota
	wallLength
	wallTurn
	wallSquare
	wallRise
	wallName
	wallChange
	wallChecked
)

// Columns of the table of lengths across.
const (
	acrossFrom = iota
	acrossTo
	acrossLength
	acrossChange
	acrossChecked
)

func wallColumns() []grid.Column {
	return []grid.Column{
		{Title: "Wall", Width: 76, ReadOnly: true},
		{Title: "Length", Width: 92, Right: true, Hint: "empty: not measured"},
		{Title: "Turn°", Width: 60, Right: true, Hint: "90 left"},
		{Title: "Square", Width: 66, Tick: true},
		{Title: "Curved by", Width: 88, Right: true, Hint: "rise over the chord"},
		{Title: "Name", Width: 84, Grow: true},
		{Title: "Change", Width: 78, ReadOnly: true, Right: true},
		{Title: "Mistake shows", Width: 116, ReadOnly: true},
	}
}

func acrossColumns() []grid.Column {
	return []grid.Column{
		{Title: "From", Width: 110, Hint: "a corner's letter, or a name"},
		{Title: "To", Width: 130, Hint: "a corner's letter, or a name"},
		{Title: "Length", Width: 100, Right: true},
		{Title: "Change", Width: 80, ReadOnly: true, Right: true},
		{Title: "Mistake shows", Width: 130, ReadOnly: true, Grow: true},
	}
}

// judgement finds what all measurements together say of one.
type judgement struct {
	v *desk.View
	m prep.Measured
}

// of returns by how much a measurement is changed, how well it is checked, and what
// is doubtful about it.
func (j judgement) of(kind room.Kind, id string) (change, checked, doubt string) {
	style := j.v.Style()
	for i, one := range j.m.Measures {
		if one.Kind != kind || one.ID != id {
			continue
		}
		if j.m.Doubtful(i) {
			doubt = "this measurement may be wrong: measure it again"
		}
		return one.SayResidual(style), one.Checked(style), doubt
	}
	return "", "", ""
}

// wallRows shows the walls as measured, then empty rows for the ones to come.
func wallRows(v *desk.View, f *floor.Floor, m prep.Measured, coming []string) []grid.Row {
	var rows []grid.Row
	j := judgement{v, m}
	n := len(f.Measured.Walls)
	for i, w := range f.Measured.Walls {
		change, checked, doubt := j.of(room.Wall, w.ID)
		row := grid.Row{ID: w.ID, CellProblems: map[int]string{}, Cells: []string{
			room.Corner(i) + "–" + room.Corner((i+1)%n), lengthTyped(v.P, w.ID, "length", w.Length), turnText(w.Turn), tickText(w.Square),
			lengthTyped(v.P, w.ID, "rise", w.Rise), w.Name, change, checked,
		}}
		if doubt != "" {
			row.CellProblems[wallLength] = doubt
		}
		if _, _, doubt = j.of(room.Square, w.ID); doubt != "" {
			row.CellProblems[wallTurn] = doubt
		}
		rows = append(rows, row)
	}
	return append(rows, emptyRows(coming, "next wall", len(wallColumns()))...)
}

// acrossRows shows the lengths across, then those begun and the ones to come.
func acrossRows(v *desk.View, f *floor.Floor, m prep.Measured, coming []string, begun map[string]begunAcross) []grid.Row {
	var rows []grid.Row
	j := judgement{v, m}
	for _, d := range f.Measured.Diagonals {
		change, checked, doubt := j.of(room.Across, d.ID)
		row := grid.Row{ID: d.ID, Cells: []string{
			room.PlaceName(f.Measured, d.From), room.PlaceName(f.Measured, d.To), lengthTyped(v.P, d.ID, "length", d.Length), change, checked}}
		if doubt != "" {
			row.CellProblems = map[int]string{acrossLength: doubt}
		}
		rows = append(rows, row)
	}
	for _, row := range emptyRows(coming, "", len(acrossColumns())) {
		b := begun[row.ID]
		row.Cells[acrossFrom], row.Cells[acrossTo], row.Cells[acrossLength] = b.from, b.to, b.length
		rows = append(rows, row)
	}
	return rows
}

func emptyRows(ids []string, first string, columns int) []grid.Row {
	rows := make([]grid.Row, len(ids))
	for i, id := range ids {
		rows[i] = grid.Row{ID: id, Cells: make([]string, columns), Dim: true}
	}
	if len(rows) > 0 && first != "" {
		rows[0].Cells[0] = first
	}
	return rows
}

// lengthTyped is a length as it was typed; nothing for one that was not measured.
func lengthTyped(p *prep.Production, row, column string, m float64) string {
	if m == 0 {
		return ""
	}
	return p.ShowLength(row, column, m)
}

func turnText(turn float64) string {
	if turn == 0 {
		return ""
	}
	return strconv.FormatFloat(math.Round(turn*1e4)/1e4, 'f', -1, 64)
}

func tickText(on bool) string {
	if on {
		return grid.On
	}
	return grid.Off
}
