// Package grid is the editable table that every place of the window uses: cells edited in place, sorting, filtering,
// selection of many rows, copying to and pasting from a spreadsheet.
//
// It is presentation only. It shows rows of text under stable identifiers and reports what a person did through
// callbacks; the screen answers an edit by calling SetRows with what is now true. Rows are followed by identifier:
// the selection, the scroll position and an edit under way survive every SetRows.
//
// The toolkit's own table keeps its scroll offset, focus and hover to itself, so rows could not be followed through a
// sort or a change from another window; hence a widget of its own here, drawn on the toolkit's scroll container. Only
// the rows in view have objects, so thousands of rows cost no more than a screenful.
package grid

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

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

// Grid is the table. Set the callbacks before it is shown; each may be nil, which takes the ability away.
type Grid struct {
	widget.BaseWidget

	// OnEdit is asked to change one cell. Its error is written at the cell and the edit stays open with the text.
	// It is not called when the text is what it was.
	OnEdit func(rowID string, column int, text string) error
	// OnSelect reports the selected rows, in the order shown, after a person changed the selection. Setting methods,
	// SetRows included, do not call it.
	OnSelect func(rowIDs []string)
	// OnAdd is asked for a new row, by the button or the Insert key. Follow with SetRows and Edit.
	OnAdd func()
	// OnDelete is asked to delete rows, by the button or the Delete key.
	OnDelete func(rowIDs []string)
	// OnPaste takes a block from the clipboard whole; nil passes it to OnEdit cell by cell.
	OnPaste func(cells [][]string, atRow string, atColumn int)
	// OnActivate reports Enter, or a second click, on a cell that cannot be edited.
	OnActivate func(rowID string)

	columns []Column
	rows    []Row
	byID    map[string]int
	order   order
	filter  string
	shown   []int
	shownAt map[string]int

	current  place
	anchor   string
	selected map[string]bool
	edit     edit

	spans  []span
	widths []float32

	tools  *tools
	header *header
	scroll *container.Scroll
	body   *body
	editor *editor
	note   *note
	empty  *emptyPlace
	whole  fyne.CanvasObject
}

// place is a cell: a row by its identifier and a column.
type place struct {
	row string
	col int
}

var _ fyne.Widget = (*Grid)(nil)

// New returns an empty grid with the columns.
func New(columns []Column) *Grid {
	g := &Grid{selected: map[string]bool{}, order: order{column: -1}}
	g.ExtendBaseWidget(g)
	g.editor = newEditor(g)
	g.note = newNote()
	g.body = newBody(g)
	g.header = newHeader(g)
	g.tools = newTools(g)
	g.empty = newEmptyPlace()
	g.scroll = container.NewScroll(g.body)
	g.scroll.OnScrolled = func(fyne.Position) { g.scrolled() }
	table := container.New(&tableLayout{g}, container.NewClip(g.header), g.scroll, g.empty.box)
	g.whole = container.NewBorder(g.tools.box, nil, nil, nil, table)
	g.setColumns(columns)
	g.arrange()
	return g
}

// CreateRenderer implements fyne.Widget.
func (g *Grid) CreateRenderer() fyne.WidgetRenderer {
	g.show()
	return widget.NewSimpleRenderer(g.whole)
}

// Refresh implements fyne.Widget.
func (g *Grid) Refresh() {
	g.show()
	g.BaseWidget.Refresh()
}

func (g *Grid) setColumns(columns []Column) {
	g.columns = columns
	g.widths = make([]float32, len(columns))
	for i, c := range columns {
		g.widths[i] = c.Width
		if c.Width <= 0 {
			g.widths[i] = titleWidth(c.Title)
		}
	}
}

// SetChoices replaces the pick list of a column.
func (g *Grid) SetChoices(column int, choices []string) {
	if column >= 0 && column < len(g.columns) {
		g.columns[column].Choices = choices
	}
}

// SetColumns replaces the columns, for a table whose columns follow the data. It ends an edit, sorting and filtering
// by what was typed stay when the number of columns is the same. Call SetRows next.
func (g *Grid) SetColumns(columns []Column) {
	g.closeEdit()
	if len(columns) != len(g.columns) {
		g.order = order{column: -1}
		g.current.col = 0
	}
	g.setColumns(columns)
	g.body.forget()
	g.arrange()
	g.show()
}

// SetRows shows rows. The selection, the current cell and the scroll position follow their rows by identifier; an edit
// that is open stays open with what has been typed. No callback is called.
func (g *Grid) SetRows(rows []Row) {
	held := g.holdScroll()
	wasAt, hadCurrent := g.shownAt[g.current.row]
	g.rows = rows
	g.byID = make(map[string]int, len(rows))
	for i, r := range rows {
		g.byID[r.ID] = i
	}
	g.dropLostEdit()
	g.arrange()
	g.followSelection(wasAt, hadCurrent)
	g.layoutBody()
	held.restore()
	g.show()
}

// dropLostEdit closes an edit whose row is gone, and says what had been typed so that it is not lost.
func (g *Grid) dropLostEdit() {
	if !g.edit.open {
		return
	}
	if _, ok := g.byID[g.edit.at.row]; ok {
		return
	}
	typed := g.editor.Text
	changed := typed != g.edit.was
	g.closeEdit()
	if changed {
		g.Say("The row being edited is gone. What was typed: " + typed)
	}
}

// Current returns the current cell; ok is false when there is none.
func (g *Grid) Current() (rowID string, column int, ok bool) {
	_, ok = g.shownAt[g.current.row]
	return g.current.row, g.current.col, ok
}

// Shown returns the identifiers of the rows that pass the filter, in the order shown.
func (g *Grid) Shown() []string {
	ids := make([]string, len(g.shown))
	for i, r := range g.shown {
		ids[i] = g.rows[r].ID
	}
	return ids
}

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

// show draws the present state.
func (g *Grid) show() {
	g.tools.show()
	g.showEmpty()
	g.layoutBody()
	g.header.Refresh()
	g.body.Refresh()
}
