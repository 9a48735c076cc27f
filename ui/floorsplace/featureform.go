package floorsplace

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// featureForm edits a door, a window or another feature of the room.
type featureForm struct {
	p    *place
	form *fields.Form
	id   string

	name              *fields.Text
	kind, opens       *fields.Choice
	along, into       *fields.Length // the first point: the hinge of a door
	endAlong, endInto *fields.Length // the second point, of what has just two
	wide              *fields.Length // from the first to the second
	said              *widget.Label
}

// Only a door has a hinge where it begins.
const (
	hingeAlong, hingeInto = "Hinge, along the room", "Hinge, into the room"
	endAlong, endInto     = "One end, along the room", "One end, into the room"
	spotAlong, spotInto   = "Along the room", "Into the room"
)

// beginning is how the place of a feature's first point is labelled.
func beginning(x *floor.Feature) (along, into string) {
	switch {
	case x.Kind == floor.RoomDoor:
		return hingeAlong, hingeInto
	case len(x.Shape.Vertices) > 1:
		return endAlong, endInto
	}
	return spotAlong, spotInto
}

func newFeatureForm(p *place) *featureForm {
	t := &featureForm{p: p, form: fields.NewForm(), said: widget.NewLabel("")}
	t.said.Wrapping = fyne.TextWrapWord
	t.form.Section("Of the room")
	t.name = fields.NewText()
	t.name.OnCommit = func(v string) error {
		return t.edit("Rename it", func(x *floor.Feature) error { x.Name = v; return nil })
	}
	t.form.Add("name", "Name", t.name)
	t.kind = fields.NewChoice(words(floor.FeatureKinds)...)
	t.kind.OnCommit = func(v string) error {
		return t.edit("Say what it is", func(x *floor.Feature) error { return setFeatureKind(x, floor.FeatureKind(v)) })
	}
	t.form.Add("kind", "Kind", t.kind)
	t.opens = fields.NewChoice(words(floor.OpensWays)...)
	t.opens.OnCommit = func(v string) error {
		return t.edit("Say how the door opens", func(x *floor.Feature) error { x.Opens = floor.Opens(v); return nil })
	}
	t.form.Add("opens", "Opens", t.opens)
	t.along = t.length("along", hingeAlong, func(x *floor.Feature, m float64) error { x.Shape.Vertices[0].X = m; return nil })
	t.into = t.length("into", hingeInto, func(x *floor.Feature, m float64) error { x.Shape.Vertices[0].Y = m; return nil })
	t.endAlong = t.length("end along", "Other end, along", func(x *floor.Feature, m float64) error { x.Shape.Vertices[1].X = m; return nil })
	t.endInto = t.length("end into", "Other end, into", func(x *floor.Feature, m float64) error { x.Shape.Vertices[1].Y = m; return nil })
	t.wide = t.length("wide", "Width", setFeatureWidth)
	t.form.AddWide("swap", fields.NewButton("Hang it on the other side", func() {
		p.edit("Hang the door on the other side", func(f *floor.Floor) error {
			return onFeature(f, t.id, func(x *floor.Feature) error { x.Shape = x.Shape.Reversed(); return nil })
		})
	}))
	t.form.AddWide("said", t.said)
	t.form.AddWide("remove", fields.NewButton("Take it out", p.Remove))
	t.form.AddWide("back", fields.NewButton("Back to the floor", func() { p.desk.Select(desk.Selection{}) }))
	return t
}

// onFeature makes a change to one feature of a floor.
func onFeature(f *floor.Floor, id string, change func(*floor.Feature) error) error {
	for i := range f.Features {
		if f.Features[i].ID == id {
			return change(&f.Features[i])
		}
	}
	return errGone("this")
}

func (t *featureForm) edit(label string, change func(*floor.Feature) error) error {
	return t.p.tryEdit(label, func(f *floor.Floor) error { return onFeature(f, t.id, change) })
}

func (t *featureForm) length(name, label string, set func(*floor.Feature, float64) error) *fields.Length {
	l := t.p.lengthField()
	l.OnCommit = func(_ string, m float64) error {
		return t.edit("Set its place and size", func(x *floor.Feature) error { return set(x, m) })
	}
	t.form.Add(name, label, l)
	return l
}

// setFeatureKind changes what a feature is, if its points can be that.
func setFeatureKind(x *floor.Feature, kind floor.FeatureKind) error {
	least, area := kind.Corners()
	switch n := len(x.Shape.Vertices); {
	case n < least:
		return fmt.Errorf("a %s needs at least %d points and this has %d: draw it anew", kind, least, n)
	case kind == floor.RoomDoor && n != 2:
		return fmt.Errorf("a door has two points, its hinge and its other jamb, and this has %d: draw it anew", n)
	}
	if area {
		shape := x.Shape
		shape.Closed = true
		if err := floor.CheckShape(shape); err != nil {
			return err
		}
	}
	x.Kind, x.Shape.Closed = kind, area
	if kind == floor.RoomDoor && x.Opens == "" {
		x.Opens = floor.OpensIn
	}
	return nil
}

// setFeatureWidth moves the second point along the line from the first.
func setFeatureWidth(x *floor.Feature, m float64) error {
	if m <= 0 {
		return fmt.Errorf("a width above zero is needed")
	}
	v := x.Shape.Vertices
	along, ok := v[1].Sub(v[0].Point).Unit()
	if !ok {
		along = plane.Point{X: 1}
	}
	v[1].Point = v[0].Point.Add(along.Times(m))
	return nil
}

// show sets the form from what is selected; ok is false when it is not on the floor.
func (t *featureForm) show(v *desk.View, w *prep.FloorWork) (ok bool) {
	id, ok := v.Selected.Of(desk.Feature)
	if !ok {
		return false
	}
	for i := range w.Floor.Features {
		if x := &w.Floor.Features[i]; x.ID == id {
			t.id = id
			t.form.Record(id)
			t.set(v, w.Floor, x)
			return true
		}
	}
	return false
}

func (t *featureForm) set(v *desk.View, f *floor.Floor, x *floor.Feature) {
	t.name.Set(x.Name)
	t.kind.Set(string(x.Kind))
	t.opens.Set(string(x.Opens))
	door := x.Kind == floor.RoomDoor
	t.form.ShowRow("opens", door)
	t.form.ShowRow("swap", door)
	along, into := beginning(x)
	t.form.Relabel("along", along)
	t.form.Relabel("into", into)
	n := len(x.Shape.Vertices)
	for _, row := range []string{"end along", "end into", "wide"} {
		t.form.ShowRow(row, n == 2)
	}
	for _, row := range []string{"along", "into"} {
		t.form.ShowRow(row, n > 0 && n <= 2)
	}
	set := func(l *fields.Length, m float64) {
		l.SetUnit(v.P.Unit().Name())
		l.Set("", m)
	}
	if n > 0 {
		set(t.along, x.Shape.Vertices[0].X)
		set(t.into, x.Shape.Vertices[0].Y)
	}
	if n == 2 {
		set(t.endAlong, x.Shape.Vertices[1].X)
		set(t.endInto, x.Shape.Vertices[1].Y)
		set(t.wide, x.Shape.Length())
	}
	t.said.SetText(aboutFeature(v, f, x))
}

// aboutFeature says what follows from a feature.
func aboutFeature(v *desk.View, f *floor.Floor, x *floor.Feature) string {
	switch x.Kind {
	case floor.RoomDoor:
		if swing, ok := f.Swing(x); ok {
			return "Its leaf sweeps " + areaOf(v, swing.Area()) + " of the room, which is kept clear by itself."
		}
		return "Its leaf sweeps nothing of the room. Keep the floor before it clear all the same."
	case floor.WallMirror:
		for _, m := range f.Mirrors() {
			if m.ID == x.ID {
				return mirrorWords(m)
			}
		}
	case floor.Seam:
		return "The seam is drawn on the floor plan, so that a cloth or a dance floor lies the same way each time."
	}
	return ""
}

func mirrorWords(m floor.Mirror) string {
	switch {
	case m.Faced():
		return "Facing front, the actors face themselves in it. Cover it, or turn the plan in the room."
	case m.Behind():
		return "It is behind the actors: whoever sits out front sees themselves and their table."
	}
	return "It is at the side of the actors who face front."
}
