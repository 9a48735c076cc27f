package sheets

import (
	"fmt"
	"math"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
)

// twoTapes lists every mark by its distances from a pair of pivots, pair by pair.
// What lies left and what lies right of the line between them are listed apart,
// since the same two distances fit both sides.
func twoTapes(j Job) content {
	p, w := j.production(), j.work()
	if len(w.Marks) == 0 {
		return content{blocks: []block{paragraph{Text: noMarks}}}
	}
	if w.Floor == nil || len(w.Floor.Pivots) < 2 {
		return content{blocks: []block{paragraph{Text: "This floor has fewer than two pivots. Choose two fixed points from which tapes can be pulled, and this list fills itself."}}}
	}
	pairs := w.Pairs()
	blocks := append(pivotNotes(p, w, pairs), asideNotes(p, w)...)
	for _, pair := range pairs {
		blocks = append(blocks, pairBlocks(p, w, pair, len(pairs) > 1)...)
	}
	if rows := tapeRows(p, w, func(m prep.MeasuredMark) bool { return !m.HasTapes }); len(rows) > 0 {
		t := tapeTable(prep.PivotPair{A: 0, B: 1})
		t.Rows = append(t.Rows, span("Not to be found by two tapes: place these by up and over"))
		blocks = append(blocks, withRows(t, rows))
	}
	blocks = append(blocks, errorNotes(p, w)...)
	return content{blocks: append(blocks, retired(w)...)}
}

// pairBlocks are the lists of one pair of pivots. The two sets of a pair on the
// centre line are tables of their own, so that nobody slips from one into the other.
func pairBlocks(p *prep.Production, w *prep.FloorWork, pair prep.PivotPair, several bool) []block {
	var out []block
	if several {
		out = append(out, heading{fmt.Sprintf("From pivots %d and %d", pair.A+1, pair.B+1)})
	}
	t := tapeTable(pair)
	for _, side := range []survey.Side{survey.Left, survey.Right, survey.OnLine} {
		rows := tapeRows(p, w, func(m prep.MeasuredMark) bool {
			return m.HasTapes && m.Pair == pair && m.Tapes.Side == side
		})
		if len(rows) == 0 {
			continue
		}
		if pair.OnCentreLine() && side != survey.OnLine {
			set := tapeTable(pair)
			set.Rows = append(set.Rows, span(sideTitle(side, pair)))
			out = append(out, heading{setName(side, pair.Tapes)}, withRows(set, rows))
			continue
		}
		t.Rows = append(append(t.Rows, span(sideTitle(side, pair))), rows...)
	}
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	return out
}

func withRows(t table, rows []row) table {
	t.Rows = append(t.Rows, rows...)
	return t
}

func tapeTable(pair prep.PivotPair) table {
	return table{Columns: []column{
		{Title: "mark", Type: labelType},
		{Title: fmt.Sprintf("from pivot %d", pair.A+1), Type: floorType, Align: right},
		{Title: fmt.Sprintf("from pivot %d", pair.B+1), Type: floorType, Align: right},
		{Title: "side"},
		{Title: "what it is", Flex: true},
		{Title: "within", Align: right},
		{Title: "use"},
		{Title: "placed", Kind: tick},
		{Title: "checked", Kind: tick},
	}}
}

// pivotNotes says where the pivots are and what to measure before anything else.
func pivotNotes(p *prep.Production, w *prep.FloorWork, pairs []prep.PivotPair) []block {
	f := figuresOf(p)
	t := table{Columns: []column{
		{Title: "pivot", Type: labelType},
		{Title: "where to find it", Flex: true},
		{Title: "up", Type: floorType, Align: right},
		{Title: "side", Type: floorType, Align: middle},
		{Title: "over", Type: floorType, Align: right},
	}}
	used := map[int]bool{}
	var first []string
	for _, pair := range pairs {
		used[pair.A], used[pair.B] = true, true
		first = append(first, fmt.Sprintf("Measure from pivot %d to pivot %d first. It must be %s.", pair.A+1, pair.B+1, f.length(pair.Tapes.Base())))
		if pair.OnCentreLine() {
			first = append(first, fmt.Sprintf("Pivots %d and %d are on the centre line: each pair of readings fits one place stage left and one stage right. Lay one set, put its list away, then lay the other. Never mix them.", pair.A+1, pair.B+1))
		}
	}
	m := w.Floor.FloorToDatum()
	for i, v := range w.Floor.Pivots {
		if used[i] {
			at := m.Apply(v.At)
			t.Rows = append(t.Rows, cells(fmt.Sprint(i+1), or(v.Name, "not named yet"), f.up(at.Y), f.side(at.X), f.over(at.X)))
		}
	}
	first = append(first, "Both tapes tight and low. The mark is where the two readings meet, on the side that the group says.")
	if stands := zeroEnds(p); stands != "" {
		first = append(first, stands)
	}
	return []block{t, bullets{Tick: true, Items: first}, bullets{Items: []string{usesNote}}}
}

// setName names one of the two sets of a pair on the centre line.
func setName(s survey.Side, pair survey.TwoTape) string {
	return "The " + toward(s, pair) + " set"
}

// sideTitle says on which side of the line between the pivots a group lies, and
// which way that is in the room.
func sideTitle(s survey.Side, pair prep.PivotPair) string {
	if s == survey.OnLine {
		return fmt.Sprintf("On the line from pivot %d to pivot %d: stretch one tape between them and read it", pair.A+1, pair.B+1)
	}
	return fmt.Sprintf("%s of the line, looking from pivot %d to pivot %d: the %s side", capitalise(string(s)), pair.A+1, pair.B+1, toward(s, pair.Tapes))
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

// tapeRows are the marks that are wanted, in rows from downstage that are walked
// there and back.
func tapeRows(p *prep.Production, w *prep.FloorWork, wanted func(prep.MeasuredMark) bool) []row {
	var group []prep.MeasuredMark
	var points []plane.Point
	for _, m := range w.Marks {
		if wanted(m) {
			group, points = append(group, m), append(points, m.At)
		}
	}
	var out []row
	for _, i := range route.ByRows(plane.Point{X: -farthest}, points, walkingRow) {
		out = append(out, tapeRow(p, group[i]))
	}
	return out
}

// walkingRow is how deep a row is that two people walk along without going back,
// in metres (common practice, no source).
const walkingRow = 0.9

func tapeRow(p *prep.Production, m prep.MeasuredMark) row {
	f := figuresOf(p)
	a, b := f.length(m.Tapes.A), f.length(m.Tapes.B)
	if !m.HasTapes {
		a, b = "–", "–"
	}
	what := meaning(m)
	switch {
	case !m.HasTapes:
	case m.Far:
		what = "FAR: beyond the longest tape. " + what
	case m.Blocked:
		what = "BLOCKED. " + what
	case m.Weak:
		what = "WEAK: tapes too flat. " + what
	}
	return cells(m.Label, a, b, string(m.Tapes.Side), what, withinOf(p, m, survey.TwoTapes), useOf(m, survey.TwoTapes),
		tickedIf(!m.Progress.Placed.Open()), tickedIf(!m.Progress.Checked.Open()))
}
