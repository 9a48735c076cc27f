package floorsplace

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// wayForm edits a way across the floor and says how wide it is.
type wayForm struct {
	p    *place
	form *fields.Form
	id   string

	name      *fields.Text
	kind      *fields.Choice
	from, to  wayEndFields
	wide      *fields.Length
	found     *widget.Label
	published *widget.Label
}

// wayEndFields are the fields of one end: a thing of the floor, or a place.
type wayEndFields struct {
	row         string
	thing       *fields.Choice
	along, into *fields.Length
}

// aPlace is what a way's end is that names no thing.
const aPlace = "a place on the floor"

func newWayForm(p *place) *wayForm {
	t := &wayForm{p: p, form: fields.NewForm(), found: widget.NewLabel(""), published: widget.NewLabel("")}
	t.found.Wrapping, t.published.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	t.form.Section("A way across the floor")
	t.form.AddWide("found", t.found)
	t.name = fields.NewText()
	t.name.OnCommit = func(v string) error {
		return t.edit("Rename the way", func(_ *floor.Floor, x *floor.Way) error { x.Name = v; return nil })
	}
	t.form.Add("name", "Name", t.name)
	t.kind = fields.NewChoice(words(floor.WayKinds)...)
	t.kind.OnCommit = func(v string) error {
		return t.edit("Say what the way is for", func(_ *floor.Floor, x *floor.Way) error { x.Kind = floor.WayKind(v); return nil })
	}
	t.form.Add("kind", "Kind", t.kind)
	t.wide = p.lengthField()
	t.wide.OnCommit = func(text string, m float64) error { return t.require(text, m) }
	t.form.Add("wide", "Must be free", t.wide)
	t.from = t.end("from", "From", func(x *floor.Way) *floor.Spot { return &x.From })
	t.to = t.end("to", "To", func(x *floor.Way) *floor.Spot { return &x.To })
	t.form.AddWide("published", t.published)
	t.form.AddWide("remove", fields.NewButton("Take it out", p.Remove))
	t.form.AddWide("back", fields.NewButton("Back to the floor", func() { p.desk.Select(desk.Selection{}) }))
	return t
}

func (t *wayForm) edit(label string, change func(*floor.Floor, *floor.Way) error) error {
	return t.p.tryEdit(label, func(f *floor.Floor) error { return onWay(f, t.id, change) })
}

// onWay makes a change to one way of a floor.
func onWay(f *floor.Floor, id string, change func(*floor.Floor, *floor.Way) error) error {
	i := slices.IndexFunc(f.Ways, func(w floor.Way) bool { return w.ID == id })
	if i < 0 {
		return errGone("the way")
	}
	return change(f, &f.Ways[i])
}

// require sets the user's own requirement; what was typed is kept.
func (t *wayForm) require(text string, m float64) error {
	if m < 0 {
		return errors.New("a width is not below zero; zero asks for none")
	}
	return t.p.desk.TryEdit("Require a width", func(pr *prep.Production) error {
		f := pr.Floor(t.p.view.Floor)
		if f == nil {
			return errGone("the floor")
		}
		pr.KeepTyped(t.id, "width", text)
		return onWay(f, t.id, func(_ *floor.Floor, x *floor.Way) error { x.Width = m; return nil })
	})
}

func (t *wayForm) end(row, label string, of func(*floor.Way) *floor.Spot) wayEndFields {
	e := wayEndFields{row: row, thing: fields.NewChoice(aPlace)}
	e.thing.OnCommit = func(v string) error {
		return t.edit("Say where the way leads", func(f *floor.Floor, x *floor.Way) error {
			for _, s := range spots(f) {
				if s.name == v {
					*of(x) = s.spot
					return nil
				}
			}
			s := of(x)
			s.At, s.Thing = spotAt(f, *s), ""
			return nil
		})
	}
	t.form.Add(row, label, e.thing)
	coordinate := func(name, label string, set func(*floor.Spot, float64)) *fields.Length {
		l := t.p.lengthField()
		l.OnCommit = func(_ string, m float64) error {
			return t.edit("Say where the way leads", func(_ *floor.Floor, x *floor.Way) error { set(of(x), m); return nil })
		}
		t.form.Add(name, label, l)
		return l
	}
	e.along = coordinate(row+" along", "along the room", func(s *floor.Spot, m float64) { s.At.X = m })
	e.into = coordinate(row+" into", "into the room", func(s *floor.Spot, m float64) { s.At.Y = m })
	return e
}

// show sets the form from what is selected; ok is false when it is not on the floor.
func (t *wayForm) show(v *desk.View, w *prep.FloorWork) (ok bool) {
	id, ok := v.Selected.Of(desk.Way)
	if !ok {
		return false
	}
	for _, way := range w.Ways {
		if way.Way.ID == id {
			t.id = id
			t.form.Record(id)
			t.set(v, w.Floor, way)
			return true
		}
	}
	return false
}

func (t *wayForm) set(v *desk.View, f *floor.Floor, w *prep.WayWork) {
	t.name.Set(w.Way.Name)
	t.kind.Set(string(w.Way.Kind))
	t.wide.SetUnit(v.P.Unit().Name())
	t.wide.Set(v.P.ShowLength(t.id, "width", w.Way.Width), w.Way.Width)
	t.showEnd(v, f, t.from, w.Way.From)
	t.showEnd(v, f, t.to, w.Way.To)
	t.found.SetText(aboutWay(v.P, w))
	t.published.SetText("Published minimums, for comparison only:\n" + strings.Join(v.P.Published(), "\n") + "\n" + floor.WidthCaution)
}

func (t *wayForm) showEnd(v *desk.View, f *floor.Floor, e wayEndFields, s floor.Spot) {
	options, shown := []string{aPlace}, aPlace
	for _, o := range spots(f) {
		options = append(options, o.name)
		if o.spot.Thing == s.Thing {
			shown = o.name
		}
	}
	e.thing.SetOptions(options...)
	e.thing.Set(shown)
	t.form.ShowRow(e.row+" along", s.Thing == "")
	t.form.ShowRow(e.row+" into", s.Thing == "")
	for _, l := range []struct {
		field *fields.Length
		m     float64
	}{{e.along, s.At.X}, {e.into, s.At.Y}} {
		l.field.SetUnit(v.P.Unit().Name())
		l.field.Set("", l.m)
	}
}

// aboutWay says how wide a way is, and in which scenes it is less than required.
func aboutWay(p *prep.Production, w *prep.WayWork) string {
	said := w.Sentence(p)
	if short := w.ShortScenes(); len(short) > 1 {
		var names []string
		for _, id := range short {
			names = append(names, p.Plan.SceneName(id))
		}
		said += fmt.Sprintf(" It does not do in %s.", prep.Listed(names))
	}
	return said
}
