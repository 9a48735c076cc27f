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
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
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

// show draws the present state.
func (g *Grid) show() {
	g.tools.show()
	g.showEmpty()
	g.layoutBody()
	g.header.Refresh()
	g.body.Refresh()
}
