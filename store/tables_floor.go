package store

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
)

type (
	obstacleRow  = of[floor.ID, floor.Obstacle]
	keepClearRow = of[floor.ID, floor.KeepClear]
	featureRow   = of[floor.ID, floor.Feature]
	wayRow       = of[floor.ID, floor.Way]
	pivotRow     = of[floor.ID, floor.Pivot]
	treatmentRow = of[floor.ID, floor.Treatment]
	wallRow      = of[floor.ID, floor.MeasuredWall]
	pointRow     = of[floor.ID, floor.MeasuredPoint]
	diagonalRow  = of[floor.ID, floor.Diagonal]
	stepRow      = of[floor.ID, floor.Step]
	frontRow     = of[floor.ID, floor.Front]
)

// floorAxes are the columns of corners in the axes in which a room was measured.
var floorAxes = [3]string{"x_m", "y_m", "bulge"}

var floorTables = []*shape{
	listOf(table[floor.Floor]{
		name: "floor", noun: "floor", keys: 1,
		corners: &list{"floor_corner", []string{"floor"}, floorAxes},
		bind: func(f *floor.Floor) []column {
			return []column{
				{"id", text(&f.ID)},
				{"name", text(&f.Name)},
				{"kind", text(&f.Kind)},
				{"surface", text(&f.Surface)},
				{"rule", text(&f.Rule)},
				{"note", text(&f.Note)},
				{"outline_closed", truth(&f.Outline.Closed)},
				{"corners", corners(&f.Outline.Vertices)},
				{"placement_turn_rad", number(&f.Placement.Turn)},
				{"placement_x_m", number(&f.Placement.Shift.X)},
				{"placement_y_m", number(&f.Placement.Shift.Y)},
				{"own_datum", truth(&f.OwnDatum)},
				{"datum_turn_rad", number(&f.Datum.Turn)},
				{"datum_x_m", number(&f.Datum.Shift.X)},
				{"datum_y_m", number(&f.Datum.Shift.Y)},
				{"side", text(&f.Side)},
				{"board_direction_deg", number(&f.BoardDirection)},
				{"board_module_m", number(&f.BoardModule)},
				{"angle_rule", text(&f.Wishes.Angles)},
				{"angle_step_deg", number(&f.Wishes.Step)},
				{"area_counts", number(&f.Wishes.Area)},
				{"sight_counts", number(&f.Wishes.Sight)},
			}
		},
	}, func(p *prep.Production) *[]floor.Floor { return &p.Floors }),

	floorRows(table[wallRow]{
		name: "measured_wall", noun: "measured wall", keys: 2,
		bind: func(w *wallRow) []column {
			return []column{
				{"floor", text(&w.owner)},
				{"id", text(&w.row.ID)},
				{"name", text(&w.row.Name)},
				{"length_m", number(&w.row.Length)},
				{"turn_deg", number(&w.row.Turn)},
				{"square", truth(&w.row.Square)},
				{"rise_m", number(&w.row.Rise)},
			}
		},
	}, func(f *floor.Floor) *[]floor.MeasuredWall { return &f.Measured.Walls }),

	floorRows(table[pointRow]{
		name: "measured_point", noun: "measured point", keys: 2,
		bind: func(m *pointRow) []column {
			return []column{{"floor", text(&m.owner)}, {"id", text(&m.row.ID)}, {"name", text(&m.row.Name)}}
		},
	}, func(f *floor.Floor) *[]floor.MeasuredPoint { return &f.Measured.Points }),

	floorRows(table[diagonalRow]{
		name: "diagonal", noun: "diagonal", keys: 2,
		bind: func(d *diagonalRow) []column {
			return []column{
				{"floor", text(&d.owner)},
				{"id", text(&d.row.ID)},
				{"from_place", text(&d.row.From)},
				{"to_place", text(&d.row.To)},
				{"length_m", number(&d.row.Length)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Diagonal { return &f.Measured.Diagonals }),

	floorRows(table[stepRow]{
		name: "step", noun: "step in the floor", keys: 2,
		corners: &list{"step_corner", []string{"floor", "step"}, floorAxes},
		bind: func(s *stepRow) []column {
			return []column{
				{"floor", text(&s.owner)},
				{"id", text(&s.row.ID)},
				{"name", text(&s.row.Name)},
				{"rise_m", number(&s.row.Rise)},
				{"closed", truth(&s.row.Line.Closed)},
				{"corners", corners(&s.row.Line.Vertices)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Step { return &f.Steps }),

	floorRows(table[obstacleRow]{
		name: "obstacle", noun: "obstacle", keys: 2,
		corners: &list{"obstacle_corner", []string{"floor", "obstacle"}, floorAxes},
		bind: func(o *obstacleRow) []column {
			return []column{
				{"floor", text(&o.owner)},
				{"id", text(&o.row.ID)},
				{"name", text(&o.row.Name)},
				{"kind", text(&o.row.Kind)},
				{"closed", truth(&o.row.Shape.Closed)},
				{"corners", corners(&o.row.Shape.Vertices)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Obstacle { return &f.Obstacles }),

	floorRows(table[keepClearRow]{
		name: "keep_clear", noun: "keep-clear area", keys: 2,
		corners: &list{"keep_clear_corner", []string{"floor", "keep_clear"}, floorAxes},
		bind: func(k *keepClearRow) []column {
			return []column{
				{"floor", text(&k.owner)},
				{"id", text(&k.row.ID)},
				{"name", text(&k.row.Name)},
				{"kind", text(&k.row.Kind)},
				{"closed", truth(&k.row.Shape.Closed)},
				{"corners", corners(&k.row.Shape.Vertices)},
			}
		},
	}, func(f *floor.Floor) *[]floor.KeepClear { return &f.KeepClears }),

	floorRows(table[featureRow]{
		name: "feature", noun: "feature of the room", keys: 2,
		corners: &list{"feature_corner", []string{"floor", "feature"}, floorAxes},
		bind: func(t *featureRow) []column {
			return []column{
				{"floor", text(&t.owner)},
				{"id", text(&t.row.ID)},
				{"name", text(&t.row.Name)},
				{"kind", text(&t.row.Kind)},
				{"opens", text(&t.row.Opens)},
				{"closed", truth(&t.row.Shape.Closed)},
				{"corners", corners(&t.row.Shape.Vertices)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Feature { return &f.Features }),

	floorRows(table[wayRow]{
		name: "way", noun: "way", keys: 2,
		bind: func(w *wayRow) []column {
			return []column{
				{"floor", text(&w.owner)},
				{"id", text(&w.row.ID)},
				{"name", text(&w.row.Name)},
				{"kind", text(&w.row.Kind)},
				{"from_thing", text(&w.row.From.Thing)},
				{"from_x_m", number(&w.row.From.At.X)},
				{"from_y_m", number(&w.row.From.At.Y)},
				{"to_thing", text(&w.row.To.Thing)},
				{"to_x_m", number(&w.row.To.At.X)},
				{"to_y_m", number(&w.row.To.At.Y)},
				{"width_m", number(&w.row.Width)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Way { return &f.Ways }),

	floorRows(table[frontRow]{
		name: "front", noun: "side that may be the front", keys: 2,
		bind: func(r *frontRow) []column {
			return []column{
				{"floor", text(&r.owner)},
				{"id", text(&r.row.ID)},
				{"toward_rad", number(&r.row.Toward)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Front { return &f.Fronts }),

	floorRows(table[pivotRow]{
		name: "pivot", noun: "pivot", keys: 2,
		bind: func(v *pivotRow) []column {
			return []column{
				{"floor", text(&v.owner)},
				{"id", text(&v.row.ID)},
				{"name", text(&v.row.Name)},
				{"x_m", number(&v.row.At.X)},
				{"y_m", number(&v.row.At.Y)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Pivot { return &f.Pivots }),

	floorRows(table[treatmentRow]{
		name: "treatment", noun: "treatment", keys: 2,
		bind: func(t *treatmentRow) []column {
			return []column{
				{"floor", text(&t.owner)},
				{"element", text(&t.row.Element)},
				{"how", text(&t.row.How)},
				{"over_m", number(&t.row.Over)},
				{"up_m", number(&t.row.Up)},
				{"reason", text(&t.row.Reason)},
				{"decided_by", text(&t.row.Decided.By)},
				{"decided_on", moment(&t.row.Decided.On)},
			}
		},
	}, func(f *floor.Floor) *[]floor.Treatment { return &f.Treatments }),
}
