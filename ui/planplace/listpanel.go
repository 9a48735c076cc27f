package planplace

import (
	"maps"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// Columns of the list of elements.
const (
	seeColumn = iota
	nameColumn
	scenesColumn
)

// listPanel is the list of elements, with what is done to whole elements.
type listPanel struct {
	desk    *desk.Desk
	hidden  map[plan.ElementID]bool
	find    *findEntry
	count   *widget.Label
	grid    *grid.Grid
	tools   *fields.Toolbar
	showAll *fields.Button
	content fyne.CanvasObject
	byRow   map[string]line

	// changed is told when other elements are to be seen.
	changed func()
}

// findEntry is the search field: Esc empties it, Down goes to the list.
type findEntry struct {
	widget.Entry
	down func()
}

// TypedKey implements fyne.Focusable.
func (f *findEntry) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		f.SetText("")
		f.down()
	case fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnter:
		f.down()
	default:
		f.Entry.TypedKey(e)
	}
}

func newListPanel(d *desk.Desk, does actions) *listPanel {
	l := &listPanel{desk: d, hidden: map[plan.ElementID]bool{}, find: &findEntry{}, count: widget.NewLabel(""), changed: func() {}}
	asItCame := func(string, string) int { return 0 }
	l.grid = grid.New([]grid.Column{
		{Title: "See", Tick: true, Compare: asItCame},
		{Title: "Element", Grow: true, ReadOnly: true, Swatch: true, Compare: asItCame},
		{Title: "Scenes", ReadOnly: true, Right: true, Compare: asItCame},
	})
	l.grid.ShowTools(false)
	l.grid.SetEmpty("Nothing is drawn yet.", "", nil)
	l.grid.OnSelect = l.picked
	l.grid.OnEdit = l.ticked
	l.grid.OnAdd = does.add
	l.grid.OnDelete = func([]string) { does.remove() }
	l.grid.OnActivate = func(string) { does.name() }

	l.find.ExtendBaseWidget(l.find)
	l.find.down = l.grid.Focus
	l.find.SetPlaceHolder("Find by name, kind, level, tape (Ctrl+F)")
	l.find.OnChanged = func(string) { l.show(d.View()) }
	l.showAll = fields.NewButton("See all", func() { l.see(maps.Keys(maps.Clone(l.hidden)), true) })
	l.tools = fields.NewToolbar(
		fields.Tool{Text: "Add", Do: does.add}, fields.Tool{Text: "Duplicate", Do: does.duplicate},
		fields.Tool{Text: "Delete", Do: does.remove}, fields.Tool{}, fields.Tool{Text: "The plan", Do: does.plan},
	)
	bring := fields.NewToolbar(
		fields.Tool{Text: "From a drawing…", Do: does.drawing},
		fields.Tool{Text: "Off the paper…", Do: does.read}, fields.Tool{Text: "A table…", Do: func() { d.ReadTable() }},
	)
	l.content = container.NewBorder(
		container.NewVBox(l.find, container.NewBorder(nil, nil, l.count, l.showAll)),
		container.NewVBox(l.tools, bring), nil, nil, l.grid)
	return l
}

// picked selects what the rows stand for: a group selects its members.
func (l *listPanel) picked(rows []string) {
	l.desk.Select(desk.Select(desk.Element, l.members(rows)...))
}

func (l *listPanel) members(rows []string) []string {
	var ids []string
	known := map[plan.ElementID]bool{}
	for _, row := range rows {
		for _, id := range l.byRow[row].Members {
			if !known[id] {
				known[id] = true
				ids = append(ids, string(id))
			}
		}
	}
	return ids
}

func (l *listPanel) ticked(row string, column int, text string) error {
	if column == seeColumn {
		ids := map[plan.ElementID]bool{}
		for _, id := range l.byRow[row].Members {
			ids[id] = true
		}
		l.see(maps.Keys(ids), text == grid.On)
	}
	return nil
}

func (l *listPanel) see(ids func(func(plan.ElementID) bool), on bool) {
	for id := range ids {
		if on {
			delete(l.hidden, id)
		} else {
			l.hidden[id] = true
		}
	}
	l.show(l.desk.View())
	l.changed()
}

// shown tells whether an element is to be seen.
func (l *listPanel) shown(id plan.ElementID) bool { return !l.hidden[id] }

func (l *listPanel) show(v *desk.View) {
	if v == nil {
		return
	}
	got := list(v.P, search{words: l.find.Text, scene: v.Scene, hidden: l.hidden})
	l.byRow = make(map[string]line, len(got.Lines))
	rows := make([]grid.Row, len(got.Lines))
	for i, line := range got.Lines {
		l.byRow[line.ID] = line
		rows[i] = gridRow(line)
	}
	l.grid.SetRows(rows)
	l.count.SetText(got.counted())
	setVisible(l.showAll, len(l.hidden) > 0)
	l.mark(v.Selected)
	some := v.Selected.Kind == desk.Element && len(v.Selected.IDs) > 0
	l.tools.SetEnabled("Duplicate", some)
	l.tools.SetEnabled("Delete", some)
}

// mark marks the selected elements, unless the rows that are marked stand for
// the same ones: a group stays marked as a group.
func (l *listPanel) mark(s desk.Selection) {
	var ids []string
	if s.Kind == desk.Element {
		for _, id := range s.IDs {
			if _, listed := l.byRow[id]; listed {
				ids = append(ids, id)
			}
		}
	}
	if !sameSet(l.members(l.grid.Selected()), ids) {
		l.grid.Select(ids...)
	}
}

func sameSet(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	in := map[string]bool{}
	for _, id := range a {
		in[id] = true
	}
	for _, id := range b {
		if !in[id] {
			return false
		}
	}
	return true
}

func gridRow(l line) grid.Row {
	see := grid.Off
	if l.Seen {
		see = grid.On
	}
	row := grid.Row{ID: l.ID, Cells: []string{see, l.Text, l.Scenes}, Bold: l.Level, Dim: l.Absent}
	if l.Problem != "" {
		row.CellProblems = map[int]string{nameColumn: l.Problem}
	}
	if c, ok := floorpicture.Swatch(l.Swatch); ok {
		row.Swatch = c
	}
	return row
}

func setVisible(o fyne.CanvasObject, on bool) {
	switch {
	case on == o.Visible():
	case on:
		o.Show()
	default:
		o.Hide()
	}
}
