// Package marksplace is the place in which the marks of a floor are looked
// through, measured, placed and checked, and its pivots and dance lines are set.
package marksplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// place is the place Marks.
type place struct {
	desk  *desk.Desk
	view  *desk.View
	body  *fyne.Container
	whole fyne.CanvasObject
	empty fyne.CanvasObject

	quality *fields.Banner
	labels  *fields.Banner
	said    *widget.Label
	canvas  *floorcanvas.Canvas
	setting bool // the next click on the canvas sets a pivot
	fitted  floor.ID

	tabs    *container.AppTabs
	table   *grid.Grid
	rows    []grid.Row // what the table shows
	methods *methodPanel
	pivots  *pivotPanel
	checks  *checkPanel
	dance   *dancePanel
	wear    *wearPanel
	back    *backPanel
}

var (
	_ desk.Place   = (*place)(nil)
	_ desk.Zoomer  = (*place)(nil)
	_ desk.Finder  = (*place)(nil)
	_ desk.Adder   = (*place)(nil)
	_ desk.Remover = (*place)(nil)
	_ desk.Copier  = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place {
	p := &place{desk: d, said: widget.NewLabel("")}
	p.said.Truncation = fyne.TextTruncateEllipsis
	p.quality = fields.NewBanner(fields.Note, "", "", nil)
	p.labels = fields.NewBanner(fields.Note, "", "", nil)
	p.buildCanvas()
	p.buildTable()
	p.methods = newMethodPanel(p)
	p.pivots, p.checks, p.dance = newPivotPanel(p), newCheckPanel(p), newDancePanel(p)
	p.wear, p.back = newWearPanel(p), newBackPanel(p)
	p.tabs = container.NewAppTabs(
		container.NewTabItem("Marks", container.NewBorder(nil, p.methods.content, nil, nil, p.table)),
		container.NewTabItem("Pivots and right angle", p.pivots.content),
		container.NewTabItem("Checks", p.checks.content),
		container.NewTabItem("Dance lines", p.dance.content),
		container.NewTabItem("Wear", p.wear.content),
		container.NewTabItem("Moved pieces", p.back.content),
	)
	p.tabs.OnSelected = func(*container.TabItem) {
		if p.view != nil {
			p.Show(p.view)
		}
	}
	left := container.NewBorder(p.said, nil, nil, nil, p.canvas)
	split := container.NewHSplit(left, p.tabs)
	split.SetOffset(0.3)
	p.whole = container.NewBorder(container.NewVBox(p.quality, p.labels), nil, nil, nil, split)
	p.empty = fields.Empty("No floor yet",
		"Marks follow from the plan and the floor on which it is laid. Add the rehearsal room first.",
		"Go to the floors", func() { d.Go(desk.Floors, desk.Selection{}) })
	p.body = container.NewStack(p.whole)
	return p
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Marks }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.body }

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	w := v.Here()
	if w == nil {
		p.present(p.empty)
		return
	}
	p.present(p.whole)
	p.canvas.Set(picture(v, w))
	if p.fitted != v.Floor {
		p.fitted, p.setting = v.Floor, false
		p.canvas.Fit()
	}
	p.canvas.SetSelected(floorpicture.IDs(v.Selected))
	p.showQuality(v, w)
	p.showLabels(v)
	p.checks.setUnit(v)
	p.showTab(v, w)
}

// picture is the floor with its marks, and about those that are selected how sure they
// are.
func picture(v *desk.View, w *prep.FloorWork) floorcanvas.Picture {
	return floorpicture.OfFloor(v.P, v.Work(v.Floor), v.Scene, floorpicture.Options{
		Labels: true, Sure: marksOf(v.Selected, w), Pivots: true, Faint: true,
	})
}

func (p *place) present(o fyne.CanvasObject) {
	if p.body.Objects[0] != o {
		p.body.Objects = []fyne.CanvasObject{o}
		p.body.Refresh()
	}
}

// showTab sets the tab that is seen; the others are set when they are opened.
func (p *place) showTab(v *desk.View, w *prep.FloorWork) {
	switch p.tabs.SelectedIndex() {
	case tabMarks:
		p.showTable(v, w)
	case tabPivots:
		p.pivots.show(v, w)
	case tabChecks:
		p.checks.show(v, w)
	case tabDance:
		p.dance.show(v, w)
	case tabWear:
		p.wear.show(v)
	case tabBack:
		p.back.show(v, w)
	}
}

// The tabs in their order.
const (
	tabMarks = iota
	tabPivots
	tabChecks
	tabDance
	tabWear
	tabBack
)

// Zoom and Fit serve the View menu.
func (p *place) Zoom(by float64) { p.canvas.Zoom(by) }
func (p *place) Fit()            { p.canvas.Fit() }

// Find looks in the table that is open.
func (p *place) Find() {
	switch p.tabs.SelectedIndex() {
	case tabPivots:
		p.pivots.table.Focus()
	case tabChecks:
		p.checks.table.FocusFilter()
	case tabDance:
		p.dance.lines.Focus()
	case tabWear:
		p.wear.table.FocusFilter()
	case tabBack:
		p.back.points.Focus()
	default:
		p.table.FocusFilter()
	}
}

// Add adds a pivot, or a dance line where those are shown.
func (p *place) Add() {
	switch {
	case p.view == nil || p.view.P.Floor(p.view.Floor) == nil:
	case p.tabs.SelectedIndex() == tabDance:
		p.dance.add()
	default:
		p.tabs.SelectIndex(tabPivots)
		p.pivots.add()
	}
}

// Remove deletes the selected pivots, readings, dance lines or moves. Marks follow from the plan
// and cannot be deleted here.
func (p *place) Remove() {
	switch p.tabs.SelectedIndex() {
	case tabPivots:
		p.pivots.remove(p.pivots.table.Selected())
	case tabChecks:
		p.checks.remove(p.checks.table.Selected())
	case tabDance:
		p.dance.remove(p.dance.lines.Selected())
	case tabBack:
		p.back.remove(p.back.moves.Selected())
	default:
		p.desk.Told("Marks follow from the plan: delete the element, or leave it out on this floor.")
	}
}

// edit makes a named change to the floor that is looked at.
func (p *place) edit(label string, change func(*floor.Floor) error) bool {
	return p.desk.Edit(label, onFloor(p.view.Floor, change))
}
