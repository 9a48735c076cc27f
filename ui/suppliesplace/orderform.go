package suppliesplace

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/suppliesplace/reckoning"
)

// orderForm describes one order.
type orderForm struct {
	desk *desk.Desk
	now  func() time.Time
	form *fields.Form
	id   string

	of               *fields.Choice
	quantity         *fields.Whole
	state            *fields.Choice
	placed, expected *fields.Date
	supplier, note   *fields.Text
	said             *widget.Label
	goods            goods
}

func newOrderForm(d *desk.Desk, now func() time.Time) *orderForm {
	f := &orderForm{desk: d, now: now, form: fields.NewForm(), said: widget.NewLabel("")}
	f.said.Wrapping = fyne.TextWrapWord
	f.of = fields.NewChoice()
	f.of.OnCommit = func(name string) error {
		return f.try("Change what is ordered", func(p *prep.Production, o *supplies.Order) error { return setFor(p, o, f.goods.ids[name]) })
	}
	f.form.Add("for", "For", f.of)
	f.quantity = fields.NewWhole("rolls or pieces", 1, most)
	f.quantity.OnCommit = func(n int) error {
		return f.try("Change how many are ordered", func(p *prep.Production, o *supplies.Order) error { return setQuantity(p, o, n) })
	}
	f.form.Add("quantity", "How many", f.quantity)
	f.state = fields.NewChoice(stateNames()...)
	f.state.OnCommit = func(t string) error {
		return f.try(stateLabel(f.desk.View().P, f.id, supplies.OrderState(t)), func(p *prep.Production, o *supplies.Order) error {
			return setState(p, o, supplies.OrderState(t), f.now())
		})
	}
	f.form.Add("state", "State", f.state)
	f.placed = f.date("placed", "Placed", func(o *supplies.Order) *time.Time { return &o.Placed })
	f.expected = f.date("expected", "Expected", func(o *supplies.Order) *time.Time { return &o.Expected })
	f.supplier = f.text("supplier", "Supplier", fields.NewText(), func(o *supplies.Order) *string { return &o.Supplier })
	f.note = f.text("note", "Note", fields.NewMemo(3), func(o *supplies.Order) *string { return &o.Note })
	f.form.AddWide("said", f.said)
	return f
}

// stateLabel names the edit that takes an order to a state.
func stateLabel(p *prep.Production, id string, to supplies.OrderState) string {
	o := orderOf(p, id)
	if o == nil {
		return "Change the state of an order"
	}
	verb := map[supplies.OrderState]string{supplies.Planned: "Plan ", supplies.Ordered: "Order ", supplies.Received: "Receive "}[to]
	return verb + quantityWords(p, *o)
}

func (f *orderForm) try(label string, change func(*prep.Production, *supplies.Order) error) error {
	return f.desk.TryEdit(label, onOrder(f.id, change))
}

func (f *orderForm) date(name, label string, at func(*supplies.Order) *time.Time) *fields.Date {
	d := fields.NewDate(f.now)
	d.OnCommit = func(t time.Time) error {
		return f.try("Change when an order is "+name, func(_ *prep.Production, o *supplies.Order) error { *at(o) = t; return nil })
	}
	f.form.Add(name, label, d)
	return d
}

func (f *orderForm) text(name, label string, t *fields.Text, at func(*supplies.Order) *string) *fields.Text {
	t.OnCommit = func(text string) error {
		return f.try("Change the "+name+" of an order", func(_ *prep.Production, o *supplies.Order) error {
			*at(o) = strings.TrimSpace(text)
			return nil
		})
	}
	f.form.Add(name, label, t)
	return t
}

// show sets the form.
func (f *orderForm) show(p *prep.Production, o *supplies.Order) {
	f.id = o.ID
	f.form.Record(o.ID)
	f.goods = goodsOf(p)
	f.of.SetOptions(f.goods.names...)
	f.of.Set(f.goods.nameFor(o.For))
	f.quantity.Set(o.Quantity)
	f.state.Set(string(o.State))
	f.placed.Set(o.Placed)
	f.expected.Set(o.Expected)
	f.supplier.Set(o.Supplier)
	f.note.Set(o.Note)
	f.said.SetText(orderWords(p, *o))
}

// orderWords says what an order counts for.
func orderWords(p *prep.Production, o supplies.Order) string {
	switch {
	case o.State == supplies.Planned:
		return "Planned: counts for nothing until it is ordered."
	case o.State == supplies.Received:
		return "Received: it has been put on the shelf."
	case late(p, o):
		return "Ordered: counts as coming, but too late. It is needed by " + reckoning.Day(p.Needed()) + "."
	}
	return "Ordered: counts as coming. It goes on the shelf when it is received."
}
