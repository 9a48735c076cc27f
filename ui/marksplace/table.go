package marksplace

import (
	"time"

	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// buildTable makes the table of marks.
func (p *place) buildTable() {
	g := grid.New(markColumns())
	g.OnSelect = p.choose
	g.OnEdit = func(id string, column int, text string) error {
		if column == colMethod {
			return p.chooseMethod(id, methodOf(text))
		}
		return p.tick([]string{id}, column, grid.Ticked(text))
	}
	g.SetTools(
		widget.NewButton("Tick as placed", func() { p.tickSelected(colPlaced) }),
		widget.NewButton("Tick as checked", func() { p.tickSelected(colChecked) }),
	)
	g.SetEmpty("No marks in this scene on this floor. They follow from what is drawn on the plan and laid here.",
		"Go to the plan", func() { p.desk.Go(desk.Plan, desk.Selection{}) })
	p.table = g
}

// choose selects marks and brings them into sight on the canvas.
func (p *place) choose(labels []string) {
	s := desk.Selection{}
	if len(labels) > 0 {
		s = desk.Select(desk.Mark, labels...)
	}
	p.desk.Select(s)
	p.canvas.Reveal(p.canvas.Selected()...)
}

func (p *place) showTable(v *desk.View, w *prep.FloorWork) {
	p.rows = markRows(v, w)
	p.table.SetRows(p.rows)
	p.table.Select(marksOf(v.Selected, w)...)
	p.methods.show(v, w)
}

// chooseMethod chooses how a mark is placed, and with it all that are selected.
func (p *place) chooseMethod(label string, method survey.Method) error {
	labels := p.table.Selected()
	if !has(labels, label) {
		labels = []string{label}
	}
	w := p.view.Work(p.view.Floor)
	return p.desk.TryEdit("Choose the method of "+verb(len(labels), "mark", "marks"), func(pr *prep.Production) error {
		pr.ChooseMethod(w, labels, method, uuid.NewString)
		return nil
	})
}

func (p *place) tickSelected(column int) {
	labels := p.table.Selected()
	if len(labels) == 0 {
		p.desk.Told("Select the marks to tick in the table or on the floor.")
		return
	}
	if err := p.tick(labels, column, true); err != nil {
		p.desk.Fail(err)
	}
}

// tick records that marks have been placed or checked, by whom and when.
func (p *place) tick(labels []string, column int, on bool) error {
	by := floor.Decision{By: p.view.Who, On: time.Now()}
	if by.By == "" {
		by.By = "somebody"
	}
	step := marks.Placed
	if column == colChecked {
		step = marks.Checked
	}
	name := "mark " + labels[0]
	if len(labels) > 1 {
		name = verb(len(labels), "mark", "marks")
	}
	id := p.view.Floor
	if !on {
		return p.desk.TryEdit("Untick "+name+" as "+string(step), func(pr *prep.Production) error { return pr.TakeBackStep(id, labels, step, by) })
	}
	return p.desk.TryEdit("Tick "+name+" as "+string(step), func(pr *prep.Production) error { return pr.TakeStep(id, labels, step, by) })
}

// showLabels sets the strip that says whether the labels are kept for good.
func (p *place) showLabels(v *desk.View) {
	text, gone := labelWords(v.Work(v.Floor))
	if len(gone) == 0 {
		p.labels.Set(fields.Note, text, "", nil)
		return
	}
	p.labels.Set(fields.Warning, text, "Retire…", func() { p.askRetire(gone) })
}

// askRetire asks which of the labels that nothing needs are retired.
func (p *place) askRetire(gone []string) {
	form := fields.NewForm()
	which := fields.NewMulti(gone...)
	which.Set(gone)
	which.OnCommit = func([]string) error { return nil }
	form.Add("labels", "Labels", which)
	id := p.view.Floor
	fields.Ask(p.desk.Window(), "Retire printed labels", form, "Retire them", func() error {
		labels := which.Value()
		if len(labels) == 0 {
			return nil
		}
		return p.desk.TryEdit("Retire printed labels", func(pr *prep.Production) error {
			retire(pr, id, labels)
			return nil
		})
	})
}

// Copy returns the selected marks for a spreadsheet, under their headings.
func (p *place) Copy() string {
	ids := p.table.Selected()
	if len(ids) == 0 || p.tabs.SelectedIndex() != tabMarks {
		return ""
	}
	var head []string
	for _, c := range markColumns() {
		head = append(head, c.Title)
	}
	cells := [][]string{head}
	for _, r := range p.rows {
		if has(ids, r.ID) {
			cells = append(cells, r.Cells)
		}
	}
	return grid.Text(cells)
}
