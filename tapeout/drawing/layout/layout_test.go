package layout_test

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func at(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

// source is a room of 10 by 8 m in which the plan is turned by a tenth of a turn,
// with a wall and an arc in red, a door swing in blue, a platform without a stock and
// a table that is set by hand; a wall that the room
// cuts short at one end; a step, and a feature of every kind.
func source() layout.Source {
	swing := plane.Path{Vertices: []plane.Vertex{{Point: at(1, 3), Bulge: math.Tan(math.Pi / 8)}, {Point: at(2, 4)}}}
	wall := plane.Path{Vertices: []plane.Vertex{{Point: at(-3, 4)}, {Point: at(1, 4), Bulge: -0.25}, {Point: at(3, 2)}}}
	pl := &plan.Plan{
		Elements: []plan.Element{
			{ID: "w", Name: "Back wall, curved", Kind: plan.Wall, Stock: "red", Paths: []plan.Path{{ID: "1", Role: plan.Outline, Path: wall}}},
			{ID: "d", Name: "Door", Kind: plan.Door, Stock: "blue", Paths: []plan.Path{{ID: "2", Role: plan.Swing, Path: swing}}},
			{ID: "p", Name: "Platform", Kind: plan.Platform, Paths: []plan.Path{{ID: "3", Role: plan.Outline, Path: plane.Rectangle(at(-2, 0.5), at(0, 2))}}},
			{ID: "l", Name: "Long wall", Kind: plan.Wall, Stock: "white", Paths: []plan.Path{{ID: "5", Role: plan.Outline, Path: plane.Open(at(0, 2.5), at(8, 2.5))}}},
			{ID: "t", Name: "Table", Kind: plan.Furniture, Paths: []plan.Path{{ID: "4", Role: plan.Outline, Path: plane.Circle(at(2, 1), 0.5)}}},
		},
	}
	f := &floor.Floor{
		ID: "f", Name: "Mill Hall", Kind: floor.Room, Outline: plane.Rectangle(at(0, 0), at(10, 8)),
		Placement:  plane.Motion{Turn: math.Pi / 5, Shift: at(6, 1)},
		Obstacles:  []floor.Obstacle{{ID: "o", Name: "Column", Shape: plane.Circle(at(9, 7), 0.2)}},
		KeepClears: []floor.KeepClear{{ID: "k", Name: "Exit", Shape: plane.Rectangle(at(0, 6), at(1, 8))}},
		Treatments: []floor.Treatment{{Element: "l", How: floor.CutShort}},
		Steps:      []floor.Step{{ID: "s", Name: "Stage edge", Line: plane.Open(at(1, 7), at(9, 7)), Rise: 0.2}},
		Features: []floor.Feature{
			{ID: "in", Name: "Hall door", Kind: floor.RoomDoor, Shape: plane.Open(at(2, 0), at(3, 0))},
			{ID: "out", Name: "Yard door", Kind: floor.RoomDoor, Shape: plane.Open(at(10, 2), at(10, 3)), Opens: floor.OpensOut},
			{ID: "slides", Name: "Store door", Kind: floor.RoomDoor, Shape: plane.Open(at(6, 8), at(8, 8)), Opens: floor.Slides},
			{ID: "window", Name: "Window", Kind: floor.RoomWindow, Shape: plane.Open(at(0, 1), at(0, 3))},
			{ID: "mirror", Name: "Mirror", Kind: floor.WallMirror, Shape: plane.Open(at(4, 0), at(7, 0))},
			{ID: "outlet", Name: "Socket", Kind: floor.PowerOutlet, Shape: plane.Open(at(0, 5))},
			{ID: "seam", Name: "Seam", Kind: floor.Seam, Shape: plane.Open(at(5, 0), at(5, 8))},
			{ID: "dance", Name: "Dance floor", Kind: floor.DanceFloor, Shape: plane.Rectangle(at(1, 1), at(6, 5))},
		},
		Pivots: []floor.Pivot{{ID: "a", Name: "south-west corner", At: at(0, 0)}, {ID: "b", Name: "south-east corner", At: at(10, 0)}},
	}
	return layout.Source{
		Title: "The Salt Road", Revision: "C", Floor: f, Lines: f.Lines(pl), Pieces: f.Spiked(pl),
		Marks: marks.Of(pl, f, nil, marks.DefaultRules, 0),
		Stocks: []layout.Stock{
			{ID: "red", Name: `Red, 1" cloth`, Colour: linework.RGB(0xc02020)},
			{ID: "white", Name: "White", Colour: linework.RGB(0xffffff)},
			{ID: "blue", Name: "Blue", Colour: linework.RGB(0x2040c0)},
		},
	}
}

func sum(edges []plane.Edge) (total float64) {
	for _, e := range edges {
		total += e.Length()
	}
	return total
}

func laid(l *layout.Layout) (total float64) {
	for _, layer := range l.Layers {
		if layer.Use == layout.Tape {
			for _, p := range layer.Paths {
				total += sum(p.Edges)
			}
		}
	}
	return total
}

func TestEachStockHasALayerOfItsOwn(t *testing.T) {
	l := layout.Of(source(), layout.FromDatum)
	var names []string
	for _, layer := range l.Layers {
		names = append(names, layer.Name)
	}
	want := "Room|Obstacles|Keep clear|Doors|Windows|Mirrors|Power outlets|Seams|Other surfaces|Steps in the floor|" +
		"Datum|Tape Red 1 cloth|Tape White|Tape Blue|Tape not decided|Cut short|Set by hand|Labels"
	if got := strings.Join(names, "|"); got != want {
		t.Errorf("layers are %s, want %s", got, want)
	}
	if len(l.Marks) == 0 || len(l.Control) != 3 {
		t.Errorf("%d marks and %d control points", len(l.Marks), len(l.Control))
	}
}

func TestChainsStayTogether(t *testing.T) {
	for _, layer := range layout.Of(source(), layout.FromDatum).Layers {
		for i, p := range layer.Paths {
			for j := range p.Edges[1:] {
				if p.Edges[j].B.To(p.Edges[j+1].A) > 1e-9 {
					t.Errorf("%s: path %d is broken after edge %d", layer.Name, i, j)
				}
			}
		}
		if layer.Name == "Tape Red 1 cloth" && len(layer.Paths) != 1 {
			t.Errorf("the wall is in %d pieces", len(layer.Paths))
		}
		if layer.Name == "Tape Blue" && !layer.Paths[0].Broken {
			t.Error("the door swing is not broken")
		}
	}
}

// TestAxesChangeNoLength holds the two kinds of axes against each other: the same
// lengths, and a motion between them.
func TestAxesChangeNoLength(t *testing.T) {
	s := source()
	a, b := layout.Of(s, layout.FromDatum), layout.Of(s, layout.FromRoom)
	want := 0.0
	for _, line := range s.Lines {
		want += line.Length()
	}
	for _, l := range []*layout.Layout{a, b} {
		if got := laid(l); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %.9f m are laid, want %.9f", l.Axes, got, want)
		}
	}
	toDatum := s.Floor.FloorToDatum()
	for i := range a.Marks {
		if got := toDatum.Apply(b.Marks[i].At); got.To(a.Marks[i].At) > 1e-9 {
			t.Errorf("mark %s is at %v in one and at %v in the other", a.Marks[i].Label, a.Marks[i].At, got)
		}
	}
	if room := b.Layers[0]; room.Paths[0].Edges[0].A.To(at(0, 0)) > 1e-9 {
		t.Errorf("in the room's axes its first corner is at %v", room.Paths[0].Edges[0].A)
	}
}

func TestLayerNamesDiffer(t *testing.T) {
	s := source()
	long := strings.Repeat("ü", 300)
	for i, name := range []string{"Cloth/red", "cloth|RED", "cloth-red", "Navy blue", "Navy_blue", "  \x00\t ", "", long, long} {
		id := plan.StockID(rune('0' + i))
		s.Stocks = append(s.Stocks, layout.Stock{ID: id, Name: name})
		s.Lines = append(s.Lines, floor.Line{Edge: plane.Edge{B: at(1, 0)}, Stock: id})
	}
	seen := map[string]bool{}
	for _, layer := range layout.Of(s, layout.FromDatum).Layers {
		key := strings.ToLower(strings.ReplaceAll(layer.Name, "_", " "))
		if seen[key] || key == "" || strings.ContainsAny(layer.Name, "<>/\\\":;?*|=,`\x00\t") || utf8.RuneCountInString(layer.Name) > 31 {
			t.Errorf("the layer %q", layer.Name)
		}
		seen[key] = true
	}
}

func TestAnEmptyFloorHasItsDatum(t *testing.T) {
	l := layout.Of(layout.Source{Floor: &floor.Floor{Name: "Bare"}}, layout.FromDatum)
	if len(l.Layers) != 1 || l.Layers[0].Use != layout.Datum || len(l.Control) != 1 {
		t.Errorf("got %+v", l)
	}
}

func TestTheSheetIsInItsUnit(t *testing.T) {
	s := source()
	l := layout.Of(s, layout.FromDatum)
	want := laid(l)
	for _, u := range []length.Unit{length.FeetInches, length.Metres, length.Centimetres, length.Millimetres} {
		unit := layout.UnitFor(u)
		sheet := l.Sheet(unit)
		if sheet.Unit != unit {
			t.Errorf("%s: the sheet is in %v, want %v", u, sheet.Unit, unit)
		}
		got := 0.0
		for name, n := range lengthByLayer(sheet) {
			if strings.HasPrefix(name, "Tape_") {
				got += n * float64(unit)
			}
		}
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %.9f m are laid, want %.9f", u, got, want)
		}
		points := 0
		for _, item := range sheet.Items {
			if item.Kind == layout.PointKind {
				points++
			}
		}
		if points != len(l.Marks)+len(l.Control) {
			t.Errorf("%s: %d points, want %d", u, points, len(l.Marks)+len(l.Control))
		}
	}
}

// lengthByLayer is the length of the items on each layer, in drawing units.
func lengthByLayer(s *linework.Sheet) map[string]float64 {
	lengths := map[string]float64{}
	for i := range s.Items {
		lengths[s.Items[i].Layer] += s.Items[i].Length()
	}
	return lengths
}
