// Package standinsplace is the place in which objects of the rehearsal stock are found to stand in for scenery.
package standinsplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// place is the place Stand-ins.
type place struct {
	desk    *desk.Desk
	view    *desk.View
	element plan.ElementID // the element last selected; the stock is sorted by how well it fits

	tabs     *container.AppTabs
	said     *widget.Label
	caution  *fields.Banner
	pairs    *grid.Grid
	offers   *grid.Grid
	use      *fields.Button
	proposed *fields.Button
	form     *pairForm
	canvas   *floorcanvas.Canvas
	stock    *grid.Grid
	pull     *grid.Grid

	fitted fitting
}

var (
	_ desk.Place   = (*place)(nil)
	_ desk.Zoomer  = (*place)(nil)
	_ desk.Finder  = (*place)(nil)
	_ desk.Adder   = (*place)(nil)
	_ desk.Remover = (*place)(nil)
	_ desk.Copier  = (*place)(nil)
)

// fitting is what the canvas was last fitted to.
type fitting struct {
	floor floor.ID
	scene plan.SceneID
}

// The tabs, in their order.
const (
	tabPairs = iota
	tabStock
	tabPull
)

// New builds the place.
func New(d *desk.Desk) desk.Place { return newPlace(d) }

func newPlace(d *desk.Desk) *place {
	p := &place{desk: d, said: widget.NewLabel(""), caution: fields.NewBanner(fields.Warning, "", "", nil)}
	p.said.Truncation = fyne.TextTruncateEllipsis
	p.form = newPairForm(p)
	p.canvas = p.newCanvas()
	p.stock, p.pull = p.newStock(), p.newPull()
	p.tabs = container.NewAppTabs(
		container.NewTabItem("What stands for what", p.pairsTab()),
		container.NewTabItem("Rehearsal stock", p.stock),
		container.NewTabItem("Pull list", p.pull),
	)
	p.tabs.OnSelected = func(*container.TabItem) {
		if p.view != nil {
			p.Show(p.view)
		}
	}
	return p
}

// pairsTab lays out the elements, the stock beside them, and the floor below.
func (p *place) pairsTab() fyne.CanvasObject {
	p.pairs, p.offers = p.newPairs(), p.newOffers()
	p.proposed = fields.NewButton("Propose for what is open", p.propose)
	p.use = fields.NewButton("Let it stand in", func() {
		if ids := p.offers.Selected(); len(ids) > 0 {
			p.useObject(ids[0])
		}
	})
	p.pairs.SetTools(p.proposed)
	p.offers.SetTools(p.use)
	upper := container.NewHSplit(p.pairs, p.offers)
	upper.SetOffset(0.63)
	lower := container.NewHSplit(p.canvas, container.NewVScroll(p.form.whole))
	lower.SetOffset(0.63)
	all := container.NewVSplit(upper, lower)
	all.SetOffset(0.5)
	return container.NewBorder(container.NewVBox(p.said, p.caution), nil, nil, nil, all)
}

func (p *place) newCanvas() *floorcanvas.Canvas {
	c := floorcanvas.New()
	c.OnSelect = func(ids []string, _ bool) {
		if s := floorpicture.Selection(ids); s.Kind == desk.Element || s.Kind == desk.Nothing {
			p.desk.Select(s)
		}
	}
	c.OnHover = func(at plane.Point, _ string) {
		if f := p.view.P.Floor(p.view.Floor); f != nil {
			p.desk.Pointed(f.FloorToDatum().Apply(at), true)
		}
	}
	c.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	return c
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.StandIns }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.tabs }

// Show sets the tab that is open from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	p.keepElement(v)
	switch p.tabs.SelectedIndex() {
	case tabPairs:
		p.showPairs(v)
	case tabStock:
		p.stock.SetRows(stockRows(v.P))
		follow(p.stock, v.Selected)
	case tabPull:
		p.pull.SetRows(pullRows(v.P))
		follow(p.pull, v.Selected)
	}
}

// keepElement remembers the element whose stand-in is looked for, whichever place selected it.
func (p *place) keepElement(v *desk.View) {
	if len(v.Selected.IDs) == 0 {
		p.element = ""
		return
	}
	id := plan.ElementID(v.Selected.IDs[0])
	for _, s := range v.P.StandIns {
		if s.ID == v.Selected.IDs[0] {
			id = s.Element
		}
	}
	switch {
	case v.P.Plan.Element(id) != nil:
		p.element = id
	case v.P.Plan.Element(p.element) == nil:
		p.element = ""
	}
}

func (p *place) showPairs(v *desk.View) {
	p.said.SetText(summary(v))
	p.caution.Set(fields.Warning, caution(v.P), "", nil)
	p.pairs.SetChoices(colObject, objectNames(v.P, p.element))
	p.pairs.SetRows(pairRows(v))
	p.offers.SetRows(offerRows(v, p.element))
	if p.element != "" && len(p.pairs.Selected()) < 2 {
		p.pairs.Follow(string(p.element))
	}
	follow(p.offers, v.Selected)
	p.form.show(v, p.element)
	p.showUse(v)
	p.showFloor(v)
}

// showUse names what the button does.
func (p *place) showUse(v *desk.View) {
	e := v.P.Plan.Element(p.element)
	if e == nil {
		p.use.SetText("Let it stand in")
		p.use.SetEnabled(false)
		return
	}
	p.use.SetText("Let it stand in for " + short(e.Name))
	p.use.SetEnabled(true)
}

// short keeps a button's words from pushing others away.
func short(name string) string {
	const room = 20
	if r := []rune(name); len(r) > room {
		return string(r[:room-1]) + "…"
	}
	return name
}

func (p *place) showFloor(v *desk.View) {
	w := v.Work(v.Floor)
	if w == nil {
		p.canvas.Set(floorcanvas.Picture{Style: v.Style()})
		return
	}
	p.canvas.Set(pictureOf(v, w))
	if at := (fitting{v.Floor, v.Scene}); p.fitted != at {
		p.fitted = at
		p.canvas.Fit()
	}
	p.canvas.SetSelected(selectedOn(v, p.element))
}

// follow marks in a table of objects those that are selected elsewhere.
func follow(g *grid.Grid, s desk.Selection) {
	if s.Kind == desk.Object {
		g.Follow(s.IDs...)
	}
}

// Zoom and Fit serve the View menu.
func (p *place) Zoom(by float64) { p.canvas.Zoom(by) }
func (p *place) Fit()            { p.canvas.Fit() }

// Find looks for a row in the table that is open.
func (p *place) Find() {
	[]*grid.Grid{p.pairs, p.stock, p.pull}[p.tabs.SelectedIndex()].FocusFilter()
}

// Add adds an object where the stock is listed, else asks for an element to stand in for.
func (p *place) Add() {
	if p.tabs.SelectedIndex() == tabPairs {
		p.askElement()
		return
	}
	p.addObject()
}

// Remove deletes what is selected: objects from the stock, or what stands for an element.
func (p *place) Remove() {
	switch s := p.view.Selected; s.Kind {
	case desk.Object:
		p.deleteObjects(s.IDs)
	case desk.Element, desk.StandIn:
		p.forget([]string{string(p.element)})
	}
}
