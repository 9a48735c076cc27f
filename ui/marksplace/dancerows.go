package marksplace

import (
	"fmt"
	"math"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of dance lines.
const (
	dlName = iota
	dlUp
	dlStep
	dlUnit
	dlReach
	dlHabit
)

// Units that a dance line counts in.
const (
	inFeet   = "feet"
	inMetres = "metres"
)

func danceColumns() []grid.Column {
	return []grid.Column{
		{Title: "Name", Width: 130, Grow: true},
		{Title: "Up", Width: 92, Right: true},
		{Title: "Step", Width: 84, Right: true},
		{Title: "Counts in", Width: 86, Choices: []string{inFeet, inMetres}},
		{Title: "Reach each side", Width: 122, Right: true},
		{Title: "Habit", Width: 170, Choices: []string{string(marks.Numbers), string(marks.Quarters)}},
	}
}

// danceRows shows the dance lines of the floor.
func danceRows(v *desk.View) []grid.Row {
	var rows []grid.Row
	for _, d := range v.P.DanceLines {
		if d.Floor != v.Floor {
			continue
		}
		unit := inFeet
		if d.Unit > length.Foot {
			unit = inMetres
		}
		show := func(column string, m float64) string { return v.P.ShowLength(d.ID, column, m) }
		rows = append(rows, grid.Row{ID: d.ID, Cells: []string{
			d.Name, showUp(v.P, d), show("step", d.Step), unit, show("reach", d.Reach), string(habitOf(d)),
		}})
	}
	return rows
}

// showUp is where a line lies, as it was typed while that still reads so: 4' DS.
func showUp(p *prep.Production, d marks.DanceLine) string {
	for _, t := range p.Typed {
		if t.Row != d.ID || t.Column != "up" {
			continue
		}
		if m, err := length.ParseUp(t.Text, p.Unit()); err == nil && math.Abs(m-d.Up) < 1e-9 {
			return t.Text
		}
	}
	return p.Style().FormatUp(d.Up)
}

func habitOf(d marks.DanceLine) marks.Habit {
	if d.Habit == "" {
		return marks.Numbers
	}
	return d.Habit
}

// editDance takes what was typed into one cell.
func editDance(p *prep.Production, id string, column int, text string) error {
	i := slices.IndexFunc(p.DanceLines, func(d marks.DanceLine) bool { return d.ID == id })
	if i < 0 {
		return errGone("the dance line")
	}
	d := &p.DanceLines[i]
	switch column {
	case dlName:
		d.Name = text
	case dlUnit:
		d.Unit = length.Foot
		if text == inMetres {
			d.Unit = 1
		}
	case dlHabit:
		d.Habit = marks.Habit(text)
	case dlUp:
		m, err := length.ParseUp(text, p.Unit())
		if err != nil {
			return err
		}
		d.Up = m
		p.KeepTyped(id, "up", text)
	default:
		return editDanceLength(p, d, column, text)
	}
	return nil
}

func editDanceLength(p *prep.Production, d *marks.DanceLine, column int, text string) error {
	m, err := length.Parse(text, p.Unit())
	if err != nil {
		return err
	}
	if !(m > 0) {
		return fmt.Errorf("a length above zero is needed, such as %s", p.Style().Format(2*d.Unit))
	}
	if column == dlStep {
		d.Step = m
		p.KeepTyped(d.ID, "step", text)
		return nil
	}
	d.Reach = m
	p.KeepTyped(d.ID, "reach", text)
	return nil
}

// newDance is a dance line in the habit of the production's unit: every two feet,
// or every half metre (common practice, no source).
func newDance(p *prep.Production, on floor.ID, id string) marks.DanceLine {
	d := marks.DanceLine{ID: id, Floor: on, Name: "Dance line", Step: 2 * length.Foot, Unit: length.Foot, Reach: 16 * length.Foot, Habit: marks.Numbers}
	if p.Unit().Metric() {
		d.Step, d.Unit, d.Reach = 0.5, 1, 5
	}
	return d
}

func figureColumns() []grid.Column {
	column := func(title string, width float32) grid.Column {
		return grid.Column{Title: title, Width: width, Right: true, ReadOnly: true, Compare: byLength}
	}
	return []grid.Column{
		{Title: "Figure", Width: 72, ReadOnly: true},
		column("Over", 110), column("Up", 100), column("Up of the edge", 120), column("Slip along the edge", 146),
		{Title: "Line", Width: 140, Grow: true, ReadOnly: true},
	}
}

// figureRows shows the figures of the dance lines: those selected, or all.
func figureRows(v *desk.View, w *prep.FloorWork, selected []string) []grid.Row {
	names := map[string]string{}
	for _, d := range v.P.DanceLines {
		names[d.ID] = d.Name
	}
	style := v.Style()
	var rows []grid.Row
	for i, n := range w.Dance {
		if len(selected) > 0 && !has(selected, n.Line) {
			continue
		}
		row := grid.Row{ID: fmt.Sprint(n.Line, " ", i), Cells: []string{
			n.Text, style.FormatOver(n.At.X), style.FormatUp(n.At.Y), "", "", names[n.Line],
		}}
		if n.OnEdge {
			row.Cells[3] = style.FormatUp(n.Edge)
			if style.Round(n.Slip) != 0 {
				row.Cells[4] = style.Format(n.Slip)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// danceCaution is common practice, no source.
const danceCaution = "Measure each figure straight out from centre, parallel to the baseline, never along the curved edge. " +
	"“Up of the edge” is where to put the figure when it is written on the edge itself; " +
	"“slip” is how far it would move towards centre if somebody measured along the curve."
