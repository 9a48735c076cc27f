package prep_test

import (
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/drawing"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

func TestATriedRoomChangesNothing(t *testing.T) {
	was := plane.Rectangle(plane.Point{}, plane.Point{X: 6, Y: 5})
	p := &prep.Production{Settings: prep.DefaultSettings(), Floors: []floor.Floor{{ID: "hall", Outline: was}}}
	try := func(content string) prep.TriedRoom {
		table, err := drawing.ReadRoom(strings.NewReader(content), drawing.RoomOptions{Unit: length.Metres})
		if err != nil {
			t.Fatal(err)
		}
		return p.TryRoom(&p.Floors[0], table)
	}
	good := try("length,from,to\n4,,\n3,,\n4,,\n3,,\n5,A,C\n")
	if len(good.Wrong) > 0 || !good.Measured.InUse || good.After.Outline.Area() < 11.99 || good.After.Outline.Area() > 12.01 {
		t.Errorf("a rectangle of 12 m² gives %+v", good)
	}
	for name, content := range map[string]string{"contradiction": "length,from,to\n4,,\n3,,\n4,,\n3,,\n22,A,C\n", "words": "length\nlong\n4\n3\n"} {
		bad := try(content)
		if len(bad.Wrong) != 1 || bad.After.Outline.Area() != was.Area() {
			t.Errorf("%s: %+v, %.2f m²", name, bad.Wrong, bad.After.Outline.Area())
		}
	}
	if p.Floors[0].Outline.Area() != was.Area() || p.Floors[0].Measured.Any() {
		t.Error("trying has changed the floor")
	}
}
