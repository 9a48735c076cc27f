package floorsplace

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// questionsTab lists what the director must decide about the floor, and what was
// answered so far.
type questionsTab struct {
	p       *place
	list    *grid.Grid
	record  *grid.Grid
	content fyne.CanvasObject
	open    []prep.Question
}

func newQuestionsTab(p *place) *questionsTab {
	t := &questionsTab{p: p}
	t.list = grid.New([]grid.Column{
		{Title: "About", Width: 140, ReadOnly: true},
		{Title: "Question", Width: 250, Grow: true, ReadOnly: true},
		{Title: "We propose", Width: 220, Grow: true, ReadOnly: true},
	})
	t.list.OnSelect = t.chose
	t.list.OnActivate = func(id string) { t.ask(id) }
	t.list.SetTools(
		fields.NewButton("Write down the answer…", func() {
			if ids := t.list.Selected(); len(ids) > 0 {
				t.ask(ids[0])
			}
		}),
	)
	t.record = grid.New([]grid.Column{
		{Title: "Answered about", Width: 112, ReadOnly: true},
		{Title: "Answer", Width: 90, Grow: true, ReadOnly: true},
		{Title: "Who", Width: 78, ReadOnly: true},
		{Title: "When", Width: 72, ReadOnly: true},
	})
	t.record.ShowTools(false)
	t.record.SetEmpty("No answer is on record yet.", "", nil)
	split := container.NewHSplit(t.list, t.record)
	split.SetOffset(0.6)
	t.content = split
	return t
}

// chose selects what a question is about, so that it is seen on the canvas.
func (t *questionsTab) chose(ids []string) {
	if len(ids) == 0 {
		return
	}
	if q, ok := t.find(ids[0]); ok && q.Element != "" {
		t.p.desk.Select(desk.Select(desk.Element, string(q.Element)))
	}
}

func (t *questionsTab) find(id string) (q prep.Question, ok bool) {
	for _, q := range t.open {
		if q.ID == id {
			return q, true
		}
	}
	return prep.Question{}, false
}

func (t *questionsTab) show(v *desk.View, w *prep.FloorWork) {
	t.open = nil
	if proposals := t.p.under.proposed; proposals.known {
		t.open = prep.Questions(v.P, w, proposals.list)
		t.list.SetEmpty("There is nothing to ask about this floor: everything fits as drawn, or has been decided.", "", nil)
	} else {
		t.list.SetEmpty("Working out what to propose.", "", nil)
	}
	rows := make([]grid.Row, len(t.open))
	for i, q := range t.open {
		rows[i] = grid.Row{ID: q.ID, Cells: []string{q.About, q.Text, q.Proposed}}
	}
	t.list.SetRows(rows)
	var record []grid.Row
	for _, a := range v.P.AnswersOn(w.Floor.ID) {
		about := a.About
		if about == "" {
			about = "the whole floor"
		}
		record = append(record, grid.Row{ID: a.ID, Cells: []string{about, a.Text, a.By, fields.FormatDay(a.On.Local())}})
	}
	t.record.SetRows(record)
}

// What stands among the treatments for the one that is proposed, or, where none is, for
// the one that the floor has now.
const (
	asProposed = "as proposed"
	asItIs     = "as it is now"
)

// answer is what is being typed.
type answer struct {
	text, by, how string
	on            time.Time
}

// ask opens the form in which the answer to a question is written down.
func (t *questionsTab) ask(id string) {
	q, ok := t.find(id)
	if !ok {
		return
	}
	a := answer{on: time.Now(), how: asProposed}
	if q.Proposal.How == "" {
		a.how = asItIs
	}
	form := fields.NewForm()
	said := widget.NewLabel(q.Text + "\n\nWe propose: " + q.Proposed)
	said.Wrapping = fyne.TextWrapWord
	form.AddWide("question", said)
	text := fields.NewMemo(2)
	text.OnCommit = func(v string) error { a.text = v; return nil }
	form.Add("answer", "Answer", text)
	if q.Note == "" {
		how := fields.NewChoice(append([]string{a.how}, words(floor.Hows)...)...)
		how.Set(a.how)
		how.OnCommit = func(v string) error { a.how = v; return nil }
		form.Add("how", "It is", how)
	}
	by := fields.NewText()
	by.SetHint("who answered")
	by.OnCommit = func(v string) error { a.by = v; return nil }
	form.Add("by", "Who", by)
	on := fields.NewDate(time.Now)
	on.Set(a.on)
	on.OnCommit = func(v time.Time) error { a.on = v; return nil }
	form.Add("on", "When", on)
	fields.Ask(t.p.desk.Window(), "The answer about "+q.About, form, "Put it on record", func() error {
		if !form.Commit() {
			return fmt.Errorf("one of the fields cannot be read")
		}
		return t.settle(q, a)
	})
}

// settle puts an answer on record. The label of the change names what it is about.
func (t *questionsTab) settle(q prep.Question, a answer) error {
	floorID := t.p.view.Floor
	treatment := q.Proposal
	if a.how != asProposed && a.how != asItIs && floor.How(a.how) != treatment.How {
		treatment = floor.Treatment{How: floor.How(a.how), Reason: a.text}
	}
	return t.p.desk.TryEdit("Put the answer on record: "+q.About, func(pr *prep.Production) error {
		return pr.Settle(q, prep.Answer{ID: uuid.NewString(), Floor: floorID, Text: a.text, By: a.by, On: a.on}, treatment)
	})
}
