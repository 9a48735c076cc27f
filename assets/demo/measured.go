package demo

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// read is one length of the hall as the team wrote it down: a wall with its name,
// or a length across from one corner or point to another.
type read struct {
	name   string
	from   string
	to     string
	metres float64
	text   string
}

// measureHall gives the hall what a tape found of it: four walls of which no two
// are square, both diagonals, and the corner of a column from two of its own. Its
// walls are then those that were measured.
func (b *builder) measureHall() {
	f := b.p.Floor(roomID)
	corner := func(letter string) string { return id("hall corner " + letter) }
	column := id("hall column")
	f.Measured.Points = []floor.MeasuredPoint{{ID: column, Name: "north-east column"}}
	for _, w := range []read{
		{"front", corner("A"), "", ft(58, 2.5), `58' 2 1/2"`},
		{"yard side", corner("B"), "", ft(30, 11.125), `30' 11 1/8"`},
		{"mirrors", corner("C"), "", ft(57, 2.5), `57' 2 1/2"`},
		{"street side", corner("D"), "", ft(30, 9.5), `30' 9 1/2"`},
	} {
		f.Measured.Walls = append(f.Measured.Walls, floor.MeasuredWall{ID: w.from, Name: w.name, Length: w.metres, Turn: 90})
		b.p.KeepTyped(w.from, "length", w.text)
	}
	for _, a := range []read{
		{"one diagonal", corner("A"), corner("C"), ft(65, 6.125), `65' 6 1/8"`},
		{"the other", corner("B"), corner("D"), ft(65, 4.375), `65' 4 3/8"`},
		{"column from A", corner("A"), column, ft(47, 3.5), `47' 3 1/2"`},
		{"column from B", corner("B"), column, ft(33, 8.875), `33' 8 7/8"`},
	} {
		one := floor.Diagonal{ID: id("hall " + a.name), From: a.from, To: a.to, Length: a.metres}
		f.Measured.Diagonals = append(f.Measured.Diagonals, one)
		b.p.KeepTyped(one.ID, "length", a.text)
	}
	if m, ok := b.p.MeasuredRoom(f); ok {
		f.Outline = m.Outline
	}
	f.Steps = []floor.Step{{ID: id("hall sill"), Name: "sill to the yard, a step up", Line: plane.Open(at(57.5, 30.9), at(57.7, 26.6)), Rise: ft(0, 4)}}
}
