package floorsplace

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// openPlacing returns the page on the demo's smaller room, where a search is short.
func openPlacing(t *testing.T) *place {
	t.Helper()
	p := openPlace(t)
	p.desk.Still()
	for _, f := range p.view.P.Floors {
		if f.Name == "Loft Studio" {
			p.desk.ChooseFloor(f.ID)
		}
	}
	p.workAt(p.placing.content)
	return p
}

func TestAProposalIsTriedAndKeptInOneStep(t *testing.T) {
	p := openPlacing(t)
	before := p.here().Placement
	p.placing.search()
	p.desk.Settle()
	found := p.placing.proposals.Proposals
	if len(found) < 2 || p.placing.trial != found[0].Placement {
		t.Fatalf("%d proposals, on trial %v", len(found), p.placing.trial)
	}
	p.placing.small.OnSelected(1)
	if p.placing.trial != found[1].Placement || p.here().Placement != before {
		t.Errorf("on trial %v, want %v; the floor has %v", p.placing.trial, found[1].Placement, p.here().Placement)
	}
	p.placing.keepTrial()
	if p.here().Placement != found[1].Placement {
		t.Errorf("kept %v", p.here().Placement)
	}
	p.desk.Undo()
	if p.here().Placement != before {
		t.Errorf("after one undo %v, want %v", p.here().Placement, before)
	}
}

func TestTheScoreFollowsHandKeysAndFigures(t *testing.T) {
	p := openPlacing(t)
	page := p.placing
	page.canvas.OnDragHandle(floorpicture.ID(floorpicture.Placement, floorpicture.ShiftPlan), plane.Point{X: 0, Y: 0}, false)
	dragged := page.said.Words()
	if !strings.Contains(dragged, "Keeps") || !strings.Contains(dragged, "Loses") {
		t.Errorf("while dragged out of the room it says %q", dragged)
	}
	at := page.trial
	page.nudge(fyne.KeyRight)
	if math.Abs(page.trial.Shift.X-at.Shift.X-nudgeStep) > 1e-12 {
		t.Errorf("nudged from %v to %v", at, page.trial)
	}
	page.nudge(fyne.KeyComma)
	if math.Abs(page.trial.Turn-at.Turn-nudgeTurn*math.Pi/180) > 1e-12 {
		t.Errorf("turned to %v", page.trial.Turn)
	}
	if err := page.form.turn.OnCommit(90); err != nil || math.Abs(page.trial.Turn-math.Pi/2) > 1e-12 {
		t.Errorf("typed 90°: %v, %v", page.trial.Turn, err)
	}
	if p.here().Placement.Turn != 0 {
		t.Error("a trial has changed the floor")
	}
}

func TestFrontsAreClickedAndTicked(t *testing.T) {
	p := openPlacing(t)
	page := p.placing
	page.canvas.OnTap(plane.Point{X: 4, Y: 0.1}, floorcanvas.Snap{})
	if f := p.here().Fronts; len(f) != 1 || math.Abs(f[0].Toward+math.Pi/2) > 1e-9 {
		t.Fatalf("after a click on the first wall: %+v", f)
	}
	names := page.sideNames(p.here())
	if err := page.form.fronts.OnCommit(names[1:2]); err != nil {
		t.Fatal(err)
	}
	if f := p.here().Fronts; len(f) != 1 || math.Abs(f[0].Toward) > 1e-9 {
		t.Errorf("after the tick of %q: %+v", names[1], f)
	}
	if err := page.form.angles.OnCommit(string(floor.InSteps)); err != nil || p.here().Wishes.Step != usualStep {
		t.Errorf("wishes %+v, %v", p.here().Wishes, err)
	}
}

func TestWhatCannotBePlacedIsSaid(t *testing.T) {
	p := openPlacing(t)
	p.edit("Keep everything clear", func(f *floor.Floor) error {
		box, _ := f.Outline.Bounds()
		id := addKeepClear(f, plane.Rectangle(box.Min, box.Max))
		x, _ := findThing(f, id)
		*x.name = "Dance class"
		return nil
	})
	p.placing.search()
	p.desk.Settle()
	if said := p.placing.found.Text; !strings.Contains(said, "Dance class must stay clear") {
		t.Errorf("said %q", said)
	}
}

func TestATrialThatBlocksAWayOutSaysSo(t *testing.T) {
	p := openPlacing(t)
	page := p.placing
	f := *page.of
	f.Features, f.KeepClears = nil, nil
	f.Ways = []floor.Way{{ID: "w", Name: "Out by the stairs", Width: 40, From: floor.Spot{At: plane.Point{X: 1, Y: 1}}, To: floor.Spot{At: plane.Point{X: 2, Y: 1}}}}
	page.of = &f
	page.try(page.trial)
	if said := page.said.Words(); !strings.Contains(said, "Too narrow: Out by the stairs: ") {
		t.Errorf("said %q", said)
	}
	page.of.Ways[0].Width = 0.01
	page.try(page.trial)
	if said := page.said.Words(); strings.Contains(said, "Too narrow") {
		t.Errorf("a way that is wide enough: %q", said)
	}
}

func TestSidesAreCalledAsTheWallsThatWereMeasured(t *testing.T) {
	p := openPlace(t) // on the demo's hall, which was measured
	p.workAt(p.placing.content)
	if names := p.placing.sideNames(p.here()); !strings.HasPrefix(names[0], "wall A–B front (58' ") {
		t.Errorf("sides are %q", names)
	}
	f := *p.here()
	f.Measured = floor.Measured{}
	if names := p.placing.sideNames(&f); !strings.HasPrefix(names[0], "wall 1 (58' ") {
		t.Errorf("of a room that was drawn they are %q", names)
	}
}
