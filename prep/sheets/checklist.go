package sheets

import (
	"fmt"
	"math"

	"groundrow/prep"
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
	differ := "±" + f.style.FormatSmall(allowed)
	if w.Floor != nil {
		if pair, ok := prep.Pivots(w.Floor); ok {
			read, good := alreadyRead(p, w, prep.FirstPivot, prep.SecondPivot)
			t.Rows = append(t.Rows, cells("Pivot 1", "Pivot 2", f.length(pair.Base()), read, differ, "the base of every two-tape measure", good))
		}
	}
	for _, c := range prep.ChecksOf(p, w) {
		from, to := w.Marks[c.From].Label, w.Marks[c.To].Label
		read, good := alreadyRead(p, w, from, to)
		t.Rows = append(t.Rows, cells(from, to, f.length(c.Expected), read, differ, string(c.Why), good))
	}
	blocks := []block{}
	if w.Floor != nil && len(p.ReadingsOn(w.Floor.ID)) > 0 {
		v := prep.VerdictOf(p, j.workOf(w.Floor.ID))
		blocks = append(blocks, paragraph{Text: v.Sentence(p) + " " + v.Next(p)})
	}
	return content{blocks: append(blocks,
		paragraph{Text: fmt.Sprintf("Measure each distance with a tight tape and write down what you read. A reading that is off by more than %s means that one of its two marks is wrong: find out which before joining anything.", f.style.FormatSmall(allowed))},
		t,
	)}
}

// alreadyRead returns what has been read of a distance, and whether all of it is
// within what the sheet allows.
func alreadyRead(p *prep.Production, w *prep.FloorWork, from, to string) (read, good string) {
	if w.Floor == nil {
		return "", ""
	}
	expected, known := w.Distance(from, to)
	within := true
	for _, r := range p.ReadingsOn(w.Floor.ID) {
		if !known || !r.Joins(from, to) {
			continue
		}
		if read != "" {
			read += "; "
		}
		read += p.ShowReading(r)
		within = within && math.Abs(r.Metres-expected) <= p.CheckAllowed()
	}
	return read, tickedIf(read != "" && within)
}
