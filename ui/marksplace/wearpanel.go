package marksplace

import (
	"fmt"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// wearPanel records what becomes of marks over the weeks, and lists what has to be
// taped again with the tape that it takes.
type wearPanel struct {
	p       *place
	content fyne.CanvasObject
	which   *fields.Text
	tape    *fields.Banner
	table   *grid.Grid
}

func newWearPanel(p *place) *wearPanel {
	t := &wearPanel{p: p, which: fields.NewText(), tape: fields.NewBanner(fields.Note, "", "", nil)}
	t.which.SetHint("A, C, K")
	form := fields.NewForm()
	form.Section("What has become of marks")
	form.Add("labels", "Labels", t.which)
	buttons := container.NewHBox()
	for _, s := range marks.Steps {
		buttons.Add(fields.NewButton(capital(string(s)), func() { t.take(s) }))
	}
	form.AddBeside("steps", "They are", buttons)
	t.table = grid.New([]grid.Column{
		{Title: "Tape again", Width: 190, Grow: true, ReadOnly: true},
		{Title: "At", Width: 130, ReadOnly: true},
		{Title: "Tape", Width: 150, ReadOnly: true, Swatch: true},
		{Title: "Length", Width: 90, Right: true, ReadOnly: true, Compare: byLength},
		{Title: "Seen by", Width: 180, ReadOnly: true},
	})
	t.table.SetEmpty("Nothing is said to be worn on this floor. Write the labels of worn marks above and press Worn.", "", nil)
	t.content = container.NewBorder(container.NewVBox(form, t.tape), nil, nil, nil, t.table)
	return t
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// take records a step of the marks whose labels are typed, or of those that are
// selected when none are.
func (t *wearPanel) take(s marks.Step) {
	labels := labelsIn(t.which.Shown())
	if len(labels) == 0 && t.p.view.Selected.Kind == desk.Mark {
		labels = t.p.view.Selected.IDs
	}
	if len(labels) == 0 {
		t.p.desk.Told("Write the labels of the marks first, or select marks on the floor.")
		return
	}
	id, by := t.p.view.Floor, floor.Decision{By: t.p.view.Who, On: time.Now()}
	if by.By == "" {
		by.By = "somebody"
	}
	if t.p.desk.Edit("Tell that "+verb(len(labels), "mark is ", "marks are ")+string(s), func(pr *prep.Production) error {
		return pr.TakeStep(id, labels, s, by)
	}) {
		t.which.Set("")
	}
}

// labelsIn returns the labels in a text, in capitals.
func labelsIn(text string) []string {
	return strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return strings.ContainsRune(" ,;", r) })
}

func (t *wearPanel) show(v *desk.View) {
	w := v.Work(v.Floor)
	r := prep.RetapeOf(v.P, w)
	t.table.SetRows(retapeRows(v, w, r))
	if len(r.Marks) == 0 {
		t.tape.Set(fields.Note, "", "", nil)
		return
	}
	t.tape.Set(fields.Warning, fmt.Sprintf("%s worn. Taping again takes %s; overlaps and waste are in it.", verb(len(r.Marks), "mark is", "marks are"), prep.Listed(prep.RetapeWords(v.P, r))), "", nil)
}

// retapeRows lists the strips and then the tabs that are to be laid again.
func retapeRows(v *desk.View, w *prep.FloorWork, r prep.Retape) []grid.Row {
	var rows []grid.Row
	for i, s := range r.Strips {
		name := prep.StripWords(v.P, s)
		row := grid.Row{ID: fmt.Sprint("strip ", i), Cells: []string{name, strings.Join(s.Worn, ", "), "not chosen", v.Style().Format(s.Length()), ""}}
		if stock := v.P.Stock(s.Stock); stock != nil {
			row.Cells[2] = stock.Name
			if c, ok := floorpicture.Swatch(stock.Swatch); ok {
				row.Swatch = c
			}
		}
		rows = append(rows, row)
	}
	for _, m := range r.Marks {
		rows = append(rows, grid.Row{ID: "tab " + m.Label, Cells: []string{"tab: " + m.What, m.Label, "", "", decision(m.Progress.Worn)}})
	}
	return rows
}
