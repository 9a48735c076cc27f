package ui

import (
	"fmt"
	"math"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// settingsForm is every choice that holds for the whole production. Each field is
// an edit of its own, on disk when it is left.
type settingsForm struct {
	desk *desk.Desk
	form *fields.Form
}

// askSettings shows the production's settings.
func (w *Window) askSettings() {
	v := w.desk.View()
	if v == nil {
		return
	}
	s := settingsForm{desk: w.desk, form: fields.NewForm()}
	s.production(v.P.Settings)
	s.lengths(v.P.Settings)
	s.marks(v.P)
	s.errors(v.P)
	s.tape(v.P)
	s.rates(v.P.Settings.Rates)
	dlg := dialog.NewCustom("Production settings", "Close", container.NewVScroll(s.form), w.win)
	s.form.OnKeys(nil, dlg.Hide)
	fields.ShowDialog(w.win, dlg, fyne.NewSize(640, 560))
}

// edit makes one named change to the settings.
func (s settingsForm) edit(what string, change func(*prep.Settings)) error {
	return s.desk.TryEdit("Set "+what, func(p *prep.Production) error {
		change(&p.Settings)
		return nil
	})
}

func (s settingsForm) text(label, value string, set func(*prep.Settings, string)) {
	f := fields.NewText()
	f.Set(value)
	f.OnCommit = func(text string) error {
		return s.edit(strings.ToLower(label), func(x *prep.Settings) { set(x, text) })
	}
	s.form.Add(label, label, f)
}

func (s settingsForm) choice(label, value string, options []string, set func(*prep.Settings, string)) {
	f := fields.NewChoice(options...)
	f.Set(value)
	f.OnCommit = func(text string) error {
		return s.edit(strings.ToLower(label), func(x *prep.Settings) { set(x, text) })
	}
	s.form.Add(label, label, f)
}

func (s settingsForm) tick(label, words string, value bool, set func(*prep.Settings, bool)) {
	f := fields.NewTick(words)
	f.Set(value)
	f.OnCommit = func(on bool) error {
		return s.edit(strings.ToLower(label), func(x *prep.Settings) { set(x, on) })
	}
	s.form.Add(label, label, f)
}

func (s settingsForm) number(label, unit string, value float64, set func(*prep.Settings, float64)) {
	const most = 100_000
	s.numberIn(label, unit, [2]float64{0, most}, value, set)
}

// numberIn is a number between two bounds.
func (s settingsForm) numberIn(label, unit string, bounds [2]float64, value float64, set func(*prep.Settings, float64)) {
	f := fields.NewDecimal(unit, bounds[0], bounds[1])
	f.Set(value)
	f.OnCommit = func(v float64) error {
		return s.edit(strings.ToLower(label), func(x *prep.Settings) { set(x, v) })
	}
	s.form.Add(label, label, f)
}

// length is a length of the settings; column names it among what was typed.
func (s settingsForm) length(label, column string, value float64, set func(*prep.Settings, float64)) {
	s.lengthFrom(0, label, column, value, set)
}

// lengthFrom is a length that is at least so many metres.
func (s settingsForm) lengthFrom(least float64, label, column string, value float64, set func(*prep.Settings, float64)) {
	p := s.desk.View().P
	f := fields.NewLength(func(text string) (float64, error) {
		p := s.desk.View().P
		m, err := length.Parse(text, p.Unit())
		switch {
		case err == nil && m < 0:
			err = fmt.Errorf("%s is below zero; a length from zero up is needed here", text)
		case err == nil && m < least:
			err = fmt.Errorf("%s is too short; at least %s is needed here", text, p.Fine(least))
		}
		return m, err
	}, length.Style{Unit: p.Unit()}.Bare)
	f.SetUnit(p.Unit().Name())
	f.Set(settingText(p, column, value), value)
	f.OnCommit = func(text string, m float64) error {
		return s.desk.TryEdit("Set "+strings.ToLower(label), func(p *prep.Production) error {
			set(&p.Settings, m)
			p.KeepTyped("settings", column, text)
			return nil
		})
	}
	s.form.Add(label, label, f)
}

// settingText is a length of the settings as it was typed, or as lengths are written;
// one that would be rounded away, as the error of a reading, is in millimetres.
func settingText(p *prep.Production, column string, value float64) string {
	text := p.ShowLength("settings", column, value)
	if m, err := length.Parse(text, p.Unit()); err != nil || math.Abs(m-value) > 1e-6 {
		return fmt.Sprintf("%.6g mm", 1000*value)
	}
	return text
}

func (s settingsForm) date(label string, value time.Time, set func(*prep.Settings, time.Time)) {
	near := func() time.Time {
		if first := s.desk.View().P.Settings.FirstRehearsal; !first.IsZero() {
			return first
		}
		return time.Now()
	}
	f := fields.NewDateTime(near)
	f.Set(value)
	f.OnCommit = func(at time.Time) error {
		return s.edit(strings.ToLower(label), func(x *prep.Settings) { set(x, at) })
	}
	s.form.Add(label, label, f)
}

func (s settingsForm) production(x prep.Settings) {
	s.form.Section("Production")
	s.text("Title", x.Title, func(x *prep.Settings, v string) { x.Title = v })
	s.text("Company", x.Company, func(x *prep.Settings, v string) { x.Company = v })
	s.text("Who to ask", x.Contact, func(x *prep.Settings, v string) { x.Contact = v })
	s.date("Prep week starts", x.PrepStart, func(x *prep.Settings, v time.Time) { x.PrepStart = v })
	s.date("First rehearsal", x.FirstRehearsal, func(x *prep.Settings, v time.Time) { x.FirstRehearsal = v })
	s.text("Currency", x.Currency, func(x *prep.Settings, v string) { x.Currency = v })
	budget := fields.NewMoney(x.Currency)
	budget.Set(x.BudgetCents)
	budget.OnCommit = func(cents int) error {
		return s.edit("the budget", func(x *prep.Settings) { x.BudgetCents = cents })
	}
	s.form.Add("Budget", "Budget for tape and kit", budget)
}

func (s settingsForm) lengths(x prep.Settings) {
	s.form.Section("Lengths and paper")
	unit := fields.NewChoice(unitNames()...)
	unit.Set(length.Unit(x.Unit).Name())
	unit.OnCommit = func(name string) error {
		return s.edit("the unit", func(x *prep.Settings) {
			for _, u := range length.Units {
				if u.Name() == name {
					x.Unit, x.Step = string(u), length.DefaultStep(u)
				}
			}
		})
	}
	s.form.Add("Unit", "Lengths are shown in", unit)
	s.length("Round to the nearest", "step", x.Step, func(x *prep.Settings, v float64) { x.Step = v })
	s.choice("Paper", x.Paper, []string{"Letter", "A4"}, func(x *prep.Settings, v string) { x.Paper = v })
}

// shortestTape is in metres: with less nothing on a floor is reached.
const shortestTape = 3 * length.Foot

func (s settingsForm) marks(p *prep.Production) {
	x := p.Settings
	s.form.Section("Marks and measuring")
	s.length("Points closer than this are one mark", "weld", x.Rules.Weld, func(x *prep.Settings, v float64) { x.Rules.Weld = v })
	s.length("Marks within this share a row", "row", x.Rules.Row, func(x *prep.Settings, v float64) { x.Rules.Row = v })
	s.length("A chord may leave its curve by", "chord", x.Rules.Chord, func(x *prep.Settings, v float64) { x.Rules.Chord = v })
	s.tick("Letters", "skip I and O in labels", x.Rules.SkipIO, func(x *prep.Settings, v bool) { x.Rules.SkipIO = v })
	s.tick("Curves", "swing from the centre where it lies on the floor", x.Rules.CentreSwing,
		func(x *prep.Settings, v bool) { x.Rules.CentreSwing = v })
	s.numberIn("Flag tapes that meet flatter than", "degrees", [2]float64{1, 60}, x.WeakAngle, func(x *prep.Settings, v float64) { x.WeakAngle = v })
	s.lengthFrom(shortestTape, "Longest tape", "longest", x.TapeLength, func(x *prep.Settings, v float64) { x.TapeLength = v })
	s.text("The tape is read on", x.ReadEdge, func(x *prep.Settings, v string) { x.ReadEdge = v })
}

func (s settingsForm) tape(p *prep.Production) {
	a := p.Settings.Allowances
	s.form.Section("What is added to the true lines")
	s.length("Overlap where strips meet", "overlap", a.Overlap, func(x *prep.Settings, v float64) { x.Allowances.Overlap = v })
	s.length("Patch over a corner", "patch", a.Patch, func(x *prep.Settings, v float64) { x.Allowances.Patch = v })
	s.length("Tab", "tab", a.Tab, func(x *prep.Settings, v float64) { x.Allowances.Tab = v })
	s.length("Leg of a spike", "spike", a.SpikeLeg, func(x *prep.Settings, v float64) { x.Allowances.SpikeLeg = v })
	s.length("Dance-line number", "figure", a.Figure, func(x *prep.Settings, v float64) { x.Allowances.Figure = v })
	s.length("Dash laid", "dash on", a.DashOn, func(x *prep.Settings, v float64) { x.Allowances.DashOn = v })
	s.length("Gap between dashes", "dash off", a.DashOff, func(x *prep.Settings, v float64) { x.Allowances.DashOff = v })
	s.number("Waste", "% of everything", 100*a.Waste, func(x *prep.Settings, v float64) { x.Allowances.Waste = v / 100 })
	s.number("Wear", "% of the lines each week", 100*a.WearWeek, func(x *prep.Settings, v float64) { x.Allowances.WearWeek = v / 100 })
	s.number("Weeks in the room", "weeks", a.Weeks, func(x *prep.Settings, v float64) { x.Allowances.Weeks = v })
}

func (s settingsForm) rates(r prep.Rates) {
	s.form.Section("How fast this team works")
	s.number("Marks placed by a pair", "an hour", r.MarksPerHour, func(x *prep.Settings, v float64) { x.Rates.MarksPerHour = v })
	unit, metres := "metres an hour", 1.0
	if !s.desk.View().P.Unit().Metric() {
		unit, metres = "feet an hour", length.Foot
	}
	s.number("Tape laid by one person", unit, round6(r.TapePerHour/metres), func(x *prep.Settings, v float64) { x.Rates.TapePerHour = v * metres })
	s.number("Patches laid by one person", "an hour", r.PatchesPerHour, func(x *prep.Settings, v float64) { x.Rates.PatchesPerHour = v })
	s.number("Check measures by a pair", "an hour", r.ChecksPerHour, func(x *prep.Settings, v float64) { x.Rates.ChecksPerHour = v })
	s.number("The room opens at", "hours after midnight", r.DayStart, func(x *prep.Settings, v float64) { x.Rates.DayStart = v })
	s.number("The room closes at", "hours after midnight", r.DayEnd, func(x *prep.Settings, v float64) { x.Rates.DayEnd = v })
	s.number("A break is due after", "hours", r.BreakAfter, func(x *prep.Settings, v float64) { x.Rates.BreakAfter = v })
	s.number("A break lasts", "hours", r.BreakLength, func(x *prep.Settings, v float64) { x.Rates.BreakLength = v })
}
