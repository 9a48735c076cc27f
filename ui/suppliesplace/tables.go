package suppliesplace

import (
	"fmt"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

func (p *place) buildNeeds() {
	g := grid.New(needColumns())
	g.OnSelect = p.pickSupply
	g.OnActivate = func(id string) { p.pickSupply([]string{id}) }
	g.SetEmpty("Nothing is needed yet. Tape follows from the plan and a floor; the kit is what goes along with it.", "Add the usual kit", p.addKit)
	p.kit[0] = fields.NewButton("Add the usual kit", p.addKit)
	g.SetTools(p.kit[0], fields.NewButton("Order what is short", p.orderShort))
	p.needs = g
}

func (p *place) buildShelf() {
	g := grid.New(shelfColumns())
	g.OnSelect = p.pickSupply
	g.OnEdit = func(id string, column int, text string) error {
		label := fmt.Sprintf(shelfLabels[column], goodsOf(p.view.P).nameFor(id))
		return p.desk.TryEdit(label, func(pr *prep.Production) error { return editShelf(pr, id, column, text) })
	}
	g.OnAdd = p.Add
	g.OnDelete = func(ids []string) { p.removeSupplies(ids) }
	g.SetToolWords("Add a thing", "Delete")
	g.SetEmpty("Nothing is on the shelf yet.", "Add the usual kit", p.addKit)
	p.kit[1] = fields.NewButton("Add the usual kit", p.addKit)
	g.SetTools(p.kit[1],
		fields.NewButton("Count out", func() { p.countKit("Count the kit out to the room", countOut) }),
		fields.NewButton("Count back", func() { p.countKit("Count the kit back", countBack) }))
	p.shelf = g
}

func (p *place) buildOrders() {
	g := grid.New(orderColumns())
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Order, IDs: ids}) }
	g.OnEdit = p.editOrder
	g.OnAdd = func() { p.addOrder(p.nextToOrder()) }
	g.OnDelete = func(ids []string) { p.removeOrders(ids) }
	g.SetToolWords("Add an order", "Delete")
	g.SetEmpty("Nothing is ordered yet. What is short can be planned with one click.", "Order what is short", p.orderShort)
	g.SetTools(
		fields.NewButton("Order what is short", p.orderShort),
		fields.NewButton("Mark as ordered", func() { p.move(supplies.Planned, supplies.Ordered) }),
		fields.NewButton("Mark as received", func() { p.move(supplies.Ordered, supplies.Received) }))
	p.orders = g
}

// pickSupply selects tapes or things of the kit; of a mixed selection those of
// the kind of the first.
func (p *place) pickSupply(ids []string) {
	s := desk.Selection{}
	for _, id := range ids {
		kind := desk.Item
		if p.view.P.Stock(plan.StockID(id)) != nil {
			kind = desk.Stock
		}
		if s.Kind == desk.Nothing || s.Kind == kind {
			s.Kind = kind
			s.IDs = append(s.IDs, id)
		}
	}
	p.desk.Select(s)
}

// editOrder takes a cell of the orders.
func (p *place) editOrder(id string, column int, text string) error {
	now := p.now()
	label, change := "", func(*prep.Production, *supplies.Order) error { return nil }
	switch column {
	case orderFor:
		of, ok := goodsOf(p.view.P).ids[text]
		if !ok {
			return fmt.Errorf("there is nothing called “%s” to order; choose from the list", text)
		}
		label, change = "Change what is ordered", func(pr *prep.Production, o *supplies.Order) error { return setFor(pr, o, of) }
	case orderQuantity:
		n, err := parseCount(text)
		if err != nil {
			return err
		}
		label, change = "Change how many are ordered", func(pr *prep.Production, o *supplies.Order) error { return setQuantity(pr, o, n) }
	case orderState:
		to := supplies.OrderState(text)
		label, change = stateLabel(p.view.P, id, to), func(pr *prep.Production, o *supplies.Order) error { return setState(pr, o, to, now) }
	case orderPlaced, orderExpected:
		at, err := fields.ParseDay(text, now)
		if err != nil {
			return err
		}
		label, change = "Change the days of an order", func(_ *prep.Production, o *supplies.Order) error {
			if column == orderPlaced {
				o.Placed = at
			} else {
				o.Expected = at
			}
			return nil
		}
	case orderSupplier:
		label, change = "Change the supplier of an order", func(_ *prep.Production, o *supplies.Order) error { o.Supplier = strings.TrimSpace(text); return nil }
	case orderNote:
		label, change = "Change the note of an order", func(_ *prep.Production, o *supplies.Order) error { o.Note = strings.TrimSpace(text); return nil }
	}
	return p.desk.TryEdit(label, onOrder(id, change))
}
