// Package planplace is the place in which the ground plan is read in, drawn and
// corrected: its elements and their lines, levels and scenes, and its scale.
package planplace

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/drawingin"
)

// actions are what the parts of the place ask of it.
type actions struct {
	add, duplicate, remove func()
	name                   func() // go to the name of the selected element
	plan                   func() // show the plan itself beside the drawing
	read                   func() // read an element off the paper
	drawing                func() // bring in a drawing from a file
	draw                   func() // draw a new element
	drawInto               func(plan.ElementID)
	line                   func() plan.PathID // the line whose corners are in the table
	redraw                 func()             // show the same view anew
}

type place struct {
	desk  *desk.Desk
	list  *listPanel
	board *board
	side  *sidePanel
	sheet *paperSheet
	page  *drawingin.Page
	work  fyne.CanvasObject
	whole *fyne.Container
	read  desk.Selection // what was selected when the page was opened
}

var (
	_ desk.Place      = (*place)(nil)
	_ desk.Zoomer     = (*place)(nil)
	_ desk.Finder     = (*place)(nil)
	_ desk.Adder      = (*place)(nil)
	_ desk.Remover    = (*place)(nil)
	_ desk.Copier     = (*place)(nil)
	_ desk.Duplicator = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place { return build(d) }

func build(d *desk.Desk) *place {
	p := &place{desk: d}
	does := actions{
		add: p.Add, duplicate: p.Duplicate, remove: p.Remove,
		name: func() { p.side.focusName() },
		plan: func() { d.Select(desk.Selection{}) },
		read: p.openSheet, drawing: p.openPage, draw: func() { p.board.take(drawLine) },
		drawInto: func(id plan.ElementID) { p.board.drawInto(id) },
		line:     func() plan.PathID { return p.side.element.lines.path },
		redraw:   func() { p.Show(d.View()) },
	}
	p.list = newListPanel(d, does)
	p.board = newBoard(d, does, p.list.shown)
	p.side = newSidePanel(d, does)
	p.sheet = newPaperSheet(d, p.closeSheet)
	p.page = drawingin.New(d, p.closeSheet)
	p.list.changed = func() { p.board.show(d.View()) }

	right := container.NewHSplit(p.board.content, p.side.content)
	right.Offset = 0.64
	all := container.NewHSplit(p.list.content, right)
	all.Offset = 0.23
	p.work = all
	p.whole = container.NewStack(p.work)
	return p
}

// Name implements desk.Place.
func (p *place) Name() desk.Name { return desk.Plan }

// Content implements desk.Place.
func (p *place) Content() fyne.CanvasObject { return p.whole }

// Show implements desk.Place.
func (p *place) Show(v *desk.View) {
	if p.reading() && !slices.Equal(p.read.IDs, v.Selected.IDs) {
		p.closeSheet() // somebody has been sent to an element from another place
		return
	}
	p.list.show(v)
	p.board.show(v)
	p.side.show(v)
	p.sheet.show(v)
	if p.reading() && p.whole.Objects[0] == p.page.Content() {
		p.page.Show(v)
	}
}

// Zoom implements desk.Zoomer.
func (p *place) Zoom(by float64) { p.zoomer().Zoom(by) }

// Fit implements desk.Zoomer.
func (p *place) Fit() { p.zoomer().Fit() }

// zoomer is the drawing that is seen.
func (p *place) zoomer() desk.Zoomer {
	if p.whole.Objects[0] == p.page.Content() {
		return p.page
	}
	return p.board.canvas
}

// Find implements desk.Finder.
func (p *place) Find() {
	p.closeSheet()
	p.desk.Window().Canvas().Focus(p.list.find)
	p.list.find.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// Add begins a new element by drawing it.
func (p *place) Add() {
	p.closeSheet()
	p.board.take(drawLine)
}

// Remove deletes the selected elements.
func (p *place) Remove() {
	ids := selected(p.desk.View())
	if len(ids) == 0 {
		return
	}
	name := named(p.desk.View().P, ids)
	if p.desk.Edit("Delete "+name, func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemoveElement(id)
		}
		return nil
	}) {
		p.desk.Select(desk.Selection{})
		p.desk.Told("Deleted " + name + ". Undo brings it back.")
	}
}

// Duplicate copies the selected elements beside themselves and selects the
// copies.
func (p *place) Duplicate() {
	v := p.desk.View()
	ids := selected(v)
	if len(ids) == 0 {
		return
	}
	var made []plan.ElementID
	if p.desk.Edit("Duplicate "+named(v.P, ids), func(pr *prep.Production) error {
		made = duplicate(pr, ids, aside(v.P.Unit()), uuid.NewString)
		return nil
	}) {
		p.desk.Select(elements(made))
	}
}

// aside is how far a copy lies from what was copied: a foot or 300 mm to stage
// left and upstage, enough to be told apart.
func aside(u length.Unit) plane.Point {
	d := length.Foot
	if u.Metric() {
		d = 0.3
	}
	return plane.Point{X: d, Y: d}
}

// Copy gives the corners of the selected elements as tab-separated text.
func (p *place) Copy() string {
	v := p.desk.View()
	return cornersText(v.P, selected(v))
}

func (p *place) openSheet() {
	p.read = p.desk.View().Selected
	p.whole.Objects = []fyne.CanvasObject{p.sheet.content}
	p.whole.Refresh()
	p.sheet.begin(p.desk.View())
}

// openPage opens the page on which a drawing is brought in.
func (p *place) openPage() {
	p.read = p.desk.View().Selected
	p.whole.Objects = []fyne.CanvasObject{p.page.Content()}
	p.whole.Refresh()
	p.page.Show(p.desk.View())
}

// BringIn opens the page for a drawing with a file; the empty path asks for one.
func (p *place) BringIn(path string) {
	p.openPage()
	if path == "" {
		p.page.Choose()
		return
	}
	p.page.Open(path)
}

// reading tells whether a page for bringing something in is open.
func (p *place) reading() bool { return p.whole.Objects[0] != p.work }

func (p *place) closeSheet() {
	if !p.reading() {
		return
	}
	p.whole.Objects = []fyne.CanvasObject{p.work}
	p.whole.Refresh()
	p.Show(p.desk.View())
}

// selected returns the selected elements that the plan has.
func selected(v *desk.View) []plan.ElementID {
	if v == nil || v.Selected.Kind != desk.Element {
		return nil
	}
	var ids []plan.ElementID
	for _, id := range v.Selected.IDs {
		if v.P.Plan.Element(plan.ElementID(id)) != nil {
			ids = append(ids, plan.ElementID(id))
		}
	}
	return ids
}

func elements(ids []plan.ElementID) desk.Selection {
	s := desk.Selection{Kind: desk.Element}
	for _, id := range ids {
		s.IDs = append(s.IDs, string(id))
	}
	return s
}
