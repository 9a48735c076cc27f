package sheets

import (
	"fmt"
	"math"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
)

// twoTapes lists every mark by its distances from the first two pivots. What
// lies left and what lies right of the line between them are listed apart, since
// the same two distances fit both sides.
func twoTapes(j Job) content {
	p, w := j.production(), j.work()
	if len(w.Marks) == 0 {
		return content{blocks: []block{paragraph{Text: noMarks}}}
	}
	if w.Floor == nil || len(w.Floor.Pivots) < 2 {
		return content{blocks: []block{paragraph{Text: "This floor has fewer than two pivots. Choose two fixed points from which tapes can be pulled, and this list fills itself."}}}
	}
	pair, _ := prep.Pivots(w.Floor)
	f := figuresOf(p)
	blocks := pivotNotes(w, pair, f)
	t := table{Columns: []column{
		{Title: "mark", Type: labelType},
		{Title: "from pivot 1", Type: floorType, Align: right},
		{Title: "from pivot 2", Type: floorType, Align: right},
		{Title: "side"},
		{Title: "what it is", Flex: true},
		{Title: "placed", Kind: tick},
		{Title: "checked", Kind: tick},
	}}
	for _, side := range []survey.Side{survey.Left, survey.Right, survey.OnLine, ""} {
		rows := tapeRows(w, side, f)
		if len(rows) > 0 {
			t.Rows = append(append(t.Rows, span(sideTitle(side, pair, p))), rows...)
		}
	}
	blocks = append(blocks, t)
	return content{blocks: append(blocks, retired(w)...)}
}

// pivotNotes says where the pivots are and what to measure before anything else.
func pivotNotes(w *prep.FloorWork, pair survey.TwoTape, f figures) []block {
	t := table{Columns: []column{
		{Title: "pivot", Type: labelType},
		{Title: "where to find it", Flex: true},
		{Title: "up", Type: floorType, Align: right},
		{Title: "side", Type: floorType, Align: middle},
		{Title: "over", Type: floorType, Align: right},
	}}
	for i, at := range []plane.Point{pair.A, pair.B} {
		t.Rows = append(t.Rows, cells(fmt.Sprint(i+1), or(w.Floor.Pivots[i].Name, "not named yet"), f.up(at.Y), f.side(at.X), f.over(at.X)))
	}
	return []block{t, bullets{Tick: true, Items: []string{
		fmt.Sprintf("Measure from pivot 1 to pivot 2 first. It must be %s.", f.length(pair.Base())),
		"Both tapes tight and low. The mark is where the two readings meet, on the side that the group says.",
	}}}
}

// sideTitle says on which side of the line between the pivots a group lies, and
// which way that is in the room.
func sideTitle(s survey.Side, pair survey.TwoTape, p *prep.Production) string {
	switch s {
	case survey.Left, survey.Right:
		return fmt.Sprintf("%s of the line, looking from pivot 1 to pivot 2: the %s side", capitalise(string(s)), toward(s, pair))
	case survey.OnLine:
		return "On the line from pivot 1 to pivot 2: stretch one tape between them and read it"
	}
	return "Not to be found by two tapes: place these by up and over"
}

// toward names the direction in which a side of the pivots' line lies.
func toward(s survey.Side, pair survey.TwoTape) string {
	d := pair.B.Sub(pair.A).Left()
	if s == survey.Right {
		d = d.Times(-1)
	}
	switch {
	case math.Abs(d.Y) >= math.Abs(d.X) && d.Y > 0:
		return "upstage"
	case math.Abs(d.Y) >= math.Abs(d.X):
		return "downstage"
	case d.X > 0:
		return "stage left"
	}
	return "stage right"
}

// tapeRows are the marks of one side, in rows from downstage that are walked
// there and back.
func tapeRows(w *prep.FloorWork, side survey.Side, f figures) []row {
	var group []prep.MeasuredMark
	for _, m := range w.Marks {
		of := m.Tapes.Side
		if !m.HasTapes {
			of = ""
		}
		if of == side {
			group = append(group, m)
		}
	}
	points := make([]plane.Point, len(group))
	for i, m := range group {
		points[i] = m.At
	}
	var out []row
	for _, i := range route.ByRows(plane.Point{X: -farthest}, points, walkingRow) {
		out = append(out, tapeRow(group[i], f))
	}
	return out
}

// walkingRow is how deep a row is that two people walk along without going back,
// in metres (common practice, no source).
const walkingRow = 0.9

func tapeRow(m prep.MeasuredMark, f figures) row {
	a, b := f.length(m.Tapes.A), f.length(m.Tapes.B)
	if !m.HasTapes {
		a, b = "–", "–"
	}
	what := meaning(m)
	if m.Weak && m.HasTapes {
		what = "WEAK: tapes meet too flat, check by up and over. " + what
	}
	if m.Far && m.HasTapes {
		what = "FAR: longer than the longest tape. " + what
	}
	return cells(m.Label, a, b, string(m.Tapes.Side), what,
		tickedIf(!m.Progress.Placed.Open()), tickedIf(!m.Progress.Checked.Open()))
}
