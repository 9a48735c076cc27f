package drawing

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

// maxRows bounds how many rows of one table are read.
const maxRows = 200_000

// maxCell bounds one cell, in bytes. A longer one comes of a quotation mark that
// nobody closed, which swallows every row after it.
const maxCell = 4_000

// table is a CSV file with a header.
type table struct {
	columns  map[string]int
	width    int      // cells of the header
	unused   []string // columns that nobody knows, as they are written
	rows     []row
	problems []RowProblem
}

// row is one row below the header.
type row struct {
	number  int
	cells   []string
	columns map[string]int
}

// cell returns what stands in the column, without white space around it; empty
// when there is no such column.
func (r row) cell(column string) string {
	i, ok := r.columns[column]
	if !ok || i >= len(r.cells) {
		return ""
	}
	return unguard(strings.TrimSpace(r.cells[i]))
}

// empty tells whether nothing at all stands in the row.
func (r row) empty() bool {
	for _, c := range r.cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

// readTable reads a table of up to limit rows whose header may name the known
// columns. Rows in which nothing stands are left out. The error says why it is no
// such table at all.
func readTable(in io.Reader, known []string, limit int) (*table, error) {
	text, err := readText(in)
	if err != nil {
		return nil, err
	}
	c := csv.NewReader(strings.NewReader(text))
	c.Comma = separator(text)
	c.FieldsPerRecord = -1
	c.LazyQuotes = true // an inch sign in a cell without quotation marks
	t := &table{columns: map[string]int{}}
	var count rowCounter
	for {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("reading the table: %w", err)
		}
		line, _ := c.FieldPos(0)
		r := row{number: count.next(line, cells), cells: cells, columns: t.columns}
		switch {
		case r.empty():
		case len(t.columns) == 0:
			if err := t.header(r, known); err != nil {
				return nil, err
			}
		case len(t.rows) == limit:
			return nil, fmt.Errorf("the table has more than %d rows; split it into several files", limit)
		case t.sound(r):
			t.rows = append(t.rows, r)
		}
	}
	if len(t.columns) == 0 {
		return nil, fmt.Errorf("the table is empty; its first row has to name the columns: %s", strings.Join(known, ", "))
	}
	return t, nil
}

// header takes the names of the columns.
func (t *table) header(r row, known []string) error {
	isKnown := map[string]bool{}
	for _, k := range known {
		isKnown[k] = true
	}
	t.width = len(r.cells)
	for i, c := range r.cells {
		name := key(c)
		switch {
		case name == "":
		case !isKnown[name]:
			t.unused = append(t.unused, shortened(c))
		default:
			if _, twice := t.columns[name]; twice {
				return fmt.Errorf("the column %s is there twice; rename or remove one", name)
			}
			t.columns[name] = i
		}
	}
	if len(t.columns) == 0 {
		return fmt.Errorf("the first row has to name the columns, of which %s are known; it reads “%s”",
			strings.Join(known, ", "), shortened(strings.Join(r.cells, ", ")))
	}
	return nil
}

// sound tells whether the row can be a row of this table, and notes why not.
func (t *table) sound(r row) bool {
	for i, c := range r.cells {
		if len(c) > maxCell {
			t.problems = append(t.problems, RowProblem{Row: r.number, Got: c,
				Why:  "a cell is that long; a quotation mark is not closed, or an inch sign begins the cell",
				Want: fmt.Sprintf("at most %d characters", maxCell)})
			return false
		}
		if i >= t.width && strings.TrimSpace(c) != "" {
			t.problems = append(t.problems, RowProblem{Row: r.number, Got: c,
				Why:  "it stands to the right of the last column; a comma inside a cell needs quotation marks around the cell",
				Want: "a row as long as the header"})
			return false
		}
	}
	return true
}

// need returns an error when one of the columns is missing.
func (t *table) need(columns ...string) error {
	var missing []string
	for _, c := range columns {
		if _, ok := t.columns[c]; !ok {
			missing = append(missing, c)
		}
	}
	if len(missing) == 0 {
		return nil
	}
	err := fmt.Errorf("the first row does not name the column %s", strings.Join(missing, " or "))
	if len(t.unused) > 0 {
		err = fmt.Errorf("%w; it has %s, which is not known", err, strings.Join(t.unused, ", "))
	}
	return err
}

// rowCounter counts rows as a spreadsheet does: empty lines, which the reader
// skips, are rows, and a cell of several lines is in one row.
type rowCounter struct{ row, lines int }

// next returns the number of the row of cells that begins in the line.
func (c *rowCounter) next(line int, cells []string) int {
	c.row += line - c.lines
	c.lines = line
	for _, cell := range cells {
		c.lines += strings.Count(cell, "\n")
	}
	return c.row
}
