package floorsplace

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// treatmentForm decides what the floor does with the selected elements.
type treatmentForm struct {
	p    *place
	form *fields.Form
	ids  []string

	what     *widget.Label
	how      *fields.Choice
	worth    *fields.Decimal
	over, up *fields.Length
	reason   *fields.Text
	by       *fields.Text
	on       *widget.Label
	would    *widget.Label
	take     *fields.Button
}

func newTreatmentForm(p *place) *treatmentForm {
	t := &treatmentForm{p: p, form: fields.NewForm(), what: widget.NewLabel(""), on: widget.NewLabel("")}
	t.what.Wrapping, t.on.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	t.form.Section("On this floor")
	t.form.AddWide("what", t.what)
	t.how = fields.NewChoice(words(floor.Hows)...)
	t.how.OnCommit = func(v string) error { return p.editTreatment(t.ids, colHow, v) }
	t.form.Add("how", "It is", t.how)
	t.over = t.length("over", "Moved to stage left by", func(x *floor.Treatment) *float64 { return &x.Over })
	t.up = t.length("up", "Moved upstage by", func(x *floor.Treatment) *float64 { return &x.Up })
	t.reason = fields.NewMemo(2)
	t.reason.OnCommit = func(v string) error { return p.editTreatment(t.ids, colReason, v) }
	t.form.Add("reason", "Reason", t.reason)
	t.by = fields.NewText()
	t.by.SetHint("empty: still open")
	t.by.OnCommit = func(v string) error { return p.editTreatment(t.ids, colDecided, v) }
	t.form.Add("by", "Decided by", t.by)
	t.form.AddWide("on", t.on)
	t.would = widget.NewLabel("")
	t.would.Wrapping = fyne.TextWrapWord
	t.take = fields.NewButton("Lay as proposed", func() { p.takeProposals(t.ids) })
	t.form.AddWide("would", t.would)
	t.form.AddWide("take", t.take)
	t.form.Section("When the plan is set in a room")
	t.worth = fields.NewDecimal("", 0, 1000)
	t.worth.OnCommit = t.setWorth
	t.form.Add("worth", "A metre of it counts", t.worth)
	t.form.AddWide("back", fields.NewButton("Back to the floor", func() { p.desk.Select(desk.Selection{}) }))
	return t
}

func (t *treatmentForm) length(name, label string, at func(*floor.Treatment) *float64) *fields.Length {
	l := t.p.lengthField()
	l.OnCommit = func(_ string, m float64) error {
		return t.p.desk.TryEdit("Move it aside", func(pr *prep.Production) error {
			f := pr.Floor(t.p.view.Floor)
			if f == nil {
				return errGone("the floor")
			}
			return treat(f, &pr.Plan, t.ids, func(x *floor.Treatment) { *at(x) = m })
		})
	}
	t.form.Add(name, label, l)
	return l
}

// show sets the form from the first selected element; ok is false when it is not
// on the plan.
func (t *treatmentForm) show(v *desk.View, w *prep.FloorWork) (ok bool) {
	id, ok := v.Selected.Of(desk.Element)
	if !ok {
		return false
	}
	e := v.P.Plan.Element(plan.ElementID(id))
	if e == nil {
		return false
	}
	t.ids = v.Selected.IDs
	t.form.Record(id)
	x := w.Floor.Decide(e)
	t.what.SetText(describe(v, w, e, len(t.ids)))
	t.how.Set(string(x.How))
	aside := x.How == floor.MovedAside
	t.form.ShowRow("over", aside)
	t.form.ShowRow("up", aside)
	t.over.SetUnit(v.P.Unit().Name())
	t.up.SetUnit(v.P.Unit().Name())
	t.over.Set("", x.Over)
	t.up.Set("", x.Up)
	t.reason.Set(x.Reason)
	t.by.Set(x.Decided.By)
	t.worth.Set(e.Worth())
	t.on.SetText(decidedOn(x))
	t.p.under.proposed.look(v, w.Floor)
	would := t.p.under.proposed.words(v.P, e, x)
	t.form.ShowRow("would", would != "")
	t.form.ShowRow("take", would != "" && t.p.under.proposed.known)
	t.would.SetText("We would: " + would)
	return true
}

// setWorth says what a metre of the elements counts; zero gives back what their use says.
func (t *treatmentForm) setWorth(v float64) error {
	return t.p.desk.TryEdit("Say what it counts when the plan is set", func(pr *prep.Production) error {
		for _, id := range t.ids {
			e := pr.Plan.Element(plan.ElementID(id))
			if e == nil {
				return errGone("the element")
			}
			e.Weight = v
		}
		return nil
	})
}

// describe says what is selected and what of it lies outside.
func describe(v *desk.View, w *prep.FloorWork, e *plan.Element, selected int) string {
	if selected > 1 {
		return fmt.Sprintf("%s and %s more. What is set here is set for all of them.", e.Name, number(selected-1))
	}
	said := fmt.Sprintf("%s: %s, %s.", e.Name, e.Kind, e.Use)
	for _, o := range w.Overhangs {
		if o.Element == e.ID {
			said += fmt.Sprintf(" %s of %s lie outside the floor.", v.Style().Format(o.Length), v.Style().Format(o.Of))
		}
	}
	return said
}

func decidedOn(t floor.Treatment) string {
	if t.Decided.Open() {
		if t.How == floor.AsDrawn {
			return ""
		}
		return "Nobody has decided this yet: it is a question for the director."
	}
	if t.Decided.On.IsZero() {
		return ""
	}
	return "Decided " + t.Decided.On.Local().Format("Mon 2 Jan") + timeOf(t.Decided.On.Local()) + "."
}

func timeOf(at time.Time) string {
	if at.Hour() == 0 && at.Minute() == 0 {
		return ""
	}
	return at.Format(", 15:04")
}
