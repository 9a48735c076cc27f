package marksplace

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of marks.
const (
	colLabel = iota
	colWhat
	colUp
	colOver
	colTapeA
	colTapeB
	colSide
	colError
	colMethod
	colPlaced
	colChecked
	colPair
	colKind
	colScenes
	colPlacedBy
	colCheckedBy
	colSince
)

func markColumns() []grid.Column {
	figures := func(title string, width float32) grid.Column {
		return grid.Column{Title: title, Width: width, Right: true, ReadOnly: true, Compare: byLength}
	}
	return []grid.Column{
		{Title: "Label", Width: 54, ReadOnly: true, Compare: byLabel},
		{Title: "What it is", Width: 84, Grow: true, ReadOnly: true},
		figures("Up", 94), figures("Over", 100), figures("Tape 1", 82), figures("Tape 2", 98),
		{Title: "Side", Width: 44, ReadOnly: true},
		figures("Within", 86),
		{Title: "Method", Width: 96, Choices: methodChoices},
		{Title: "Placed", Width: 60, Tick: true},
		{Title: "Checked", Width: 74, Tick: true},
		{Title: "Pivots", Width: 60, ReadOnly: true},
		{Title: "Kind", Width: 112, ReadOnly: true},
		{Title: "Scenes", Width: 110, ReadOnly: true},
		{Title: "Placed by", Width: 170, ReadOnly: true},
		{Title: "Checked by", Width: 170, ReadOnly: true},
		{Title: "Since then", Width: 200, ReadOnly: true},
	}
}

// byLabel orders labels as they are given: Z before AA.
func byLabel(a, b string) int { return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)) }

// byLength orders lengths as written in the table, stage right first; what is no
// length comes last.
func byLength(a, b string) int {
	x, errA := length.ParseOver(a, length.FeetInches)
	y, errB := length.ParseOver(b, length.FeetInches)
	switch {
	case errA != nil && errB != nil:
		return cmp.Compare(a, b)
	case errA != nil:
		return 1
	case errB != nil:
		return -1
	}
	return cmp.Compare(x, y)
}

// markRows shows the marks of the scene.
func markRows(v *desk.View, w *prep.FloorWork) []grid.Row {
	rows := make([]grid.Row, len(w.Marks))
	for i, m := range w.Marks {
		rows[i] = markRow(v, m)
	}
	return rows
}

func markRow(v *desk.View, m prep.MeasuredMark) grid.Row {
	style := v.Style()
	cells := make([]string, colSince+1)
	cells[colLabel], cells[colWhat], cells[colKind] = m.Label, m.What, string(m.Kind)
	cells[colUp], cells[colOver] = style.FormatUp(m.Up()), style.FormatOver(m.Over())
	cells[colError], cells[colMethod] = withinCell(v.P, m), methodCell(m)
	cells[colScenes] = sceneWords(v.P, m.Scenes)
	cells[colPlaced], cells[colPlacedBy] = tick(m.Progress.Placed), decision(m.Progress.Placed)
	cells[colSince] = sinceThen(m.Progress)
	cells[colChecked], cells[colCheckedBy] = tick(m.Progress.Checked), decision(m.Progress.Checked)
	row := grid.Row{ID: m.Label, Cells: cells, Dim: !m.Progress.Checked.Open(), CellProblems: map[int]string{}}
	if m.HasTapes {
		cells[colTapeA], cells[colTapeB] = style.Format(m.Tapes.A), style.Format(m.Tapes.B)
		cells[colSide] = sideWords(m.Tapes.Side)
		cells[colPair] = m.Pair.Words()
	}
	switch {
	case m.Far:
		row.CellProblems[colTapeB] = "farther than the longest tape: use up and over, or a nearer pivot"
	case m.Blocked:
		row.CellProblems[colTapeB] = m.Way(survey.TwoTapes).Why
	case m.Weak:
		row.CellProblems[colTapeB] = "the two tapes meet too flat to be trusted: use up and over"
	}
	if !m.Good {
		row.CellProblems[colError] = poorWords(v.P, m)
	}
	return row
}

// withinCell is within what a mark comes to lie; nothing for one that is not placed.
func withinCell(p *prep.Production, m prep.MeasuredMark) string {
	if m.OutOfReach() {
		return "none"
	}
	return p.Fine(m.Error)
}

// poorWords say why a mark is not placed as well as is allowed, and what to do.
func poorWords(p *prep.Production, m prep.MeasuredMark) string {
	if way := m.Way(m.Method); !way.Usable {
		return "cannot be placed by " + string(m.Method) + ": " + way.Why
	}
	return "less sure than " + p.Fine(p.Errors().Allowed) + ": move a pivot, lay a longer right angle, or choose another method"
}

// sideWords shortens the side to what fits the column; on the line there is none.
func sideWords(s survey.Side) string {
	if s == survey.OnLine {
		return "on it"
	}
	return string(s)
}

func tick(d floor.Decision) string {
	if d.Open() {
		return grid.Off
	}
	return grid.On
}

func decision(d floor.Decision) string {
	if d.Open() {
		return ""
	}
	if d.On.IsZero() {
		return d.By
	}
	return d.By + ", " + moment(d.On)
}

// sinceThen says what has become of a mark after it was placed.
func sinceThen(g marks.Progress) string {
	switch {
	case !g.Worn.Open():
		return "worn: " + decision(g.Worn)
	case !g.Lifted.Open():
		return "lifted: " + decision(g.Lifted)
	}
	return ""
}

func moment(at time.Time) string { return at.Local().Format("Mon 2 Jan 15:04") }

func sceneWords(p *prep.Production, ids []plan.SceneID) string {
	if len(ids) == 0 {
		return "all"
	}
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = p.Plan.SceneName(id)
	}
	return strings.Join(names, ", ")
}

// marksOf returns the labels of what is selected: marks themselves, or the marks
// of elements.
func marksOf(s desk.Selection, w *prep.FloorWork) []string {
	switch s.Kind {
	case desk.Mark:
		return s.IDs
	case desk.Element:
		var out []string
		for _, m := range w.Marks {
			for _, e := range m.Elements {
				if has(s.IDs, string(e)) {
					out = append(out, m.Label)
					break
				}
			}
		}
		return out
	}
	return nil
}

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// labelWords says whether the labels of the floor are kept for good, and which
// printed ones are not needed any more.
func labelWords(w *prep.FloorWork) (text string, gone []string) {
	frozen := 0
	for _, m := range w.Marks {
		if m.Frozen {
			frozen++
		}
	}
	for _, g := range w.Gone {
		gone = append(gone, g.Label)
	}
	switch {
	case frozen == 0 && len(gone) == 0:
		return "", nil
	case frozen == len(w.Marks):
		text = "Labels are printed or on the floor, and stay where they are."
	default:
		text = fmt.Sprintf("Labels are printed or on the floor, and stay where they are; %s not been printed yet.",
			verb(len(w.Marks)-frozen, "new mark has", "new marks have"))
	}
	if len(gone) > 0 {
		text += fmt.Sprintf(" Nothing needs these any more: %s. Lift their tabs, then retire the labels, which are never used again.", strings.Join(gone, ", "))
	}
	return text, gone
}
