package weekplace

import (
	"errors"
	"time"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

var errBackwards = errors.New("prep week would start after the first rehearsal: set an earlier day")

// askDates sets when prep week starts and when the first rehearsal is.
func (p *place) askDates() {
	v := p.desk.View()
	if v == nil {
		return
	}
	dates := datesForm{now: p.now}
	dates.fill(v)
	fields.Ask(p.desk.Window(), "The dates of prep week", dates.form, "Set the dates", func() error {
		if !dates.first.IsZero() && dates.start.After(dates.first) {
			return errBackwards
		}
		return p.desk.TryEdit("Set the dates of prep week", func(pr *prep.Production) error {
			pr.Settings.PrepStart, pr.Settings.FirstRehearsal = dates.start, dates.first
			return nil
		})
	})
}

type datesForm struct {
	now          func() time.Time
	form         *fields.Form
	start, first time.Time
}

func (f *datesForm) fill(v *desk.View) {
	f.start, f.first = v.P.Settings.PrepStart, v.P.Settings.FirstRehearsal
	near := func() time.Time {
		if !f.first.IsZero() {
			return f.first
		}
		return f.now()
	}
	first := fields.NewDateTime(near)
	first.SetHint("30 Nov 10:00")
	first.Set(f.first)
	first.OnCommit = func(at time.Time) error { f.first = at; return nil }
	start := fields.NewDate(near)
	start.Set(f.start)
	start.OnCommit = func(at time.Time) error { f.start = at; return nil }
	f.form = fields.NewForm()
	f.form.Add("first", "First rehearsal", first)
	f.form.Add("start", "Prep week starts", start)
}
