package transferplace

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// differsTab lists what differs between the two floors.
type differsTab struct {
	list    *grid.Grid
	tape    *grid.Grid
	said    *widget.Label
	alike   *fields.Tick
	content fyne.CanvasObject
}

func (p *place) newDiffersTab() *differsTab {
	t := &differsTab{said: wrapped(""), alike: fields.NewTick("show what is laid alike")}
	t.alike.OnCommit = func(bool) error { p.redraw(); return nil }
	t.list = grid.New([]grid.Column{
		{Title: "Element", Width: 140, ReadOnly: true},
		{Title: "What differs", Width: 230, Grow: true, ReadOnly: true},
		{Title: "Here", Width: 90, ReadOnly: true}, {Title: "First corner", Width: 150, ReadOnly: true},
		{Title: "Cut away", Width: 76, Right: true, ReadOnly: true}, {Title: "Marks", Width: 62, Right: true, ReadOnly: true},
		{Title: "There", Width: 90, ReadOnly: true}, {Title: "First corner", Width: 150, ReadOnly: true},
		{Title: "Cut away", Width: 76, Right: true, ReadOnly: true}, {Title: "Marks", Width: 62, Right: true, ReadOnly: true},
	})
	t.list.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Element, IDs: ids}) }
	t.list.SetTools(t.alike)
	t.list.SetEmpty("The two floors lay everything alike.", "", nil)
	t.tape = grid.New([]grid.Column{
		{Title: "Tape", Width: 110, Grow: true, Swatch: true, ReadOnly: true},
		{Title: "Here", Width: 90, Right: true, ReadOnly: true}, {Title: "There", Width: 90, Right: true, ReadOnly: true},
	})
	t.tape.ShowTools(false)
	split := container.NewHSplit(t.list, t.tape)
	split.SetOffset(0.74)
	t.content = container.NewBorder(t.said, nil, nil, nil, split)
	return t
}

func (t *differsTab) show(v *desk.View, from, to *prep.FloorWork) {
	c := prep.Compare(v.P, from, to)
	t.said.SetText(comparedWords(c))
	t.list.SetRows(comparedRows(v, c, t.alike.Value()))
	if v.Selected.Kind == desk.Element {
		t.list.Select(v.Selected.IDs...)
	}
	style := v.Style()
	rows := make([]grid.Row, len(c.Tape))
	for i, x := range c.Tape {
		rows[i] = grid.Row{ID: "tape " + string(x.Stock), Swatch: swatch(v.P, x.Stock), Cells: []string{
			stockName(v.P, x.Stock), style.Format(x.A), style.Format(x.B),
		}}
	}
	t.tape.SetRows(rows)
}

// comparedWords say in a sentence how far two floors are alike.
func comparedWords(c prep.Comparison) string {
	text := prep.Counted(c.Different(), "element") + " laid otherwise on " + c.B.Name + ", " + prep.Counted(len(c.Rows)-c.Different(), "element") + " alike."
	if c.Datum != "" {
		text += " Its datum lies elsewhere: " + c.Datum + "."
	}
	return text
}

func comparedRows(v *desk.View, c prep.Comparison, alike bool) []grid.Row {
	var rows []grid.Row
	for _, r := range c.Rows {
		if len(r.Differs) == 0 && !alike {
			continue
		}
		cells := append([]string{r.Name, strings.Join(r.Differs, "; ")}, comparedCells(v, r.A)...)
		cells = append(cells, comparedCells(v, r.B)...)
		rows = append(rows, grid.Row{ID: string(r.Element), Cells: cells, Dim: len(r.Differs) == 0})
	}
	return rows
}

func comparedCells(v *desk.View, x prep.OnFloor) []string {
	style := v.Style()
	if !x.Placed {
		return []string{string(x.Treatment.How), "", "", ""}
	}
	cut := ""
	if x.Treatment.How == floor.CutShort {
		cut = style.Format(x.Cut)
	}
	return []string{string(x.Treatment.How), style.FormatUp(x.At.Y) + ", " + style.FormatOver(x.At.X), cut, strconv.Itoa(len(x.Marks))}
}
