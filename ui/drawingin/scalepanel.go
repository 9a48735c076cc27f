package drawingin

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// scalePanel asks what scale the drawing is at.
type scalePanel struct {
	page    *Page
	said    *fields.Banner
	grid    *grid.Grid
	form    *fields.Form
	typed   *fields.Text
	unit    *fields.Choice
	known   *fields.Length
	from    plane.Point // the known dimension, drawing units
	to      plane.Point
	found   *sense.Verdict // that the known dimension does not agree; nil: it does
	content fyne.CanvasObject
}

func newScalePanel(p *Page) *scalePanel {
	s := &scalePanel{page: p, said: fields.NewBanner(fields.Note, "", "", nil), form: fields.NewForm(), typed: fields.NewText(), unit: fields.NewChoice()}
	s.grid = proposalsGrid("The drawing says nothing about its scale: type it, or give one known dimension.")
	s.grid.OnSelect = s.chosen
	s.typed.SetHint("1/4\" = 1'-0\" or 1:50")
	s.typed.OnCommit = func(text string) error { return p.answerScale(func(d *drawn) error { return d.typedScale(text) }) }
	names := make([]string, len(unitChoices))
	for i, u := range unitChoices {
		names[i] = sentence(u.name)
	}
	s.unit.SetOptions(names...)
	s.unit.OnCommit = s.unitChosen
	s.known = fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, p.desk.View().P.Unit()) },
		func(m float64) string { return p.desk.View().Style().Bare(m) })
	s.known.OnCommit = s.knownTyped
	s.known.OnBlank = func() error { return nil }
	two := fields.NewButton("Click its two ends…", s.askEnds)
	s.form.Add("typed", "Scale", s.typed)
	s.form.Add("unit", "Drawn in", s.unit)
	s.form.AddBeside("ends", "Known length", two)
	s.form.Add("known", "It is really", s.known)
	s.content = container.NewBorder(s.said, s.form, nil, nil, s.grid)
	return s
}

// proposalsGrid lists answers to choose from, each with its reason.
func proposalsGrid(empty string) *grid.Grid {
	g := grid.New([]grid.Column{
		{Title: "", Width: 26, ReadOnly: true}, {Title: "Proposed", Width: 150, ReadOnly: true}, {Title: "since", Width: 240, Grow: true, ReadOnly: true},
	})
	g.ShowTools(false)
	g.SetEmpty(empty, "", nil)
	return g
}

// proposalRows are the rows of answers; the one that holds has a tick.
func proposalRows(n int, say func(i int) (name, why string, holds bool)) []grid.Row {
	rows := make([]grid.Row, n)
	for i := range rows {
		name, why, holds := say(i)
		mark := ""
		if holds {
			mark = "•"
		}
		rows[i] = grid.Row{ID: "proposal " + strconv.Itoa(i), Cells: []string{mark, name, why}, Bold: holds}
	}
	return rows
}

// proposalAt is the proposal that rows stand for.
func proposalAt(rows []string) (int, bool) {
	if len(rows) != 1 {
		return 0, false
	}
	var n int
	_, err := fmt.Sscanf(rows[0], "proposal %d", &n)
	return n, err == nil
}

func (s *scalePanel) chosen(rows []string) {
	n, ok := proposalAt(rows)
	if !ok || n >= len(s.page.scales) {
		return
	}
	s.page.fail(s.page.answerScale(func(d *drawn) error {
		d.scale = s.page.scales[n].scaleAnswer
		d.scale.sure = true
		return nil
	}))
}

func (s *scalePanel) unitChosen(text string) error {
	for _, u := range unitChoices {
		if sentence(u.name) == text {
			return s.page.answerScale(func(d *drawn) error {
				d.typedUnit(u)
				return nil
			})
		}
	}
	return nil
}

func (s *scalePanel) askEnds() {
	s.page.board.askFor(asking{words: "Click the two ends of something whose length is known, the longer the better.", points: 2, done: func(ps []plane.Point) {
		s.from, s.to = s.page.d.on(ps[0]), s.page.d.on(ps[1])
		s.page.dim = &dimension{from: s.from, to: s.to}
		s.page.showAll()
		s.page.desk.Window().Canvas().Focus(s.known.Target())
	}})
}

// knownTyped compares the known length with the scale. A drawing without a scale
// takes the one that follows; else the person decides whether it is the drawing
// that is wrong.
func (s *scalePanel) knownTyped(_ string, floor float64) error {
	d := s.page.d
	if s.from == s.to {
		return errors.New("first click the two ends of what this is the length of")
	}
	v := sense.CheckKnown(d.scale.perUnit, s.from, s.to, floor, s.page.desk.View().Style())
	switch {
	case !v.Usable:
		return errors.New(v.Sentence)
	case d.scale.perUnit > 0 && !v.Agrees:
		s.found = &v
		s.show()
		return nil
	}
	return s.page.answerScale(func(d *drawn) error {
		if v.Agrees {
			d.scale.why, d.scale.sure = v.Sentence, true
			return nil
		}
		d.scale = scaleAnswer{perUnit: v.PerUnit, why: v.Sentence, sure: true}
		return nil
	})
}

// disagreement offers the scale that follows from the known dimension.
func (s *scalePanel) disagreement() said {
	v := s.found
	return said{fields.Warning, v.Sentence, "Use the known length", func() {
		s.page.fail(s.page.answerScale(func(d *drawn) error {
			d.scale = scaleAnswer{perUnit: v.PerUnit, why: "It follows from one known dimension.", sure: true}
			return nil
		}))
	}}
}

func (s *scalePanel) show() {
	p := s.page
	d := p.d
	if d == nil {
		return
	}
	s.grid.SetRows(proposalRows(len(p.scales), func(i int) (string, string, bool) {
		x := p.scales[i]
		return x.name, x.why, x.perUnit == d.scale.perUnit
	}))
	paper := onPaper(d.sheet)
	unit := ""
	for _, u := range unitChoices {
		if math.Abs(d.scale.perUnit/float64(u.unit)-1) < 1e-9 {
			unit = sentence(u.name)
		}
	}
	s.unit.Set(unit)
	s.form.ShowRow("typed", paper || d.sheet.Unit != linework.Unknown)
	s.form.ShowRow("unit", !paper)
	s.known.SetUnit(p.desk.View().P.Unit().Name())
	kind, words := d.scaleVerdict(p.dim)
	action := ""
	if d.scale.perUnit > 0 && !d.scale.sure {
		action = "That is right"
	}
	if s.found != nil {
		say(s.said, s.content, s.disagreement())
		return
	}
	say(s.said, s.content, said{kind, words, action, func() {
		s.page.fail(p.answerScale(func(d *drawn) error {
			d.scale.sure = true
			return nil
		}))
		p.ask(p.firstOpen())
	}})
}
