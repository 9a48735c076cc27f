package planplace

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/grid"
)

// paperSheet is the page on which elements are typed in while somebody else reads
// them off the paper: up, Tab, over, Enter, and again; Enter on nothing ends the
// element.
type paperSheet struct {
	desk    *desk.Desk
	close   func()
	reading reading

	name     *fields.Text
	kind     *fields.Choice
	level    *fields.Choice
	ruler    *fields.Choice
	rule     *widget.Label
	edge     *fields.Text
	form     *fields.Form
	scale    *scaleField
	check    *scaleCheck
	closed   *fields.Tick
	up, over *fields.Length
	bow      *fields.Length
	said     *fields.Banner
	corners  *grid.Grid
	canvas   *floorcanvas.Canvas
	levels   options[plan.LevelID]
	content  fyne.CanvasObject
}

func newPaperSheet(d *desk.Desk, close func()) *paperSheet {
	s := &paperSheet{
		desk: d, close: close, name: fields.NewText(), kind: fields.NewChoice(kindChoices.names...),
		level: fields.NewChoice(), ruler: fields.NewChoice(rulerChoices.names...), rule: wrapped(""), edge: fields.NewText(), scale: newScaleField(d), check: newScaleCheck(d),
		closed: fields.NewTick("Closed: the last corner joins the first"), said: fields.NewBanner(fields.Note, "", "", nil),
		canvas: floorcanvas.New(),
	}
	s.reading = reading{kind: plan.Wall, on: fullSize}
	s.up = s.entry(lens.up)
	s.over = s.entry(lens.over)
	s.bow = s.entry(lens.bow)
	s.corners = grid.New([]grid.Column{
		{Title: "", Width: 28, ReadOnly: true, Right: true, Compare: grid.Natural}, {Title: "Up", Width: 90, Grow: true, Right: true},
		{Title: "Over", Width: 90, Grow: true, Right: true}, {Title: "Bow to it", Width: 76, Right: true},
	})
	s.corners.ShowTools(false)
	s.corners.SetEmpty("The corners come here as they are read.", "", nil)
	s.wire()
	s.content = s.lay()
	return s
}

func (s *paperSheet) entry(read func(lens, string) (float64, error)) *fields.Length {
	l := fields.NewLength(
		func(text string) (float64, error) { return read(lensOf(s.desk.View().P, &s.reading), text) },
		func(float64) string { return "" },
	)
	l.OnBlank = func() error { return nil }
	return l
}

func (s *paperSheet) wire() {
	s.name.OnCommit = func(text string) error {
		s.reading.name = text
		return nil
	}
	s.name.OnKeys(func() { focus(s.desk, s.up) }, s.leave)
	s.kind.OnCommit = func(text string) error {
		kind, _ := kindChoices.id(text)
		s.reading.as(kind)
		s.closed.Set(s.reading.closed)
		s.draw(s.desk.View())
		return nil
	}
	s.level.OnCommit = func(text string) error {
		s.reading.level, _ = s.levels.id(text)
		return nil
	}
	s.ruler.OnCommit = func(text string) error {
		s.reading.on, _ = rulerChoices.id(text)
		s.show(s.desk.View())
		return nil
	}
	s.edge.OnCommit = func(text string) error {
		scale, err := length.ParseScale(text)
		if err != nil {
			return err
		}
		s.reading.edge = scale
		s.show(s.desk.View())
		return nil
	}
	s.closed.OnCommit = func(on bool) error {
		s.reading.closed = on
		s.draw(s.desk.View())
		return nil
	}
	s.up.OnKeys(s.entered(s.up), s.leave)
	s.over.OnKeys(s.entered(s.over), s.leave)
	s.bow.OnKeys(s.entered(s.bow), s.leave)
	s.corners.OnEdit = s.correct
	s.corners.OnDelete = func([]string) { s.back() }
}

// entered is what Enter does in one of the fields of the next corner: nothing
// typed at all ends the element; what is missing is gone to; else the corner is
// set.
func (s *paperSheet) entered(at *fields.Length) func() {
	return func() {
		up, over := s.up.Shown(), s.over.Shown()
		switch {
		case up == "" && over == "" && s.bow.Shown() == "":
			s.finish()
		case up == "":
			focus(s.desk, s.up)
		case over == "":
			focus(s.desk, s.over)
		default:
			s.set()
		}
	}
}

// set takes the corner that is typed.
func (s *paperSheet) set() {
	for _, l := range []*fields.Length{s.up, s.over, s.bow} {
		if !l.Commit() {
			focus(s.desk, l)
			return
		}
	}
	c, _, err := lensOf(s.desk.View().P, &s.reading).read(s.up.Shown(), s.over.Shown(), s.bow.Shown())
	if err == nil {
		err = s.reading.add(c)
	}
	if err != nil {
		s.say(fields.Warning, spoken(err))
		focus(s.desk, s.up)
		return
	}
	s.blank()
	s.say(fields.Note, "")
	s.draw(s.desk.View())
	focus(s.desk, s.up)
}

func (s *paperSheet) blank() {
	for _, l := range []*fields.Length{s.up, s.over, s.bow} {
		l.SetBlank()
		l.Reset()
	}
}

// correct takes another figure for a corner that was read.
func (s *paperSheet) correct(row string, cell int, text string) error {
	n, _ := strconv.Atoi(row)
	c := s.reading.corners[n]
	texts := map[int]*string{1: &c.up, 2: &c.over, 3: &c.bowText}
	*texts[cell] = text
	read, _, err := lensOf(s.desk.View().P, &s.reading).read(c.up, c.over, c.bowText)
	if err != nil {
		return err
	}
	s.reading.corners[n] = read
	s.draw(s.desk.View())
	return nil
}

func (s *paperSheet) back() {
	s.reading.back()
	s.draw(s.desk.View())
	focus(s.desk, s.up)
}

// finish adds the element and begins the next one.
func (s *paperSheet) finish() {
	if err := s.reading.finish(); err != nil {
		s.say(fields.Warning, spoken(err))
		if s.reading.name == "" {
			focus(s.desk, s.name)
		} else {
			focus(s.desk, s.up)
		}
		return
	}
	r := s.reading
	if !s.desk.Edit("Read "+r.name+" off the paper", func(p *prep.Production) error {
		r.into(p, uuid.NewString)
		return nil
	}) {
		return
	}
	s.reading = r.again()
	s.name.Set("")
	s.name.Reset()
	s.draw(s.desk.View())
	s.say(fields.Good, fmt.Sprintf("%s is on the plan, with %s. Type the name of the next element, or Esc to go back to the plan.",
		r.name, prep.Counted(len(r.corners), "corner")))
	focus(s.desk, s.name)
}

// leave goes back to the plan. What has been read stays on the page until it is
// finished or taken back.
func (s *paperSheet) leave() { s.close() }

func (s *paperSheet) say(kind fields.Kind, words string) { s.said.Set(kind, words, "", nil) }
