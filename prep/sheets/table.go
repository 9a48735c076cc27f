package sheets

import "slices"

// align is where a cell's text stands.
type align int

const (
	left align = iota
	middle
	right
)

// offset returns how far from the left a text begins that leaves free room.
func (a align) offset(free float64) float64 { return free * float64(a) / 2 }

// cellKind is what a cell is for.
type cellKind int

const (
	words cellKind = iota
	tick           // a box; see ticked
	blank          // an empty line to write on, as wide as the column says
)

// column says how one column of a table is set.
type column struct {
	Title string
	Type  type_    // zero: body
	Align align    // of figures right, of text left
	Kind  cellKind // words when zero
	Width float64  // millimetres, for blank; else the column is as wide as its text
	High  float64  // millimetres, for blank: the least height of a row to write in
	Flex  bool     // takes a share of what is left and wraps
}

// The cells of a tick column: its work has been done, or there is none.
const (
	ticked = "x"
	noTick = "–"
)

// tickedIf returns the cell of a tick column.
func tickedIf(done bool) string {
	if done {
		return ticked
	}
	return ""
}

// row is one row of a table. A span has a single cell across the table: the
// title of the rows that follow, which it never leaves.
type row struct {
	Cells []string
	Span  bool
	Total bool // ruled above and strong
}

func cells(c ...string) row { return row{Cells: c} }
func span(s string) row     { return row{Cells: []string{s}, Span: true} }
func total(c ...string) row { return row{Cells: c, Total: true} }

// table is rows under titles that are repeated on every page.
type table struct {
	Columns []column
	Rows    []row
	Empty   string // said when there are no rows
	Whole   bool   // kept on one page when it fits one
}

const (
	cellPad = 1.6 // millimetres left and right of a cell's text
	rowPad  = 1.1 // above and below
	boxSide = 5.0 // of a tick box
)

// records returns the table for CSV: titles, then rows; tick columns as "yes" or
// nothing, and the title of a group in a column of its own.
func (t table) records() [][]string {
	grouped := slices.ContainsFunc(t.Rows, func(r row) bool { return r.Span })
	var titles []string
	if grouped {
		titles = append(titles, "group")
	}
	for _, c := range t.Columns {
		titles = append(titles, c.Title)
	}
	out := [][]string{titles}
	group := ""
	for _, r := range t.Rows {
		if r.Span {
			group = r.Cells[0]
			continue
		}
		var rec []string
		if grouped {
			rec = append(rec, group)
		}
		for i, c := range t.Columns {
			cell := r.cell(i)
			if c.Kind == tick {
				cell = map[string]string{ticked: "yes"}[cell]
			}
			rec = append(rec, cell)
		}
		out = append(out, rec)
	}
	return out
}

func (r row) cell(i int) string {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return ""
}

func (c column) type_(r row) type_ {
	t := c.Type
	if t.size == 0 {
		t = bodyType
	}
	t.bold = t.bold || r.Total
	return t
}
