package marksplace

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

func checkColumns() []grid.Column {
	return []grid.Column{
		{Title: "From", Width: 64, ReadOnly: true, Compare: byLabel},
		{Title: "To", Width: 64, ReadOnly: true, Compare: byLabel},
		{Title: "Expected", Width: 100, Right: true, ReadOnly: true, Compare: byLength},
		{Title: "Read", Width: 90, Right: true},
		{Title: "Differs", Width: 80, Right: true, ReadOnly: true},
		{Title: "Verdict", Width: 190, Grow: true, ReadOnly: true},
		{Title: "Why", Width: 150, ReadOnly: true},
		{Title: "Both placed", Width: 98, ReadOnly: true},
		{Title: "Read by", Width: 150, ReadOnly: true},
	}
}

func checkRows(v *desk.View, list []prep.Measure) []grid.Row {
	rows := make([]grid.Row, len(list))
	for i, c := range list {
		ready := "not yet"
		if c.Ready {
			ready = "yes"
		}
		cells := []string{c.Ends[0], c.Ends[1], v.Style().Format(c.Expected), "", "", "", c.Why, ready, ""}
		row := grid.Row{ID: c.Key(), Dim: !c.Ready && c.Read == nil, Cells: cells}
		if r := c.Read; r != nil {
			cells[readColumn], cells[readColumn+1] = v.P.ShowReading(r.Reading), v.Style().Format(r.Off)
			cells[readColumn+2] = r.Grade.Sign() + " " + r.Words()
			cells[readColumn+5] = decision(floor.Decision{By: r.By, On: r.On})
			row.Bold = r.Grade != prep.GoodReading && r.Grade != prep.EdgeReading
		}
		rows[i] = row
	}
	return rows
}

// readColumn is the column into which a reading is typed.
const readColumn = 3

// located says where two tapes meet, and which mark is meant to be near there.
func located(p *prep.Production, w *prep.FloorWork, r survey.Reading) (good bool, text string) {
	pair, ok := prep.Pivots(w.Floor)
	if !ok {
		return false, "Two pivots are needed first."
	}
	style := p.Style()
	at, err := pair.Locate(r)
	if err != nil {
		return false, cannotMeet(err, pair.Base(), style.Format)
	}
	text = fmt.Sprintf("The tapes meet at %s up, %s.", style.FormatUp(at.Y), style.FormatOver(at.X))
	best := -1
	for i, m := range w.Marks {
		if best < 0 || m.At.To(at) < w.Marks[best].At.To(at) {
			best = i
		}
	}
	if best >= 0 {
		m := w.Marks[best]
		text += fmt.Sprintf(" The nearest mark is %s, %s away, at %s up, %s.",
			m.Label, style.Format(m.At.To(at)), style.FormatUp(m.Up()), style.FormatOver(m.Over()))
	}
	return true, text
}
