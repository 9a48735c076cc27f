package marksplace

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// backFirst is the first of the two columns into which a measure is typed.
const backFirst = 4

func backColumns(how string) []grid.Column {
	first, second, due := "Up", "Over", ", sheet"
	if sides[how] != "" {
		first, second, due = "Pivot 1", "Pivot 2", ", due" // from these the place is worked out, whatever the sheet measures from
	}
	column := func(title string, width float32, typed bool) grid.Column {
		return grid.Column{Title: title, Width: width, Right: true, ReadOnly: !typed}
	}
	return []grid.Column{
		{Title: "Mark", Width: 60, ReadOnly: true, Compare: byLabel},
		{Title: "What it is", Width: 130, Grow: true, ReadOnly: true},
		column(first+due, 110, false), column(second+due, 110, false),
		column(first+" read", 100, true), column(second+" read", 110, true),
		column("Off by", 90, false),
	}
}

// pieces are the elements that stand in the scene looked at and are marked on the
// floor, by name and in plan order. Of several of one name the second is "Chair (2)".
func pieces(v *desk.View) (byName map[string]plan.ElementID, names []string) {
	byName = map[string]plan.ElementID{}
	w := v.Here()
	for i := range v.P.Plan.Elements {
		e := &v.P.Plan.Elements[i]
		if e.Name == "" || e.Kind.House() || len(w.MarksOfPiece(e.ID, v.Scene)) < 2 {
			continue
		}
		name, taken := e.Name, false
		for n := 2; ; n++ {
			if _, taken = byName[name]; !taken {
				break
			}
			name = fmt.Sprintf("%s (%d)", e.Name, n)
		}
		byName[name], names = e.ID, append(names, name)
	}
	return byName, names
}

// foundPoints turns what was typed into points; where has those that could be read,
// by label.
func foundPoints(p *prep.Production, w *prep.FloorWork, list []prep.MeasuredMark, typed map[string][2]string, side survey.Side) (found []prep.BackPoint, where map[string]prep.BackPoint) {
	where = map[string]prep.BackPoint{}
	for _, m := range list {
		pair := typed[m.Label]
		if pair[0] == "" || pair[1] == "" {
			continue
		}
		if at, err := w.ReadBack(p, pair[0], pair[1], side); err == nil {
			where[m.Label] = prep.BackPoint{Label: m.Label, At: at}
			found = append(found, where[m.Label])
		}
	}
	return found, where
}

func backRows(v *desk.View, list []prep.MeasuredMark, typed map[string][2]string, how string, where map[string]prep.BackPoint) []grid.Row {
	style := v.Style()
	pair, paired := prep.Pivots(v.Here().Floor)
	rows := make([]grid.Row, len(list))
	for i, m := range list {
		first, second := style.FormatUp(m.Up()), style.FormatOver(m.Over())
		if sides[how] != "" {
			first, second = "", ""
			if r, ok := pair.Read(m.At); ok && paired {
				first, second = style.Format(r.A), style.Format(r.B)
			}
		}
		off := ""
		if f, ok := where[m.Label]; ok {
			off = style.Format(f.At.To(m.At))
		}
		rows[i] = grid.Row{ID: m.Label, Cells: []string{m.Label, m.What, first, second, typed[m.Label][0], typed[m.Label][1], off}}
	}
	return rows
}

func moveColumns() []grid.Column {
	return []grid.Column{
		{Title: "Moved", Width: 130, ReadOnly: true},
		{Title: "Scene", Width: 70, ReadOnly: true},
		{Title: "How far", Width: 220, Grow: true, ReadOnly: true},
		{Title: "Why", Width: 150, ReadOnly: true},
		{Title: "By", Width: 160, ReadOnly: true},
		{Title: "In the plan", Width: 90, Tick: true},
	}
}

// moveRows lists the moves that were measured on the floor.
func moveRows(v *desk.View) []grid.Row {
	var rows []grid.Row
	for _, m := range v.P.Moves {
		if m.Floor != v.Floor {
			continue
		}
		name, scene, taken := string(m.Element), "all", grid.Off
		if e := v.P.Plan.Element(m.Element); e != nil {
			name = e.Name
		}
		if m.Scene != "" {
			scene = v.P.Plan.SceneName(m.Scene)
		}
		if m.Taken {
			taken = grid.On
		}
		rows = append(rows, grid.Row{ID: m.ID, Bold: !m.Taken, Cells: []string{
			name, scene, v.P.MoveWords(m), m.Reason, decision(floor.Decision{By: m.By, On: m.On}), taken,
		}})
	}
	return rows
}
