package suppliesplace

import (
	"fmt"
	"slices"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// Find looks for something in the table that is open.
func (p *place) Find() { p.table().FocusFilter() }

// Add makes a new order where orders are looked at, else a thing of the kit.
func (p *place) Add() {
	if p.tabs.SelectedIndex() == tabOrders {
		p.addOrder(p.nextToOrder())
		return
	}
	group := ""
	if id, ok := p.view.Selected.Of(desk.Item); ok {
		if it := itemOf(p.view.P, id); it != nil {
			group = it.Group
		}
	}
	p.addItem("Add a thing to the kit", newItem(group))
}

// Duplicate makes another thing of the kit like the selected one.
func (p *place) Duplicate() {
	id, ok := p.view.Selected.Of(desk.Item)
	it := itemOf(p.view.P, id)
	if !ok || it == nil {
		return
	}
	twin := *it
	twin.ID, twin.Name = uuid.NewString(), it.Name+", another"
	twin.Shelf, twin.Out, twin.Back = 0, 0, 0
	p.addItem("Duplicate a thing of the kit", twin)
}

func (p *place) addItem(label string, it supplies.Item) {
	if !p.desk.Edit(label, func(pr *prep.Production) error {
		pr.Items = append(pr.Items, it)
		return nil
	}) {
		return
	}
	p.tabs.SelectIndex(tabShelf)
	p.desk.Select(desk.Select(desk.Item, it.ID))
	p.shelf.Edit(it.ID, shelfName)
}

// Remove deletes what is selected.
func (p *place) Remove() {
	if p.view.Selected.Kind == desk.Order {
		p.removeOrders(p.view.Selected.IDs)
		return
	}
	p.removeSupplies(p.view.Selected.IDs)
}

// removeSupplies deletes tapes and things of the kit, and asks first where that
// takes orders or the tape of elements along.
func (p *place) removeSupplies(ids []string) {
	elements, orders := attached(p.view.P, ids)
	if len(ids) == 0 {
		return
	}
	label := "Delete " + reckoning.Count(len(ids), "thing") + " of the supplies"
	do := func() {
		p.desk.Edit(label, func(pr *prep.Production) error {
			for _, id := range ids {
				pr.RemoveStock(plan.StockID(id))
				if itemOf(pr, id) != nil {
					pr.RemoveItem(id)
				}
			}
			return nil
		})
	}
	if elements+orders == 0 {
		do()
		return
	}
	fields.Confirm(p.desk.Window(), label+"?", fmt.Sprintf("%s of the plan will have no tape chosen, and %s will go.",
		reckoning.Count(elements, "element"), reckoning.Count(orders, "order")), "Delete", do)
}

// attached counts the elements that name what is to be deleted, and its orders.
func attached(p *prep.Production, ids []string) (elements, orders int) {
	for i := range p.Plan.Elements {
		if slices.Contains(ids, string(p.Plan.Elements[i].Stock)) {
			elements++
		}
	}
	for _, o := range p.Orders {
		if slices.Contains(ids, o.For) {
			orders++
		}
	}
	return elements, orders
}

func (p *place) removeOrders(ids []string) {
	if len(ids) == 0 {
		return
	}
	p.desk.Edit("Delete "+reckoning.Count(len(ids), "order"), func(pr *prep.Production) error {
		pr.Orders = slices.DeleteFunc(pr.Orders, func(o supplies.Order) bool { return slices.Contains(ids, o.ID) })
		return nil
	})
}

// addKit puts in what a tape-out usually takes along.
func (p *place) addKit() {
	p.desk.Edit("Add the usual kit", func(pr *prep.Production) error {
		pr.Items = append(pr.Items, supplies.StandardKit(length.Unit(pr.Settings.Unit), uuid.NewString)...)
		return nil
	})
}

// orderShort plans an order for everything that is short, as one edit.
func (p *place) orderShort() {
	needed := p.needed
	if planShort(&prep.Production{Orders: slices.Clone(p.view.P.Orders)}, needed) == 0 {
		p.desk.Told("Everything that is short has an order planned already, or nothing is short.")
		return
	}
	n := 0
	if p.desk.Edit("Plan orders for what is short", func(pr *prep.Production) error {
		n = planShort(pr, needed)
		return nil
	}) {
		p.tabs.SelectIndex(tabOrders)
		p.desk.Told(reckoning.Count(n, "order") + " planned. Mark them as ordered when they have gone out.")
	}
}

// nextToOrder is what a new order is for: what is selected, else what is most
// urgent.
func (p *place) nextToOrder() string {
	for _, kind := range []desk.Kind{desk.Stock, desk.Item} {
		if id, ok := p.view.Selected.Of(kind); ok && id != "" {
			return id
		}
	}
	if len(p.needed) > 0 {
		return p.needed[0].id
	}
	return ""
}

// addOrder plans an order for one thing and opens it.
func (p *place) addOrder(id string) {
	if id == "" {
		p.desk.Told("There is nothing to order yet: add a tape or a thing of the kit first.")
		return
	}
	n := p.needOf(id)
	o := supplies.Order{ID: uuid.NewString(), For: id, Quantity: max(1, n.buy-n.planned), State: supplies.Planned, Supplier: n.supplier}
	if p.desk.Edit("Plan an order", func(pr *prep.Production) error {
		pr.Orders = append(pr.Orders, o)
		return nil
	}) {
		p.tabs.SelectIndex(tabOrders)
		p.desk.Select(desk.Select(desk.Order, o.ID))
		p.orders.Edit(o.ID, orderQuantity)
	}
}

// move takes the selected orders from one state to the next; without a selection
// all that are in the first.
func (p *place) move(from, to supplies.OrderState) {
	chosen := p.orders.Selected()
	var ids []string
	for _, o := range p.view.P.Orders {
		if o.State == from && (len(chosen) == 0 || slices.Contains(chosen, o.ID)) {
			ids = append(ids, o.ID)
		}
	}
	if len(ids) == 0 {
		p.desk.Told(fmt.Sprintf("No order that is %s is chosen.", from))
		return
	}
	label := fmt.Sprintf("Mark %s as %s", reckoning.Count(len(ids), "order"), to)
	if len(ids) == 1 {
		label = stateLabel(p.view.P, ids[0], to)
	}
	now := p.now()
	p.desk.Edit(label, func(pr *prep.Production) error {
		for _, id := range ids {
			if o := orderOf(pr, id); o != nil {
				if err := setState(pr, o, to, now); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// countKit counts the selected things of the kit, or all of it.
func (p *place) countKit(label string, count func(*supplies.Item)) {
	chosen := p.shelf.Selected()
	p.desk.Edit(label, func(pr *prep.Production) error {
		for i := range pr.Items {
			if len(chosen) == 0 || slices.Contains(chosen, pr.Items[i].ID) {
				count(&pr.Items[i])
			}
		}
		return nil
	})
}

// table is the one that is looked at.
func (p *place) table() *grid.Grid {
	switch p.tabs.SelectedIndex() {
	case tabShelf:
		return p.shelf
	case tabOrders:
		return p.orders
	}
	return p.needs
}
