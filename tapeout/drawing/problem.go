package drawing

import (
	"errors"
	"fmt"

	"groundrow/tapeout/length"
)

// RowProblem is one thing in a table that could not be used.
type RowProblem struct {
	Row    int    // as a spreadsheet counts, the header being row 1; 0: the table as a whole
	Column string // by its name in this package; empty: the whole row
	Got    string // what stands there
	Want   string // what should
	Why    string // a clause on what is wrong, where Got does not show it
}

// String returns the problem in a sentence or two.
func (p RowProblem) String() string {
	where := "The table"
	if p.Row > 0 {
		where = fmt.Sprintf("Row %d", p.Row)
	}
	if p.Column != "" {
		where += ", " + p.Column
	}
	text := where + ": "
	switch {
	case p.Got != "":
		text += "“" + shortened(p.Got) + "” cannot be used"
	case p.Column != "":
		text += "nothing is there"
	default:
		text += "it cannot be used"
	}
	if p.Why != "" {
		text += ", since " + p.Why
	}
	if p.Want != "" {
		text += ". Wanted: " + p.Want
	}
	return text + "."
}

// lengthProblem turns the error of a length into a row's problem.
func lengthProblem(row int, column, got string, err error) RowProblem {
	p := RowProblem{Row: row, Column: column, Got: got}
	var e *length.ParseError
	if errors.As(err, &e) {
		p.Want = e.Accepts
		if got != "" {
			p.Why = e.Why
		}
	}
	return p
}
