// Package suppliesplace is the place in which supplies are counted and ordered:
// what is needed, what is on the shelf and what is on order are one list seen
// from three sides.
package suppliesplace

import (
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// The tabs of the place.
const (
	tabNeeds = iota
	tabShelf
	tabOrders
)

// place is the place Supplies.
type place struct {
	desk     *desk.Desk
	now      func() time.Time
	view     *desk.View
	needed   []need
	content  *fyne.Container
	followed string // the selection that a table has been opened for

	top    *fyne.Container
	left   *fyne.Container
	said   *widget.Label
	money  *fields.Banner
	tabs   *container.AppTabs
	needs  *grid.Grid
	shelf  *grid.Grid
	orders *grid.Grid
	kit    [2]*fields.Button // offers of the usual kit, over needs and shelf

	side  *fyne.Container
	none  *widget.Label
	item  *itemForm
	stock *stockSide
	order *orderForm
}

var (
	_ desk.Place      = (*place)(nil)
	_ desk.Finder     = (*place)(nil)
	_ desk.Adder      = (*place)(nil)
	_ desk.Remover    = (*place)(nil)
	_ desk.Duplicator = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place { return newPlace(d, time.Now) }

func newPlace(d *desk.Desk, now func() time.Time) *place {
	p := &place{desk: d, now: now, said: widget.NewLabel("")}
	p.said.Truncation = fyne.TextTruncateEllipsis
	p.money = fields.NewBanner(fields.Note, "", "", nil)
	p.buildNeeds()
	p.buildShelf()
	p.buildOrders()
	p.tabs = container.NewAppTabs(
		container.NewTabItem("Needs", p.needs),
		container.NewTabItem("Shelf", p.shelf),
		container.NewTabItem("Orders", p.orders),
	)
	p.item, p.order, p.stock = newItemForm(d), newOrderForm(d, now), newStockSide(p)
	p.none = widget.NewLabel("Choose a tape, a thing of the kit or an order to see and change it here.")
	p.none.Wrapping = fyne.TextWrapWord
	p.side = container.NewStack(p.none)

	p.top = container.NewVBox(p.said, p.money)
	p.left = container.NewBorder(p.top, nil, nil, nil, p.tabs)
	all := container.NewHSplit(p.left, container.NewVScroll(container.NewPadded(p.side)))
	all.SetOffset(0.73)
	p.content = container.NewStack(all)
	return p
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Supplies }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.content }

var moneyKind = map[reckoning.Standing]fields.Kind{
	reckoning.NoBudget: fields.Note, reckoning.Within: fields.Good, reckoning.Over: fields.Danger,
}

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	p.needed = needsOf(v)
	before := p.top.MinSize().Height
	p.said.SetText(shortWords(p.needed, p.now()) + " Orders: " + ordersWords(v.P.Orders) + ".")
	standing, words := reckoning.Budget(v.P, prep.BudgetOf(v.P, v.Work))
	p.money.Set(moneyKind[standing], words, "", nil)
	if p.top.MinSize().Height != before {
		p.left.Refresh()
	}
	p.needs.SetRows(needRows(v.P, p.needed, p.now()))
	p.shelf.SetRows(shelfRows(v.P))
	p.orders.SetChoices(orderFor, goodsOf(v.P).names)
	p.orders.SetRows(orderRows(v.P))
	for _, b := range p.kit {
		if len(v.P.Items) == 0 {
			b.Show()
		} else {
			b.Hide()
		}
	}
	p.showSelected(v)
}

// showSelected marks what is selected in the tables that have it, and describes
// the first of it at the side.
func (p *place) showSelected(v *desk.View) {
	var supply, orders []string
	switch v.Selected.Kind {
	case desk.Stock, desk.Item:
		supply = v.Selected.IDs
	case desk.Order:
		orders = v.Selected.IDs
	}
	selectIn(p.needs, supply)
	selectIn(p.shelf, supply)
	selectIn(p.orders, orders)
	p.followSelection(v.Selected)
	shown := fyne.CanvasObject(p.none)
	if len(supply) > 0 {
		shown = p.describe(v, supply[0])
	}
	if len(orders) > 0 {
		if o := orderOf(v.P, orders[0]); o != nil {
			p.order.show(v.P, o)
			shown = p.order.form
		}
	}
	if p.side.Objects[0] != shown {
		p.side.Objects = []fyne.CanvasObject{shown}
		p.side.Refresh()
	}
}

// describe sets what the side says of a tape or a thing of the kit. A problem
// leads here with its identifier alone, so the kind of the selection is not asked.
func (p *place) describe(v *desk.View, id string) fyne.CanvasObject {
	if it := itemOf(v.P, id); it != nil {
		p.item.show(it, p.needOf(id))
		return p.item.form
	}
	if s := v.P.Stock(plan.StockID(id)); s != nil {
		p.stock.show(v.P, s, p.needOf(id))
		return p.stock.content
	}
	return p.none
}

// followSelection opens a table that has what has newly been selected.
func (p *place) followSelection(s desk.Selection) {
	id := string(s.Kind) + strings.Join(s.IDs, " ")
	if id == p.followed {
		return
	}
	p.followed = id
	at := p.tabs.SelectedIndex()
	switch {
	case len(s.IDs) == 0:
	case s.Kind == desk.Order && at != tabOrders:
		p.tabs.SelectIndex(tabOrders)
	case (s.Kind == desk.Stock || s.Kind == desk.Item) && at == tabOrders:
		p.tabs.SelectIndex(tabNeeds)
	}
}

// selectIn follows the selection without losing the cell that a person is at.
func selectIn(g *grid.Grid, ids []string) {
	if !slices.Equal(g.Selected(), ids) {
		g.Select(ids...)
	}
}

func (p *place) needOf(id string) need {
	i := slices.IndexFunc(p.needed, func(n need) bool { return n.id == id })
	if i < 0 {
		return need{id: id}
	}
	return p.needed[i]
}
