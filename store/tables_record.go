package store

import "groundrow/prep"

var recordTables = []*shape{
	listOf(table[prep.Note]{
		name: "note", noun: "note", keys: 1,
		bind: func(n *prep.Note) []column {
			return []column{
				{"id", text(&n.ID)},
				{"element", ref(&n.Element)},
				{"words", text(&n.Text)},
				{"owner", text(&n.Owner)},
				{"open", truth(&n.Open)},
				{"written", moment(&n.On)},
			}
		},
	}, func(p *prep.Production) *[]prep.Note { return &p.Notes }),

	listOf(table[prep.Answer]{
		name: "answer", noun: "answer", keys: 1,
		bind: func(a *prep.Answer) []column {
			return []column{
				{"id", text(&a.ID)},
				{"floor", text(&a.Floor)},
				{"element", ref(&a.Element)},
				{"about", text(&a.About)},
				{"question", text(&a.Question)},
				{"words", text(&a.Text)},
				{"answered_by", text(&a.By)},
				{"answered_on", moment(&a.On)},
			}
		},
	}, func(p *prep.Production) *[]prep.Answer { return &p.Answers }),

	listOf(table[prep.Typed]{
		name: "typed_length", noun: "length as typed", keys: 2,
		bind: func(t *prep.Typed) []column {
			return []column{{"row_id", text(&t.Row)}, {"column_name", text(&t.Column)}, {"typed", text(&t.Text)}}
		},
	}, func(p *prep.Production) *[]prep.Typed { return &p.Typed }),

	listOf(table[prep.Drawing]{
		name: "drawing", noun: "drawing", keys: 1,
		bind: func(d *prep.Drawing) []column {
			return []column{
				{"id", text(&d.ID)},
				{"name", text(&d.Name)},
				{"format", text(&d.Format)},
				{"bytes", whole(&d.Bytes)},
				{"imported_on", moment(&d.On)},
				{"imported_by", text(&d.By)},
			}
		},
	}, func(p *prep.Production) *[]prep.Drawing { return &p.Drawings }),

	listOf(table[prep.KnownPoint]{
		name: "known_point", noun: "known point of a scan", keys: 1,
		bind: func(k *prep.KnownPoint) []column {
			return []column{
				{"id", text(&k.ID)},
				{"drawing", ref(&k.Drawing)},
				{"pixel_x", number(&k.Pixel.X)},
				{"pixel_y", number(&k.Pixel.Y)},
				{"over_m", number(&k.Floor.X)},
				{"up_m", number(&k.Floor.Y)},
			}
		},
	}, func(p *prep.Production) *[]prep.KnownPoint { return &p.KnownPoints }),

	listOf(table[prep.Printing]{
		name: "printing", noun: "printing", keys: 3,
		bind: func(g *prep.Printing) []column {
			return []column{
				{"sheet", text(&g.Sheet)},
				{"floor", text(&g.Floor)},
				{"printed_on", moment(&g.On)},
				{"state", text(&g.State)},
			}
		},
	}, func(p *prep.Production) *[]prep.Printing { return &p.Printings }),
}
