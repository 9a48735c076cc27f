package sheets

import (
	"fmt"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// bare is a room of ten metres by eight with nothing on it but what room adds.
func bare(room func(*floor.Floor)) Job {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Settings.Unit, p.Settings.Step = "m", 0.005
	f := floor.Floor{ID: "room", Name: "Room", Kind: floor.Room, Rule: floor.AnyTape,
		Outline: plane.Rectangle(plane.Point{X: -5}, plane.Point{X: 5, Y: 8})}
	room(&f)
	p.Floors = []floor.Floor{f}
	return Job{P: p, Floor: "room", Size: A4}
}

func TestFloorPlanShowsDoorsAndWays(t *testing.T) {
	d := drawFloor(bare(func(f *floor.Floor) {
		f.Features = []floor.Feature{
			{ID: "d", Name: "Yard door", Kind: floor.RoomDoor, Opens: floor.OpensIn, Shape: plane.Open(plane.Point{X: 5, Y: 1}, plane.Point{X: 5, Y: 1.9})},
			{ID: "w", Name: "Windows", Kind: floor.RoomWindow, Shape: plane.Open(plane.Point{X: -3, Y: 8}, plane.Point{X: 3, Y: 8})},
			{ID: "m", Name: "Mirror", Kind: floor.WallMirror, Shape: plane.Open(plane.Point{X: -3}, plane.Point{X: 3})},
			{ID: "s", Name: "Seam", Kind: floor.Seam, Shape: plane.Open(plane.Point{}, plane.Point{Y: 8})},
			{ID: "o", Name: "Socket", Kind: floor.PowerOutlet, Shape: plane.Open(plane.Point{X: -5, Y: 4})},
		}
		f.Ways = []floor.Way{{ID: "out", Name: "Out", From: floor.Spot{At: plane.Point{X: -3, Y: 4}}, To: floor.Spot{Thing: "d"}, Width: 1.2}}
	}))
	quarter := 0
	for _, s := range d.Strokes {
		for _, e := range s.Edges {
			if !e.Straight() && s.Pen == featurePen && e.Length() > 1 {
				quarter++
			}
		}
	}
	if quarter != 1 || len(d.Areas) != 1 {
		t.Errorf("%d arcs of doors and %d areas, want one of each", quarter, len(d.Areas))
	}
	var key []string
	for _, e := range d.Entries {
		key = append(key, e.Text)
	}
	if all := strings.Join(key, "; "); !strings.Contains(all, "door with its swing, window, mirror and power") || !strings.Contains(all, "seam") || !strings.Contains(all, "narrowest") {
		t.Errorf("the key explains %s", all)
	}
	figure := ""
	for _, s := range d.Points {
		if s.Kind == breadth {
			figure = s.Text
		}
	}
	if figure != "0.900 m, too narrow" {
		t.Errorf("the narrowest place bears %q", figure)
	}
}

func TestCareNamesTheWaysTheirWidthsAndTheMirrors(t *testing.T) {
	text := fmt.Sprint(care(bare(func(f *floor.Floor) {
		f.Features = []floor.Feature{
			{ID: "d", Name: "Yard door", Kind: floor.RoomDoor, Opens: floor.OpensIn, Shape: plane.Open(plane.Point{X: 5, Y: 1}, plane.Point{X: 5, Y: 1.9})},
			{ID: "m", Name: "the long mirror", Kind: floor.WallMirror, Shape: plane.Open(plane.Point{X: -3}, plane.Point{X: 3})},
		}
		f.Ways = []floor.Way{{ID: "out", Name: "Out", From: floor.Spot{At: plane.Point{X: -3, Y: 4}}, To: floor.Spot{Thing: "d"}, Width: 1.2}}
	})).blocks)
	for _, want := range []string{"the swing of Yard door", "0.900 m at its narrowest, through Yard door; TOO NARROW, 1.200 m is required", "404.2.3", "from memory", "fire authority", "the long mirror"} {
		if !strings.Contains(text, want) {
			t.Errorf("care lacks %q:\n%s", want, text)
		}
	}
}

// A cloth of ten by eight: its diagonals are √164 = 12.806 m.
func TestCareSaysHowAClothIsLaid(t *testing.T) {
	j := bare(func(f *floor.Floor) {
		f.Kind = floor.Cloth
		f.Features = []floor.Feature{{ID: "s", Name: "The seam", Kind: floor.Seam, Shape: plane.Open(plane.Point{X: -5, Y: 4}, plane.Point{X: 5, Y: 4})}}
	})
	text := fmt.Sprint(care(j).blocks)
	for _, want := range []string{"10.000 m across and 8.000 m from front to back", "{[R1 R3 12.805 m", "{[R1 R2 10.000 m", "{[C1 C2 8.000 m", "The seam runs from"} {
		if !strings.Contains(text, want) {
			t.Errorf("care lacks %q:\n%s", want, text)
		}
	}
	j.P.Floors[0].Kind = floor.Room
	if strings.Contains(fmt.Sprint(care(j).blocks), "Laying the cloth") {
		t.Error("a room is laid down like a cloth")
	}
}
