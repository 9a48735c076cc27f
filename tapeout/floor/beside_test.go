package floor

import (
	"math"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func block(id string, from, to plane.Point) plan.Element {
	return plan.Element{ID: plan.ElementID(id), Kind: plan.Platform, Stock: "red",
		Paths: []plan.Path{{ID: plan.PathID(id), Role: plan.Outline, Path: plane.Rectangle(from, to)}}}
}

// A second, plain way: try every offset of a finer grid and ask of points of the
// moved box whether they are in the way of anything.
func TestBesideFindsTheNearestFreePlace(t *testing.T) {
	f := room() // from −5 to 5 over and −2 to 6 up in plan axes
	f.Obstacles = []Obstacle{{Shape: plane.Rectangle(plane.Point{X: 8, Y: 1}, plane.Point{X: 8.5, Y: 1.5})}}
	f.KeepClears = []KeepClear{{Shape: plane.Rectangle(plane.Point{X: 0, Y: 0}, plane.Point{X: 3, Y: 1})}}
	pl := &plan.Plan{Elements: []plan.Element{
		block("house", plane.Point{X: -3, Y: 1}, plane.Point{X: 1, Y: 5}),
		block("loft", plane.Point{X: -2, Y: 2}, plane.Point{X: 1, Y: 4}),
	}}
	over, up, ok := f.Beside(pl, []plan.ElementID{"loft"}, 0.5, 20)
	if !ok {
		t.Fatal("no place found, though the stage-left side of the room is free")
	}
	free := func(dx, dy float64) bool {
		for x := -2 + dx + 0.01; x < 1+dx; x += 0.05 {
			for y := 2 + dy + 0.01; y < 4+dy; y += 0.05 {
				inRoom := x > -5 && x < 5 && y > -2 && y < 6
				column := x > 3 && x < 3.5 && y > -1 && y < -0.5
				clear := x < -2 && y < -1
				onHouse := x > -3 && x < 1 && y > 1 && y < 5
				if !inRoom || column || clear || onHouse {
					return false
				}
			}
		}
		return true
	}
	if !free(over, up) {
		t.Errorf("moved by %g, %g it is in the way", over, up)
	}
	for x := -20; x <= 20; x++ {
		for y := -20; y <= 20; y++ {
			dx, dy := float64(x)*0.5, float64(y)*0.5
			if math.Hypot(dx, dy) < math.Hypot(over, up)-1e-9 && free(dx, dy) {
				t.Errorf("%g, %g is free and nearer than %g, %g", dx, dy, over, up)
			}
		}
	}
}

func TestBesideKeepsOutOfTheSwingOfADoor(t *testing.T) {
	f := room()
	pl := &plan.Plan{Elements: []plan.Element{block("chair", plane.Point{X: 4.3, Y: 1.2}, plane.Point{X: 4.7, Y: 1.6})}}
	if over, up, ok := f.Beside(pl, []plan.ElementID{"chair"}, 0.5, 20); !ok || over != 0 || up != 0 {
		t.Fatalf("without a door it is moved by %g, %g", over, up)
	}
	// The leaf sweeps from 4 to 5 over and from 1 to 2 up.
	f.Features = []Feature{{ID: "d", Kind: RoomDoor, Opens: OpensIn, Shape: plane.Open(plane.Point{X: 10, Y: 3}, plane.Point{X: 10, Y: 4})}}
	over, up, ok := f.Beside(pl, []plan.ElementID{"chair"}, 0.5, 20)
	if !ok || math.Hypot(over, up) < 0.5 {
		t.Errorf("moved by %g, %g (%v) it stands in the door's swing", over, up, ok)
	}
}

func TestBesideSaysWhenThereIsNoPlace(t *testing.T) {
	pl := &plan.Plan{Elements: []plan.Element{block("vast", plane.Point{}, plane.Point{X: 20, Y: 20}), {ID: "bare"}}}
	for name, c := range map[string]struct {
		f    *Floor
		id   plan.ElementID
		step float64
	}{
		"larger than the room": {room(), "vast", 0.5},
		"without lines":        {room(), "bare", 0.5},
		"gone":                 {room(), "gone", 0.5},
		"not measured":         {&Floor{}, "vast", 0.5},
		"no step":              {room(), "vast", 0},
	} {
		if _, _, ok := c.f.Beside(pl, []plan.ElementID{c.id}, c.step, 20); ok {
			t.Errorf("%s: a place was found", name)
		}
	}
}
