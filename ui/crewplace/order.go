package crewplace

import (
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// walk is the order in which marks are placed, in datum axes.
type walk struct {
	start   plane.Point
	from    string // what the walk starts at, in words
	marks   []prep.MeasuredMark
	order   []int
	length  float64 // metres, in this order
	byLabel float64 // metres, in the order of the labels
}

// walkOf prepares a walk over the marks of a floor, in the order of their labels; placed marks can be left out.
func walkOf(w *prep.FloorWork, placedToo bool) walk {
	k := walk{from: "the datum"}
	if pivots := w.Floor.Pivots; len(pivots) > 0 {
		k.start, k.from = w.Floor.FloorToDatum().Apply(pivots[0].At), pivotName(pivots[0])
	}
	for _, m := range w.Marks {
		if placedToo || m.Progress.Placed.Open() {
			k.marks = append(k.marks, m)
		}
	}
	return k
}

func pivotName(v floor.Pivot) string {
	if v.Name == "" {
		return "the first pivot"
	}
	return v.Name
}

// settle finds a short walk. It may take a while for thousands of marks.
func (k walk) settle() walk {
	points := make([]plane.Point, len(k.marks))
	as := make([]int, len(k.marks))
	for i, m := range k.marks {
		points[i], as[i] = m.At, i
	}
	k.order = route.Order(k.start, points)
	k.length, k.byLabel = route.Walk(k.start, points, k.order), route.Walk(k.start, points, as)
	return k
}

// path is the walk as lines on the floor.
func (k walk) path() []plane.Edge {
	var out []plane.Edge
	at := k.start
	for _, i := range k.order {
		next := k.marks[i].At
		out = append(out, plane.Edge{A: at, B: next})
		at = next
	}
	return out
}

// sentence compares the walk with that by label.
func (k walk) sentence(v *desk.View) string {
	if len(k.marks) == 0 {
		return "No marks are left to place on this floor in this scene."
	}
	style := v.Style()
	return prep.Counted(len(k.marks), "mark") + " from " + k.from + ": " + style.Format(k.length) +
		" to walk in this order, " + style.Format(k.byLabel) + " in the order of the labels."
}

func orderColumns() []grid.Column {
	return []grid.Column{
		{Title: "No.", Width: 44, Right: true, ReadOnly: true},
		{Title: "Mark", Width: 52, ReadOnly: true},
		{Title: "Up", Width: 92, Right: true, ReadOnly: true},
		{Title: "Over", Width: 108, Right: true, ReadOnly: true},
		{Title: "Tape 1", Width: 124, Right: true, ReadOnly: true},
		{Title: "Tape 2", Width: 124, Right: true, ReadOnly: true},
		{Title: "What", Width: 150, Grow: true, ReadOnly: true},
	}
}

// orderRows is the list to read aloud.
func orderRows(v *desk.View, k walk) []grid.Row {
	style := v.Style()
	rows := make([]grid.Row, 0, len(k.order))
	for n, i := range k.order {
		m := k.marks[i]
		a, b := m.TapeFigures(style.Format)
		row := grid.Row{ID: m.Label, Cells: []string{
			strconv.Itoa(n + 1), m.Label, style.FormatUp(m.Up()), style.FormatOver(m.Over()), a, b, m.What,
		}}
		if m.HasTapes && m.Weak {
			row.CellProblems = map[int]string{4: "The two tapes meet too flat here: find it by up and over."}
		}
		row.Dim = !m.Progress.Placed.Open()
		rows = append(rows, row)
	}
	return rows
}
