package marksplace

import (
	"fmt"
	"math"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of pivots.
const (
	pvOrder = iota
	pvName
	pvAlong
	pvInto
	pvUp
	pvOver
)

func pivotColumns() []grid.Column {
	return []grid.Column{
		{Title: "Pivot", Width: 50, ReadOnly: true},
		{Title: "What to look for", Width: 190, Grow: true, Hint: "brass stud, west"},
		{Title: "Along", Width: 96, Right: true},
		{Title: "Into", Width: 96, Right: true},
		{Title: "Up", Width: 106, Right: true, ReadOnly: true},
		{Title: "Over", Width: 104, Right: true, ReadOnly: true},
	}
}

// pivotRows shows the pivots in the order of their use.
func pivotRows(v *desk.View, f *floor.Floor) []grid.Row {
	style, m := v.Style(), f.FloorToDatum()
	rows := make([]grid.Row, len(f.Pivots))
	for i, pv := range f.Pivots {
		at := m.Apply(pv.At)
		rows[i] = grid.Row{ID: pv.ID, Bold: i < 2, Cells: []string{
			strconv.Itoa(i + 1), pv.Name,
			readable(v.P, pv.ID, "along", pv.At.X), readable(v.P, pv.ID, "into", pv.At.Y),
			style.FormatUp(at.Y), style.FormatOver(at.X),
		}}
	}
	return rows
}

// readable is a length of a pivot as it was typed; of one that was found or dragged, to
// what a tape is read.
func readable(p *prep.Production, id, column string, m float64) string {
	style := p.Style()
	if typed := p.ShowLength(id, column, m); typed != style.Bare(m) {
		return typed
	}
	return style.Bare(style.Grain() * math.Round(m/style.Grain()))
}

// editPivot takes what was typed into one cell.
func editPivot(p *prep.Production, on floor.ID, id string, column int, text string) error {
	f := p.Floor(on)
	if f == nil {
		return errGone("the floor")
	}
	i, err := pivotAt(f, id)
	if err != nil {
		return err
	}
	v := &f.Pivots[i]
	if column == pvName {
		v.Name = text
		return nil
	}
	m, err := length.Parse(text, p.Unit())
	if err != nil {
		return err
	}
	name := "along"
	if column == pvAlong {
		v.At.X = m
	} else {
		v.At.Y, name = m, "into"
	}
	p.KeepTyped(id, name, text)
	return nil
}

// pivotWords say what the pair in use is like.
func pivotWords(v *desk.View, w *prep.FloorWork) string {
	pair, ok := prep.Pivots(w.Floor)
	if !ok {
		return "Two pivots are needed for the two-tape method: fixed places from which tapes are pulled."
	}
	if pair.Base() < v.P.Settings.Rules.Weld {
		return "The two in use stand in one place: tapes from there find nothing. Type or drag one of them elsewhere, or take the best pair."
	}
	lost := len(unserved(v.P, w).Marks)
	text := fmt.Sprintf("The first two are %s apart: measure that first. Left and right are seen from the first towards the second. ", v.Style().Format(pair.Base()))
	if lost == 0 {
		text += "Two tapes serve every mark."
	} else {
		text += fmt.Sprintf("Two tapes do not serve %s: too far, too flat, behind something, or less sure than %s.", verb(lost, "mark", "marks"), v.P.Fine(v.P.Errors().Allowed))
	}
	return text + pairsWords(v.P, w)
}

// pairsWords say which marks are measured from which pair, where there are several, and
// warn of a pair on the centre line.
func pairsWords(p *prep.Production, w *prep.FloorWork) string {
	pairs := w.Pairs()
	text := ""
	for _, pair := range pairs {
		n := 0
		for _, m := range w.Marks {
			if m.HasTapes && m.Pair == pair {
				n++
			}
		}
		if len(pairs) > 1 {
			text += fmt.Sprintf(" From pivots %d and %d: %s.", pair.A+1, pair.B+1, verb(n, "mark", "marks"))
		}
		if pair.OnCentreLine() {
			text += fmt.Sprintf(" Pivots %d and %d are on the centre line: the sheet has a stage left and a stage right set, never to be mixed.", pair.A+1, pair.B+1)
		}
	}
	return text
}

// foundWords say what the figures of the best pairs mean, what they are for the
// pair in use, and how the best of the list compares with the habit.
func foundWords(p *prep.Production, w *prep.FloorWork, best prep.PivotChoice) string {
	text := "Worst error holds 95 times in a hundred, by the tapes alone. Not served: out of reach, behind something, in line, or less sure than " + p.Fine(p.Errors().Allowed) + "."
	if c, ok := prep.JudgePivots(p, w); ok {
		text += fmt.Sprintf(" The pair in use: %s at %s, %s not served.", p.Fine(c.Worst), c.Weakest, number(c.Unserved()))
	}
	if factor, left, ok := prep.Gain(p, w, best.Pair()); ok {
		text += fmt.Sprintf(" The first of the list is %.1f times as good as pivots at the centre of the stage edge and of the back wall", factor)
		if left > 0 {
			text += fmt.Sprintf(", which leave %s out", verb(left, "mark", "marks"))
		}
		text += "."
	}
	return text
}

func number(n int) string {
	if n == 0 {
		return "none"
	}
	return strconv.Itoa(n)
}

func choiceColumns() []grid.Column {
	return []grid.Column{
		{Title: "First pivot", Width: 180, Grow: true, ReadOnly: true},
		{Title: "Second pivot", Width: 180, Grow: true, ReadOnly: true},
		{Title: "Worst error", Width: 90, Right: true, ReadOnly: true},
		{Title: "Weakest", Width: 70, ReadOnly: true},
		{Title: "Not served", Width: 94, Right: true, ReadOnly: true},
	}
}

// choiceRows shows the best pairs, the best first.
func choiceRows(p *prep.Production, list []prep.PivotChoice) []grid.Row {
	rows := make([]grid.Row, len(list))
	for i, c := range list {
		rows[i] = grid.Row{ID: strconv.Itoa(i), Cells: []string{
			c.A.Name, c.B.Name, p.Fine(c.Worst), c.Weakest, number(c.Unserved()),
		}}
	}
	return rows
}
