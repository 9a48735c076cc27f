package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// datumPanel asks where the plan's axes lie in the drawing.
type datumPanel struct {
	page     *Page
	said     *fields.Banner
	grid     *grid.Grid
	form     *fields.Form
	audience *fields.Choice
	baseline *fields.Choice
	content  fyne.CanvasObject
}

var (
	audienceChoices = asOffered(audiences)
	baselineChoices = asOffered(plan.Baselines)
)

func newDatumPanel(p *Page) *datumPanel {
	s := &datumPanel{page: p, said: fields.NewBanner(fields.Note, "", "", nil), form: fields.NewForm(),
		audience: fields.NewChoice(audienceChoices.names...), baseline: fields.NewChoice(baselineChoices.names...)}
	s.grid = proposalsGrid("Nothing in the drawing is called a centre line or a plaster line. Show where they are.")
	s.grid.OnSelect = s.chosen
	s.audience.OnCommit = func(text string) error {
		side, _ := audienceChoices.value(text)
		return p.answerDatum(func(d *drawn) error {
			d.faces(side)
			return nil
		})
	}
	s.baseline.OnCommit = func(text string) error {
		p.baseline, _ = baselineChoices.value(text)
		p.redraw()
		return nil
	}
	show := fields.NewToolbar(
		fields.Tool{Text: "Datum point…", Do: s.askOrigin}, fields.Tool{Text: "Centre line…", Do: s.askCentre},
		fields.Tool{Text: "Baseline…", Do: s.askBaseline},
	)
	s.form.AddBeside("show", "Show the", show)
	s.form.Add("audience", "Audience", s.audience)
	s.form.Add("baseline", "Up is from the", s.baseline)
	s.content = container.NewBorder(s.said, s.form, nil, nil, s.grid)
	return s
}

func (s *datumPanel) chosen(rows []string) {
	n, ok := proposalAt(rows)
	if !ok || n >= len(s.page.datums) {
		return
	}
	s.page.fail(s.page.answerDatum(func(d *drawn) error {
		d.datum, s.page.baseline = s.page.datums[n].datumAnswer, s.page.datums[n].is
		d.datum.sure = true
		return nil
	}))
}

func (s *datumPanel) askOrigin() {
	s.page.board.askFor(asking{words: "Click where the centre line meets the baseline.", points: 1, done: func(ps []plane.Point) {
		s.answer(func(d *drawn) error {
			d.datumAt(d.on(ps[0]))
			return nil
		})
	}})
}

func (s *datumPanel) askCentre() {
	s.page.board.askFor(asking{words: "Click two points of the centre line, the one nearer to the audience first.", points: 2, done: func(ps []plane.Point) {
		s.answer(func(d *drawn) error { return d.centreLine(d.on(ps[0]), d.on(ps[1])) })
	}})
}

func (s *datumPanel) askBaseline() {
	s.page.board.askFor(asking{words: "Click a point of the baseline.", points: 1, done: func(ps []plane.Point) {
		s.answer(func(d *drawn) error {
			d.baseline(d.on(ps[0]))
			return nil
		})
	}})
}

func (s *datumPanel) answer(say func(*drawn) error) { s.page.fail(s.page.answerDatum(say)) }

func (s *datumPanel) show() {
	p := s.page
	d := p.d
	if d == nil {
		return
	}
	s.grid.SetRows(proposalRows(len(p.datums), func(i int) (string, string, bool) {
		x := p.datums[i]
		return x.name, x.why, d.datum.set && x.origin == d.datum.origin && x.up == d.datum.up
	}))
	side, _ := d.audience()
	s.audience.Set(audienceChoices.name(side))
	s.baseline.Set(baselineChoices.name(p.baseline))
	kind, words := d.datumVerdict()
	action := ""
	if d.datum.set && !d.datum.sure {
		action = "That is right"
	}
	say(s.said, s.content, said{kind, words, action, func() {
		s.answer(func(d *drawn) error {
			d.datum.sure = true
			return nil
		})
		p.ask(p.firstOpen())
	}})
}
