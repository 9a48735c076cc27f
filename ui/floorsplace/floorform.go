package floorsplace

import (
	"errors"
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// floorForm edits the floor itself and how the plan is set on it.
type floorForm struct {
	p    *place
	form *fields.Form

	name, surface, note   *fields.Text
	kind, rule, side      *fields.Choice
	things                *fields.Choice
	shown                 []desk.Selection // the things of the choice, in its order
	boards                *fields.Decimal
	module                *fields.Length
	along, into           *fields.Length
	turn                  *fields.Decimal
	own                   *fields.Tick
	datumAlong, datumInto *fields.Length
	datumTurn             *fields.Decimal
	remove                *fields.Button
}

func newFloorForm(p *place) *floorForm {
	f := &floorForm{p: p, form: fields.NewForm()}
	f.form.Section("This floor")
	f.name = f.text("name", "Name", "Rename the floor", fields.NewText(), func(x *floor.Floor, v string) { x.Name = v })
	f.kind = f.choice("kind", "Kind", "Say what kind of floor it is", words(floor.Kinds), func(x *floor.Floor, v string) { x.Kind = floor.Kind(v) })
	f.surface = f.text("surface", "Surface", "Describe the surface", fields.NewText(), func(x *floor.Floor, v string) { x.Surface = v })
	f.rule = f.choice("rule", "Its owner allows", "Say what the owner allows", words(floor.Rules), func(x *floor.Floor, v string) { x.Rule = floor.Rule(v) })
	f.side = f.choice("side", "Tape lies", "Say where the tape lies", words(floor.Sides), func(x *floor.Floor, v string) { x.Side = floor.Side(v) })
	f.note = f.text("note", "Note", "Write a note on the floor", fields.NewMemo(2), func(x *floor.Floor, v string) { x.Note = v })

	f.form.Section("What is in the room")
	f.things = fields.NewChoice(lookAt)
	f.things.OnCommit = f.choose
	f.form.Add("things", "Look at", f.things)
	f.boards = fields.NewDecimal("degrees", -360, 360)
	f.boards.OnCommit = func(v float64) error {
		return p.tryEdit("Say how the boards run", func(x *floor.Floor) error { x.BoardDirection = v; return nil })
	}
	f.form.Add("boards", "Boards or tiles run at", f.boards)
	f.module = p.lengthField()
	f.module.OnCommit = f.setModule
	f.form.Add("module", "and are wide", f.module)

	f.form.Section("Where the plan's datum lies")
	f.along = f.length("along", "Along the room", func(x *floor.Floor) *float64 { return &x.Placement.Shift.X })
	f.into = f.length("into", "Into the room", func(x *floor.Floor) *float64 { return &x.Placement.Shift.Y })
	f.turn = f.degrees("turn", "Turned by", func(x *floor.Floor) *float64 { return &x.Placement.Turn })
	f.form.AddWide("best", fields.NewButton("Set the plan: the best ways…", func() { p.workAt(p.placing.content) }))

	f.own = fields.NewTick("has a datum of its own")
	f.own.OnCommit = func(on bool) error {
		return p.tryEdit("Give the floor its own datum", func(x *floor.Floor) error {
			if on && !x.OwnDatum {
				x.Datum = x.Placement
			}
			x.OwnDatum = on
			return nil
		})
	}
	f.form.Add("own", "Measured from", f.own)
	f.datumAlong = f.length("datum along", "Its datum, along", func(x *floor.Floor) *float64 { return &x.Datum.Shift.X })
	f.datumInto = f.length("datum into", "Its datum, into", func(x *floor.Floor) *float64 { return &x.Datum.Shift.Y })
	f.datumTurn = f.degrees("datum turn", "Its datum, turned", func(x *floor.Floor) *float64 { return &x.Datum.Turn })

	f.form.AddWide("care", careLabel())
	add := fields.NewButton("Add another floor", p.Add)
	f.remove = fields.NewButton("Delete this floor…", f.askRemove)
	f.form.AddWide("add", add)
	f.form.AddWide("take", fields.NewButton("Take a floor from another file…", p.TakeFloor))
	f.form.AddWide("keep", fields.NewButton("Keep this floor for next time…", p.KeepFloor))
	f.form.AddWide("remove", f.remove)
	return f
}

// careLabel is the caution that belongs to every floor.
func careLabel() *widget.Label {
	l := widget.NewLabel("Keep exits and the ways to them free; local codes and the room's owner decide. " +
		"Try the tape on the actual floor and ask its owner first.")
	l.Wrapping = fyne.TextWrapWord
	return l
}

func (f *floorForm) text(name, label, doing string, t *fields.Text, set func(*floor.Floor, string)) *fields.Text {
	t.OnCommit = func(v string) error {
		return f.p.tryEdit(doing, func(x *floor.Floor) error { set(x, v); return nil })
	}
	f.form.Add(name, label, t)
	return t
}

func (f *floorForm) choice(name, label, doing string, options []string, set func(*floor.Floor, string)) *fields.Choice {
	c := fields.NewChoice(options...)
	c.OnCommit = func(v string) error {
		return f.p.tryEdit(doing, func(x *floor.Floor) error { set(x, v); return nil })
	}
	f.form.Add(name, label, c)
	return c
}

// length adds a typed coordinate of the placement; its column among what was
// typed is its name.
func (f *floorForm) length(name, label string, at func(*floor.Floor) *float64) *fields.Length {
	l := f.p.lengthField()
	l.OnCommit = func(text string, m float64) error {
		return f.p.desk.TryEdit("Set the plan in the room", func(pr *prep.Production) error {
			x := pr.Floor(f.p.view.Floor)
			if x == nil {
				return errGone("the floor")
			}
			*at(x) = m
			pr.KeepTyped(string(x.ID), name, text)
			return nil
		})
	}
	f.form.Add(name, label, l)
	return l
}

func (f *floorForm) degrees(name, label string, at func(*floor.Floor) *float64) *fields.Decimal {
	d := fields.NewDecimal("degrees", -360, 360)
	d.OnCommit = func(v float64) error {
		return f.p.tryEdit("Turn the plan in the room", func(x *floor.Floor) error {
			*at(x) = v * math.Pi / 180
			return nil
		})
	}
	f.form.Add(name, label, d)
	return d
}

// lengthField reads and writes lengths as the production does.
func (p *place) lengthField() *fields.Length {
	return fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, p.view.P.Unit()) },
		func(m float64) string { return p.view.Style().Bare(m) },
	)
}

func (f *floorForm) show(v *desk.View, w *prep.FloorWork) {
	x := w.Floor
	f.form.Record(string(x.ID))
	f.name.Set(x.Name)
	f.kind.Set(string(x.Kind))
	f.surface.Set(x.Surface)
	f.rule.Set(string(x.Rule))
	f.side.Set(string(x.Side))
	f.note.Set(x.Note)
	f.showThings(x)
	f.boards.Set(x.BoardDirection)
	f.module.SetUnit(v.P.Unit().Name())
	f.module.Set(v.P.ShowLength(string(x.ID), "module", x.BoardModule), x.BoardModule)
	f.place(v, x)
	f.own.Set(x.OwnDatum)
	for _, name := range []string{"datum along", "datum into", "datum turn"} {
		f.form.ShowRow(name, x.OwnDatum)
	}
}

// setModule says how wide the boards are; zero: there are none.
func (f *floorForm) setModule(text string, m float64) error {
	if m < 0 {
		return errors.New("a board is not narrower than nothing; zero stands for no boards")
	}
	return f.p.desk.TryEdit("Say how wide the boards are", func(pr *prep.Production) error {
		x := pr.Floor(f.p.view.Floor)
		if x == nil {
			return errGone("the floor")
		}
		x.BoardModule = m
		pr.KeepTyped(string(x.ID), "module", text)
		return nil
	})
}

// lookAt is the choice before any.
const lookAt = "choose a thing of the room"

// showThings lists everything in the room, so that it can be reached without a pointer.
func (f *floorForm) showThings(x *floor.Floor) {
	names := []string{lookAt}
	f.shown = nil
	add := func(kind desk.Kind, id, what, name string) {
		f.shown = append(f.shown, desk.Select(kind, id))
		names = append(names, fmt.Sprintf("%d  %s (%s)", len(f.shown), name, what))
	}
	for _, w := range x.Ways {
		add(desk.Way, w.ID, string(w.Kind), w.Name)
	}
	for _, t := range x.Features {
		add(desk.Feature, t.ID, string(t.Kind), t.Name)
	}
	for _, s := range x.Steps {
		add(desk.Step, s.ID, "step", s.Name)
	}
	for _, o := range x.Obstacles {
		add(desk.Obstacle, o.ID, o.Kind, o.Name)
	}
	for _, k := range x.KeepClears {
		add(desk.KeepClear, k.ID, k.Kind, k.Name)
	}
	for _, v := range x.Pivots {
		add(desk.Pivot, v.ID, "pivot", v.Name)
	}
	f.things.SetOptions(names...)
	f.things.Set(lookAt)
}

func (f *floorForm) choose(name string) error {
	var n int
	if _, err := fmt.Sscanf(name, "%d ", &n); err == nil && n >= 1 && n <= len(f.shown) {
		f.p.desk.Select(f.shown[n-1])
	}
	return nil
}

func (f *floorForm) place(v *desk.View, x *floor.Floor) {
	set := func(l *fields.Length, column string, m float64) {
		l.SetUnit(v.P.Unit().Name())
		l.Set(v.P.ShowLength(string(x.ID), column, m), m)
	}
	set(f.along, "along", x.Placement.Shift.X)
	set(f.into, "into", x.Placement.Shift.Y)
	f.turn.Set(degrees(x.Placement.Turn))
	set(f.datumAlong, "datum along", x.Datum.Shift.X)
	set(f.datumInto, "datum into", x.Datum.Shift.Y)
	f.datumTurn.Set(degrees(x.Datum.Turn))
}

// degrees writes an angle to a thousandth of a degree, a millimetre in 50 m.
func degrees(radians float64) float64 { return math.Round(radians*180/math.Pi*1000) / 1000 }

func (f *floorForm) askRemove() {
	x := f.p.view.P.Floor(f.p.view.Floor)
	if x == nil {
		return
	}
	fields.Confirm(f.p.desk.Window(), "Delete "+x.Name+"?",
		"Its walls, its placement, every decision on it and its printed labels go with it. Undo brings them back.",
		"Delete the floor", func() {
			f.p.desk.Edit("Delete the floor "+x.Name, func(pr *prep.Production) error {
				pr.RemoveFloor(x.ID)
				return nil
			})
		})
}
