package planplace

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// moveForm moves and turns whole elements by what is typed.
type moveForm struct {
	desk    *desk.Desk
	ids     func() []plan.ElementID
	up      *fields.Length
	over    *fields.Length
	turn    *fields.Decimal
	rule    *widget.Label
	by      plane.Point
	degrees float64
	content fyne.CanvasObject
}

func newMoveForm(d *desk.Desk, ids func() []plan.ElementID) *moveForm {
	m := &moveForm{desk: d, ids: ids, turn: fields.NewDecimal("°", -360, 360), rule: wrapped("")}
	m.up = m.entry(length.ParseUp, &m.by.Y)
	m.over = m.entry(length.ParseOver, &m.by.X)
	m.up.SetHint("upstage; DS for down")
	m.over.SetHint("with SL or SR")
	m.turn.Set(0)
	m.turn.OnCommit = func(v float64) error {
		m.degrees = v
		return nil
	}
	m.up.OnKeys(m.move, nil)
	m.over.OnKeys(m.move, nil)
	m.turn.OnKeys(m.rotate, nil)
	form := fields.NewForm()
	form.Add("up", "Move up by", m.up)
	form.Add("over", "Move over by", m.over)
	form.Add("turn", "Turn left by", m.turn)
	m.content = container.NewVBox(form, container.NewHBox(fields.NewButton("Move", m.move), fields.NewButton("Turn", m.rotate)), m.rule)
	return m
}

func (m *moveForm) entry(parse func(string, length.Unit) (float64, error), into *float64) *fields.Length {
	l := newLength(m.desk, parse)
	l.OnCommit = func(_ string, by float64) error {
		*into = by
		return nil
	}
	l.OnBlank = func() error {
		*into = 0
		return nil
	}
	return l
}

func (m *moveForm) show(v *desk.View) {
	m.rule.SetText(dragRule(v.P, v.Scene, m.ids()) + " " + bareWords(v.P))
}

func (m *moveForm) move() {
	if !m.up.Commit() || !m.over.Commit() || m.by == (plane.Point{}) {
		return
	}
	v, ids, by := m.desk.View(), m.ids(), m.by
	m.desk.Edit("Move "+named(v.P, ids), func(p *prep.Production) error {
		move(p, ids, v.Scene, by)
		return nil
	})
	m.by = plane.Point{}
	m.up.SetBlank()
	m.over.SetBlank()
}

func (m *moveForm) rotate() {
	if !m.turn.Commit() || m.degrees == 0 {
		return
	}
	v, ids, by := m.desk.View(), m.ids(), m.degrees
	m.desk.Edit("Turn "+named(v.P, ids), func(p *prep.Production) error {
		turn(p, ids, v.Scene, by)
		return nil
	})
	m.degrees = 0
	m.turn.Set(0)
}

// offsetForm copies a line at a distance to one side, and again as far from the
// copy: the treads of a stair from the first one.
type offsetForm struct {
	edit    elementEdit
	path    func() plan.PathID
	field   *fields.Length
	times   *fields.Whole
	count   int
	by      float64
	record  string
	content fyne.CanvasObject
}

func newOffsetForm(edit elementEdit, path func() plan.PathID) *offsetForm {
	o := &offsetForm{edit: edit, path: path, field: newLength(edit.desk, parseBow), times: fields.NewWhole("", 1, 99), count: 1}
	o.times.Set(o.count)
	o.times.OnCommit = func(n int) error {
		o.count = n
		return nil
	}
	o.field.SetHint("6\" left")
	o.field.OnCommit = func(_ string, by float64) error {
		o.by = by
		return o.copy()
	}
	o.field.OnBlank = func() error { return nil }
	often := container.NewHBox(widget.NewLabel("Copy it"), o.times, widget.NewLabel("times, every"))
	copying := fields.NewButton("Copy", func() { o.field.Commit() })
	// In this order, so that Tab goes from left to right.
	o.content = container.New(layout.NewBorderLayout(nil, nil, often, copying), often, o.field, copying)
	return o
}

// copy draws the line again beside itself; what cannot be is said at the field.
func (o *offsetForm) copy() error {
	if !o.times.Commit() {
		return errors.New("say first how many times")
	}
	id, by, count := o.path(), o.by, o.count
	err := o.edit.try("Copy a line of", func(p *prep.Production, e *plan.Element) error {
		path := pathOf(p, e.ID, id)
		if path == nil {
			return errGone
		}
		return addCopies(e, *path, by, count, uuid.NewString)
	})
	if err == nil {
		o.field.SetBlank()
		o.count = 1
		o.times.Set(o.count)
	}
	return err
}

// show drops what was typed for another line.
func (o *offsetForm) show(_ *desk.View, e plan.ElementID, path plan.PathID) {
	if record := string(e) + string(path); record != o.record {
		o.record = record
		o.field.Reset()
	}
}
