package grid

import "image/color"

// Column describes one column. The zero value is a column of editable text.
type Column struct {
	Title string
	// Width is the starting width in the toolkit's units; 0 takes the width of the title. A person can drag it.
	Width float32
	// Grow gives the column a share of the room that is left over when the table is wider than its columns.
	Grow bool
	// Right aligns figures to the right.
	Right bool
	// ReadOnly cells report OnActivate instead of opening an edit.
	ReadOnly bool
	// Choices, when there are any, are offered as a pick list; an edit reports one of them.
	Choices []string
	// Tick shows the cell as a box that is on or off (see Ticked) and reports On or Off.
	Tick bool
	// Swatch draws the row's colour before the text.
	Swatch bool
	// Hint is shown in the empty cell while it is edited: the unit, or the spelling that is accepted.
	Hint string
	// Compare orders two cells for sorting; nil orders as Natural does.
	Compare func(a, b string) int
}

// Row is one row as it is shown. Cells that are missing read as empty.
type Row struct {
	// ID names the row in every callback and must be unique and not empty.
	ID    string
	Cells []string
	// Problem, in words, puts a warning triangle into the first cell; the words show when the row is pointed at or current.
	Problem string
	// CellProblems does the same for single cells, by column.
	CellProblems map[int]string
	Bold, Dim    bool
	// Swatch is drawn in the columns that ask for it; nil draws none.
	Swatch color.Color
}

// What a Tick cell reports and holds.
const (
	On  = "yes"
	Off = ""
)

// row returns the row with the identifier.
func (g *Grid) row(id string) (Row, bool) {
	i, ok := g.byID[id]
	if !ok {
		return Row{}, false
	}
	return g.rows[i], true
}

// cell returns the text of a cell of a row, empty where the row is short.
func (r Row) cell(column int) string {
	if column < 0 || column >= len(r.Cells) {
		return ""
	}
	return r.Cells[column]
}

// problem returns the words of what is wrong with a cell; a problem of the row belongs to the first.
func (r Row) problem(column int) string {
	if p := r.CellProblems[column]; p != "" {
		return p
	}
	if column == 0 {
		return r.Problem
	}
	return ""
}
