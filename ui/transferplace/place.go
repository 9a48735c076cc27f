// Package transferplace is the place in which what was settled on one floor is
// handed on to the next.
package transferplace

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// place is the place Transfer. The floor handed on from is the one chosen at the
// head; the one handed on to is picked here.
type place struct {
	desk *desk.Desk
	view *desk.View
	to   floor.ID

	body  *fyne.Container
	whole fyne.CanvasObject
	empty fyne.CanvasObject

	pick    *fields.Choice
	labels  *fields.Tick
	summary *fields.Banner
	here    *side
	there   *side

	tabs    *container.AppTabs
	going   *grid.Grid
	detail  *grid.Grid
	notes   *grid.Grid
	missing *grid.Grid
	bring   *grid.Grid
	differs *differsTab
	rests   *grid.Grid
	words   *widget.Label
	about   *widget.Label // the selected element in full
	note    *widget.Label // the selected note in full
}

// The tabs in their order.
const (
	tabGoing = iota
	tabDiffers
	tabRests
	tabNotes
	tabFront
)

var (
	_ desk.Place   = (*place)(nil)
	_ desk.Zoomer  = (*place)(nil)
	_ desk.Finder  = (*place)(nil)
	_ desk.Adder   = (*place)(nil)
	_ desk.Remover = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place {
	p := &place{desk: d, words: wrapped(""), about: wrapped(""), note: wrapped("")}
	p.pick = fields.NewChoice()
	p.pick.OnCommit = p.chose
	p.labels = fields.NewTick("marks with labels")
	p.labels.OnCommit = func(bool) error { p.redraw(); return nil }
	p.summary = fields.NewBanner(fields.Note, "", "", nil)
	p.here, p.there = newSide(p, "Here"), newSide(p, "There")
	p.buildGrids()
	p.differs, p.rests = p.newDiffersTab(), p.newRests()
	p.tabs = container.NewAppTabs(
		container.NewTabItem("What goes", p.goingTab()),
		container.NewTabItem("What differs", p.differs.content),
		container.NewTabItem("What turns and runs", p.rests),
		container.NewTabItem("Notes", container.NewBorder(nil, p.note, nil, nil, p.notes)),
		container.NewTabItem("Before it is handed over", p.frontTab()),
	)
	p.tabs.OnSelected = func(*container.TabItem) { p.redraw() }
	floors := container.NewHSplit(p.here.content, p.there.content)
	split := container.NewVSplit(floors, p.tabs)
	split.SetOffset(0.48)
	head := container.NewHBox(widget.NewLabel("Handed on to"), container.New(pickWidth(230), p.pick), p.labels)
	p.whole = container.NewBorder(container.NewVBox(container.NewBorder(nil, nil, head, nil, p.summary)), nil, nil, nil, split)
	p.empty = fields.Empty("Only one floor so far",
		"A transfer is the difference between two floors: the room in which it was rehearsed, and the stage or the next room.",
		"Add the next floor", func() { d.Go(desk.Floors, desk.Selection{}) })
	p.body = container.NewStack(p.whole)
	return p
}

// pickWidth gives the choice of the floor room for its name.
type pickWidth float32

func (w pickWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(w), objects[0].MinSize().Height)
}

func (w pickWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Transfer }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.body }

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	from := v.Work(v.Floor)
	p.to = nextFloor(v.P, v.Floor, p.to)
	to := v.Work(p.to)
	if from == nil || to == nil {
		p.present(p.empty)
		return
	}
	p.present(p.whole)
	names := floorNames(v.P, v.Floor)
	p.pick.SetOptions(names...)
	p.pick.Set(nameOf(v.P, p.to))
	t := prep.TransferBetween(v.P, from, to)
	ready, text := handOver(t)
	kind := fields.Warning
	if ready {
		kind = fields.Good
	}
	p.summary.Set(kind, text, "", nil)
	p.showSides(v, from, to)
	p.showTab(v, t)
}

func (p *place) present(o fyne.CanvasObject) {
	if p.body.Objects[0] != o {
		p.body.Objects = []fyne.CanvasObject{o}
		p.body.Refresh()
	}
}

func (p *place) redraw() {
	if p.view != nil {
		p.Show(p.view)
	}
}

// chose takes the floor to hand on to, by its name.
func (p *place) chose(name string) error {
	for _, f := range p.view.P.Floors {
		if f.Name == name && f.ID != p.view.Floor {
			p.to = f.ID
			p.redraw()
			return nil
		}
	}
	return nil
}

func (p *place) showTab(v *desk.View, t prep.Transfer) {
	switch p.tabs.SelectedIndex() {
	case tabGoing:
		e := elementOf(v)
		p.going.SetRows(goingRows(v, t))
		p.detail.SetRows(detailRows(v, t, e))
		p.about.SetText(detailWords(t, e))
		switch {
		case v.Selected.Kind == desk.Element:
			p.going.Select(v.Selected.IDs...)
		default:
			p.going.Select(string(e))
		}
	case tabDiffers:
		p.differs.show(v, v.Work(v.Floor), v.Work(p.to))
	case tabRests:
		p.rests.SetRows(restRows(v, t.Rests))
	case tabNotes:
		p.notes.SetChoices(ntAbout, abouts(v.P))
		p.notes.SetRows(noteRows(v.P))
		if v.Selected.Kind == desk.Note {
			p.notes.Select(v.Selected.IDs...)
		}
		p.note.SetText(noteInFull(v))
	case tabFront:
		p.missing.SetRows(missingRows(t))
		p.bring.SetRows(bringRows(v, t))
		p.words.SetText(danceWords(v, t))
	}
}

// Zoom and Fit serve the View menu.
func (p *place) Zoom(by float64) { p.here.canvas.Zoom(by); p.there.canvas.Zoom(by) }
func (p *place) Fit()            { p.here.canvas.Fit(); p.there.canvas.Fit() }

// Find looks in the list that is open.
func (p *place) Find() {
	switch p.tabs.SelectedIndex() {
	case tabNotes:
		p.notes.FocusFilter()
	case tabDiffers:
		p.differs.list.FocusFilter()
	case tabRests:
		p.rests.FocusFilter()
	case tabFront:
		p.missing.FocusFilter()
	default:
		p.going.FocusFilter()
	}
}

func swatch(p *prep.Production, id plan.StockID) color.Color {
	if s := p.Stock(id); s != nil {
		if c, ok := floorpicture.Swatch(s.Swatch); ok {
			return c
		}
	}
	return nil
}
