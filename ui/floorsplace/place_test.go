package floorsplace

import (
	"context"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/floorpicture"
)

// openPlace returns the place with the demo on the desk.
func openPlace(t *testing.T) *place {
	return openOn(t, demo.Production(desktest.Wednesday))
}

// openOn returns the place with a production on the desk; what it works out in the
// background is there at once.
func openOn(t *testing.T, production *prep.Production) *place {
	p, _ := desktest.Open(t, production, func(d *desk.Desk) *place {
		p := New(d).(*place)
		p.under.proposed.quietly, p.under.spare.quietly, p.measure.worked.quietly = atOnce, atOnce, atOnce
		return p
	})
	return p
}

// atOnce does background work where it is asked for.
func atOnce(work func(context.Context), done func()) (callOff func()) {
	work(context.Background())
	done()
	return func() {}
}

func (p *place) here() *floor.Floor { return p.view.P.Floor(p.view.Floor) }

func elementID(t *testing.T, p *place, name string) string {
	t.Helper()
	for _, e := range p.view.P.Plan.Elements {
		if e.Name == name {
			return string(e.ID)
		}
	}
	t.Fatalf("no element called %q", name)
	return ""
}

func TestTreatmentIsDecidedInTheTable(t *testing.T) {
	p := openPlace(t)
	id := elementID(t, p, "Sofa")
	if err := p.table.OnEdit(id, colHow, string(floor.ObjectOnly)); err != nil {
		t.Fatal(err)
	}
	if err := p.table.OnEdit(id, colDecided, "The director"); err != nil {
		t.Fatal(err)
	}
	got := p.here().Decide(p.view.P.Plan.Element(plan.ElementID(id)))
	if got.How != floor.ObjectOnly || got.Decided.By != "The director" || got.Decided.On.IsZero() {
		t.Errorf("treatment %+v", got)
	}
	p.desk.Undo()
	p.desk.Undo()
	if got := p.here().Decide(p.view.P.Plan.Element(plan.ElementID(id))); got.How != floor.AsDrawn {
		t.Errorf("after two undos it is %s", got.How)
	}
}

func TestPlanIsShiftedAndTurnedByItsHandles(t *testing.T) {
	p := openPlace(t)
	p.canvas.OnDragHandle(floorpicture.ID(floorpicture.Placement, floorpicture.ShiftPlan), plane.Point{X: 6, Y: 3}, true)
	shifted := p.here().Placement.Shift
	if shifted.To(plane.Point{X: 6, Y: 3}) > p.view.P.Settings.Step {
		t.Errorf("the datum lies at %v", shifted)
	}
	// Up the centre line a quarter turn to the left is a turn of ninety degrees.
	p.canvas.OnDragHandle(floorpicture.ID(floorpicture.Placement, floorpicture.TurnPlan), plane.Point{X: 3, Y: shifted.Y}, true)
	if got := p.here().Placement.Turn; math.Abs(got-math.Pi/2) > 1e-9 {
		t.Errorf("the plan is turned by %v", got)
	}
	if p.here().Placement.Shift != shifted {
		t.Error("turning has shifted the plan")
	}
}

func TestTypedPlacementComesBackAsTyped(t *testing.T) {
	p := openPlace(t)
	if err := p.floor.along.OnCommit("6.10 m", 6.10); err != nil {
		t.Fatal(err)
	}
	if got := p.floor.along.Shown(); got != "6.10 m" {
		t.Errorf("the field shows %q", got)
	}
	if p.here().Placement.Shift.X != 6.10 {
		t.Errorf("the datum lies at %v", p.here().Placement.Shift)
	}
}

func TestDrawnShapesBecomeThingsOfTheRoom(t *testing.T) {
	p := openPlace(t)
	before := *p.here()
	square := []plane.Point{{X: 1, Y: 1}, {X: 2, Y: 1}, {X: 2, Y: 2}, {X: 1, Y: 2}}
	p.take(drawObstacle)
	p.canvas.OnDraw(square, true)
	p.take(drawKeepClear)
	p.canvas.OnDraw(square, true)
	p.take(drawStep)
	p.canvas.OnDraw(square[:2], false)
	if err := p.thing.rise.OnCommit("7 in", 7*0.0254); err != nil {
		t.Error(err)
	}
	if s := p.here().Steps; len(s) != len(before.Steps)+1 || s[len(s)-1].Rise != 7*0.0254 || p.thing.rise.Shown() != "7 in" {
		t.Errorf("steps %+v, the field shows %q", s, p.thing.rise.Shown())
	}
	p.take(setPivot)
	p.tapped(plane.Point{X: 5, Y: 5})
	now := p.here()
	if len(now.Obstacles) != len(before.Obstacles)+1 || len(now.KeepClears) != len(before.KeepClears)+1 || len(now.Pivots) != len(before.Pivots)+1 {
		t.Fatalf("%d obstacles, %d areas, %d pivots", len(now.Obstacles), len(now.KeepClears), len(now.Pivots))
	}
	if kind := p.view.Selected.Kind; kind != desk.Pivot || p.side.Objects[0] != p.thing.form {
		t.Errorf("selected is %q; its form is not shown", kind)
	}
	p.Remove()
	if len(p.here().Pivots) != len(before.Pivots) {
		t.Error("the pivot is still there")
	}
}

func TestWallsThatCrossAreRefused(t *testing.T) {
	p := openPlace(t)
	before := p.here().Outline.Area()
	p.take(drawWalls)
	p.canvas.OnDraw([]plane.Point{{X: 0, Y: 0}, {X: 9, Y: 9}, {X: 9, Y: 0}, {X: 0, Y: 8}}, true)
	if p.here().Outline.Area() != before {
		t.Error("walls that cross were taken")
	}
	if p.desk.Window().Canvas().Overlays().Top() == nil {
		t.Error("nobody was told why")
	}
}

func TestFloorsAreAddedAndDeleted(t *testing.T) {
	p := openPlace(t)
	n := len(p.view.P.Floors)
	p.Add()
	if len(p.view.P.Floors) != n+1 || p.here().Name != "Another room" {
		t.Fatalf("looking at %q of %d floors", p.here().Name, len(p.view.P.Floors))
	}
	if !strings.Contains(p.said.Text, "not been measured") {
		t.Errorf("a floor without walls says %q", p.said.Text)
	}
	p.desk.Edit("Delete all floors", func(pr *prep.Production) error {
		for len(pr.Floors) > 0 {
			pr.RemoveFloor(pr.Floors[0].ID)
		}
		return nil
	})
	if p.body.Objects[0] != p.empty {
		t.Error("without floors the place does not say what belongs there")
	}
}

func TestRowsSayWhatSticksOut(t *testing.T) {
	p := openPlace(t)
	w := p.view.Work(p.view.Floor)
	rows := treatmentRows(p.view, w, p.under.proposed)
	if len(rows) != len(p.view.P.Plan.Elements) {
		t.Fatalf("%d rows for %d elements", len(rows), len(p.view.P.Plan.Elements))
	}
	outside := 0
	for _, r := range rows {
		if r.Cells[colOutside] != "" {
			outside++
		}
	}
	if outside != len(w.Overhangs) || outside == 0 {
		t.Errorf("%d rows say that something is outside, %d elements are", outside, len(w.Overhangs))
	}
}

func TestThePlanDraggedLiesAtALengthThatCanBeRead(t *testing.T) {
	p := openPlace(t)
	p.canvas.OnDragHandle(floorpicture.ID(floorpicture.Placement, floorpicture.ShiftPlan), plane.Point{X: 6.00071, Y: 3.0004}, true)
	step, got := p.view.P.Settings.Step, p.here().Placement.Shift
	for _, m := range []float64{got.X, got.Y} {
		if off := math.Abs(math.Remainder(m, step)); off > 1e-9 {
			t.Errorf("%v m is %v off a multiple of %v", m, off, step)
		}
	}
	if got.To(plane.Point{X: 6.00071, Y: 3.0004}) > step {
		t.Errorf("it lies at %v", got)
	}
}

func TestWallsThatCrossCannotBeUsed(t *testing.T) {
	p := openPlace(t)
	before := len(p.here().Outline.Vertices)
	s := newRoomSheet(p, plane.Closed(plane.Point{}, plane.Point{X: 8, Y: 6}, plane.Point{X: 8}, plane.Point{Y: 6}).Vertices)
	if !s.take.Disabled() || s.wrong.Text == "" || s.use() {
		t.Errorf("crossing walls can be used: disabled %v, said %q", s.take.Disabled(), s.wrong.Text)
	}
	if got := len(p.here().Outline.Vertices); got != before {
		t.Errorf("the floor has %d corners, had %d", got, before)
	}
	s.corners[1], s.corners[2] = s.corners[2], s.corners[1]
	if s.show(); s.take.Disabled() || s.wrong.Text != "" || !s.use() {
		t.Errorf("a good room cannot be used: %q", s.wrong.Text)
	}
}

func TestEveryPageFitsASmallScreen(t *testing.T) {
	p := openPlace(t)
	const beside = 126 // what the rail takes of a screen of 1366 by 768
	for name, page := range map[string]fyne.CanvasObject{"the floor": p.whole, "the room as measured": p.measure.content, "setting the plan": p.placing.content} {
		if size := page.MinSize(); size.Width > 1366-beside || size.Height > 640 {
			t.Errorf("%s needs %v", name, size)
		}
	}
}

func TestAPlanThatWasNeverSetInTheRoomSaysWhatToDo(t *testing.T) {
	p := openPlace(t)
	at := p.here().Placement
	if said := summary(p.view, p.view.Here()); strings.Contains(said, "Set the plan") {
		t.Errorf("set at %v it says %q", at, said)
	}
	p.edit("Unset it", func(f *floor.Floor) error { f.Placement = plane.Motion{}; return nil })
	if said := summary(p.view, p.view.Here()); !strings.Contains(said, "not set in this room yet") {
		t.Errorf("never set it says %q", said)
	}
}
