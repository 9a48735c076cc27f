package planplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// severalPanel changes what several elements have in common. A choice that they
// do not share shows as not yet chosen.
type severalPanel struct {
	desk    *desk.Desk
	ids     []plan.ElementID
	title   *widget.Label
	kind    *fields.Choice
	level   *fields.Choice
	stock   *fields.Choice
	use     *fields.Choice
	scenes  *fields.Text
	moving  *moveForm
	levels  options[plan.LevelID]
	stocks  options[plan.StockID]
	content fyne.CanvasObject
}

func newSeveralPanel(d *desk.Desk) *severalPanel {
	s := &severalPanel{
		desk: d, title: heading(), kind: fields.NewChoice(kindChoices.names...), level: fields.NewChoice(),
		stock: fields.NewChoice(), use: fields.NewChoice(useChoices.names...), scenes: fields.NewText(),
	}
	s.scenes.SetHint("all, or names, with commas")
	s.moving = newMoveForm(d, func() []plan.ElementID { return s.ids })
	form := fields.NewForm()
	form.Add("kind", "Kind", s.kind)
	form.Add("level", "Level", s.level)
	form.Add("scenes", "Scenes", s.scenes)
	form.Add("stock", "Tape", s.stock)
	form.Add("use", "The actors", s.use)
	s.wire()
	hint := wrapped("A choice here is made for all of them. Where they differ, none is shown.")
	s.content = container.NewBorder(s.title, nil, nil, nil,
		container.NewVScroll(container.NewVBox(hint, form, widget.NewSeparator(), s.moving.content)))
	return s
}

func (s *severalPanel) wire() {
	s.kind.OnCommit = func(text string) error {
		kind, _ := kindChoices.id(text)
		return s.each("Change the kind of", func(e *plan.Element) { e.Kind = kind })
	}
	s.level.OnCommit = func(text string) error {
		level, _ := s.levels.id(text)
		return s.each("Change the level of", func(e *plan.Element) { e.Level = level })
	}
	s.scenes.OnCommit = func(text string) error {
		pl := &s.desk.View().P.Plan
		in, err := pl.ScenesNamed(text)
		if err != nil {
			return err
		}
		return s.each("Say in which scenes there are", func(e *plan.Element) {
			if len(in) == 0 {
				pl.InEveryScene(e) // what has been set scene by scene stays where it is
				return
			}
			e.InScenes(in)
		})
	}
	s.stock.OnCommit = func(text string) error {
		stock, _ := s.stocks.id(text)
		return s.each("Choose the tape of", func(e *plan.Element) { e.Stock = stock })
	}
	s.use.OnCommit = func(text string) error {
		use, _ := useChoices.id(text)
		return s.each("Say how much the actors need", func(e *plan.Element) { e.Use = use })
	}
}

// each changes all the selected elements in one step.
func (s *severalPanel) each(label string, do func(*plan.Element)) error {
	ids := s.ids
	return s.desk.TryEdit(label+" "+prep.Counted(len(ids), "element"), func(p *prep.Production) error {
		for _, id := range ids {
			if e := p.Plan.Element(id); e != nil {
				do(e)
			}
		}
		return nil
	})
}

func (s *severalPanel) show(v *desk.View, ids []plan.ElementID) {
	s.ids = ids
	s.title.SetText(prep.Counted(len(ids), "element") + " selected")
	s.levels, s.stocks = levelOptions(v.P), stockOptions(v.P)
	s.level.SetOptions(s.levels.names...)
	s.stock.SetOptions(s.stocks.names...)
	c := inCommon(v.P, ids)
	s.kind.Set(whenShared(c.kind, kindChoices))
	s.level.Set(whenShared(c.level, s.levels))
	s.stock.Set(whenShared(c.stock, s.stocks))
	s.use.Set(whenShared(c.use, useChoices))
	s.scenes.Set("")
	if !c.scenes.differ {
		s.scenes.Set(c.scenes.value)
	}
	s.moving.show(v)
}

// shared is a value that several elements have, or do not all have.
type shared[T ~string] struct {
	value  T
	differ bool
}

func (s *shared[T]) with(v T, first bool) {
	if first {
		s.value = v
		return
	}
	s.differ = s.differ || s.value != v
}

func whenShared[T ~string](s shared[T], of options[T]) string {
	if s.differ {
		return ""
	}
	return of.name(s.value)
}

// common is what several elements have in common.
type common struct {
	kind  shared[plan.Kind]
	level shared[plan.LevelID]
	stock shared[plan.StockID]
	use   shared[plan.Use]

	scenes shared[string] // by their names
}

func inCommon(p *prep.Production, ids []plan.ElementID) (c common) {
	for i, id := range ids {
		e := p.Plan.Element(id)
		c.kind.with(e.Kind, i == 0)
		c.level.with(e.Level, i == 0)
		c.stock.with(e.Stock, i == 0)
		c.use.with(e.Use, i == 0)
		c.scenes.with(p.Plan.NamesOf(e.Scenes()), i == 0)
	}
	return c
}
