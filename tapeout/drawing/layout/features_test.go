package layout_test

import (
	"math"
	"slices"
	"testing"

	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

func layerNamed(t *testing.T, l *layout.Layout, name string) layout.Layer {
	t.Helper()
	i := slices.IndexFunc(l.Layers, func(layer layout.Layer) bool { return layer.Name == name })
	if i < 0 {
		t.Fatalf("there is no layer %s", name)
	}
	return l.Layers[i]
}

// The wall of 8 m that begins at (0, 2.5) of the plan, a tenth of a turn askew, meets the
// east wall of the room where x is 10: the sign is there and nowhere else.
func TestWhereTheRoomCutsALineShortHasASign(t *testing.T) {
	sin, cos := math.Sincos(math.Pi / 5)
	east := (10 - (6 - 2.5*sin)) / cos // metres along the wall
	want := at(10, 1+2.5*cos+east*sin)
	l := layout.Of(source(), layout.FromRoom)
	sign := layerNamed(t, l, "Cut short")
	if len(sign.Paths) != 2 || len(sign.Texts) != 1 || sign.Texts[0].Text != "cut short" {
		t.Fatalf("the sign has %d strokes and %v", len(sign.Paths), sign.Texts)
	}
	middle := sign.Paths[0].Edges[0].At(0.5).Towards(sign.Paths[1].Edges[0].At(0.5), 0.5)
	if middle.To(want) > 1e-9 {
		t.Errorf("the sign is at %v, want %v", middle, want)
	}
	wall := plane.Polar(1, math.Pi/5)
	for _, p := range sign.Paths {
		e := p.Edges[0]
		if across := math.Abs(wall.Cross(e.Tangent(0))); across < 0.5 || across > 0.95 {
			t.Errorf("the stroke %v is not aslant across the wall: %v", e, across)
		}
	}
	if sign.Texts[0].At.X <= 10 {
		t.Errorf("the words at %v cover what is laid", sign.Texts[0].At)
	}
}

func TestTwoLinesCutAtOnePlaceHaveOneSign(t *testing.T) {
	s := source()
	edge := floor.Line{Edge: plane.Edge{A: at(0, 0), B: at(1, 0)}, Cut: floor.CutEnds{B: true}}
	back := floor.Line{Edge: plane.Edge{A: at(1, 0), B: at(0, 0)}, Cut: floor.CutEnds{A: true}}
	whole := floor.Line{Edge: plane.Edge{A: at(3, 0), B: at(4, 0)}}
	for _, c := range []struct {
		lines []floor.Line
		signs int
	}{{[]floor.Line{edge, back}, 1}, {[]floor.Line{edge, whole}, 1}, {[]floor.Line{{Edge: edge.Edge, Cut: floor.CutEnds{A: true, B: true}}}, 2}} {
		s.Lines = c.lines
		if n := len(layerNamed(t, layout.Of(s, layout.FromDatum), "Cut short").Texts); n != c.signs {
			t.Errorf("%d signs, want %d", n, c.signs)
		}
	}
	s.Lines = []floor.Line{whole}
	for _, layer := range layout.Of(s, layout.FromDatum).Layers {
		if layer.Use == layout.CutShort {
			t.Error("there is a sign where nothing is cut")
		}
	}
}

// A leaf of 1 m that swings a quarter turn takes π/2 m; the way through the wall and the
// leaf that stands open are 1 m each.
func TestADoorHasItsLeafAndItsSwing(t *testing.T) {
	doors := layerNamed(t, layout.Of(source(), layout.FromRoom), "Doors")
	var lengths []float64
	for _, p := range doors.Paths {
		lengths = append(lengths, sum(p.Edges))
	}
	want := []float64{1, 1 + math.Pi/2, 1, 1 + math.Pi/2, 2, 2}
	if len(lengths) != len(want) {
		t.Fatalf("%d lines, want %d", len(lengths), len(want))
	}
	for i := range want {
		if math.Abs(lengths[i]-want[i]) > 1e-9 {
			t.Errorf("line %d is %.9f m, want %.9f", i, lengths[i], want[i])
		}
	}
	if tip := doors.Paths[1].Edges[0].B; tip.To(at(2, 1)) > 1e-9 {
		t.Errorf("the hall door stands open to %v, want into the room", tip)
	}
	if tip := doors.Paths[3].Edges[0].B; tip.To(at(11, 2)) > 1e-9 {
		t.Errorf("the yard door stands open to %v, want out of the room", tip)
	}
	if end := doors.Paths[1].Edges[1].B; end.To(at(3, 0)) > 1e-9 {
		t.Errorf("the leaf of the hall door swings from %v, want from its jamb", end)
	}
	if len(doors.Texts) != 3 {
		t.Errorf("the doors are called %v", doors.Texts)
	}
}

func TestFeaturesWithoutAShapeDrawNothing(t *testing.T) {
	s := source()
	s.Floor.Steps, s.Lines = []floor.Step{{ID: "s", Name: "Nowhere"}}, nil
	s.Floor.Features = nil
	for _, kind := range floor.FeatureKinds {
		s.Floor.Features = append(s.Floor.Features, floor.Feature{ID: string(kind), Name: "Nowhere", Kind: kind})
	}
	for _, layer := range layout.Of(s, layout.FromDatum).Layers {
		if layer.Use == layout.Features {
			t.Errorf("layer %s: %+v", layer.Name, layer)
		}
	}
}
