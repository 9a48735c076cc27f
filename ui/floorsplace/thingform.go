package floorsplace

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// thingForm edits an obstacle, an area that must stay free, or a pivot.
type thingForm struct {
	p    *place
	form *fields.Form
	id   string

	name        *fields.Text
	kind        *fields.Choice
	along, into *fields.Length
	wide, deep  *fields.Length
	rise        *fields.Length
}

func newThingForm(p *place) *thingForm {
	t := &thingForm{p: p, form: fields.NewForm()}
	t.form.Section("In the room")
	t.name = fields.NewText()
	t.name.OnCommit = func(v string) error {
		return t.edit("Rename it", func(x thing) error { *x.name = v; return nil })
	}
	t.form.Add("name", "Name", t.name)
	t.kind = fields.NewChoice()
	t.kind.OnCommit = func(v string) error {
		return t.edit("Say what it is", func(x thing) error { *x.kind = v; return nil })
	}
	t.form.Add("kind", "Kind", t.kind)
	t.along = t.length("along", "Along the room", func(x thing, m float64) error { return x.moveTo(m, -1) })
	t.into = t.length("into", "Into the room", func(x thing, m float64) error { return x.moveTo(m, 1) })
	t.wide = t.length("wide", "Width", func(x thing, m float64) error { return x.resize(m, 0) })
	t.deep = t.length("deep", "Depth", func(x thing, m float64) error { return x.resize(0, m) })
	t.rise = t.p.lengthField()
	t.rise.OnCommit = t.raise
	t.form.Add("rise", "Higher by", t.rise)
	t.form.AddWide("remove", fields.NewButton("Take it out", p.Remove))
	t.form.AddWide("back", fields.NewButton("Back to the floor", func() { p.desk.Select(desk.Selection{}) }))
	return t
}

func (t *thingForm) edit(label string, change func(thing) error) error {
	return t.p.tryEdit(label, func(f *floor.Floor) error {
		x, ok := findThing(f, t.id)
		if !ok {
			return errGone("this")
		}
		return change(x)
	})
}

func (t *thingForm) length(name, label string, set func(thing, float64) error) *fields.Length {
	l := t.p.lengthField()
	l.OnCommit = func(_ string, m float64) error {
		return t.edit("Set its place and size", func(x thing) error { return set(x, m) })
	}
	t.form.Add(name, label, l)
	return l
}

// raise sets by how much the floor to the left of a step is higher.
func (t *thingForm) raise(text string, m float64) error {
	return t.p.desk.TryEdit("Set the height of a step", func(pr *prep.Production) error {
		f := pr.Floor(t.p.view.Floor)
		if f == nil {
			return errGone("the floor")
		}
		x, ok := findThing(f, t.id)
		if !ok || x.rise == nil {
			return errGone("the step")
		}
		*x.rise = m
		pr.KeepTyped(t.id, "rise", text)
		return nil
	})
}

// corner is where the thing is measured to: its lower left corner, or the point.
func (t thing) corner() plane.Point {
	if t.at != nil {
		return *t.at
	}
	box, _ := t.shape.Bounds()
	return box.Min
}

// moveTo puts the corner at a distance along (axis below zero) or into the room.
func (t thing) moveTo(m float64, axis int) error {
	by := plane.Point{X: m - t.corner().X}
	if axis > 0 {
		by = plane.Point{Y: m - t.corner().Y}
	}
	t.move(by)
	return nil
}

// resize stretches the shape from its lower left corner to a width or a depth;
// zero leaves one as it is.
func (t thing) resize(wide, deep float64) error {
	if wide < 0 || deep < 0 {
		return fmt.Errorf("a size above zero is needed")
	}
	box, _ := t.shape.Bounds()
	sx, sy := 1.0, 1.0
	if wide > 0 && box.Width() > 0 {
		sx = wide / box.Width()
	}
	if deep > 0 && box.Height() > 0 {
		sy = deep / box.Height()
	}
	for i, v := range t.shape.Vertices {
		d := v.Point.Sub(box.Min)
		t.shape.Vertices[i].Point = box.Min.Add(plane.Point{X: d.X * sx, Y: d.Y * sy})
	}
	return nil
}

// show sets the form from what is selected; ok is false when it is not on the
// floor.
func (t *thingForm) show(v *desk.View, w *prep.FloorWork) (ok bool) {
	if len(v.Selected.IDs) == 0 {
		return false
	}
	t.id = v.Selected.IDs[0]
	f := *w.Floor
	x, ok := findThing(&f, t.id)
	if !ok {
		return false
	}
	t.form.Record(t.id)
	t.name.Set(*x.name)
	solid := x.shape != nil
	for _, row := range []string{"wide", "deep"} {
		t.form.ShowRow(row, solid)
	}
	t.form.ShowRow("kind", x.kind != nil)
	t.form.ShowRow("rise", x.rise != nil)
	if x.rise != nil {
		t.rise.SetUnit(v.P.Unit().Name())
		t.rise.Set(v.P.ShowLength(t.id, "rise", *x.rise), *x.rise)
	}
	if x.kind != nil {
		kinds := floor.ObstacleKinds
		if v.Selected.Kind == desk.KeepClear {
			kinds = floor.KeepClearKinds
		}
		t.kind.SetOptions(kinds...)
		t.kind.Set(*x.kind)
	}
	t.sizes(v, x)
	return true
}

func (t *thingForm) sizes(v *desk.View, x thing) {
	set := func(l *fields.Length, m float64) {
		l.SetUnit(v.P.Unit().Name())
		l.Set("", m)
	}
	at := x.corner()
	set(t.along, at.X)
	set(t.into, at.Y)
	if x.shape != nil {
		box, _ := x.shape.Bounds()
		set(t.wide, box.Width())
		set(t.deep, box.Height())
	}
}
