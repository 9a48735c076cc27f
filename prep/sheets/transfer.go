package sheets

import (
	"fmt"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// transfer is what a team that was never in the room needs to lay the job's
// floor again on the next one.
func transfer(j Job) content {
	p := j.production()
	to := j.next()
	if to == nil || j.floor() == nil {
		return content{blocks: []block{paragraph{Text: "There is no other floor to hand this one on to. Add the stage as a floor, with its datum, and this packet fills itself."}}}
	}
	t, err := prep.TransferRows(p, j.Floor, to.ID)
	if err != nil {
		return content{blocks: []block{paragraph{Text: capitalise(err.Error()) + "."}}}
	}
	there := j
	there.Floor, there.Scene = to.ID, ""
	blocks := append(transferFront(p, t), signOff())
	if d := drawFloor(there); len(d.Strokes) > 0 {
		blocks = append(blocks, d)
	}
	blocks = append(blocks, pageBreak{}, heading{"Element by element"}, transferTable(p, t))
	blocks = append(blocks, heading{"Marks on " + to.Name}, upOverTable(p, there.work()))
	if len(t.Rests) > 0 {
		blocks = append(blocks, heading{"What turns and runs, on " + to.Name}, restsTable(p, t.Rests))
	}
	blocks = append(blocks, danceBlocks(p, t)...)
	blocks = append(blocks, heading{"Open questions"}, notesTable(p, t.Open, "No question is open."))
	blocks = append(blocks, heading{"Settled"}, notesTable(p, t.Closed, "No note has been settled."))
	blocks = append(blocks, heading{"Tape to bring"}, bringTable(p, t))
	return content{
		head:   head{Floor: j.floor().Name + " → " + to.Name, Datum: datumWords(p.Plan.Baseline, to)},
		blocks: blocks,
	}
}

// next returns the floor that the packet is for: the one asked for, else the
// first stage, else the first other floor; nil when there is none.
func (j Job) next() *floor.Floor {
	p := j.production()
	if j.To != "" {
		return p.Floor(j.To)
	}
	var other *floor.Floor
	for i := range p.Floors {
		f := &p.Floors[i]
		switch {
		case f.ID == j.Floor:
		case f.Kind == floor.Stage:
			return f
		case other == nil:
			other = f
		}
	}
	return other
}

// transferFront is the first page: what matters most.
func transferFront(p *prep.Production, t prep.Transfer) []block {
	goes, gone := 0, 0
	var order []string // changes as they are met, each with who shares it
	who := map[string][]string{}
	for _, r := range t.Rows {
		if r.Goes {
			goes++
		} else {
			gone++
		}
		for _, c := range r.Changes {
			if who[c] == nil {
				order = append(order, c)
			}
			who[c] = append(who[c], or(r.Name, string(r.Kind)))
		}
	}
	var changes []string
	for _, c := range order {
		changes = append(changes, prep.Listed(who[c])+": "+c)
	}
	what := fmt.Sprintf("%s to lay on %s.", prep.Counted(goes, "element"), t.To.Name)
	if gone > 0 {
		what += " Staying behind: " + prep.Counted(gone, "element") + "."
	}
	blocks := []block{heading{"What matters"}, paragraph{Strong: true, Text: what}}
	add := func(title string, items []string, tick bool, none string) {
		blocks = append(blocks, paragraph{Strong: true, Text: title})
		if len(items) == 0 {
			items, tick = []string{none}, false
		}
		blocks = append(blocks, bullets{Items: items, Tick: tick})
	}
	add("Different from the rehearsal floor", changes, true, "Nothing: it is laid as it was rehearsed.")
	var missing []string
	for _, pr := range t.Problems {
		missing = append(missing, pr.Sentence())
	}
	add("Still missing", missing, true, "Nothing is missing.")
	return blocks
}

func transferTable(p *prep.Production, t prep.Transfer) table {
	out := table{
		Columns: []column{
			{Title: "element", Type: strongType, Flex: true},
			{Title: "scenes"},
			{Title: "tape", Flex: true},
			{Title: "in rehearsal"},
			{Title: "there"},
			{Title: "marks there", Flex: true, Type: strongType},
			{Title: "notes", Flex: true},
			{Title: "laid", Kind: tick},
		},
		Empty: "Neither floor lays anything yet.",
	}
	for _, r := range t.Rows {
		name := or(r.Name, string(r.Kind))
		if r.Level != "" {
			name += ", " + r.Level
		}
		var labels, notes []string
		for _, m := range r.Marks {
			labels = append(labels, m.Label)
		}
		notes = append(notes, r.Changes...)
		for _, n := range r.Notes {
			notes = append(notes, n.Text)
		}
		out.Rows = append(out.Rows, cells(name, or(strings.Join(r.Scenes, ", "), "all"), stockName(p, r.Stock), string(r.Here.How), string(r.There.How),
			or(strings.Join(labels, ", "), "none"), strings.Join(notes, " "), ""))
	}
	return out
}

// restsTable says where each revolve and track stops, by mark and by measurement.
func restsTable(p *prep.Production, rests []prep.Rest) table {
	f := figuresOf(p)
	out := table{Columns: []column{
		{Title: "what moves", Type: strongType, Flex: true}, {Title: "stands", Flex: true}, {Title: "scenes", Flex: true},
		{Title: "mark", Type: labelType}, {Title: "up", Type: floorType, Align: right},
		{Title: "side", Type: floorType, Align: middle}, {Title: "over", Type: floorType, Align: right}, {Title: "laid", Kind: tick},
	}}
	for _, m := range rests {
		stands := capitalise(m.Where)
		if m.Turns {
			stands += ", about its centre at " + f.place(m.Centre)
		}
		out.Rows = append(out.Rows, cells(m.Name, stands, or(strings.Join(m.Scenes, ", "), "no scene stops here"),
			or(m.Mark, "off the floor"), f.up(m.At.Y), f.side(m.At.X), f.over(m.At.X), ""))
	}
	return out
}

func danceBlocks(p *prep.Production, t prep.Transfer) []block {
	f := figuresOf(p)
	var out []block
	for _, d := range t.Dance {
		title := "Dance line: " + or(d.Line.Name, "without a name")
		if !d.Here {
			title += ", to be laid again from " + t.From.Name
		}
		out = append(out, heading{title}, bullets{Tick: true, Items: danceRecipe(d.Line, f)}, danceTable(d.Line, d.Figures, f))
	}
	return out
}

func notesTable(p *prep.Production, notes []prep.Note, none string) table {
	t := table{
		Columns: []column{
			{Title: "about", Type: strongType},
			{Title: "note", Flex: true},
			{Title: "who answers"},
			{Title: "since"},
			{Title: "answer", Kind: blank, Width: 40},
		},
		Empty: none,
	}
	for _, n := range notes {
		about := "the whole floor"
		if e := p.Plan.Element(n.Element); e != nil {
			about = or(e.Name, string(e.Kind))
		}
		t.Rows = append(t.Rows, cells(about, n.Text, n.Owner, day(n.On), ""))
	}
	return t
}

func bringTable(p *prep.Production, t prep.Transfer) table {
	out := table{
		Columns: []column{
			{Title: "tape", Flex: true},
			{Title: "length", Align: right, Type: strongType},
			{Title: "rolls to bring", Align: right, Type: floorType},
			{Title: "packed", Kind: tick},
		},
		Empty: "No tape is needed there yet.",
	}
	for _, r := range t.Tape {
		if r.Total > 0 {
			out.Rows = append(out.Rows, cells(stockName(p, r.Stock), tapeLength(p, r.Total), fmt.Sprint(r.Rolls), ""))
		}
	}
	return out
}

// signOff is where both teams sign.
func signOff() table {
	t := table{Whole: true, Columns: []column{
		{Title: "sign-off", Type: strongType, Flex: true},
		{Title: "name", Kind: blank, Width: 50, High: 10},
		{Title: "signed", Kind: blank, Width: 50},
		{Title: "date", Kind: blank, Width: 28},
	}}
	for _, who := range []string{"handed over by", "taken over by", "placed by", "checked by"} {
		t.Rows = append(t.Rows, cells(who, "", "", ""))
	}
	return t
}
