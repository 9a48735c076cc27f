package sheets

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// questions are what the director must decide about this floor, with a place for
// the answer, and the picture that they are about.
func questions(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	t := table{
		Columns: []column{
			{Title: "no.", Type: strongType, Align: right},
			{Title: "about", Flex: true, Type: strongType},
			{Title: "question", Flex: true},
			{Title: "what we propose", Flex: true},
			{Title: "answer", Kind: blank, Width: 50, High: 14},
			{Title: "who and when", Kind: blank, Width: 28},
		},
		Empty: "There is nothing to ask about this floor: everything fits as drawn, or has been decided.",
	}
	if w.Floor != nil {
		for _, q := range openQuestions(p, w, f) {
			t.Rows = append(t.Rows, cells(append([]string{fmt.Sprint(len(t.Rows) + 1)}, q...)...))
		}
	}
	blocks := []block{t}
	if d := drawFloor(j); len(t.Rows) > 0 && len(d.Strokes) > 0 {
		blocks = append(blocks, d.picture())
	}
	return content{blocks: blocks, wide: true}
}

// openQuestions returns about, question and proposal: first what sticks out or
// is treated without a decision, then the open notes of elements on this floor.
func openQuestions(p *prep.Production, w *prep.FloorWork, f figures) [][]string {
	over := map[plan.ElementID]floor.Overhang{}
	for _, o := range w.Overhangs {
		over[o.Element] = o
	}
	var out [][]string
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		t := w.Floor.Decide(e)
		o, sticks := over[e.ID]
		sticks = sticks && o.Length > 0
		decided := !t.Decided.Open() || t.How == floor.LeftOut && e.Kind.House()
		if decided || !sticks && t.How == floor.AsDrawn {
			continue
		}
		question := "Is this how it is rehearsed?"
		if sticks {
			question = fmt.Sprintf("It does not fit: %s of its %s of lines lie outside the floor. It is %s. Where does it go?", f.length(o.Length), f.length(o.Of), or(string(e.Use), "of unknown use"))
		}
		out = append(out, []string{or(e.Name, string(e.Kind)), question, proposal(t, f)})
	}
	for _, n := range p.Notes {
		if !n.Open {
			continue
		}
		about := "the whole floor"
		if e := p.Plan.Element(n.Element); e != nil {
			about = e.Name
		}
		text := n.Text
		if n.Owner != "" {
			text += " (" + n.Owner + ")"
		}
		out = append(out, []string{about, text, ""})
	}
	return out
}

// proposal words a treatment.
func proposal(t floor.Treatment, f figures) string {
	if t.How == floor.AsDrawn {
		return "no proposal yet"
	}
	s := capitalise(string(t.How))
	if t.How == floor.MovedAside {
		s += ": " + f.shift(t.Over, t.Up)
	}
	if t.Reason != "" {
		s += ". " + capitalise(t.Reason)
	}
	return s + "."
}
