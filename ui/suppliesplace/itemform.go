package suppliesplace

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/supplies"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// itemForm describes one thing of the kit and says how its need is counted.
type itemForm struct {
	desk *desk.Desk
	form *fields.Form
	id   string

	name, group, supplier, note *fields.Text
	rule                        *fields.Choice
	per                         *fields.Decimal
	least, shelf, lead          *fields.Whole
	out, back                   *fields.Whole
	price                       *fields.Money
	said                        *widget.Label
}

func newItemForm(d *desk.Desk) *itemForm {
	f := &itemForm{desk: d, form: fields.NewForm(), said: widget.NewLabel("")}
	f.said.Wrapping = fyne.TextWrapWord
	f.name = f.text("name", "Name", fields.NewText(), func(it *supplies.Item, t string) error { return setName(&it.Name, t) })
	f.group = f.text("group", "Kind", fields.NewText(), func(it *supplies.Item, t string) error { it.Group = strings.TrimSpace(t); return nil })
	f.form.Section("How many are needed")
	f.rule = fields.NewChoice(ruleNames()...)
	f.rule.OnCommit = func(t string) error {
		return f.try("how the need is counted", func(it *supplies.Item) error { it.Rule = supplies.Rule(t); return nil })
	}
	f.form.Add("rule", "Counted", f.rule)
	f.per = fields.NewDecimal("for each", 0, most)
	f.per.OnCommit = func(n float64) error {
		return f.try("how many are needed for each", func(it *supplies.Item) error { it.PerUnit = n; return nil })
	}
	f.form.Add("per", "How many", f.per)
	f.least = f.whole("least", "At least", "", most, func(it *supplies.Item) *int { return &it.Least })
	f.form.AddWide("said", f.said)
	f.form.Section("What is there")
	f.shelf = f.whole("shelf", "On the shelf", "", most, func(it *supplies.Item) *int { return &it.Shelf })
	f.out = f.whole("out", "Gone out to the room", "", most, func(it *supplies.Item) *int { return &it.Out })
	f.back = f.whole("back", "Come back", "", most, func(it *supplies.Item) *int { return &it.Back })
	f.form.Section("Where it comes from")
	f.price = fields.NewMoney("each")
	f.price.OnCommit = func(c int) error {
		return f.try("the price", func(it *supplies.Item) error { it.Cents = c; return nil })
	}
	f.form.Add("price", "Price", f.price)
	f.lead = f.whole("lead", "Comes in", "days", 365, func(it *supplies.Item) *int { return &it.LeadDays })
	f.supplier = f.text("supplier", "Supplier", fields.NewText(), func(it *supplies.Item, t string) error { it.Supplier = strings.TrimSpace(t); return nil })
	f.note = f.text("note", "Note", fields.NewMemo(2), func(it *supplies.Item, t string) error { it.Note = t; return nil })
	return f
}

func ruleNames() []string {
	var out []string
	for _, r := range supplies.ItemRules {
		out = append(out, string(r))
	}
	return out
}

// try makes a change of the thing that the form shows, named after it.
func (f *itemForm) try(what string, change func(*supplies.Item) error) error {
	name := "the kit"
	if it := itemOf(f.desk.View().P, f.id); it != nil {
		name = it.Name
	}
	return f.desk.TryEdit(fmt.Sprintf("Change %s of %s", what, name), onItem(f.id, change))
}

func (f *itemForm) text(name, label string, t *fields.Text, change func(*supplies.Item, string) error) *fields.Text {
	t.OnCommit = func(text string) error {
		return f.try("the "+name, func(it *supplies.Item) error { return change(it, text) })
	}
	f.form.Add(name, label, t)
	return t
}

func (f *itemForm) whole(name, label, unit string, limit int, at func(*supplies.Item) *int) *fields.Whole {
	w := fields.NewWhole(unit, 0, limit)
	w.OnCommit = func(n int) error {
		return f.try("the count", func(it *supplies.Item) error { *at(it) = n; return nil })
	}
	f.form.Add(name, label, w)
	return w
}

// show sets the form.
func (f *itemForm) show(it *supplies.Item, n need) {
	f.id = it.ID
	f.form.Record(it.ID)
	f.name.Set(it.Name)
	f.group.Set(it.Group)
	f.rule.Set(string(it.Rule))
	f.per.Set(it.PerUnit)
	f.least.Set(it.Least)
	f.said.SetText(itemWords(it, n))
	f.shelf.Set(it.Shelf)
	f.out.Set(it.Out)
	f.back.Set(it.Back)
	f.price.Set(it.Cents)
	f.lead.Set(it.LeadDays)
	f.supplier.Set(it.Supplier)
	f.note.Set(it.Note)
}

// itemWords says what the rule comes to.
func itemWords(it *supplies.Item, n need) string {
	said := fmt.Sprintf("That makes %.0f; %d on the shelf", n.need, it.Shelf)
	if n.coming > 0 {
		said += fmt.Sprintf(", %d coming", n.coming)
	}
	if n.short() {
		return said + fmt.Sprintf(": %d short.", n.buy)
	}
	return said + ": enough."
}
