// Package floorsplace is the place in which rooms, cloths and stages are
// described and the plan is set in them.
package floorsplace

import (
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
	"groundrow/ui/grid"
)

// place is the place Floors.
type place struct {
	desk    *desk.Desk
	view    *desk.View
	content fyne.CanvasObject
	body    *fyne.Container
	empty   fyne.CanvasObject
	whole   fyne.CanvasObject

	canvas  *floorcanvas.Canvas
	said    *widget.Label
	table   *grid.Grid
	under   *under
	tool    tool
	drawing floor.FeatureKind // what drawFeature draws
	bar     *fields.Toolbar
	side    *fyne.Container
	floor   *floorForm
	thing   *thingForm
	feature *featureForm
	way     *wayForm
	element *treatmentForm
	measure *measuredPage
	placing *placingPage
	at      fyne.CanvasObject // what is worked at: the whole floor or the room as measured
	fitted  floor.ID
	scored  scored
	names   bool // the elements' names are shown on the canvas
}

// scored is the floor that the plan is being dragged on, ready for scoring.
type scored struct {
	of      *floor.Floor
	scoring *placement.Case
}

var (
	_ desk.Place   = (*place)(nil)
	_ desk.Zoomer  = (*place)(nil)
	_ desk.Finder  = (*place)(nil)
	_ desk.Adder   = (*place)(nil)
	_ desk.Remover = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place {
	p := &place{desk: d, said: widget.NewLabel("")}
	p.said.Truncation = fyne.TextTruncateEllipsis
	p.buildCanvas()
	p.buildTable()
	p.floor, p.thing, p.element = newFloorForm(p), newThingForm(p), newTreatmentForm(p)
	p.feature, p.way = newFeatureForm(p), newWayForm(p)
	p.side = container.NewStack(p.floor.form)

	middle := container.NewBorder(container.NewVBox(p.toolbar(), p.said), nil, nil, nil, p.canvas)
	p.under = newUnder(p)
	left := container.NewVSplit(middle, p.under.tabs)
	left.SetOffset(0.62)
	all := container.NewHSplit(left, container.NewVScroll(p.side))
	all.SetOffset(0.74)
	p.whole, p.at = all, all
	p.measure = newMeasuredPage(d, func() { p.workAt(p.whole) })
	p.placing = newPlacingPage(d, func() { p.workAt(p.whole) })
	p.empty = fields.Empty("No floor yet",
		"A floor is any surface on which the plan is laid: the rehearsal room, a second room, a floor cloth, the stage.",
		"Add a rehearsal room", p.Add)
	p.body = container.NewStack(p.whole)
	p.content = p.body
	return p
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Floors }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.content }

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	w := v.Work(v.Floor)
	if w == nil {
		p.body.Objects = []fyne.CanvasObject{p.empty}
		p.body.Refresh()
		return
	}
	if p.body.Objects[0] != p.at {
		p.body.Objects = []fyne.CanvasObject{p.at}
		p.body.Refresh()
	}
	switch p.at {
	case p.measure.content:
		p.measure.Show(v)
		return
	case p.placing.content:
		p.placing.Show(v)
		return
	}
	p.said.SetText(p.hint(v, w))
	p.canvas.Set(floorpicture.OfFloor(v.P, w, v.Scene, floorpicture.Options{
		FloorAxes: true, Spikes: true, Names: p.names, Pivots: true, Corners: true, Placement: true, Ways: true, Faint: true,
		Sometimes: p.under.tabs.SelectedIndex() == tabScenes,
	}))
	if p.fitted != v.Floor {
		p.fitted = v.Floor
		p.canvas.Fit()
	}
	p.canvas.SetSelected(floorpicture.IDs(v.Selected))
	p.under.show(v, w)
	p.showSide(v, w)
}

// hint says what the tool in the hand waits for; without one how the plan sits.
func (p *place) hint(v *desk.View, w *prep.FloorWork) string {
	if p.tool == drawFeature {
		return featureHints[p.drawing]
	}
	return p.tool.hint(p.under.summary(v, w))
}

// showSide shows the form of what is selected; the floor's own without one.
func (p *place) showSide(v *desk.View, w *prep.FloorWork) {
	form := p.floor.form
	switch v.Selected.Kind {
	case desk.Element:
		if p.element.show(v, w) {
			form = p.element.form
		}
	case desk.Obstacle, desk.KeepClear, desk.Step, desk.Pivot:
		if p.thing.show(v, w) {
			form = p.thing.form
		}
	case desk.Feature:
		if p.feature.show(v, w) {
			form = p.feature.form
		}
	case desk.Way:
		if p.way.show(v, w) {
			form = p.way.form
		}
	}
	p.floor.show(v, w)
	if p.side.Objects[0] != form {
		p.side.Objects = []fyne.CanvasObject{form}
		p.side.Refresh()
	}
}

// workAt changes between the whole floor and the room as measured.
func (p *place) workAt(what fyne.CanvasObject) {
	p.at = what
	if p.view != nil {
		p.Show(p.view)
	}
}

// Zoom and Fit serve the View menu.
func (p *place) Zoom(by float64) { p.seen().Zoom(by) }
func (p *place) Fit()            { p.seen().Fit() }

// seen is the drawing in view.
func (p *place) seen() *floorcanvas.Canvas {
	switch p.at {
	case p.measure.content:
		return p.measure.canvas
	case p.placing.content:
		return p.placing.canvas
	}
	return p.canvas
}

// Find looks in the list under the canvas.
func (p *place) Find() { p.under.find() }

// Add makes another floor and looks at it.
func (p *place) Add() {
	f := newFloor(floor.Room, "Another room")
	if p.desk.Edit("Add a floor", func(pr *prep.Production) error {
		pr.Floors = append(pr.Floors, f)
		return nil
	}) {
		p.desk.ChooseFloor(f.ID)
	}
}

// Remove takes what is selected in the room away.
func (p *place) Remove() {
	s := p.view.Selected
	switch s.Kind {
	case desk.Obstacle, desk.KeepClear, desk.Step, desk.Feature, desk.Way, desk.Pivot:
		p.desk.Edit("Take out "+string(s.Kind), onFloor(p.view.Floor, func(f *floor.Floor) error {
			remove(f, s.IDs)
			return nil
		}))
		p.desk.Select(desk.Selection{})
	}
}

// edit makes a named change to the floor that is looked at.
func (p *place) edit(label string, change func(*floor.Floor) error) bool {
	return p.desk.Edit(label, onFloor(p.view.Floor, change))
}

// tryEdit is edit for a field that writes its own error.
func (p *place) tryEdit(label string, change func(*floor.Floor) error) error {
	return p.desk.TryEdit(label, onFloor(p.view.Floor, change))
}

// pointed tells the status line where the pointer is, in datum axes.
func (p *place) pointed(at plane.Point) {
	if f := p.view.P.Floor(p.view.Floor); f != nil {
		p.desk.Pointed(f.FloorToDatum().Apply(at), true)
	}
}
