package sheets

import (
	"fmt"
	"math"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
)

// checkList is distances to measure before anything is joined up: from pivot to
// pivot, both diagonals of every rectangle, and so on until each mark is in one.
func checkList(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	allowed := allowedDifference(p.Settings.TapeSigma, f.style.Grain())
	t := table{
		Columns: []column{
			{Title: "from", Type: labelType},
			{Title: "to", Type: labelType},
			{Title: "expected", Type: floorType, Align: right},
			{Title: "read", Kind: blank, Width: 38, High: 9},
			{Title: "allowed", Align: right},
			{Title: "why this one", Flex: true},
			{Title: "good", Kind: tick},
		},
		Empty: "There are fewer than two marks on this floor in this scene, so there is no distance to check.",
	}
	if len(w.Marks) < 2 {
		return content{blocks: []block{t}}
	}
	differ := "± " + f.length(allowed)
	if w.Floor != nil {
		if pair, ok := prep.Pivots(w.Floor); ok {
			t.Rows = append(t.Rows, cells("Pivot 1", "Pivot 2", f.length(pair.Base()), "", differ, "the base of every two-tape measure", ""))
		}
	}
	for _, c := range walkedChecks(w) {
		t.Rows = append(t.Rows, cells(w.Marks[c.From].Label, w.Marks[c.To].Label, f.length(c.Expected), "", differ, string(c.Why), ""))
	}
	return content{blocks: []block{
		paragraph{Text: fmt.Sprintf("Measure each distance with a tight tape and write down what you read. A reading that is off by more than %s means that one of its two marks is wrong: find out which before joining anything.", f.length(allowed))},
		t,
	}}
}

// allowedDifference is how far, in metres, a good reading between two good marks
// may depart from the expected one: twice the standard deviation of three
// independent errors sigma, of the marks and of the reading, and of the rounding
// of both marks by half a step at most; as a whole number of steps.
func allowedDifference(sigma, step float64) float64 {
	variance := 3*sigma*sigma + 2*step*step/12
	return step * max(1, math.Ceil(2*math.Sqrt(variance)/step-1e-9))
}

// walkedChecks returns the check measures in rows from downstage, to and fro.
func walkedChecks(w *prep.FloorWork) []survey.Check {
	points := make([]plane.Point, len(w.Marks))
	for i, m := range w.Marks {
		points[i] = m.At
	}
	list := survey.CheckList(points, rectangles(w)...)
	middles := make([]plane.Point, len(list))
	for i, c := range list {
		middles[i] = points[c.From].Towards(points[c.To], 0.5)
	}
	out := make([]survey.Check, len(list))
	for i, k := range route.ByRows(plane.Point{}, middles, walkingRow) {
		out[i] = list[k]
	}
	return out
}

// rectangles finds the closed paths of four straight edges whose corners are all
// marks and whose diagonals are equal to a centimetre.
func rectangles(w *prep.FloorWork) [][4]int {
	index := map[string]int{}
	for i, m := range w.Marks {
		index[m.Label] = i
	}
	near := newFinder(w.Marks)
	var out [][4]int
	for i := 0; i+4 <= len(w.Lines); i++ {
		side := w.Lines[i : i+4]
		if !closes(side) {
			continue
		}
		var corners [4]int
		whole := true
		for k, l := range side {
			label, ok := near.at(l.A, 0.01)
			whole = whole && ok
			corners[k] = index[label]
		}
		if whole {
			out = append(out, corners)
		}
	}
	return out
}

// closes tells whether four lines go round a rectangle.
func closes(side []floor.Line) bool {
	for i, l := range side {
		next := side[(i+1)%4]
		if l.Path != side[0].Path || !l.Straight() || l.B.To(next.A) > 1e-6 {
			return false
		}
	}
	return math.Abs(side[0].A.To(side[2].A)-side[1].A.To(side[3].A)) < 0.01
}
