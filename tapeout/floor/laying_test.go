package floor

import (
	"math"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// room is ten metres by eight, measured from its south-west corner; the plan's
// datum lies at its middle, two metres in.
func room() *Floor {
	return &Floor{
		ID: "room", Kind: Room,
		Outline:   plane.Rectangle(plane.Point{}, plane.Point{X: 10, Y: 8}),
		Placement: plane.Motion{Shift: plane.Point{X: 5, Y: 2}},
	}
}

func wall(id string, from, to plane.Point) plan.Element {
	return plan.Element{ID: plan.ElementID(id), Kind: plan.Wall, Stock: "red",
		Paths: []plan.Path{{ID: plan.PathID(id), Role: plan.Outline, Path: plane.Open(from, to)}}}
}

func total(lines []Line) float64 {
	sum := 0.0
	for _, l := range lines {
		sum += l.Length()
	}
	return sum
}

func wantLength(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s: %.6f m, want %.6f m", what, got, want)
	}
}

func TestCutShortKeepsWhatIsInTheRoomAndNotesTheCut(t *testing.T) {
	f := room()
	f.Treatments = []Treatment{{Element: "w", How: CutShort}}
	pl := &plan.Plan{Elements: []plan.Element{wall("w", plane.Point{X: 0, Y: 4}, plane.Point{X: 0, Y: 9})}}

	lines := f.Lines(pl)
	wantLength(t, "laid", total(lines), 2) // the room ends at 6 m up
	if len(lines) != 1 || lines[0].Cut.A || !lines[0].Cut.B {
		t.Errorf("lines %+v, want one whose far end is a cut", lines)
	}
	o := f.Overhangs(pl)
	if len(o) != 1 {
		t.Fatalf("overhangs %+v, want one", o)
	}
	wantLength(t, "outside", o[0].Length, 3)
	wantLength(t, "of", o[0].Of, 5)
}

func TestCutShortLeavesOutWhatStandsOnAColumn(t *testing.T) {
	f := room()
	f.Obstacles = []Obstacle{{Name: "column", Shape: plane.Rectangle(plane.Point{X: 6, Y: 3}, plane.Point{X: 7, Y: 4})}}
	f.Treatments = []Treatment{{Element: "w", How: CutShort}}
	pl := &plan.Plan{Elements: []plan.Element{wall("w", plane.Point{X: -1, Y: 1.5}, plane.Point{X: 3, Y: 1.5})}}
	lines := f.Lines(pl)
	wantLength(t, "laid", total(lines), 3)
	if len(lines) != 2 {
		t.Errorf("%d pieces, want one on either side of the column", len(lines))
	}
}

func TestMovedAsideShiftsInPlanAxesBeforeTheDatum(t *testing.T) {
	f := room()
	f.OwnDatum = true
	f.Datum = plane.Motion{Shift: plane.Point{X: 5, Y: 1}} // a metre downstage of the plan's
	f.Treatments = []Treatment{{Element: "w", How: MovedAside, Over: 2}}
	pl := &plan.Plan{Elements: []plan.Element{wall("w", plane.Point{}, plane.Point{Y: 1})}}
	got := f.Lines(pl)[0].A
	if want := (plane.Point{X: 2, Y: 1}); got.To(want) > 1e-9 {
		t.Errorf("laid from %v in datum axes, want %v", got, want)
	}
}

func TestOutlineOnlyLeavesTreadsOut(t *testing.T) {
	f := room()
	f.Treatments = []Treatment{{Element: "stair", How: OutlineOnly}}
	e := plan.Element{ID: "stair", Kind: plan.Stair, Paths: []plan.Path{
		{Role: plan.Outline, Path: plane.Rectangle(plane.Point{}, plane.Point{X: 1, Y: 2})},
		{Role: plan.Inner, Path: plane.Open(plane.Point{Y: 1}, plane.Point{X: 1, Y: 1})},
	}}
	pl := &plan.Plan{Elements: []plan.Element{e}}
	wantLength(t, "outline", total(f.Lines(pl)), 6)
	f.Treatments = nil
	wantLength(t, "as drawn", total(f.Lines(pl)), 7)
}

func TestFurnitureIsSpikedAndNotLined(t *testing.T) {
	e := wall("table", plane.Point{}, plane.Point{X: 1})
	e.Kind = plan.Furniture
	pl := &plan.Plan{Elements: []plan.Element{e}}
	f := room()
	if len(f.Lines(pl)) != 0 || len(f.Spiked(pl)) != 1 {
		t.Errorf("%d lines and %d pieces, want none and one", len(f.Lines(pl)), len(f.Spiked(pl)))
	}
}

func TestHouseIsNotLaidOnItsOwnStage(t *testing.T) {
	e := wall("pros", plane.Point{}, plane.Point{X: 1})
	e.Kind = plan.Proscenium
	pl := &plan.Plan{Elements: []plan.Element{e}}
	stage := &Floor{Kind: Stage}
	if len(stage.Lines(pl)) != 0 {
		t.Error("the proscenium is taped in the theatre that has it")
	}
	if len(room().Lines(pl)) != 1 {
		t.Error("the proscenium is not taped in the rehearsal room")
	}
	stage.Treatments = []Treatment{{Element: "pros", How: AsDrawn}}
	if len(stage.Lines(pl)) != 1 {
		t.Error("a decision on record gives way to what goes without saying")
	}
}

func TestElementOutsideEverythingIsAllOverhang(t *testing.T) {
	pl := &plan.Plan{Elements: []plan.Element{wall("far", plane.Point{X: 100}, plane.Point{X: 104})}}
	o := room().Overhangs(pl)
	if len(o) != 1 {
		t.Fatalf("overhangs %+v, want one", o)
	}
	wantLength(t, "outside", o[0].Length, 4)
	if got := (&Floor{}).Overhangs(pl); got != nil {
		t.Errorf("a floor without walls has overhangs %+v", got)
	}
}

func TestPlacementByMotionMatchesTheFrames(t *testing.T) {
	f := room()
	f.Placement.Turn = math.Pi / 6
	p := plane.Point{X: 1, Y: 2}
	onFloor := f.Placement.Apply(p)
	if back := f.FloorToDatum().Apply(onFloor); back.To(p) > 1e-12 {
		t.Errorf("plan to floor to datum gives %v, want %v", back, p)
	}
	f.OwnDatum, f.Datum = true, plane.Motion{Turn: 0.3, Shift: plane.Point{X: 1, Y: 1}}
	one := f.PlanToDatum().Apply(p)
	if two := f.FloorToDatum().Apply(onFloor); one.To(two) > 1e-12 {
		t.Errorf("two ways from plan to datum differ: %v and %v", one, two)
	}
}
