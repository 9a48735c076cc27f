package sheets

import (
	"fmt"

	"groundrow/prep"
)

// downWhen is what of the floor is down all the time and what only in some scenes,
// and the tape that no actor needs.
func downWhen(j Job) content {
	p, w := j.production(), j.workOf(j.Floor)
	if w == nil {
		return content{blocks: []block{paragraph{Text: "Choose a floor: what is down in which scene follows from what it lays."}}}
	}
	f := figuresOf(p)
	blocks := []block{heading{"Element by element"}, usesTable(p, w, f)}
	if len(p.Plan.Scenes) > 0 {
		blocks = append(blocks, heading{"Scene by scene"}, sceneTapesTable(p, w, f))
	}
	each, all := prep.Spares(p, j.Floor, j.workOf)
	if len(each) > 0 {
		blocks = append(blocks, heading{"Tape that no actor needs"}, sparesTable(p, each),
			paragraph{Text: fmt.Sprintf("All of it together: %s of tape and %s. A person decides.", tapeLength(p, all.Metres), p.Money(all.Cents))})
	}
	return content{blocks: blocks}
}

func usesTable(p *prep.Production, w *prep.FloorWork, f figures) table {
	t := table{
		Columns: []column{
			{Title: "element", Type: strongType, Flex: true}, {Title: "down", Flex: true},
			{Title: "tape"}, {Title: "lines", Align: right},
		},
		Empty: "This floor lays nothing yet.",
	}
	uses := prep.SceneUses(p, w)
	for _, always := range []bool{true, false} {
		title := "Down all the time"
		if !always {
			title = "Down in some scenes, or in several places"
		}
		t.Rows = append(t.Rows, span(title))
		for _, u := range uses {
			if u.Always != always {
				continue
			}
			e := p.Plan.Element(u.Element)
			lines := f.length(u.Laid)
			if u.Spiked {
				lines = "spikes"
			}
			t.Rows = append(t.Rows, cells(or(e.Name, string(e.Kind)), capitalise(prep.UseWords(p, u)), stockName(p, e.Stock), lines))
		}
	}
	if len(uses) == 0 {
		t.Rows = nil
	}
	return t
}

func sceneTapesTable(p *prep.Production, w *prep.FloorWork, f figures) table {
	t := table{Columns: []column{
		{Title: "scene", Type: strongType, Flex: true}, {Title: "lines in use", Align: right},
		{Title: "of them down only in some scenes", Align: right}, {Title: "spikes and stops", Align: right},
	}}
	for _, x := range prep.SceneTapes(p, w) {
		t.Rows = append(t.Rows, cells(p.Plan.SceneName(x.Scene), f.length(x.Laid), f.length(x.Only), fmt.Sprint(x.Spikes)))
	}
	return t
}

func sparesTable(p *prep.Production, each []prep.Spare) table {
	t := table{Columns: []column{
		{Title: "element", Type: strongType, Flex: true}, {Title: "why", Flex: true},
		{Title: "tape saved", Align: right}, {Title: "money saved", Align: right}, {Title: "leave out", Kind: tick},
	}}
	for _, s := range each {
		t.Rows = append(t.Rows, cells(s.Name, capitalise(s.Reason), tapeLength(p, s.Metres), p.Money(s.Cents), ""))
	}
	return t
}
