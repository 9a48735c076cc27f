package sheets

import (
	"bytes"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// measuredHall is a hall with both diagonals, of which the second was read a foot
// too long, and with its corners ticked as square.
func measuredHall() *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Settings.Unit, p.Settings.Step = "m", 0.005
	f := floor.Floor{ID: "hall", Name: "Hall"}
	f.Measured.Walls = []floor.MeasuredWall{
		{ID: "a", Name: "front", Length: 8, Turn: 90, Square: true}, {ID: "b", Length: 6, Turn: 90, Square: true, Rise: 0},
		{ID: "c", Length: 8, Turn: 90}, {ID: "d", Length: 6, Turn: 90},
	}
	f.Measured.Diagonals = []floor.Diagonal{{ID: "1", From: "a", To: "c", Length: 10}, {ID: "2", From: "b", To: "d", Length: 10.3048}}
	p.KeepTyped("a", "length", "800 cm")
	p.Floors = []floor.Floor{f}
	return p
}

func csvOf(t *testing.T, p *prep.Production) string {
	t.Helper()
	var b bytes.Buffer
	if err := WriteCSV(&b, Room, Job{P: p, Floor: "hall"}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTheRoomSheetShowsWhatWasMeasuredAndWhatIsMadeOfIt(t *testing.T) {
	p := measuredHall()
	got := csvOf(t, p)
	for _, want := range []string{"A–B,front,800 cm,8.050 m,49 mm,from 28 mm,square", "B–D,10.3048,10.210 m,−93 mm", "DOUBTFUL", "square"} {
		if !strings.Contains(got, want) {
			t.Errorf("the table lacks %q:\n%s", want, got)
		}
	}
	s, _ := Find(Room)
	c := s.content(Job{P: p, Floor: "hall"})
	// Two right angles and one diagonal too many leave two lengths that may be it.
	first, ok1 := c.blocks[0].(paragraph)
	second, ok2 := c.blocks[1].(paragraph)
	if !ok1 || !ok2 || !strings.Contains(first.Text, "which of these 2") || !strings.Contains(second.Text, "B–D: 10.305 m was read") || !strings.Contains(second.Text, "a whole foot too long") {
		t.Errorf("the sheet begins with %+v and %+v", c.blocks[0], c.blocks[1])
	}
	d, ok := c.blocks[len(c.blocks)-1].(drawing)
	if !ok || len(d.Points) != 4 || d.Points[2].Text != "C" || len(d.Strokes) != 2 {
		t.Errorf("the picture has %d letters and %d lines across", len(d.Points), len(d.Strokes))
	}
}

func TestTheRoomSheetOfAnUnmeasuredFloorIsAForm(t *testing.T) {
	p := measuredHall()
	p.Floors[0].Measured = floor.Measured{}
	got := csvOf(t, p)
	if !strings.Contains(got, "wall,what it is,length") || !strings.Contains(got, "A–B") || strings.Contains(got, "front") {
		t.Errorf("the form is\n%s", got)
	}
	if n := Pages(Room, Job{P: p, Floor: "hall"}); n < 1 || n > 2 {
		t.Errorf("the form has %d pages", n)
	}
}

func TestMeasurementsThatMakeNoRoomArePrintedWithTheReason(t *testing.T) {
	p := measuredHall()
	p.Floors[0].Measured.Diagonals[0].Length = 15
	s, _ := Find(Room)
	c := s.content(Job{P: p, Floor: "hall"})
	if said, ok := c.blocks[0].(paragraph); !ok || !strings.Contains(said.Text, "No room has these lengths") {
		t.Errorf("the sheet begins with %+v", c.blocks[0])
	}
	if _, drawn := c.blocks[len(c.blocks)-1].(drawing); drawn {
		t.Error("a room that cannot be is drawn")
	}
}
