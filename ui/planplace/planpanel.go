package planplace

import (
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// planPanel is the plan as a whole: its facts, its scenes and its levels.
type planPanel struct {
	desk     *desk.Desk
	form     *fields.Form
	title    *fields.Text
	revision *fields.Text
	scale    *scaleField
	baseline *fields.Choice
	check    *scaleCheck
	scenes   *scenesList
	levels   *levelsList
	tabs     *container.AppTabs
	turned   desk.Selection // the selection that was last turned to
	content  fyne.CanvasObject
}

func newPlanPanel(d *desk.Desk) *planPanel {
	p := &planPanel{
		desk: d, form: fields.NewForm(), title: fields.NewText(), revision: fields.NewText(),
		baseline: fields.NewChoice(baselineChoices.names...), scale: newScaleField(d),
	}
	p.check = newScaleCheck(d)
	p.scenes = newScenesList(d)
	p.levels = newLevelsList(d)
	p.form.Add("title", "Title", p.title)
	p.form.Add("revision", "Revision", p.revision)
	p.form.Add("scale", "Scale", p.scale.field)
	p.form.Add("baseline", "Up is from the", p.baseline)
	p.revision.SetHint("its number or date")
	p.wire()
	help := wrapped("Select an element in the list or on the drawing to see and change it here. Shift or Ctrl selects several.")
	facts := container.NewVBox(p.form, p.scale.words, widget.NewSeparator(), p.check.content, widget.NewSeparator(), help)
	p.tabs = container.NewAppTabs(
		container.NewTabItem("The plan", container.NewVScroll(facts)),
		container.NewTabItem("Scenes", p.scenes.content),
		container.NewTabItem("Levels", p.levels.content),
	)
	p.content = p.tabs
	return p
}

func (p *planPanel) wire() {
	p.title.OnCommit = func(text string) error {
		return p.edit("Title the plan "+text, func(pl *plan.Plan) error {
			pl.Title = text
			return nil
		})
	}
	p.revision.OnCommit = func(text string) error {
		return p.edit("Set the plan's revision to "+text, func(pl *plan.Plan) error {
			pl.Revision = text
			return nil
		})
	}
	p.baseline.OnCommit = func(text string) error {
		line, _ := baselineChoices.id(text)
		return p.edit("Measure up from the "+string(line), func(pl *plan.Plan) error {
			pl.Baseline = line
			return nil
		})
	}
}

func (p *planPanel) edit(label string, do func(*plan.Plan) error) error {
	return p.desk.TryEdit(label, func(pr *prep.Production) error { return do(&pr.Plan) })
}

func (p *planPanel) show(v *desk.View) {
	p.title.Set(v.P.Plan.Title)
	p.revision.Set(v.P.Plan.Revision)
	p.baseline.Set(baselineChoices.name(v.P.Plan.Baseline))
	p.scale.show(v)
	p.check.show(v)
	p.scenes.show(v)
	p.levels.show(v)
	p.turnTo(v)
}

// turnTo opens the list that holds what has been selected elsewhere, once.
func (p *planPanel) turnTo(v *desk.View) {
	s := v.Selected
	if s.Kind == p.turned.Kind && slices.Equal(s.IDs, p.turned.IDs) {
		return
	}
	p.turned = s
	switch s.Kind {
	case desk.Scene:
		p.tabs.SelectIndex(1)
		p.scenes.grid.Select(s.IDs...)
	case desk.Level:
		p.tabs.SelectIndex(2)
		p.levels.grid.Select(s.IDs...)
	}
}

// scaleField is the plan's scale, typed in any of the usual ways.
type scaleField struct {
	desk  *desk.Desk
	field *fields.Text
	words *widget.Label
}

func newScaleField(d *desk.Desk) *scaleField {
	s := &scaleField{desk: d, field: fields.NewText(), words: wrapped("")}
	s.field.SetHint("1/4\" = 1'-0\" or 1:50")
	s.field.OnCommit = func(text string) error {
		scale, err := length.ParseScale(text)
		if err != nil {
			return err
		}
		return setScale(d, scale)
	}
	return s
}

func setScale(d *desk.Desk, scale length.Scale) error {
	return d.TryEdit("Set the plan's scale to "+scale.String(), func(p *prep.Production) error {
		p.Plan.Scale = float64(scale)
		return nil
	})
}

func (s *scaleField) show(v *desk.View) {
	scale := length.Scale(v.P.Plan.Scale)
	if !scale.Valid() {
		s.field.Set("")
		s.words.SetText("The scale is not known yet: it is needed to read lengths off the paper.")
		return
	}
	s.field.Set(scale.String())
	s.words.SetText(onPaperWords(v.P))
}

// onPaperWords says what the scale means with a scale rule in hand.
func onPaperWords(p *prep.Production) string {
	scale := length.Scale(p.Plan.Scale)
	if p.Unit().Metric() {
		return fmt.Sprintf("1 cm on the paper is %s on the floor.", length.Style{Unit: p.Unit(), Step: 0.001}.Format(scale.OnFloor(0.01)))
	}
	return fmt.Sprintf("1\" on the paper is %s on the floor.", length.Style{Unit: p.Unit(), Step: length.Inch / 16}.Format(scale.OnFloor(length.Inch)))
}

// scaleCheck tells from one known dimension whether the plot is at its scale.
type scaleCheck struct {
	desk            *desk.Desk
	form            *fields.Form
	known, measured *fields.Length
	words           *fields.Banner
	k, m            float64
	content         fyne.CanvasObject
}

func newScaleCheck(d *desk.Desk) *scaleCheck {
	c := &scaleCheck{desk: d, form: fields.NewForm(), words: fields.NewBanner(fields.Note, "", "", nil)}
	c.known = newLength(d, length.Parse)
	c.measured = fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, paperUnit(d.View().P)) },
		func(m float64) string { return length.Style{Unit: paperUnit(d.View().P)}.Bare(m) },
	)
	c.known.OnCommit = c.taking(&c.k)
	c.measured.OnCommit = c.taking(&c.m)
	c.known.OnBlank = c.emptying(&c.k)
	c.measured.OnBlank = c.emptying(&c.m)
	c.form.Section("Check the scale")
	c.form.AddWide("", wrapped("Measure one dimension on the paper that the drawing gives a figure for: a plot may have been printed to fit."))
	c.form.Add("known", "The figure says", c.known)
	c.form.Add("measured", "On the paper", c.measured)
	c.content = container.NewVBox(c.form, c.words)
	return c
}

// paperUnit is what a bare number measured on paper counts as.
func paperUnit(p *prep.Production) length.Unit {
	if p.Unit().Metric() {
		return length.Centimetres
	}
	return length.Inches
}

func (c *scaleCheck) taking(into *float64) func(string, float64) error {
	return func(_ string, m float64) error {
		if !(m > 0) {
			return errors.New("a length of more than nothing is needed here")
		}
		*into = m
		c.say(c.desk.View())
		return nil
	}
}

func (c *scaleCheck) emptying(into *float64) func() error {
	return func() error {
		*into = 0
		c.say(c.desk.View())
		return nil
	}
}

func (c *scaleCheck) show(v *desk.View) {
	c.known.SetUnit(v.P.Unit().Name())
	c.measured.SetUnit(paperUnit(v.P).Name())
	c.say(v)
}

// say writes how far off the plot is, and offers to take its true scale.
func (c *scaleCheck) say(v *desk.View) {
	if !(c.k > 0) || !(c.m > 0) {
		c.words.Set(fields.Note, "", "", nil)
		return
	}
	nominal := length.Scale(v.P.Plan.Scale)
	actual, factor, ok := length.TrueScale(nominal, c.k, c.m)
	switch {
	case !ok:
		c.words.Set(fields.Warning, "These two lengths make no scale that a plan can have. Check which is which, and that the plan's scale is set.", "", nil)
	case isTrue(factor):
		c.words.Set(fields.Good, nominal.OffBy(actual, v.Style()), "", nil)
	default:
		c.words.Set(fields.Warning, nominal.OffBy(actual, v.Style()), "Use "+actual.Ratio(), func() {
			if err := setScale(c.desk, actual); err != nil {
				c.desk.Fail(err)
			}
		})
	}
}

// isTrue tells whether a plot is at its scale within what paper itself gives, one
// part in a thousand, as package length has it.
func isTrue(factor float64) bool { return factor > 0.999 && factor < 1.001 }
