package standinsplace

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// pairForm shows the selected element with what stands for it.
type pairForm struct {
	place *place
	at    pair
	whole *fyne.Container
	none  fyne.CanvasObject
	some  fyne.CanvasObject
	form  *fields.Form

	title   *widget.Label
	why     *widget.Label
	trouble *fields.Banner
	object  *fields.Choice
	number  *fields.Whole
	state   *fields.Choice
	scope   *fields.Choice
	note    *fields.Text
	another *fields.Button
	away    *fields.Button
	scenes  map[string]plan.SceneID
}

func newPairForm(p *place) *pairForm {
	f := &pairForm{place: p, form: fields.NewForm(), title: widget.NewLabel(""), why: widget.NewLabel(""),
		trouble: fields.NewBanner(fields.Warning, "", "", nil)}
	f.title.TextStyle.Bold = true
	f.title.Truncation = fyne.TextTruncateEllipsis
	f.why.Truncation = fyne.TextTruncateEllipsis
	f.object, f.state, f.scope = fields.NewChoice(), fields.NewChoice(stateNames()...), fields.NewChoice()
	f.number, f.note = fields.NewWhole("of it", 1, most), fields.NewText()
	f.another = fields.NewButton("A different one in this scene", func() {
		p.desk.Edit("Begin another stand-in for "+f.title.Text, another(f.at))
	})
	f.away = fields.NewButton("Delete", func() { p.forget([]string{string(f.at.element)}) })
	f.wire()
	f.form.AddWide("trouble", f.trouble)
	f.form.Add("object", "Stands for it", f.object)
	f.form.Add("number", "How many", f.number)
	f.form.Add("state", "State", f.state)
	f.form.Add("scope", "Holds in", f.scope)
	f.form.Add("note", "Note", f.note)
	f.some = container.NewVBox(f.title, f.why, f.form, container.NewHBox(f.another, f.away))
	words := widget.NewLabel("No element is selected. Choose one in the table or on the floor to say what stands for it.")
	words.Wrapping = fyne.TextWrapWord
	f.none = container.NewVBox(words)
	f.whole = container.NewStack(f.none)
	return f
}

func (f *pairForm) wire() {
	edit := func(column int) func(string) error {
		return func(text string) error { return f.place.editPair(string(f.at.element), column, text) }
	}
	f.object.OnCommit, f.state.OnCommit = edit(colObject), edit(colState)
	f.number.OnCommit = func(n int) error { return edit(colNumber)(fmt.Sprint(n)) }
	f.scope.OnCommit = func(name string) error {
		return f.place.desk.TryEdit("Let the stand-in for "+f.title.Text+" hold in "+name, setScope(f.at, f.scenes[name]))
	}
	f.note.OnCommit = func(text string) error {
		return f.place.desk.TryEdit("Note on the stand-in for "+f.title.Text, onPair(f.at, func(_ *prep.Production, s *prep.StandIn) error {
			s.Note = text
			return nil
		}))
	}
}

// show sets the form from the element; an element that needs no stand-in in this scene is not shown.
func (f *pairForm) show(v *desk.View, element plan.ElementID) {
	for _, n := range prep.StandInNeeds(v.P, v.Scene) {
		if n.Element == element {
			f.at = pair{element, v.Scene}
			f.form.Record(string(element))
			f.put(f.some)
			f.set(v, n)
			return
		}
	}
	f.at = pair{}
	f.put(f.none)
}

func (f *pairForm) set(v *desk.View, n prep.StandInNeed) {
	f.title.SetText(n.Name)
	f.why.SetText(string(n.Kind) + ", " + string(n.Why) + " · " + where(v))
	f.trouble.Set(fields.Warning, troubleOf(v, n), "", nil)
	f.object.SetOptions(objectNames(v.P, n.Element)...)
	f.object.Set(nothing)
	if n.Object != nil {
		f.object.Set(n.Object.Name)
	}
	f.state.Set(string(n.State))
	f.setScopes(v, n)
	number, note, scope := 1, "", plan.SceneID("")
	if n.StandIn != nil {
		number, note, scope = max(1, n.StandIn.Number), n.StandIn.Note, n.StandIn.Scene
	}
	f.number.Set(number)
	f.note.Set(note)
	f.scope.Set(scopeName(v.P, scope))
	f.away.SetEnabled(n.StandIn != nil)
	f.another.SetEnabled(n.StandIn != nil && v.Scene != "" && scope == "")
}

// setScopes offers every scene and those that the element stands in.
func (f *pairForm) setScopes(v *desk.View, n prep.StandInNeed) {
	names := []string{everyScene}
	f.scenes = map[string]plan.SceneID{everyScene: ""}
	e := v.P.Plan.Element(n.Element)
	for _, s := range v.P.Plan.Scenes {
		if _, in := v.P.Plan.Where(e, s.ID); in {
			names = append(names, s.Name)
			f.scenes[s.Name] = s.ID
		}
	}
	f.scope.SetOptions(names...)
}

// troubleOf says what has to be seen to about one pair.
func troubleOf(v *desk.View, n prep.StandInNeed) string {
	text := ""
	add := func(words string) {
		if text != "" {
			text += " "
		}
		text += words
	}
	if climbed(n.Kind) {
		add("People climb on this: nothing that is climbed on is improvised. Ask the shop.")
	}
	if n.Object == nil || n.State == prep.Swapped {
		return text
	}
	if words := clashes(v.P, v.Scene)[n.Object.ID]; words != "" {
		add(words)
	}
	if n.Safety {
		add("Weight it so that it cannot tip before anyone leans on it.")
	}
	return text
}

// objectNames offers the stock, what fits the element best first.
func objectNames(p *prep.Production, element plan.ElementID) []string {
	out := []string{nothing}
	for _, f := range prep.Fits(p, element) {
		out = append(out, p.Object(f.Object).Name)
	}
	return out
}

func (f *pairForm) put(o fyne.CanvasObject) {
	if f.whole.Objects[0] != o {
		f.whole.Objects = []fyne.CanvasObject{o}
		f.whole.Refresh()
	}
}
