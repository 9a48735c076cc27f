package store

import (
	"groundrow/prep"
	"groundrow/supplies"
)

var supplyTables = []*shape{
	listOf(table[supplies.Item]{
		name: "item", noun: "item of the kit", keys: 1,
		bind: func(i *supplies.Item) []column {
			return []column{
				{"id", text(&i.ID)},
				{"name", text(&i.Name)},
				{"kit_group", text(&i.Group)},
				{"rule", text(&i.Rule)},
				{"per_unit", number(&i.PerUnit)},
				{"least", whole(&i.Least)},
				{"shelf", whole(&i.Shelf)},
				{"piece_cents", whole(&i.Cents)},
				{"lead_days", whole(&i.LeadDays)},
				{"supplier", text(&i.Supplier)},
				{"note", text(&i.Note)},
				{"counted_out", whole(&i.Out)},
				{"counted_back", whole(&i.Back)},
			}
		},
	}, func(p *prep.Production) *[]supplies.Item { return &p.Items }),

	listOf(table[supplies.Order]{
		name: "supply_order", noun: "order", keys: 1,
		bind: func(o *supplies.Order) []column {
			return []column{
				{"id", text(&o.ID)},
				{"wanted", text(&o.For)},
				{"quantity", whole(&o.Quantity)},
				{"state", text(&o.State)},
				{"placed_on", moment(&o.Placed)},
				{"expected_on", moment(&o.Expected)},
				{"supplier", text(&o.Supplier)},
				{"note", text(&o.Note)},
			}
		},
	}, func(p *prep.Production) *[]supplies.Order { return &p.Orders }),
}
