package drawingin

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// Columns of the list of lines.
const (
	takeColumn = iota
	groupColumn
	countColumn
	lengthColumn
	whyColumn
)

// linesPanel asks which lines come in.
type linesPanel struct {
	page    *Page
	by      *fields.Choice
	grid    *grid.Grid
	count   *widget.Label
	content fyne.CanvasObject
	shown   map[string]group
}

var sortingChoices = asOffered(sortings)

func newLinesPanel(p *Page) *linesPanel {
	l := &linesPanel{page: p, by: fields.NewChoice(sortingChoices.names...), count: widget.NewLabel("")}
	l.by.Set(sortingChoices.name(byLayer))
	l.by.OnCommit = func(string) error {
		l.show()
		return nil
	}
	l.grid = grid.New([]grid.Column{
		{Title: "Take", Tick: true}, {Title: "Drawn on", Width: 120, Grow: true, ReadOnly: true, Swatch: true},
		{Title: "Lines", Width: 74, ReadOnly: true, Right: true}, {Title: "Length", Width: 98, ReadOnly: true, Right: true},
		{Title: "Left aside since", Width: 184, ReadOnly: true},
	})
	l.grid.ShowTools(false)
	l.grid.SetEmpty("The drawing has no lines.", "", nil)
	l.grid.OnEdit = l.ticked
	l.grid.OnSelect = l.picked
	l.count.Truncation = fyne.TextTruncateEllipsis
	all := fields.NewToolbar(
		fields.Tool{Text: "As proposed", Do: func() { p.takeAsProposed() }},
		fields.Tool{Text: "All", Do: func() { p.takeAll(true) }}, fields.Tool{Text: "None", Do: func() { p.takeAll(false) }},
	)
	by := container.NewBorder(nil, nil, widget.NewLabel("Together by"), nil, l.by)
	l.content = container.NewBorder(
		container.NewBorder(nil, nil, by, all, l.count), wrapped("Click a line in the drawing to take or leave it; hold Shift and drag for all in a box."), nil, nil, l.grid)
	return l
}

func (l *linesPanel) sorting() sorting {
	by, _ := sortingChoices.value(l.by.Value())
	return by
}

func (l *linesPanel) show() {
	d := l.page.d
	if d == nil {
		return
	}
	style := l.page.desk.View().Style()
	l.shown = map[string]group{}
	groups := d.groups(l.sorting())
	rows := make([]grid.Row, len(groups))
	for i, g := range groups {
		id := "group " + g.key
		l.shown[id] = g
		length := fmt.Sprintf("%.4g", g.length)
		if d.scale.perUnit > 0 {
			length = style.Format(g.length * d.scale.perUnit)
		}
		rows[i] = grid.Row{ID: id, Dim: g.taken == 0, Cells: []string{
			tick(g.taken > 0), clipped(g.name), countOf(g.taken, len(g.items)), length, g.why,
		}}
		if g.colour.Known {
			rows[i].Swatch = rgb(g.colour)
		}
	}
	l.grid.SetRows(rows)
	l.count.SetText(fmt.Sprintf("%d of %s", d.taken(), prep.Counted(len(d.take), "line")))
}

func tick(on bool) string {
	if on {
		return grid.On
	}
	return grid.Off
}

func countOf(taken, all int) string {
	if taken == all || taken == 0 {
		return fmt.Sprint(all)
	}
	return fmt.Sprintf("%d of %d", taken, all)
}

// ticked takes or leaves the lines of a row, and those of all selected rows when
// it is one of them.
func (l *linesPanel) ticked(row string, _ int, text string) error {
	var items []int
	for _, id := range together(row, l.grid.Selected()) {
		items = append(items, l.shown[id].items...)
	}
	l.page.setTaken(items, text == grid.On)
	return nil
}

// picked marks the lines of the selected rows in the drawing.
func (l *linesPanel) picked(rows []string) {
	var ids []string
	for _, row := range rows {
		for _, i := range l.shown[row].items {
			ids = append(ids, itemID(i))
		}
	}
	l.page.board.canvas.SetSelected(ids)
}

// together returns the rows that a change in one row is meant for: all selected
// ones when it is among them.
func together(row string, selected []string) []string {
	for _, id := range selected {
		if id == row {
			return selected
		}
	}
	return []string{row}
}

// unread is what the reader itself could not use, in a sentence each.
func (d *drawn) unread() string {
	var lines []string
	for _, left := range d.sheet.Left {
		lines = append(lines, left.String())
	}
	return strings.Join(lines, "\n")
}
