package transferplace

import (
	"fmt"
	"math"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the list of what goes.
const (
	colElement = iota
	colHere
	colThere
	colStock
	colLaid
	colChanged
	colScenes
	colLevel
	colKind
)

func goingColumns() []grid.Column {
	column := func(title string, width float32) grid.Column {
		return grid.Column{Title: title, Width: width, ReadOnly: true}
	}
	changed := column("What changed in rehearsal, or why it does not go", 330)
	changed.Grow = true
	return []grid.Column{
		column("Element", 150), column("Lies here", 178), column("Lies there", 178),
		column("Tape", 112), column("Laid there", 90), changed,
		column("Scenes", 110), column("Level", 90), column("Kind", 90),
	}
}

// goingRows lists what is laid on either floor and stands in the scene looked at.
func goingRows(v *desk.View, t prep.Transfer) []grid.Row {
	here := marksByElement(v.Work(t.From.ID))
	var rows []grid.Row
	for _, r := range t.Rows {
		e := v.P.Plan.Element(r.Element)
		if e == nil {
			continue
		}
		if _, stands := v.P.Plan.Where(e, v.Scene); !stands {
			continue
		}
		rows = append(rows, goingRow(v, r, here[r.Element]))
	}
	return rows
}

func goingRow(v *desk.View, r prep.TransferRow, here []prep.MeasuredMark) grid.Row {
	cells := make([]string, colKind+1)
	cells[colElement], cells[colKind], cells[colLevel] = r.Name, string(r.Kind), r.Level
	cells[colHere] = spot(v, here, r.Here.How)
	cells[colThere] = spot(v, r.Marks, r.There.How)
	cells[colLaid] = string(r.There.How)
	cells[colStock] = stockName(v.P, r.Stock)
	cells[colChanged] = strings.Join(r.Changes, " ")
	cells[colScenes] = "all"
	if len(r.Scenes) > 0 {
		cells[colScenes] = strings.Join(r.Scenes, ", ")
	}
	row := grid.Row{ID: string(r.Element), Cells: cells}
	switch {
	case !r.Goes:
		row.Dim = true
		cells[colThere], cells[colLaid] = "does not go", ""
		cells[colChanged] = whyNot(r.There)
		if r.Here.How != floor.AsDrawn && len(r.Changes) > 0 {
			cells[colChanged] += " " + r.Changes[0] // how it was here; the other says again that it does not go
		}
	case len(r.Marks) == 0:
		row.CellProblems = map[int]string{colThere: "it goes, but nothing says where it lies there"}
	}
	if n := openNotes(r.Notes); n > 0 {
		cells[colChanged] = strings.TrimSpace(cells[colChanged] + " " + prep.Counted(n, "open note") + ".")
	}
	return row
}

func openNotes(notes []prep.Note) int {
	n := 0
	for _, x := range notes {
		if x.Open {
			n++
		}
	}
	return n
}

func whyNot(t floor.Treatment) string {
	if t.Reason == "" {
		return "Does not go."
	}
	return "Does not go: " + t.Reason + "."
}

// spot says where an element lies: its first mark, and how many there are.
func spot(v *desk.View, marks []prep.MeasuredMark, how floor.How) string {
	switch {
	case how == floor.LeftOut:
		return "not laid"
	case len(marks) == 0 && how == floor.CutShort:
		return "wholly cut away"
	case len(marks) == 0:
		return "no mark"
	}
	text := markWords(v, marks[0])
	if n := len(marks) - 1; n > 0 {
		text += fmt.Sprintf(" + %d", n)
	}
	return text
}

// markWords writes a mark as label, up, over.
func markWords(v *desk.View, m prep.MeasuredMark) string {
	style := v.Style()
	return m.Label + ": " + style.FormatUp(m.Up()) + ", " + style.FormatOver(m.Over())
}

func marksByElement(w *prep.FloorWork) map[plan.ElementID][]prep.MeasuredMark {
	out := map[plan.ElementID][]prep.MeasuredMark{}
	if w == nil {
		return out
	}
	for _, m := range w.Marks {
		for _, e := range m.Elements {
			out[e] = append(out[e], m)
		}
	}
	return out
}

func stockName(p *prep.Production, id plan.StockID) string {
	if s := p.Stock(id); s != nil {
		return s.Name
	}
	return "not chosen"
}

// detailWords say of an element in full what the list has no room for.
func detailWords(t prep.Transfer, id plan.ElementID) string {
	for _, r := range t.Rows {
		if r.Element != id {
			continue
		}
		words := []string{r.Name + "."}
		if !r.Goes {
			words = append(words, whyNot(r.There))
		}
		words = append(words, r.Changes...)
		for _, n := range r.Notes {
			words = append(words, noteWords(n))
		}
		return strings.Join(words, " ")
	}
	return ""
}

func noteWords(n prep.Note) string {
	text := "Note: "
	if n.Open {
		text = "Open: "
	}
	text += strings.TrimRight(n.Text, ". ")
	if n.Owner != "" {
		text += " (" + n.Owner + ")"
	}
	return text + "."
}

func detailColumns() []grid.Column {
	return []grid.Column{
		{Title: "Floor", Width: 52, ReadOnly: true},
		{Title: "Label", Width: 54, ReadOnly: true},
		{Title: "Up", Width: 86, Right: true, ReadOnly: true},
		{Title: "Over", Width: 96, Right: true, ReadOnly: true},
		{Title: "Kind", Width: 100, Grow: true, ReadOnly: true},
	}
}

// detailRows lists every mark of the element on both floors.
func detailRows(v *desk.View, t prep.Transfer, id plan.ElementID) []grid.Row {
	style := v.Style()
	var rows []grid.Row
	add := func(where string, w *prep.FloorWork) {
		for _, m := range marksByElement(w)[id] {
			rows = append(rows, grid.Row{ID: where + " " + m.Label, Cells: []string{
				where, m.Label, style.FormatUp(m.Up()), style.FormatOver(m.Over()), string(m.Kind),
			}})
		}
	}
	add("here", v.Work(t.From.ID))
	add("there", v.Work(t.To.ID))
	return rows
}

// datumWords say from where up and over are measured on a floor.
func datumWords(v *desk.View, f *floor.Floor) string {
	if !f.OwnDatum {
		return fmt.Sprintf("%s: up is measured from the %s, over from the centre line, as on the plan.", f.Name, v.P.Plan.Baseline)
	}
	m := f.PlanToDatum()
	at := m.Apply(plane.Point{})
	text := fmt.Sprintf("%s: measured from a datum of its own. The plan's datum, where the %s meets the centre line, lies %s and %s",
		f.Name, v.P.Plan.Baseline, upWords(v, at.Y, "it"), overWords(v, at.X))
	if turn := math.Remainder(m.Turn, 2*math.Pi) * 180 / math.Pi; math.Abs(turn) >= 0.05 {
		text += fmt.Sprintf(", and the plan is turned by %.1f° against it", turn)
	}
	return text + "."
}

func overWords(v *desk.View, over float64) string {
	style := v.Style()
	switch over = style.Round(over); {
	case over < 0:
		return style.Format(-over) + " to stage right of it"
	case over > 0:
		return style.Format(over) + " to stage left of it"
	}
	return "on its centre line"
}
