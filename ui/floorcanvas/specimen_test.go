package floorcanvas

import (
	"fmt"
	"image/color"
	"math"
	"math/rand/v2"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// specimen is a small set in a room, with one of everything that can be shown.
func specimen() Picture {
	pt := func(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }
	apron := []plane.Edge{{A: pt(-6, 0), B: pt(6, 0), Bulge: 0.15}}
	return Picture{
		Style:    length.Style{Unit: length.FeetInches, Step: length.Inch / 8},
		Baseline: "plaster line",
		Areas: []Area{
			{ID: "room", Path: plane.Closed(pt(-8, -3), pt(7.4, -3.1), pt(7.6, 9), pt(-7.9, 9.2)), Ink: theme.Wall, Outline: 3},
			{ID: "column", Path: plane.Rectangle(pt(-5.2, 5.8), pt(-4.6, 6.4)), Fill: Full, Ink: theme.Obstacle, Outline: 1.5},
			{ID: "exit", Path: plane.Rectangle(pt(5.6, -3), pt(7.4, -0.8)), Fill: Rising, Ink: theme.KeepClear, Outline: 1, Label: "way out"},
			{ID: "over", Path: plane.Rectangle(pt(5, 9.05), pt(7, 10.4)), Fill: Falling, Ink: theme.Outside, Outline: 1, Dash: Dashed, Label: "does not fit"},
			{ID: "platform", Path: plane.Rectangle(pt(-4, 3), pt(-1, 5)), Fill: Tint, Ink: theme.Line},
		},
		Shapes: []Shape{
			{ID: "apron", Edges: apron, Ink: theme.FaintLine, Dash: Dashed},
			{ID: "wall", Edges: plane.Open(pt(-4, 7), pt(-1.2, 7.6), pt(-1.2, 6), pt(3, 6), pt(4.4, 4)).Edges(), Ink: theme.Line, Width: 2},
			{ID: "platform", Edges: plane.Rectangle(pt(-4, 3), pt(-1, 5)).Edges(), Colour: color.NRGBA{0xC0, 0x30, 0x28, 0xFF}, Width: 2},
			{ID: "revolve", Edges: plane.Circle(pt(1.6, 3), 1.8).Edges(), Colour: color.NRGBA{0x2A, 0x60, 0xB0, 0xFF}, Width: 2},
			{ID: "swing", Edges: []plane.Edge{{A: pt(0.2, 6), B: pt(1.1, 6.9), Bulge: -math.Tan(math.Pi / 8)}}, Ink: theme.Line, Dash: Dashed, Width: 1},
			{ID: "white", Edges: plane.Open(pt(2, 0.8), pt(5, 1.6)).Edges(), Colour: color.White, Width: 3},
			{ID: "track", Edges: plane.Open(pt(-6, 1.4), pt(5, 1.4)).Edges(), Ink: theme.FaintLine, Dash: DashDot},
		},
		Dots: []Dot{
			{ID: "mA", At: pt(-4, 3)}, {ID: "mB", At: pt(-1, 3)}, {ID: "mC", At: pt(-4, 5)}, {ID: "mD", At: pt(-1, 5)},
			{ID: "mE", At: pt(3, 6), Sign: Ring}, {ID: "mF", At: pt(4.4, 4), Sign: Square}, {ID: "mG", At: pt(-1.2, 7.6), Sign: Triangle},
		},
		Labels: []Label{
			{ID: "mA", At: pt(-4, 3), Text: "A", Bold: true, Anchor: BelowLeft}, {ID: "mB", At: pt(-1, 3), Text: "B", Bold: true, Anchor: BelowRight},
			{ID: "mC", At: pt(-4, 5), Text: "C", Bold: true, Anchor: AboveLeft}, {ID: "mD", At: pt(-1, 5), Text: "D", Bold: true, Anchor: AboveRight},
			{ID: "mE", At: pt(3, 6), Text: "E  19′ 8¼″ up, 9′ 10⅛″ SL", Bold: true}, {ID: "mF", At: pt(4.4, 4), Text: "F", Bold: true},
			{At: pt(-2.5, 4), Text: "platform +2′ 6″", Anchor: Centred}, {At: pt(1.6, 3), Text: "revolve", Anchor: Centred},
			{At: pt(-1.2, 7.6), Text: "G", Bold: true, Anchor: Above},
		},
		Handles: []Handle{
			{ID: "p1", At: pt(-7, 0), Kind: Pivot, Name: "pivot 1"}, {ID: "p2", At: pt(6.5, 7.6), Kind: Pivot, Name: "pivot 2"},
			{ID: "turn", At: pt(0, 8.4), Kind: Turn, Name: "turn the plan"}, {ID: "shift", At: pt(0.4, 1), Kind: Shift}, {ID: "k", At: pt(-8, -3), Kind: Corner},
		},
	}
}

// crowded is a large production's worth: straight lines up to three metres long,
// every twentieth an arc, and labelled marks.
func crowded(segments, labels int) Picture {
	r := rand.New(rand.NewPCG(1, 2))
	at := func() plane.Point { return plane.Point{X: r.Float64()*20 - 10, Y: r.Float64() * 12} }
	var p Picture
	for i := range segments {
		a := at()
		e := plane.Edge{A: a, B: a.Add(plane.Polar(3*r.Float64(), 2*math.Pi*r.Float64()))}
		if i%20 == 0 {
			e.Bulge = 0.4
		}
		s := Shape{ID: fmt.Sprintf("s%d", i), Edges: []plane.Edge{e}}
		if i%10 == 0 {
			s.Dash = Dashed
		}
		p.Shapes = append(p.Shapes, s)
	}
	for i := range labels {
		a := at()
		p.Dots = append(p.Dots, Dot{ID: fmt.Sprintf("d%d", i), At: a})
		p.Labels = append(p.Labels, Label{ID: fmt.Sprintf("d%d", i), At: a, Text: fmt.Sprintf("M%d", i), Bold: i%3 == 0})
	}
	return p
}
