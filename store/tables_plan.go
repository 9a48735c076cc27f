package store

import (
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
)

type (
	pathRow  = of[plan.ElementID, plan.Path]
	standRow = of[plan.ElementID, plan.Stand]
)

var planTables = []*shape{
	listOf(table[plan.Level]{
		name: "level", noun: "level", keys: 1,
		bind: func(l *plan.Level) []column {
			return []column{{"id", text(&l.ID)}, {"name", text(&l.Name)}, {"height_m", number(&l.Height)}}
		},
	}, func(p *prep.Production) *[]plan.Level { return &p.Plan.Levels }),

	listOf(table[plan.Scene]{
		name: "scene", noun: "scene", keys: 1,
		bind: func(s *plan.Scene) []column {
			return []column{{"id", text(&s.ID)}, {"name", text(&s.Name)}}
		},
	}, func(p *prep.Production) *[]plan.Scene { return &p.Plan.Scenes }),

	// Before the elements, which refer to it.
	listOf(table[supplies.Stock]{
		name: "stock", noun: "tape", keys: 1,
		bind: func(s *supplies.Stock) []column {
			return []column{
				{"id", text(&s.ID)},
				{"name", text(&s.Name)},
				{"material", text(&s.Material)},
				{"colour", text(&s.Colour)},
				{"swatch", text(&s.Swatch)},
				{"width_m", number(&s.Width)},
				{"roll_m", number(&s.Roll)},
				{"roll_cents", whole(&s.Cents)},
				{"shelf_rolls", number(&s.Shelf)},
				{"lead_days", whole(&s.LeadDays)},
				{"supplier", text(&s.Supplier)},
				{"duty", text(&s.Duty)},
			}
		},
	}, func(p *prep.Production) *[]supplies.Stock { return &p.Stocks }),

	listOf(table[plan.Element]{
		name: "element", noun: "element", keys: 1,
		bind: func(e *plan.Element) []column {
			return []column{
				{"id", text(&e.ID)},
				{"name", text(&e.Name)},
				{"kind", text(&e.Kind)},
				{"level", ref(&e.Level)},
				{"stock", ref(&e.Stock)},
				{"use", text(&e.Use)},
				{"note", text(&e.Note)},
				{"rides", ref(&e.Rides)},
				{"weight", number(&e.Weight)},
			}
		},
	}, func(p *prep.Production) *[]plan.Element { return &p.Plan.Elements }),

	elementRows(table[pathRow]{
		name: "path", noun: "line", keys: 2,
		corners: &list{"path_corner", []string{"element", "path"}, [3]string{"over_m", "up_m", "bulge"}},
		bind: func(p *pathRow) []column {
			return []column{
				{"element", text(&p.owner)},
				{"id", text(&p.row.ID)},
				{"role", text(&p.row.Role)},
				{"closed", truth(&p.row.Closed)},
				{"corners", corners(&p.row.Vertices)},
			}
		},
	}, func(e *plan.Element) *[]plan.Path { return &e.Paths }),

	elementRows(table[standRow]{
		name: "stand", noun: "place in a scene", keys: 2,
		bind: func(s *standRow) []column {
			return []column{
				{"element", text(&s.owner)},
				{"scene", text(&s.row.Scene)},
				{"over_m", number(&s.row.Over)},
				{"up_m", number(&s.row.Up)},
				{"turn_deg", number(&s.row.Turn)},
			}
		},
	}, func(e *plan.Element) *[]plan.Stand { return &e.Stands }),

	listOf(table[plan.Carry]{
		name: "carry", noun: "travel in a scene", keys: 2, owner: "element",
		bind: func(c *plan.Carry) []column {
			return []column{{"carrier", text(&c.Carrier)}, {"scene", text(&c.Scene)}, {"travel", number(&c.Travel)}}
		},
	}, func(p *prep.Production) *[]plan.Carry { return &p.Plan.Carries }),
}
