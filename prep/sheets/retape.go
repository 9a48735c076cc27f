package sheets

import (
	"strings"

	"groundrow/prep"
)

// linesToFill is how many empty lines there are for what is found to have moved.
const linesToFill = 6

// retape is what has worn on a floor and is to be taped again, with the tape to
// bring, and what has moved, with lines for what is found.
func retape(j Job) content {
	p, f := j.production(), figuresOf(j.production())
	w := j.workOf(j.Floor)
	if w == nil {
		return content{blocks: []block{paragraph{Text: "This floor is not in the production any more."}}}
	}
	r := prep.RetapeOf(p, w)
	blocks := []block{}
	if len(r.Tape) > 0 {
		blocks = append(blocks, paragraph{Text: "Bring " + prep.Listed(prep.RetapeWords(p, r)) + "; overlaps and waste are in it."})
	}
	blocks = append(blocks, heading{"Strips"}, retapeStrips(p, r), heading{"Tabs"}, retapeTabs(p, r, f), heading{"Moved pieces"}, movedTable(p, j))
	return content{blocks: append(blocks,
		paragraph{Text: "What is found to have moved: measure two or more of its marks where they lie now, up and over or by two tapes."}, foundTable())}
}

func retapeStrips(p *prep.Production, r prep.Retape) table {
	t := table{
		Columns: []column{{Title: "strip", Flex: true}, {Title: "marks", Type: labelType}, {Title: "tape"}, {Title: "length", Type: floorType, Align: right}, {Title: "laid", Kind: tick}},
		Empty:   "No strip is said to be worn.",
	}
	f := figuresOf(p)
	for _, s := range r.Strips {
		t.Rows = append(t.Rows, cells(prep.StripWords(p, s), strings.Join(s.Worn, ", "), stockName(p, s.Stock), f.length(s.Length()), ""))
	}
	return t
}

func retapeTabs(p *prep.Production, r prep.Retape, f figures) table {
	t := table{
		Columns: []column{
			{Title: "mark", Type: labelType}, {Title: "what it is", Flex: true}, {Title: "up", Type: floorType, Align: right}, {Title: "over", Type: floorType, Align: right},
			{Title: "tape 1", Align: right}, {Title: "tape 2", Align: right}, {Title: "seen by", Flex: true}, {Title: "placed", Kind: tick}, {Title: "checked", Kind: tick},
		},
		Empty: "No mark is said to be worn.",
	}
	style := p.Style()
	for _, m := range r.Marks {
		a, b := m.TapeFigures(f.length)
		t.Rows = append(t.Rows, cells(m.Label, meaning(m), style.FormatUp(m.Up()), style.FormatOver(m.Over()), a, b,
			strings.TrimPrefix(prep.ByWhom(m.Progress.Worn.By, m.Progress.Worn.On), " by "), "", ""))
	}
	return t
}

func movedTable(p *prep.Production, j Job) table {
	t := table{
		Columns: []column{{Title: "piece", Type: strongType}, {Title: "scene"}, {Title: "how far", Flex: true}, {Title: "why", Flex: true}, {Title: "by"}, {Title: "in the plan"}},
		Empty:   "Nothing is known to have moved.",
	}
	for _, m := range p.Moves {
		if m.Floor != j.Floor {
			continue
		}
		name, scene, taken := string(m.Element), "all", "not yet"
		if e := p.Plan.Element(m.Element); e != nil {
			name = or(e.Name, string(e.Kind))
		}
		if m.Scene != "" {
			scene = p.Plan.SceneName(m.Scene)
		}
		if m.Taken {
			taken = "yes"
		}
		t.Rows = append(t.Rows, cells(name, scene, p.MoveWords(m), m.Reason, strings.TrimPrefix(prep.ByWhom(m.By, m.On), " by "), taken))
	}
	return t
}

func foundTable() table {
	blankColumn := func(title string, width float64) column {
		return column{Title: title, Kind: blank, Width: width, High: 9}
	}
	t := table{Columns: []column{blankColumn("piece and scene", 44), blankColumn("mark", 18), blankColumn("up, or pivot 1", 34), blankColumn("over, or pivot 2", 34), blankColumn("why", 44)}}
	for range linesToFill {
		t.Rows = append(t.Rows, cells("", "", "", "", ""))
	}
	return t
}
