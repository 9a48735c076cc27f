package sheets

import (
	"fmt"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// compare is what differs between the job's floor and another, element by element
// and tape by tape.
func compare(j Job) content {
	p, other := j.production(), j.next()
	if j.floor() == nil || other == nil || other.ID == j.Floor {
		return content{blocks: []block{paragraph{Text: "There is no second floor to compare this one with. Add another room, a cloth or the stage, and this sheet fills itself."}}}
	}
	c := prep.Compare(p, j.workOf(j.Floor), j.workOf(other.ID))
	f := figuresOf(p)
	alike := len(c.Rows) - c.Different()
	datum := ""
	if c.Datum != "" {
		datum = " Its datum lies elsewhere: " + c.Datum + "."
	}
	blocks := []block{
		paragraph{Strong: true, Text: fmt.Sprintf("%s compared with %s: %s laid otherwise, %d laid alike.", c.A.Name, c.B.Name, prep.Counted(c.Different(), "element"), alike)},
		paragraph{Text: "Places are those of the first drawn corner, up and over from each floor's own datum." + datum},
		comparedTable(c, f), heading{"Tape"}, comparedTapeTable(p, c),
	}
	return content{head: head{Floor: c.A.Name + " and " + c.B.Name}, blocks: blocks, wide: true}
}

func comparedTable(c prep.Comparison, f figures) table {
	t := table{
		Columns: []column{
			{Title: "element", Type: strongType, Flex: true}, {Title: "on " + c.A.Name, Flex: true},
			{Title: "on " + c.B.Name, Flex: true}, {Title: "what differs", Flex: true},
		},
		Empty: "Neither floor lays anything yet.",
	}
	for _, differs := range []bool{true, false} {
		title := "Laid otherwise"
		if !differs {
			title = "Laid alike"
		}
		start := len(t.Rows)
		for _, r := range c.Rows {
			if differs == (len(r.Differs) > 0) {
				t.Rows = append(t.Rows, cells(or(r.Name, string(r.Kind)), onFloorWords(r.A, f), onFloorWords(r.B, f),
					or(capitalise(strings.Join(r.Differs, "; ")), "nothing")))
			}
		}
		if len(t.Rows) > start {
			t.Rows = slices.Insert(t.Rows, start, span(title))
		}
	}
	return t
}

// onFloorWords says how an element lies on a floor.
func onFloorWords(x prep.OnFloor, f figures) string {
	if !x.Placed {
		return string(x.Treatment.How)
	}
	words := fmt.Sprintf("%s; %s; %s", x.Treatment.How, f.place(x.At), prep.Counted(len(x.Marks), "mark"))
	if x.Treatment.How == floor.CutShort {
		words += "; cut away " + f.length(x.Cut)
	}
	return words
}

func comparedTapeTable(p *prep.Production, c prep.Comparison) table {
	t := table{
		Columns: []column{
			{Title: "tape", Flex: true},
			{Title: c.A.Name, Align: right}, {Title: c.B.Name, Align: right}, {Title: "more there", Align: right, Type: strongType},
		},
		Empty: "Neither floor takes any tape yet.",
	}
	for _, x := range c.Tape {
		more := tapeLength(p, x.B-x.A)
		if x.B < x.A {
			more = "−" + tapeLength(p, x.A-x.B)
		}
		t.Rows = append(t.Rows, cells(stockName(p, x.Stock), tapeLength(p, x.A), tapeLength(p, x.B), more))
	}
	return t
}
