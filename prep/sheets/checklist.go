package sheets

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
)

// checkList is distances to measure before anything is joined up: from pivot to
// pivot, both diagonals of every rectangle, and so on until each mark is in one.
func checkList(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	allowed := p.CheckAllowed()
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

// walkedChecks returns the check measures in rows from downstage, to and fro.
func walkedChecks(w *prep.FloorWork) []survey.Check {
	list := w.Checks()
	middles := make([]plane.Point, len(list))
	for i, c := range list {
		middles[i] = w.Marks[c.From].At.Towards(w.Marks[c.To].At, 0.5)
	}
	out := make([]survey.Check, len(list))
	for i, k := range route.ByRows(plane.Point{}, middles, walkingRow) {
		out[i] = list[k]
	}
	return out
}
