package store

import "groundrow/prep"

type taskLink = of[string, string]

var weekTables = []*shape{
	listOf(table[prep.Person]{
		name: "person", noun: "person", keys: 1,
		bind: func(w *prep.Person) []column {
			return []column{
				{"id", text(&w.ID)},
				{"name", text(&w.Name)},
				{"role", text(&w.Role)},
				{"phone", text(&w.Phone)},
				{"note", text(&w.Note)},
				{"hands", truth(&w.Hands)},
			}
		},
	}, func(p *prep.Production) *[]prep.Person { return &p.People }),

	listOf(table[prep.Task]{
		name: "task", noun: "task", keys: 1,
		bind: func(t *prep.Task) []column {
			return []column{
				{"id", text(&t.ID)},
				{"name", text(&t.Name)},
				{"counted", text(&t.Count)},
				{"floor", ref(&t.Floor)},
				{"hours", number(&t.Hours)},
				{"hands", whole(&t.Hands)},
				{"earliest", moment(&t.Earliest)},
				{"due", moment(&t.Due)},
				{"pinned", moment(&t.Pinned)},
				{"done", truth(&t.Done)},
				{"note", text(&t.Note)},
			}
		},
	}, func(p *prep.Production) *[]prep.Task { return &p.Tasks }),

	taskRows(table[taskLink]{
		name: "task_after", noun: "order of two tasks", keys: 2,
		bind: func(l *taskLink) []column {
			return []column{{"task", text(&l.owner)}, {"after", text(&l.row)}}
		},
	}, func(t *prep.Task) *[]string { return &t.After }),

	taskRows(table[taskLink]{
		name: "task_person", noun: "call of a person", keys: 2,
		bind: func(l *taskLink) []column {
			return []column{{"task", text(&l.owner)}, {"person", text(&l.row)}}
		},
	}, func(t *prep.Task) *[]string { return &t.People }),

	listOf(table[prep.Object]{
		name: "object", noun: "object", keys: 1,
		bind: func(o *prep.Object) []column {
			return []column{
				{"id", text(&o.ID)},
				{"name", text(&o.Name)},
				{"kind", text(&o.Kind)},
				{"width_m", number(&o.Width)},
				{"depth_m", number(&o.Depth)},
				{"height_m", number(&o.Height)},
				{"number", whole(&o.Count)},
				{"source", text(&o.Source)},
				{"ballast", truth(&o.Ballast)},
				{"note", text(&o.Note)},
			}
		},
	}, func(p *prep.Production) *[]prep.Object { return &p.Objects }),

	listOf(table[prep.StandIn]{
		name: "stand_in", noun: "stand-in", keys: 1,
		bind: func(s *prep.StandIn) []column {
			return []column{
				{"id", text(&s.ID)},
				{"element", ref(&s.Element)},
				{"scene", ref(&s.Scene)},
				{"object", ref(&s.Object)},
				{"number", whole(&s.Number)},
				{"state", text(&s.State)},
				{"note", text(&s.Note)},
			}
		},
	}, func(p *prep.Production) *[]prep.StandIn { return &p.StandIns }),
}
