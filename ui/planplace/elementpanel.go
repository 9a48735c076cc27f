package planplace

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
)

// elementPanel is everything about one element, in three parts: what it is, its
// lines, and where it stands.
type elementPanel struct {
	desk    *desk.Desk
	id      plan.ElementID
	title   *widget.Label
	what    *whatForm
	lines   *linesForm
	scenes  *scenesForm
	tabs    *container.AppTabs
	content fyne.CanvasObject
}

func newElementPanel(d *desk.Desk, does actions) *elementPanel {
	e := &elementPanel{desk: d, title: heading()}
	edit := elementEdit{d, func() plan.ElementID { return e.id }}
	e.what = newWhatForm(edit)
	e.lines = newLinesForm(edit, does)
	e.scenes = newScenesForm(edit)
	e.tabs = container.NewAppTabs(
		container.NewTabItem("What it is", container.NewVScroll(e.what.content)),
		container.NewTabItem("Its lines", e.lines.content),
		container.NewTabItem("Where it stands", e.scenes.content),
	)
	e.content = container.NewBorder(e.title, nil, nil, nil, e.tabs)
	return e
}

func (e *elementPanel) show(v *desk.View, el *plan.Element) {
	e.id = el.ID
	e.title.SetText(el.Name)
	e.what.show(v, el)
	e.lines.show(v, el)
	e.scenes.show(v, el)
}

func (e *elementPanel) focusName() {
	e.tabs.SelectIndex(0)
	e.what.focusName()
}

// elementEdit makes changes to the element that a panel shows.
type elementEdit struct {
	desk *desk.Desk
	id   func() plan.ElementID
}

// try changes the element; label is completed by the element's name.
func (e elementEdit) try(label string, do func(*prep.Production, *plan.Element) error) error {
	id := e.id()
	name := nameOf(e.desk.View().P, id)
	return e.desk.TryEdit(label+" "+name, func(p *prep.Production) error {
		return change(p, id, func(el *plan.Element) error { return do(p, el) })
	})
}

// whatForm is what an element is.
type whatForm struct {
	edit    elementEdit
	form    *fields.Form
	name    *fields.Text
	kind    *fields.Choice
	level   *fields.Choice
	stock   *fields.Choice
	swatch  *canvas.Rectangle
	use     *fields.Choice
	rides   *fields.Choice
	note    *fields.Text
	facts   *widget.Label
	levels  options[plan.LevelID]
	stocks  options[plan.StockID]
	riding  options[plan.ElementID]
	content fyne.CanvasObject
}

func newWhatForm(edit elementEdit) *whatForm {
	f := &whatForm{
		edit: edit, form: fields.NewForm(), name: fields.NewText(), kind: fields.NewChoice(kindChoices.names...),
		level: fields.NewChoice(), stock: fields.NewChoice(), swatch: canvas.NewRectangle(color.Transparent),
		use: fields.NewChoice(useChoices.names...), rides: fields.NewChoice(), note: fields.NewMemo(3), facts: wrapped(""),
	}
	f.form.Add("name", "Name", f.name)
	f.form.Add("kind", "Kind", f.kind)
	f.form.Add("level", "Level", f.level)
	f.form.Add("stock", "Tape", f.stock)
	f.form.AddBeside("swatch", "", container.NewHBox(container.NewCenter(f.swatch)))
	f.form.Add("use", "The actors", f.use)
	f.form.Add("rides", "Rides on", f.rides)
	f.form.Add("note", "Note", f.note)
	f.swatch.SetMinSize(fyne.NewSize(64, 10))
	f.wire()
	f.content = container.NewVBox(f.form, f.facts)
	return f
}

func (f *whatForm) wire() {
	f.name.OnCommit = func(text string) error {
		id := f.edit.id()
		was := nameOf(f.edit.desk.View().P, id)
		return f.edit.desk.TryEdit("Rename "+was+" to "+text, func(p *prep.Production) error { return rename(p, id, text) })
	}
	f.kind.OnCommit = func(text string) error {
		kind, _ := kindChoices.id(text)
		return f.edit.try("Change the kind of", func(_ *prep.Production, e *plan.Element) error {
			e.Kind = kind
			return nil
		})
	}
	f.level.OnCommit = func(text string) error {
		level, _ := f.levels.id(text)
		return f.edit.try("Change the level of", func(_ *prep.Production, e *plan.Element) error {
			e.Level = level
			return nil
		})
	}
	f.stock.OnCommit = func(text string) error {
		stock, _ := f.stocks.id(text)
		return f.edit.try("Choose the tape of", func(_ *prep.Production, e *plan.Element) error {
			e.Stock = stock
			return nil
		})
	}
	f.use.OnCommit = func(text string) error {
		use, _ := useChoices.id(text)
		return f.edit.try("Say how much the actors need", func(_ *prep.Production, e *plan.Element) error {
			e.Use = use
			return nil
		})
	}
	f.rides.OnCommit = func(text string) error {
		carrier, _ := f.riding.id(text)
		return f.edit.try("Choose what carries", func(p *prep.Production, e *plan.Element) error {
			return ride(p, e.ID, carrier)
		})
	}
	f.note.OnCommit = func(text string) error {
		return f.edit.try("Note on", func(_ *prep.Production, e *plan.Element) error {
			e.Note = text
			return nil
		})
	}
}

func (f *whatForm) show(v *desk.View, e *plan.Element) {
	f.form.Record(string(e.ID))
	f.levels, f.stocks, f.riding = levelOptions(v.P), stockOptions(v.P), carrierOptions(v.P, e.ID)
	f.level.SetOptions(f.levels.names...)
	f.stock.SetOptions(f.stocks.names...)
	f.rides.SetOptions(f.riding.names...)
	f.name.Set(e.Name)
	f.kind.Set(kindChoices.name(e.Kind))
	f.level.Set(f.levels.name(e.Level))
	f.stock.Set(f.stocks.name(e.Stock))
	f.use.Set(useChoices.name(e.Use))
	f.rides.Set(f.riding.name(e.Rides))
	f.note.Set(e.Note)
	f.facts.SetText(facts(v.P, e))
	f.showSwatch(v.P, e.Stock)
}

// showSwatch draws the colour of the tape under its name.
func (f *whatForm) showSwatch(p *prep.Production, id plan.StockID) {
	fill := color.Color(color.Transparent)
	if s := p.Stock(id); s != nil {
		if c, ok := floorpicture.Swatch(s.Swatch); ok {
			fill = c
		}
	}
	f.form.ShowRow("swatch", fill != color.Transparent)
	if f.swatch.FillColor != fill {
		f.swatch.FillColor = fill
		f.swatch.Refresh()
	}
}

func (f *whatForm) focusName() {
	focus(f.edit.desk, f.name)
	if all, ok := f.name.Target().(fyne.Shortcutable); ok {
		all.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}
