package sheets

import (
	"fmt"

	"groundrow/tapeout/marks"
)

const noDanceLine = "This floor has no dance line. Add one under Marks: how far up it lies, and how far apart its numbers are."

// danceLine is a recipe and a table for each row of numbers.
func danceLine(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	var blocks []block
	for _, d := range p.DanceLines {
		if d.Floor != j.Floor {
			continue
		}
		blocks = append(blocks, heading{or(d.Name, "Dance line")}, bullets{Tick: true, Items: danceRecipe(d, f)})
		blocks = append(blocks, danceTable(d, w.Dance, f))
	}
	if len(blocks) == 0 {
		blocks = []block{paragraph{Text: noDanceLine}}
	}
	return content{blocks: blocks}
}

// danceRecipe says how the line is laid, in the order of doing it.
func danceRecipe(d marks.DanceLine, f figures) []string {
	unit := "numbers count from centre to each side"
	if d.Habit == marks.Quarters {
		unit = "centre, eighths and quarters of the width, the same to each side"
	} else if d.Unit > 0 {
		unit = fmt.Sprintf("the number at a place is its distance from centre, %s to each one counted", f.length(d.Unit))
	}
	items := []string{
		fmt.Sprintf("Find the centre line at %s and put 0 on it.", f.upWords(d.Up)),
		fmt.Sprintf("Stretch a line straight across through it, square to the centre line, %s to each side.", f.length(d.Reach)),
	}
	if d.Habit != marks.Quarters && d.Step > 0 {
		items = append(items, fmt.Sprintf("Hook the tape at centre and put a number every %s, stage left first, then stage right.", f.length(d.Step)))
	} else {
		items = append(items, "Hook the tape at centre and put the numbers of the table, stage left first, then stage right.")
	}
	return append(items,
		"Measure straight out from centre, never along a curved edge: along the edge the numbers would slip.",
		"Counting: "+unit+".",
		"Hook the tape at the outermost number and check the whole row back to centre.")
}

func danceTable(d marks.DanceLine, all []marks.Numbered, f figures) table {
	t := table{
		Columns: []column{
			{Title: "number", Type: labelType, Align: right},
			{Title: "side", Type: floorType, Align: middle},
			{Title: "over", Type: floorType, Align: right},
			{Title: "up on the line", Type: floorType, Align: right},
			{Title: "up on the stage edge", Type: floorType, Align: right},
			{Title: "slip if measured along the edge", Align: right},
			{Title: "placed", Kind: tick},
			{Title: "checked", Kind: tick},
		},
		Empty: "No number falls within the reach of this line.",
	}
	for _, n := range all {
		if n.Line != d.ID {
			continue
		}
		edge, slip := "–", "–"
		if n.OnEdge {
			edge, slip = f.up(n.Edge), "none"
			if f.style.Round(n.Slip) != 0 {
				slip = f.length(n.Slip)
			}
		}
		t.Rows = append(t.Rows, cells(n.Text, f.side(n.At.X), f.over(n.At.X), f.up(n.At.Y), edge, slip, "", ""))
	}
	return t
}

// danceNumerals is every number of the floor's dance lines, two to a page.
func danceNumerals(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	var n numerals
	for _, d := range w.Dance {
		n.Items = append(n.Items, numeral{d.Text, f.place(d.At)})
	}
	if len(n.Items) == 0 {
		return content{blocks: []block{paragraph{Text: noDanceLine}}}
	}
	return content{blocks: []block{n}}
}

// numeral is a number to be seen from the stage and where it goes.
type numeral struct{ Text, Where string }

// numerals are set two to a page, to be cut apart.
type numerals struct{ Items []numeral }

func (n numerals) set(p *press) {
	h := p.body.h / 2
	for i, item := range n.Items {
		if i > 0 && i%2 == 0 {
			p.newPage()
		}
		r := inset{p.body.x, p.body.y + float64(i%2)*h, p.body.w, h}
		if i%2 == 1 {
			p.cut(r.x, r.y, r.right(), r.y)
		}
		big := type_{bold: true, size: (h - 22) / ptMM / 0.73}.fitted(clean(item.Text), r.w-8)
		middle_ := r.y + (h-8)/2
		p.textIn(r, middle_+big.cap()/2, item.Text, big, middle)
		p.textIn(r, r.bottom()-4, item.Where, strongType, middle)
	}
	p.y = p.body.bottom()
}
