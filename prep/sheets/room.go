package sheets

import (
	"fmt"
	"math"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
)

// How many rows the empty form has to be written on.
const (
	formWalls    = 10
	formAcross   = 10
	formRowHigh  = 9.0
	againColumn  = 34.0
	lengthColumn = 40.0
)

// measuredRoom is the room as a tape has found it: what was measured, what all of
// it together makes of each, and a picture with the letters of the corners. Of a
// floor that nobody has measured it is the form to carry into the room.
func measuredRoom(j Job) content {
	p, f := j.production(), j.floor()
	if f == nil || !f.Measured.Any() {
		return content{blocks: measuringForm()}
	}
	m, _ := p.MeasuredRoom(f)
	blocks := []block{}
	for _, s := range m.Say(p.Style()) {
		blocks = append(blocks, paragraph{Text: s})
	}
	blocks = append(blocks, wallTable(p, f, m), acrossTable(p, f, m))
	if t := stepTable(p, f); len(t.Rows) > 0 {
		blocks = append(blocks, t)
	}
	if m.Why == "" {
		blocks = append(blocks, roomDrawing(p, f, m))
	}
	return content{blocks: blocks}
}

// howToWalk is what a person with the form in the hand must know.
const howToWalk = "Begin at any corner, call it A, and walk with the room on your left. Write each wall's length, straight from corner to corner, and the turn " +
	"at its end: left or right, and about how far. Tick square only where a right angle was tried, with a 3-4-5 or a large square. Of a curved wall write the " +
	"chord, and how far its middle rises from it, outwards or into the room. Then measure lengths across: at least one for each corner beyond three, and one or two more to find a slip."

func measuringForm() []block {
	walls := table{Columns: []column{
		{Title: "wall", Type: labelType}, {Title: "what it is", Kind: blank, Width: 34, High: formRowHigh},
		{Title: "length", Kind: blank, Width: lengthColumn, High: formRowHigh}, {Title: "turn at its end", Kind: blank, Width: 30, High: formRowHigh},
		{Title: "square", Kind: tick}, {Title: "curved by", Kind: blank, Width: 26, High: formRowHigh},
	}}
	for i := range formWalls {
		walls.Rows = append(walls.Rows, cells(room.Corner(i)+"–"+room.Corner(i+1)))
	}
	across := table{Columns: []column{
		{Title: "no.", Align: right}, {Title: "from", Kind: blank, Width: 34, High: formRowHigh}, {Title: "to", Kind: blank, Width: 34, High: formRowHigh},
		{Title: "length across", Kind: blank, Width: lengthColumn, High: formRowHigh},
	}}
	for i := range formAcross {
		across.Rows = append(across.Rows, cells(fmt.Sprint(i+1)))
	}
	return []block{paragraph{Text: howToWalk}, heading{"Walls"}, walls, heading{"Lengths across"}, across}
}

// made is what all measurements make of one of them: adjusted, changed by, and from
// which size on a mistake would show.
func made(p *prep.Production, m prep.Measured, kind room.Kind, id string) (adjusted, change, checked string) {
	for i, one := range m.Measures {
		if one.Kind != kind || one.ID != id {
			continue
		}
		adjusted, checked = p.Style().Format(one.Adjusted), one.Checked(p.Style())
		change = strings.TrimPrefix(one.SayResidual(p.Style()), "+") // a spreadsheet takes a plus for a formula
		if m.Doubtful(i) {
			checked = "DOUBTFUL: measure again"
		}
	}
	return adjusted, change, checked
}

func wallTable(p *prep.Production, f *floor.Floor, m prep.Measured) table {
	t := table{Columns: []column{
		{Title: "wall", Type: labelType}, {Title: "what it is", Flex: true}, {Title: "measured", Type: floorType, Align: right}, {Title: "adjusted", Align: right},
		{Title: "change", Align: right}, {Title: "mistake shows"}, {Title: "its end", Flex: true}, {Title: "read again", Kind: blank, Width: againColumn, High: formRowHigh},
	}}
	n := len(f.Measured.Walls)
	for i, w := range f.Measured.Walls {
		adjusted, change, checked := made(p, m, room.Wall, w.ID)
		read := "not measured"
		if w.Length > 0 {
			read = p.ShowLength(w.ID, "length", w.Length)
		}
		t.Rows = append(t.Rows, cells(room.Corner(i)+"–"+room.Corner((i+1)%n), wallWords(p, w), read, adjusted, change, checked, endWords(m, w)))
	}
	return t
}

// wallWords is a wall's name, and how it is curved.
func wallWords(p *prep.Production, w floor.MeasuredWall) string {
	if w.Rise == 0 {
		return w.Name
	}
	way := "outwards"
	if w.Rise < 0 {
		way = "into the room"
	}
	rise := p.ShowLength(w.ID, "rise", w.Rise)
	if w.Rise < 0 {
		rise = p.Style().Format(-w.Rise)
	}
	curved := "curved by " + rise + " " + way
	if w.Name == "" {
		return curved
	}
	return w.Name + ", " + curved
}

// endWords is how a wall turns at its end.
func endWords(m prep.Measured, w floor.MeasuredWall) string {
	if w.Square {
		for i, one := range m.Measures {
			if one.Kind == room.Square && one.ID == w.ID && m.Doubtful(i) {
				return "ticked square, DOUBTFUL"
			}
		}
		return "square"
	}
	switch {
	case w.Turn > 0:
		return fmt.Sprintf("about %.0f° left", w.Turn)
	case w.Turn < 0:
		return fmt.Sprintf("about %.0f° right", math.Abs(w.Turn))
	}
	return ""
}

func acrossTable(p *prep.Production, f *floor.Floor, m prep.Measured) table {
	t := table{Columns: []column{
		{Title: "across", Type: strongType, Flex: true}, {Title: "measured", Type: floorType, Align: right}, {Title: "adjusted", Align: right},
		{Title: "change", Align: right}, {Title: "mistake shows", Flex: true}, {Title: "read again", Kind: blank, Width: againColumn, High: formRowHigh},
	}, Empty: "Nothing has been measured across."}
	for _, d := range f.Measured.Diagonals {
		adjusted, change, checked := made(p, m, room.Across, d.ID)
		name := room.PlaceName(f.Measured, d.From) + "–" + room.PlaceName(f.Measured, d.To)
		t.Rows = append(t.Rows, cells(name, p.ShowLength(d.ID, "length", d.Length), adjusted, change, checked))
	}
	for _, n := range m.Next {
		t.Rows = append(t.Rows, cells(n.Name, "to measure"))
	}
	return t
}

func stepTable(p *prep.Production, f *floor.Floor) table {
	t := table{Columns: []column{{Title: "step in the floor", Flex: true}, {Title: "length", Align: right}, {Title: "height", Type: floorType, Align: right}}}
	for _, s := range f.Steps {
		t.Rows = append(t.Rows, cells(s.Name, p.Style().Format(s.Line.Length()), p.ShowLength(s.ID, "rise", s.Rise)))
	}
	return t
}

// roomDrawing is the room alone: walls, what was measured across, and letters.
func roomDrawing(p *prep.Production, f *floor.Floor, m prep.Measured) drawing {
	to := f.FloorToDatum()
	d := drawing{Walls: m.Outline.Moved(to), Baseline: or(string(p.Plan.Baseline), "baseline"), Unit: p.Unit()}
	for i, v := range d.Walls.Vertices {
		d.Points = append(d.Points, spot{At: v.Point, Text: room.Corner(i)})
	}
	for i, at := range m.Points {
		d.Points = append(d.Points, spot{At: to.Apply(at), Text: f.Measured.Points[i].Name})
	}
	for i, e := range d.Walls.Edges() {
		if w := f.Measured.Walls[i]; w.Length > 0 {
			d.Names = append(d.Names, spot{At: e.At(0.5), Text: p.ShowLength(w.ID, "length", w.Length), Kind: naming})
		}
	}
	for _, a := range f.Measured.Diagonals {
		from, okFrom := m.PlaceOf(f.Measured, a.From)
		there, okTo := m.PlaceOf(f.Measured, a.To)
		if okFrom && okTo {
			d.Strokes = append(d.Strokes, stroke{[]plane.Edge{{A: to.Apply(from), B: to.Apply(there)}}, acrossPen})
		}
	}
	for _, s := range f.Steps {
		d.Strokes = append(d.Strokes, stroke{s.Line.Moved(to).Edges(), stepPen})
	}
	d.entry(entry{Pen: wallPen, Text: "wall of the room, with its length as measured"}, true)
	d.entry(entry{Pen: acrossPen, Text: "measured across"}, len(f.Measured.Diagonals) > 0)
	d.entry(entry{Pen: stepPen, Text: "step in the floor"}, len(f.Steps) > 0)
	d.entry(entry{Pen: centrePen, Text: "centre line"}, len(d.Walls.Vertices) > 0)
	d.entry(entry{Pen: baselinePen, Text: d.Baseline}, len(d.Walls.Vertices) > 0)
	return d
}
