package marksplace

import (
	"image/color"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// checkPanel lists the check measures, judges a reading, and finds where a mark
// really is.
type checkPanel struct {
	p       *place
	content fyne.CanvasObject
	table   *grid.Grid
	list    []prep.Measure
	floor   *fields.Banner // the verdict on the floor

	read    *fields.Length
	verdict *fields.Banner

	tapeA, tapeB *fields.Length
	side         *fields.Choice
	where        *fields.Banner
	reading      survey.Reading
	typed        [2]bool
}

func newCheckPanel(p *place) *checkPanel {
	t := &checkPanel{p: p, reading: survey.Reading{Side: survey.Left}}
	g := grid.New(checkColumns())
	g.OnSelect = func([]string) { t.chose() }
	g.OnEdit = t.keep
	g.OnDelete = t.remove
	g.SetEmpty("Check measures appear once there are two marks.", "", nil)
	t.table = g
	tools := container.NewGridWithColumns(2, t.readingTool(), t.whereTool())
	t.floor = fields.NewBanner(fields.Note, "", "", nil)
	oneHand := fields.NewButton("Enter them with one hand… (Ctrl+R)", func() { p.desk.EnterReadings() })
	t.content = container.NewBorder(container.NewVBox(t.floor, container.NewBorder(nil, nil, nil, oneHand,
		wrapped("Distances that placed nothing, in walking order: type what you read; Enter goes to the next. A wrong mark shows here."))),
		tools, nil, nil, g)
	return t
}

// answerRoom is kept free for an answer, in toolkit pixels, so that the fields do
// not move away when it comes.
const answerRoom = 82

func withAnswer(form *fields.Form, answer *fields.Banner) fyne.CanvasObject {
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(fyne.NewSize(0, answerRoom))
	return container.NewBorder(form, nil, nil, nil, container.NewStack(room, container.NewVBox(answer)))
}

func (t *checkPanel) length() *fields.Length {
	return fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, t.p.view.P.Unit()) },
		func(m float64) string { return t.p.view.Style().Bare(m) },
	)
}

// readingTool judges one reading of the selected check. Nothing of it is kept.
func (t *checkPanel) readingTool() fyne.CanvasObject {
	form := fields.NewForm()
	form.Section("Would this reading do? (not kept)")
	t.read = t.length()
	t.read.OnCommit = func(_ string, m float64) error { t.judge(m); return nil }
	form.Add("read", "Reading", t.read)
	form.AddWide("hint", wrapped("Select a check above, type the reading and press Enter."))
	t.verdict = fields.NewBanner(fields.Note, "", "", nil)
	return withAnswer(form, t.verdict)
}

// whereTool turns two tape readings back into up and over. Nothing of it is kept.
func (t *checkPanel) whereTool() fyne.CanvasObject {
	form := fields.NewForm()
	form.Section("Where is this mark really? (not kept)")
	t.tapeA, t.tapeB = t.length(), t.length()
	t.tapeA.OnCommit = func(_ string, m float64) error { t.reading.A, t.typed[0] = m, true; t.locate(); return nil }
	t.tapeB.OnCommit = func(_ string, m float64) error { t.reading.B, t.typed[1] = m, true; t.locate(); return nil }
	form.Add("tape 1", "Tape 1", t.tapeA)
	form.Add("tape 2", "Tape 2", t.tapeB)
	t.side = fields.NewChoice(string(survey.Left), string(survey.Right), string(survey.OnLine))
	t.side.Set(string(survey.Left))
	t.side.OnCommit = func(s string) error { t.reading.Side = survey.Side(s); t.locate(); return nil }
	form.Add("side", "Side, from 1 to 2", t.side)
	t.where = fields.NewBanner(fields.Note, "", "", nil)
	return withAnswer(form, t.where)
}

// setUnit names the unit that a bare number takes.
func (t *checkPanel) setUnit(v *desk.View) {
	for _, l := range []*fields.Length{t.read, t.tapeA, t.tapeB} {
		l.SetUnit(v.P.Unit().Name())
	}
}

func (t *checkPanel) show(v *desk.View, w *prep.FloorWork) {
	verdict := w.Verdict()
	t.list = prep.MeasuresOf(v.P, w)
	kind := fields.Warning
	if verdict.State == prep.Accepted {
		kind = fields.Good
	}
	t.floor.Set(kind, verdict.Sentence(v.P)+" "+verdict.Next(v.P), "", nil)
	t.table.SetRows(checkRows(v, t.list))
	if t.typed[0] && t.typed[1] {
		t.locate()
	}
}

// chose shows the two marks of the check on the canvas and forgets the reading of
// the one before.
func (t *checkPanel) chose() {
	t.verdict.Set(fields.Note, "", "", nil)
	c, ok := t.chosen()
	if !ok {
		return
	}
	t.read.SetBlank()
	t.read.Reset()
	if c.Ends[0] != prep.FirstPivot {
		t.p.choose([]string{c.From, c.To})
	}
}

func (t *checkPanel) chosen() (prep.Measure, bool) {
	ids := t.table.Selected()
	if len(ids) != 1 {
		return prep.Measure{}, false
	}
	return t.keyed(ids[0])
}

func (t *checkPanel) keyed(key string) (prep.Measure, bool) {
	for _, c := range t.list {
		if c.Key() == key {
			return c, true
		}
	}
	return prep.Measure{}, false
}

// keep records, corrects or, when it is emptied, deletes a reading.
func (t *checkPanel) keep(key string, _ int, text string) error {
	c, ok := t.keyed(key)
	if !ok {
		return errGone("the check measure")
	}
	v, name := t.p.view, c.From+" to "+c.To
	by, now := v.Who, time.Now()
	switch {
	case strings.TrimSpace(text) == "":
		t.remove([]string{key})
		return nil
	case c.Read != nil:
		return t.p.desk.TryEdit("Correct the reading "+name, func(p *prep.Production) error {
			return p.CorrectReading(c.Read.ID, text, by, now)
		})
	}
	r := prep.Reading{ID: uuid.NewString(), From: c.Ends[0], To: c.Ends[1], Text: text, By: by, On: now}
	w := v.Work(v.Floor)
	return t.p.desk.TryEdit("Read "+name, func(p *prep.Production) error { return p.KeepReading(w, r) })
}

// remove deletes the readings of rows; the checks stay.
func (t *checkPanel) remove(keys []string) {
	var ids []string
	for _, key := range keys {
		if c, ok := t.keyed(key); ok && c.Read != nil {
			ids = append(ids, c.Read.ID)
		}
	}
	if len(ids) == 0 {
		return
	}
	t.p.desk.Edit("Delete "+verb(len(ids), "reading", "readings"), func(p *prep.Production) error {
		for _, id := range ids {
			p.RemoveReading(id)
		}
		return nil
	})
}

func (t *checkPanel) judge(read float64) {
	c, ok := t.chosen()
	if !ok {
		t.verdict.Set(fields.Note, "Select the check that was measured in the list above.", "", nil)
		return
	}
	good, text := t.p.view.P.Belongs(c, read)
	t.verdict.Set(kindOf(good), text, "", nil)
}

func (t *checkPanel) locate() {
	w := t.p.view.Here()
	if w == nil || !t.typed[0] || !t.typed[1] {
		return
	}
	good, text := located(t.p.view.P, w, t.reading)
	t.where.Set(kindOf(good), text, "", nil)
}

func kindOf(good bool) fields.Kind {
	if good {
		return fields.Good
	}
	return fields.Warning
}
