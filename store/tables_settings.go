package store

import "groundrow/prep"

var settingTables = []*shape{
	oneRow("production", "production", func(p *prep.Production) []column {
		s := &p.Settings
		return []column{
			{"title", text(&s.Title)},
			{"company", text(&s.Company)},
			{"contact", text(&s.Contact)},
			{"first_rehearsal", moment(&s.FirstRehearsal)},
			{"prep_start", moment(&s.PrepStart)},
			{"unit", text(&s.Unit)},
			{"step_m", number(&s.Step)},
			{"paper", text(&s.Paper)},
			{"currency", text(&s.Currency)},
			{"budget_cents", whole(&s.BudgetCents)},
			{"weak_angle_deg", number(&s.WeakAngle)},
			{"tape_sigma_m", number(&s.TapeSigma)},
			{"tape_length_m", number(&s.TapeLength)},
			{"read_edge", text(&s.ReadEdge)},
			{"tape_class", text(&s.Errors.TapeClass)},
			{"tape_stretch", number(&s.Errors.Stretch)},
			{"placing_sigma_m", number(&s.Errors.Placing)},
			{"pivot_sigma_m", number(&s.Errors.Pivot)},
			{"squaring", text(&s.Errors.Squaring)},
			{"by_eye_rad", number(&s.Errors.ByEye)},
			{"by_square_rad", number(&s.Errors.BySquare)},
			{"by_grid_rad", number(&s.Errors.ByGrid)},
			{"mark_allowed_m", number(&s.Errors.Allowed)},
		}
	}),
	oneRow("ground_plan", "ground plan", func(p *prep.Production) []column {
		g := &p.Plan
		return []column{
			{"title", text(&g.Title)},
			{"revision", text(&g.Revision)},
			{"scale", number(&g.Scale)},
			{"baseline", text(&g.Baseline)},
		}
	}),
	oneRow("mark_rules", "rules for marks", func(p *prep.Production) []column {
		r := &p.Settings.Rules
		return []column{
			{"weld_m", number(&r.Weld)},
			{"row_m", number(&r.Row)},
			{"chord_m", number(&r.Chord)},
			{"skip_io", truth(&r.SkipIO)},
			{"centre_swing", truth(&r.CentreSwing)},
		}
	}),
	oneRow("allowances", "allowances", func(p *prep.Production) []column {
		a := &p.Settings.Allowances
		return []column{
			{"overlap_m", number(&a.Overlap)},
			{"patch_m", number(&a.Patch)},
			{"tab_m", number(&a.Tab)},
			{"spike_leg_m", number(&a.SpikeLeg)},
			{"figure_m", number(&a.Figure)},
			{"dash_on_m", number(&a.DashOn)},
			{"dash_off_m", number(&a.DashOff)},
			{"waste_fraction", number(&a.Waste)},
			{"wear_week_fraction", number(&a.WearWeek)},
			{"weeks", number(&a.Weeks)},
		}
	}),
	oneRow("rates", "rates of work", func(p *prep.Production) []column {
		r := &p.Settings.Rates
		return []column{
			{"marks_per_hour", number(&r.MarksPerHour)},
			{"tape_m_per_hour", number(&r.TapePerHour)},
			{"patches_per_hour", number(&r.PatchesPerHour)},
			{"checks_per_hour", number(&r.ChecksPerHour)},
			{"day_start_hour", number(&r.DayStart)},
			{"day_end_hour", number(&r.DayEnd)},
			{"break_after_hours", number(&r.BreakAfter)},
			{"break_hours", number(&r.BreakLength)},
		}
	}),
}
