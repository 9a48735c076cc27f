package planplace

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// linesForm is the lines of an element with their corners.
type linesForm struct {
	edit    elementEdit
	path    plan.PathID
	which   *fields.Choice
	role    *fields.Choice
	closed  *fields.Tick
	grid    *grid.Grid
	delete  *fields.Button
	hint    *widget.Label
	offset  *offsetForm
	paths   options[plan.PathID]
	some    fyne.CanvasObject
	none    fyne.CanvasObject
	content fyne.CanvasObject
}

func newLinesForm(edit elementEdit, does actions) *linesForm {
	f := &linesForm{
		edit: edit, which: fields.NewChoice(), role: fields.NewChoice(roleChoices.names...),
		closed: fields.NewTick("Closed: the last corner joins the first"),
	}
	f.grid = grid.New([]grid.Column{
		{Title: "", Width: 26, ReadOnly: true, Right: true, Compare: grid.Natural},
		{Title: "Up", Width: 78, Grow: true, Right: true, Hint: "from the baseline"},
		{Title: "Over", Width: 92, Grow: true, Right: true, Hint: "with SL or SR"},
		{Title: "Bow", Width: 68, Grow: true, Right: true, Hint: "6\" left"},
	})
	f.grid.ShowTools(false)
	draw := fields.NewButton("Draw another", func() { does.drawInto(edit.id()) })
	f.delete = fields.NewButton("Delete this line", f.deleteLine)
	corner := fields.NewToolbar(
		fields.Tool{Text: "Corner after", Do: f.insert},
		fields.Tool{Text: "Delete corner", Do: func() { f.remove(f.grid.Selected()) }},
	)
	f.offset = newOffsetForm(edit, func() plan.PathID { return f.path })
	form := fields.NewForm()
	form.Add("which", "Line", f.which)
	form.Add("role", "It shows", f.role)
	form.AddWide("closed", f.closed)
	f.wire(does)
	f.hint = wrapped("")
	f.some = container.NewBorder(
		container.NewVBox(form, container.NewHBox(draw, f.delete)),
		container.NewVBox(corner, f.hint, f.offset.content),
		nil, nil, f.grid)
	f.none = container.NewVBox(layout.NewSpacer(),
		fields.Empty("It has no lines yet", "Draw its first line on the plan; its corners can be typed here afterwards.",
			"Draw its first line", func() { does.drawInto(edit.id()) }), layout.NewSpacer())
	f.content = container.NewStack(f.some, f.none)
	return f
}

func (f *linesForm) wire(does actions) {
	f.which.OnCommit = func(text string) error {
		f.path, _ = f.paths.id(text)
		does.redraw()
		return nil
	}
	f.role.OnCommit = func(text string) error {
		role, _ := roleChoices.id(text)
		return f.line("Say what a line shows of", func(_ *prep.Production, path *plan.Path) error {
			path.Role = role
			return nil
		})
	}
	f.closed.OnCommit = func(on bool) error {
		label := "Open a line of"
		if on {
			label = "Close a line of"
		}
		return f.line(label, func(_ *prep.Production, path *plan.Path) error { return setClosed(path, on) })
	}
	f.grid.OnEdit = func(row string, cell int, text string) error {
		corner, _ := strconv.Atoi(row)
		return f.line(fmt.Sprintf("Type corner %d of", corner+1), func(p *prep.Production, path *plan.Path) error {
			return setCorner(p, path, corner, cell, text)
		})
	}
	f.grid.OnAdd = f.insert
	f.grid.OnDelete = f.remove
	f.grid.OnPaste = func(cells [][]string, row string, cell int) {
		corner, _ := strconv.Atoi(row)
		f.say(f.line("Paste corners of", func(p *prep.Production, path *plan.Path) error {
			return pasteCorners(p, path, cells, corner, cell)
		}))
	}
}

// line changes the line that is shown.
func (f *linesForm) line(label string, do func(*prep.Production, *plan.Path) error) error {
	id := f.path
	return f.edit.try(label, func(p *prep.Production, e *plan.Element) error {
		path := pathOf(p, e.ID, id)
		if path == nil {
			return errGone
		}
		return do(p, path)
	})
}

// say writes a refusal over the table.
func (f *linesForm) say(err error) {
	if err != nil {
		f.edit.desk.Fail(err)
	}
}

func (f *linesForm) insert() {
	row, _, ok := f.grid.Current()
	if rows := f.grid.Shown(); !ok && len(rows) > 0 {
		row = rows[len(rows)-1]
	}
	corner, _ := strconv.Atoi(row)
	next := 0
	err := f.line("Add a corner to", func(p *prep.Production, path *plan.Path) error {
		if corner < len(path.Vertices) {
			next = insertCorner(p, path, corner)
		}
		return nil
	})
	f.say(err)
	if err == nil {
		f.grid.Edit(strconv.Itoa(next), cornerUp)
	}
}

func (f *linesForm) remove(rows []string) {
	var corners []int
	for _, row := range rows {
		if n, err := strconv.Atoi(row); err == nil {
			corners = append(corners, n)
		}
	}
	if len(corners) == 0 {
		return
	}
	f.say(f.line("Delete "+prep.Counted(len(corners), "corner")+" of", func(p *prep.Production, path *plan.Path) error {
		return deleteCorners(p, path, corners)
	}))
}

func (f *linesForm) deleteLine() {
	id := f.path
	f.say(f.edit.try("Delete a line of", func(p *prep.Production, e *plan.Element) error {
		deletePath(p, e, id)
		return nil
	}))
}

func (f *linesForm) show(v *desk.View, e *plan.Element) {
	setVisible(f.some, len(e.Paths) > 0)
	setVisible(f.none, len(e.Paths) == 0)
	if len(e.Paths) == 0 {
		return
	}
	path := shownPath(e, f.path)
	f.path = path.ID
	f.paths = pathOptions(e)
	f.which.SetOptions(f.paths.names...)
	f.which.Set(f.paths.name(path.ID))
	f.role.Set(roleChoices.name(path.Role))
	f.closed.Set(path.Closed)
	var rows []grid.Row
	for _, r := range cornerRows(v.P, path) {
		rows = append(rows, grid.Row{ID: r.ID, Cells: r.Cells})
	}
	f.grid.SetRows(rows)
	f.hint.SetText(bareWords(v.P) + " Bow: how far the line to the next corner rises to an arc, left or right of the way there; empty is straight.")
	f.offset.show(v, e.ID, path.ID)
}
