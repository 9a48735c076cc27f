package floorsplace

import (
	"context"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// placingPage is where the plan is set in the room: proposals found by a search, each
// in small, one of them or a placement of one's own on trial, and what it keeps.
// Nothing is changed until a trial is kept.
type placingPage struct {
	desk    *desk.Desk
	view    *desk.View
	content fyne.CanvasObject

	said   *fields.Banner
	found  *widget.Label
	keep   *fields.Button
	canvas *floorcanvas.Canvas
	small  *widget.GridWrap
	form   *placingForm

	shown     floor.ID
	of        *floor.Floor    // as it was when the case was made
	scoring   *placement.Case // nil: nothing to score
	why       error           // of there being nothing to score
	trial     plane.Motion
	proposals prep.Proposals
	images    *thumbnails
}

func newPlacingPage(d *desk.Desk, close func()) *placingPage {
	p := &placingPage{desk: d, said: fields.NewBanner(fields.Note, "", "", nil), found: widget.NewLabel("")}
	p.found.Wrapping = fyne.TextWrapWord
	p.images = &thumbnails{}
	p.buildCanvas()
	p.buildSmall()
	p.form = newPlacingForm(p)
	search := fields.NewButton("Propose placements", p.search)
	p.keep = fields.NewButton("Keep this placement", p.keepTrial)
	p.keep.Importance = widget.HighImportance
	bar := container.NewHBox(fields.NewButton("Back to the floor", close), search, p.keep,
		fields.NewButton("As it was", func() { p.try(p.of.Placement) }), fields.NewButton("Whole floor", p.canvas.Fit))
	middle := container.NewBorder(container.NewVBox(bar, p.said), nil, nil, nil, p.canvas)
	proposals := container.NewBorder(p.found, nil, nil, nil, p.small)
	side := container.NewVSplit(container.NewVScroll(p.form.form), proposals)
	side.SetOffset(0.57)
	all := container.NewHSplit(middle, side)
	all.SetOffset(0.6)
	p.content = all
	return p
}

// Show sets the page from the view. What is on trial stays while the floor stays as
// it was; another floor, or another placement of it, ends the trial.
func (p *placingPage) Show(v *desk.View) {
	p.view = v
	f := v.P.Floor(v.Floor)
	if f == nil {
		return
	}
	fresh := p.shown != f.ID
	if fresh || p.of == nil || p.of.Placement != f.Placement {
		p.trial = f.Placement
	}
	if fresh {
		p.proposals = prep.Proposals{}
		p.images.clear()
		p.found.SetText("The search turns and shifts the plan until nothing better is left, and shows the best and others that are clearly different.")
	}
	p.shown, p.of = f.ID, f
	p.scoring, p.why = placement.New(&v.P.Plan, f)
	p.form.show(v, f)
	p.try(p.trial)
	p.small.Refresh()
	if fresh {
		p.canvas.Fit()
	}
}

// try puts a placement on trial.
func (p *placingPage) try(m plane.Motion) {
	p.trial = m
	work := workOn(p.view.P, p.of, m)
	work.Ways = prep.WaysOf(p.view.P, work.Floor)
	p.canvas.Set(p.picture(work))
	p.form.place(p.view, m)
	p.keep.SetEnabled(p.of != nil && m != p.of.Placement)
	p.say(m, work.Ways)
}

// say says what a placement keeps and loses, and which ways across the floor are too
// narrow there.
func (p *placingPage) say(m plane.Motion, ways []*prep.WayWork) {
	if p.scoring == nil {
		p.said.Set(fields.Note, capital(p.why.Error())+".", "", nil)
		return
	}
	k := p.scoring.At(m)
	kind, words := fields.Good, capital(prep.KeptWords(k))+"."
	if lost := prep.LostWords(p.view.P, k, 3); lost != "" {
		words += " Loses " + lost + "."
	}
	if broken := prep.BreachWords(p.view.P, k); broken != "" {
		kind, words = fields.Warning, words+" Not allowed: "+broken+"."
	}
	if narrow := prep.NarrowWords(p.view.P, ways); narrow != "" {
		kind, words = fields.Warning, words+" Too narrow: "+narrow+"."
	}
	p.said.Set(kind, words, "", nil)
}

// picture is the floor with the plan as a placement has it.
func (p *placingPage) picture(work *prep.FloorWork) floorcanvas.Picture {
	pic := floorpicture.OfFloor(p.view.P, work.In(p.view.Scene), p.view.Scene, floorpicture.Options{
		FloorAxes: true, Spikes: true, Placement: true, Ways: true,
	})
	pic.Shapes = append(pic.Shapes, frontShapes(p.of)...)
	return pic
}

// workOn is what can be seen of a floor with the plan as a placement has it.
func workOn(pr *prep.Production, of *floor.Floor, m plane.Motion) *prep.FloorWork {
	f := *of
	f.Placement = m
	return &prep.FloorWork{Floor: &f, Lines: f.Lines(&pr.Plan), Pieces: f.Spiked(&pr.Plan), Overhangs: f.Overhangs(&pr.Plan)}
}

// search asks for proposals.
func (p *placingPage) search() {
	if p.scoring == nil {
		p.desk.Told(capital(p.why.Error()) + ".")
		return
	}
	pr, f := p.view.P, p.of
	var found prep.Proposals
	p.desk.RunTelling("Looking for the best ways to set the plan in "+f.Name, func(ctx context.Context, told func(float64)) error {
		var err error
		found, err = prep.ProposePlacements(ctx, pr, f, func(done, _ float64) { told(done) })
		if err == nil {
			err = ctx.Err()
		}
		return err
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		if p.shown == f.ID {
			p.take(found)
		}
	})
}

// take shows what a search has found, and tries the best of it.
func (p *placingPage) take(found prep.Proposals) {
	p.proposals = found
	p.images.clear()
	if len(found.Proposals) == 0 {
		p.found.SetText(found.NoneWords(p.view.P))
		p.small.Refresh()
		return
	}
	words := prep.Counted(len(found.Proposals), "proposal") + ", the best first. " + found.GuaranteeWords() + " Click one to try it."
	p.found.SetText(words)
	for _, k := range found.Proposals {
		work := workOn(p.view.P, p.of, k.Placement)
		work.Ways = prep.WaysOf(p.view.P, work.Floor)
		p.images.add(p.view.P, work, p.view.Scene)
	}
	p.small.Refresh()
	p.try(found.Proposals[0].Placement)
	p.canvas.Fit()
	p.desk.Window().Canvas().Focus(p.small)
}

// keepTrial makes what is on trial the floor's placement.
func (p *placingPage) keepTrial() {
	m := p.trial
	p.desk.Edit("Set the plan in the room", onFloor(p.shown, func(f *floor.Floor) error {
		f.Placement = m
		return nil
	}))
}

func (p *placingPage) buildCanvas() {
	c := floorcanvas.New()
	c.CanDrag = func(string) bool { return false }
	c.OnDragHandle = func(id string, at plane.Point, done bool) {
		kind, of, ok := floorpicture.Parse(id)
		if !ok || kind != floorpicture.Placement {
			return
		}
		m := placed(p.trial, of, at)
		if done {
			p.try(m)
			return
		}
		p.say(m, nil) // the ways are looked for where the plan is let go
	}
	c.OnTap = func(at plane.Point, _ floorcanvas.Snap) { p.toggleFrontAt(at) }
	c.OnKey = func(key *fyne.KeyEvent) bool { return p.nudge(key.Name) }
	p.canvas = c
}

// Steps by key: along and into the room in metres, and turns in degrees.
const (
	nudgeStep = 0.05
	nudgeTurn = 0.5
)

// nudge moves what is on trial by the arrow keys, and turns it by comma and full stop.
func (p *placingPage) nudge(key fyne.KeyName) bool {
	m := p.trial
	switch key {
	case fyne.KeyLeft:
		m.Shift.X -= nudgeStep
	case fyne.KeyRight:
		m.Shift.X += nudgeStep
	case fyne.KeyUp:
		m.Shift.Y += nudgeStep
	case fyne.KeyDown:
		m.Shift.Y -= nudgeStep
	case fyne.KeyComma, fyne.KeyPeriod:
		by := nudgeTurn * math.Pi / 180
		if key == fyne.KeyPeriod {
			by = -by
		}
		m = p.turned(by)
	case fyne.KeyReturn, fyne.KeyEnter:
		p.keepTrial()
		return true
	default:
		return false
	}
	p.try(m)
	return true
}

// turned is the trial turned about the middle of the plan's room on the floor.
func (p *placingPage) turned(by float64) plane.Motion {
	centre := p.trial.Shift
	if box, ok := p.of.Outline.Bounds(); ok {
		centre = box.Centre()
	}
	return p.trial.Then(plane.About(centre, by))
}
