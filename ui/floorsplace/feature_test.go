package floorsplace

import (
	"math"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
)

func TestDoorIsDrawnWithTwoClicksAndTyped(t *testing.T) {
	p := openPlace(t)
	p.takeFeature(floor.RoomDoor)
	if !strings.Contains(p.said.Text, "hinge") {
		t.Errorf("the tool waits saying %q", p.said.Text)
	}
	p.canvas.AddPoint(plane.Point{X: 2})
	p.canvas.AddPoint(plane.Point{X: 3})
	f := p.here()
	if len(f.Features) == 0 {
		t.Fatal("no door")
	}
	d := f.Features[len(f.Features)-1]
	if d.Kind != floor.RoomDoor || d.Opens != floor.OpensIn || p.side.Objects[0] != p.feature.form {
		t.Fatalf("drawn is %+v, and its form is not shown", d)
	}
	if err := p.feature.wide.OnCommit("3'", 0.9144); err != nil {
		t.Fatal(err)
	}
	if err := p.feature.opens.OnCommit(string(floor.OpensOut)); err != nil {
		t.Fatal(err)
	}
	d = p.here().Features[len(p.here().Features)-1]
	if w := d.Shape.Length(); math.Abs(w-0.9144) > 1e-12 || d.Opens != floor.OpensOut {
		t.Errorf("the door is %.4f m wide and opens %s", w, d.Opens)
	}
	if err := p.feature.wide.OnCommit("0", 0); err == nil {
		t.Error("a door without a width is taken")
	}
	if err := p.feature.kind.OnCommit(string(floor.DanceFloor)); err == nil {
		t.Error("two points are taken for an area")
	}
}

func TestWayLeadsToWhatIsClicked(t *testing.T) {
	p := openPlace(t)
	p.addFeature(floor.RoomDoor, []plane.Point{{X: 2}, {X: 3}})
	door := p.view.Selected.IDs[0]
	exit := p.here().KeepClears[0]
	p.take(drawWay)
	p.canvas.AddPoint(plane.Point{X: 2.5, Y: 0.1})
	p.canvas.AddPoint(middleOf(exit.Shape))
	ways := p.here().Ways
	if len(ways) == 0 {
		t.Fatal("no way")
	}
	w := ways[len(ways)-1]
	if w.From.Thing != door || w.To.Thing != exit.ID || w.Kind != floor.WayOut {
		t.Fatalf("the way leads from %q to %q as %s", w.From.Thing, w.To.Thing, w.Kind)
	}
	if p.side.Objects[0] != p.way.form || !strings.Contains(p.way.found.Text, "narrowest") || !strings.Contains(p.way.published.Text, "404.2.3") {
		t.Errorf("the form says %q and %q", p.way.found.Text, p.way.published.Text)
	}
	if err := p.way.wide.OnCommit("60'", 18.288); err != nil {
		t.Fatal(err)
	}
	if got := p.way.wide.Shown(); got != "60'" {
		t.Errorf("the requirement shows as %q", got)
	}
	named := false
	for _, pr := range p.view.Work(p.view.Floor).Problems {
		named = named || pr.Rule == prep.RuleWay && pr.ID == w.ID
	}
	if !named {
		t.Error("nobody is 60 feet wide, and no problem says so")
	}
	if err := p.way.wide.OnCommit("-1", -1); err == nil {
		t.Error("a width below zero is taken")
	}

	p.desk.Select(desk.Select(desk.Feature, door))
	p.Remove()
	w = p.here().Ways[len(p.here().Ways)-1]
	if w.From.Thing != "" || w.From.At.To(plane.Point{X: 2.5, Y: 0.5}) > 1e-9 {
		t.Errorf("without its door the way begins at %+v", w.From)
	}
}

func TestEndsOfAWayAreChosenAndTyped(t *testing.T) {
	p := openPlace(t)
	p.addWay(plane.Point{X: 5, Y: 5}, plane.Point{X: 9, Y: 5})
	exit := p.here().KeepClears[0]
	if err := p.way.to.thing.OnCommit(exit.Name); err != nil {
		t.Fatal(err)
	}
	if err := p.way.from.along.OnCommit("6 m", 6); err != nil {
		t.Fatal(err)
	}
	w := p.here().Ways[len(p.here().Ways)-1]
	if w.To.Thing != exit.ID || w.From.At != (plane.Point{X: 6, Y: p.rounded(plane.Point{Y: 5}).Y}) {
		t.Errorf("the way leads from %+v to %+v", w.From, w.To)
	}
	if err := p.way.to.thing.OnCommit(aPlace); err != nil {
		t.Fatal(err)
	}
	if w = p.here().Ways[len(p.here().Ways)-1]; w.To.Thing != "" || w.To.At != middleOf(exit.Shape) {
		t.Errorf("as a place it ends at %+v", w.To)
	}
}

func TestThingsAreTypedIn(t *testing.T) {
	p := openPlace(t)
	from, to := plane.Point{X: 4, Y: 1}, plane.Point{X: 2, Y: 3}
	for what, kind := range map[string]desk.Kind{
		typeWay: desk.Way, typeObstacle: desk.Obstacle, typeKeepClear: desk.KeepClear,
		string(floor.RoomDoor): desk.Feature, string(floor.PowerOutlet): desk.Feature, string(floor.SprungFloor): desk.Feature,
	} {
		if err := p.addTyped(what, from, to); err != nil {
			t.Errorf("%s: %v", what, err)
		}
		if p.view.Selected.Kind != kind {
			t.Errorf("%s: a %q is selected", what, p.view.Selected.Kind)
		}
	}
	for _, what := range []string{typeObstacle, string(floor.DanceFloor)} {
		if err := p.addTyped(what, from, from); err == nil {
			t.Errorf("a %s without a size is taken", what)
		}
	}
}

func TestEverythingInTheRoomIsReachedByName(t *testing.T) {
	p := openPlace(t)
	p.addWay(plane.Point{X: 5, Y: 5}, plane.Point{X: 9, Y: 5})
	p.desk.Select(desk.Selection{})
	f := p.here()
	if n := len(f.Ways) + len(f.Features) + len(f.Steps) + len(f.Obstacles) + len(f.KeepClears) + len(f.Pivots); len(p.floor.shown) != n {
		t.Fatalf("%d of %d things are listed", len(p.floor.shown), n)
	}
	if err := p.floor.choose("1  whatever it is called"); err != nil {
		t.Fatal(err)
	}
	if _, ok := p.view.Selected.Of(desk.Way); !ok {
		t.Errorf("selected is %+v", p.view.Selected)
	}
}

func TestBoardsAreTyped(t *testing.T) {
	p := openPlace(t)
	if err := p.floor.boards.OnCommit(90); err != nil {
		t.Fatal(err)
	}
	if err := p.floor.setModule("3 1/4\"", 0.08255); err != nil {
		t.Fatal(err)
	}
	if f := p.here(); f.BoardDirection != 90 || f.BoardModule != 0.08255 || p.floor.module.Shown() != "3 1/4\"" {
		t.Errorf("boards at %v°, %v m, shown as %q", f.BoardDirection, f.BoardModule, p.floor.module.Shown())
	}
	if err := p.floor.setModule("-1", -0.3); err == nil {
		t.Error("boards narrower than nothing are taken")
	}
}
