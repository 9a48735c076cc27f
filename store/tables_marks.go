package store

import (
	"groundrow/prep"
	"groundrow/tapeout/marks"
)

var markTables = []*shape{
	listOf(table[marks.DanceLine]{
		name: "dance_line", noun: "dance line", keys: 1,
		bind: func(d *marks.DanceLine) []column {
			return []column{
				{"id", text(&d.ID)},
				{"floor", ref(&d.Floor)},
				{"name", text(&d.Name)},
				{"up_m", number(&d.Up)},
				{"step_m", number(&d.Step)},
				{"unit_m", number(&d.Unit)},
				{"reach_m", number(&d.Reach)},
				{"habit", text(&d.Habit)},
			}
		},
	}, func(p *prep.Production) *[]marks.DanceLine { return &p.DanceLines }),

	listOf(table[marks.Issued]{
		name: "issued_label", noun: "printed label", keys: 2, owner: "floor",
		bind: func(i *marks.Issued) []column {
			return []column{
				{"floor", text(&i.Floor)},
				{"label", text(&i.Label)},
				{"over_m", number(&i.At.X)},
				{"up_m", number(&i.At.Y)},
				{"retired", truth(&i.Retired)},
				{"issued_on", moment(&i.On)},
			}
		},
	}, func(p *prep.Production) *[]marks.Issued { return &p.Issued }),

	listOf(table[marks.Progress]{
		name: "mark_progress", noun: "progress of a mark", keys: 2, owner: "floor",
		bind: func(g *marks.Progress) []column {
			return []column{
				{"floor", text(&g.Floor)},
				{"label", text(&g.Label)},
				{"placed_by", text(&g.Placed.By)},
				{"placed_on", moment(&g.Placed.On)},
				{"checked_by", text(&g.Checked.By)},
				{"checked_on", moment(&g.Checked.On)},
				{"worn_by", text(&g.Worn.By)},
				{"worn_on", moment(&g.Worn.On)},
				{"lifted_by", text(&g.Lifted.By)},
				{"lifted_on", moment(&g.Lifted.On)},
			}
		},
	}, func(p *prep.Production) *[]marks.Progress { return &p.Progress }),

	listOf(table[prep.MethodChoice]{
		name: "method_choice", noun: "method chosen", keys: 1,
		bind: func(c *prep.MethodChoice) []column {
			return []column{
				{"id", text(&c.ID)},
				{"floor", ref(&c.Floor)},
				{"whole_floor", truth(&c.Whole)},
				{"over_m", number(&c.At.X)},
				{"up_m", number(&c.At.Y)},
				{"method", text(&c.Method)},
			}
		},
	}, func(p *prep.Production) *[]prep.MethodChoice { return &p.MethodChoices }),

	listOf(table[prep.Reading]{
		name: "reading", noun: "check measure read", keys: 1,
		bind: func(r *prep.Reading) []column {
			return []column{
				{"id", text(&r.ID)},
				{"floor", ref(&r.Floor)},
				{"from_place", text(&r.From)},
				{"to_place", text(&r.To)},
				{"read_m", number(&r.Metres)},
				{"typed", text(&r.Text)},
				{"read_by", text(&r.By)},
				{"read_on", moment(&r.On)},
			}
		},
	}, func(p *prep.Production) *[]prep.Reading { return &p.Readings }),

	listOf(table[prep.Move]{
		name: "move", noun: "move measured back", keys: 1,
		bind: func(m *prep.Move) []column {
			return []column{
				{"id", text(&m.ID)},
				{"floor", ref(&m.Floor)},
				{"element", ref(&m.Element)},
				{"scene", ref(&m.Scene)},
				{"over_m", number(&m.Over)},
				{"up_m", number(&m.Up)},
				{"turn_deg", number(&m.Turn)},
				{"points", text(&m.Points)},
				{"reason", text(&m.Reason)},
				{"moved_by", text(&m.By)},
				{"moved_on", moment(&m.On)},
				{"taken", truth(&m.Taken)},
			}
		},
	}, func(p *prep.Production) *[]prep.Move { return &p.Moves }),
}
