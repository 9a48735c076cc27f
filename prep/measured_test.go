package prep

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// hall is a production with one floor of nothing but four walls and a diagonal.
func hall() *Production {
	p := &Production{Settings: DefaultSettings()}
	p.Floors = []floor.Floor{{ID: "hall", Name: "Hall", Measured: floor.Measured{
		Walls:     []floor.MeasuredWall{{ID: "a", Length: 8}, {ID: "b", Length: 6}, {ID: "c", Length: 8}, {ID: "d", Length: 6}},
		Diagonals: []floor.Diagonal{{ID: "across", From: "a", To: "c", Length: 10}},
	}}}
	return p
}

func setWall(i int, length float64) func(*floor.Measured) error {
	return func(m *floor.Measured) error { m.Walls[i].Length = length; return nil }
}

func TestWallsFollowTheMeasurements(t *testing.T) {
	p := hall()
	if err := p.Measure("hall", setWall(1, 6)); err != nil {
		t.Fatal(err)
	}
	f := p.Floor("hall")
	if area := f.Outline.Area(); math.Abs(area-48) > 1e-6 {
		t.Fatalf("a floor without walls got an area of %v, want 48", area)
	}
	if err := p.Measure("hall", setWall(1, 6.5)); err != nil {
		t.Fatal(err)
	}
	if got := f.Outline.Vertices[1].To(f.Outline.Vertices[2].Point); math.Abs(got-6.5) > 1e-6 {
		t.Errorf("the wall is %v long, want 6.5", got)
	}
}

func TestWallsMovedByHandAreKeptUntilAsked(t *testing.T) {
	p := hall()
	if err := p.UseMeasured("hall"); err != nil {
		t.Fatal(err)
	}
	f := p.Floor("hall")
	f.Outline.Vertices[2].X += 0.2
	by := f.Outline.Vertices[2].Point
	if err := p.Measure("hall", setWall(3, 6.02)); err != nil {
		t.Fatal(err)
	}
	m, ok := p.MeasuredRoom(f)
	if !ok || m.InUse || f.Outline.Vertices[2].Point != by {
		t.Errorf("in use %v, the corner at %v", m.InUse, f.Outline.Vertices[2])
	}
	if said := strings.Join(m.Say(p.Style()), " "); !strings.Contains(said, "moved by hand") {
		t.Errorf("said %q", said)
	}
	if err := p.UseMeasured("hall"); err != nil {
		t.Fatal(err)
	}
	if m, _ := p.MeasuredRoom(f); !m.InUse {
		t.Errorf("the measured walls are %v m off", m.Off)
	}
}

// A room that lies somewhere in the floor's axes stays there.
func TestMeasuredWallsStayWhereTheRoomLies(t *testing.T) {
	p := hall()
	f := p.Floor("hall")
	f.Outline = plane.Closed(plane.Point{X: 2, Y: 3}, plane.Point{X: 2, Y: 10.9}, plane.Point{X: -4, Y: 11}, plane.Point{X: -4, Y: 3})
	if err := p.UseMeasured("hall"); err != nil {
		t.Fatal(err)
	}
	if b := f.Outline.Vertices[1].Point; b.To(plane.Point{X: 2, Y: 11}) > 1e-6 {
		t.Errorf("corner B at %v", b)
	}
	m, _ := p.MeasuredRoom(f)
	if at, ok := m.PlaceOf(f.Measured, "c"); !ok || at.To(plane.Point{X: -4, Y: 11}) > 1e-6 {
		t.Errorf("corner C at %v", at)
	}
	if _, ok := m.PlaceOf(f.Measured, "gone"); ok {
		t.Error("a place that is not there has a position")
	}
}

func TestMeasurementsThatMakeNoRoomAreKept(t *testing.T) {
	p := hall()
	if err := p.UseMeasured("hall"); err != nil {
		t.Fatal(err)
	}
	f := p.Floor("hall")
	before := f.Outline
	if err := p.Measure("hall", setWall(0, 17)); err != nil {
		t.Fatal(err)
	}
	m, _ := p.MeasuredRoom(f)
	if f.Measured.Walls[0].Length != 17 || f.Outline.Area() != before.Area() || !strings.Contains(m.Why, "A–B") {
		t.Errorf("kept %v, area %v, because %q", f.Measured.Walls[0].Length, f.Outline.Area(), m.Why)
	}
	if err := p.UseMeasured("hall"); err == nil || err.Error() != m.Why {
		t.Errorf("got %v", err)
	}
}
