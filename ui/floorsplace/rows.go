package floorsplace

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of treatments.
const (
	colElement = iota
	colOutside
	colHow
	colProposed
	colReason
	colDecided
	colLevel
	colKind
)

// treatmentColumns are the columns of the table of treatments.
func treatmentColumns() []grid.Column {
	return []grid.Column{
		{Title: "Element", Width: 152, ReadOnly: true},
		{Title: "Outside", Width: 102, ReadOnly: true, Right: true},
		{Title: "On this floor", Width: 110, Choices: words(floor.Hows)},
		{Title: "We would", Width: 200, Grow: true, ReadOnly: true},
		{Title: "Reason", Width: 170, Grow: true},
		{Title: "Decided by", Width: 110, Hint: "empty: still open"},
		{Title: "Level", Width: 84, ReadOnly: true},
		{Title: "Kind", Width: 90, ReadOnly: true},
	}
}

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

// treatmentRows shows what the floor does with every element, and what is proposed.
func treatmentRows(v *desk.View, w *prep.FloorWork, proposals *proposed) []grid.Row {
	outside := map[plan.ElementID]floor.Overhang{}
	for _, o := range w.Overhangs {
		outside[o.Element] = o
	}
	style := v.Style()
	rows := make([]grid.Row, 0, len(v.P.Plan.Elements))
	for i := range v.P.Plan.Elements {
		e := &v.P.Plan.Elements[i]
		t := w.Floor.Decide(e)
		row := grid.Row{ID: string(e.ID), Dim: t.How == floor.LeftOut, Cells: []string{
			e.Name, "", string(t.How), proposals.words(v.P, e, t), t.Reason, t.Decided.By, levelName(v.P, e.Level), string(e.Kind),
		}}
		if o, out := outside[e.ID]; out {
			row.Cells[colOutside] = style.Format(o.Length)
			if t.How != floor.CutShort {
				row.CellProblems = map[int]string{colOutside: "sticks out of the floor: decide what is done about it"}
			}
		}
		rows = append(rows, row)
	}
	return rows
}

func levelName(p *prep.Production, id plan.LevelID) string {
	if l := p.Plan.Level(id); l != nil {
		return l.Name
	}
	return "stage floor"
}

// summary says in a sentence how the plan sits on the floor.
func summary(v *desk.View, w *prep.FloorWork) string {
	if len(w.Floor.Outline.Vertices) == 0 {
		return "This floor has not been measured yet. Draw its walls or type them in."
	}
	left, open := 0, 0
	for i := range v.P.Plan.Elements {
		t := w.Floor.Decide(&v.P.Plan.Elements[i])
		if t.How == floor.LeftOut {
			left++
		}
	}
	for _, p := range w.Problems {
		if p.Rule == prep.RuleOutside {
			open++
		}
	}
	laid := len(v.P.Plan.Elements) - left
	said := prep.Counted(laid, "element") + " of " + number(len(v.P.Plan.Elements)) + " on this floor; " +
		sticking(open) + " · floor area " + area(v, w.Floor)
	if open > 0 && w.Floor.Placement == (plane.Motion{}) {
		said += " · the plan is not set in this room yet: Set the plan, at the right"
	}
	return said
}
