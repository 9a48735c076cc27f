package floorsplace

import (
	"math"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

// What the picture of a room as measured names.
const (
	cornerThing desk.Kind = "measured corner"
	acrossThing desk.Kind = "measured across"
	wallThing   desk.Kind = "measured wall"
)

// measuredPicture draws the room as its measurements make it: letters at the
// corners, lengths on the walls and across, what each was changed by, and the
// doubtful ones in a broad dotted line with a triangle and the word.
func measuredPicture(v *desk.View, f *floor.Floor, m prep.Measured) floorcanvas.Picture {
	d := measuredDrawing{v: v, f: f, m: m, pic: floorcanvas.Picture{HideDatum: true, Style: v.Style()}}
	d.pic.Audience = f.FloorToDatum().Inverse().Rotate(plane.Point{Y: -1})
	if m.Why != "" || len(m.Outline.Vertices) == 0 {
		d.asWalked()
		return d.pic
	}
	d.walls()
	d.across()
	d.squares()
	d.next()
	d.steps()
	return d.pic
}

type measuredDrawing struct {
	v   *desk.View
	f   *floor.Floor
	m   prep.Measured
	pic floorcanvas.Picture
}

// asWalked draws walls that make no room yet as far as they go, by the turns as
// guessed.
func (d *measuredDrawing) asWalked() {
	var walls []floor.Wall
	for _, w := range d.f.Measured.Walls {
		turn := w.Turn
		if turn == 0 {
			turn = 90
		}
		walls = append(walls, floor.Wall{Length: w.Length, Turn: turn})
	}
	way := floor.Walked(walls)
	for i, e := range way.Edges() {
		d.line(floorpicture.ID(wallThing, d.f.Measured.Walls[i].ID), e, theme.Wall, 3, floorcanvas.Solid)
		d.figure(e, d.length("length", d.f.Measured.Walls[i].ID, d.f.Measured.Walls[i].Length), theme.Label)
	}
	for i, at := range way.Points() {
		if i < len(walls) {
			d.letter(i, at)
		}
	}
}

func (d *measuredDrawing) walls() {
	for i, e := range d.m.Outline.Edges() {
		w := d.f.Measured.Walls[i]
		text := "not measured"
		if w.Length > 0 {
			text = d.length("length", w.ID, w.Length)
		}
		d.measured(room.Wall, w.ID, floorpicture.ID(wallThing, w.ID), e, text)
		d.pic.Labels[len(d.pic.Labels)-1].Anchor = inside(e)
		d.letter(i, e.A)
	}
	for i, at := range d.m.Points {
		p := d.f.Measured.Points[i]
		d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{ID: floorpicture.ID(cornerThing, p.ID), At: at, Sign: floorcanvas.Ring, Ink: theme.Label})
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{At: at, Text: p.Name, Bold: true, Priority: 2})
	}
}

func (d *measuredDrawing) across() {
	for _, a := range d.f.Measured.Diagonals {
		from, okFrom := d.m.PlaceOf(d.f.Measured, a.From)
		to, okTo := d.m.PlaceOf(d.f.Measured, a.To)
		if okFrom && okTo {
			d.measured(room.Across, a.ID, floorpicture.ID(acrossThing, a.ID), plane.Edge{A: from, B: to}, d.length("length", a.ID, a.Length))
		}
	}
}

// measured draws one measurement with its figure and what was made of it.
func (d *measuredDrawing) measured(kind room.Kind, id, name string, e plane.Edge, text string) {
	ink, width, dash := theme.Wall, 3.0, floorcanvas.Solid
	if kind == room.Across {
		ink, width, dash = theme.FaintLabel, 1, floorcanvas.Dashed
	}
	change, _, doubt := judgement{d.v, d.m}.of(kind, id)
	if change != "" {
		text += "  " + change
	}
	words := theme.Label
	if doubt != "" {
		ink, width, dash, words = theme.Wrong, 4, floorcanvas.Dotted, theme.Wrong
		text += "  doubtful"
		d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{At: e.At(0.5), Sign: floorcanvas.Triangle, Ink: theme.Wrong, Size: 14})
	}
	d.line(name, e, ink, width, dash)
	d.figure(e, text, words)
}

func (d *measuredDrawing) line(id string, e plane.Edge, ink theme.Ink, width float64, dash floorcanvas.Dash) {
	d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: []plane.Edge{e}, Ink: ink, Width: width, Dash: dash})
}

func (d *measuredDrawing) figure(e plane.Edge, text string, ink theme.Ink) {
	anchor := floorcanvas.Above
	if t := e.Tangent(0.5); math.Abs(t.Y) > math.Abs(t.X) {
		anchor = floorcanvas.AtRight
	}
	d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{At: e.At(0.5), Text: text, Ink: ink, Anchor: anchor, Priority: 1})
}

// inside is where a word stands beside a wall so that it is in the room, which is
// on the wall's left.
func inside(e plane.Edge) floorcanvas.Anchor {
	left := e.Tangent(0.5).Left()
	switch {
	case math.Abs(left.X) > math.Abs(left.Y) && left.X < 0:
		return floorcanvas.AtLeft
	case math.Abs(left.X) > math.Abs(left.Y):
		return floorcanvas.AtRight
	case left.Y < 0:
		return floorcanvas.Below
	}
	return floorcanvas.Above
}

func (d *measuredDrawing) letter(i int, at plane.Point) {
	d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{ID: floorpicture.ID(cornerThing, d.f.Measured.Walls[i].ID), At: at, Sign: floorcanvas.Square, Ink: theme.Wall})
	d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{At: at, Text: room.Corner(i), Size: 15, Bold: true, Priority: 3, Anchor: floorcanvas.AboveRight})
}

// squares puts the sign of a right angle into the corners that were ticked.
func (d *measuredDrawing) squares() {
	const side = 0.35 // metres
	edges := d.m.Outline.Edges()
	for i, w := range d.f.Measured.Walls {
		if !w.Square {
			continue
		}
		at := edges[i].B
		back := edges[i].Tangent(1).Times(-side)
		on := edges[(i+1)%len(edges)].Tangent(0).Times(side)
		ink := theme.Datum
		if _, _, doubt := (judgement{d.v, d.m}).of(room.Square, w.ID); doubt != "" {
			ink = theme.Wrong
		}
		sign := plane.Open(at.Add(back), at.Add(back).Add(on), at.Add(on))
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: sign.Edges(), Ink: ink, Width: 1.5})
	}
}

// next dots what to measure next.
func (d *measuredDrawing) next() {
	for i, n := range d.m.Next {
		from, okFrom := d.m.PlaceOf(d.f.Measured, n.From)
		to, okTo := d.m.PlaceOf(d.f.Measured, n.To)
		if !okFrom || !okTo {
			continue
		}
		e := plane.Edge{A: from, B: to}
		d.line("", e, theme.Datum, 1.5, floorcanvas.Dotted)
		text := "measure next"
		if len(d.m.Next) > 1 {
			text += " (" + strconv.Itoa(i+1) + ")"
		}
		d.figure(e, text, theme.Datum)
	}
}

func (d *measuredDrawing) steps() {
	for _, s := range d.f.Steps {
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: s.Line.Edges(), Ink: theme.Obstacle, Width: 2, Dash: floorcanvas.DashDot})
		if box, ok := s.Line.Bounds(); ok {
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{At: box.Centre(), Text: s.Name, Ink: theme.FaintLabel, Anchor: floorcanvas.AtLeft})
		}
	}
}

func (d *measuredDrawing) length(column, row string, m float64) string {
	if m == 0 {
		return "not measured"
	}
	return d.v.P.ShowLength(row, column, m)
}
