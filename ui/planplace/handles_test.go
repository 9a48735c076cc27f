package planplace

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestACornerIsDraggedWhereItIsSeen(t *testing.T) {
	b := open(t, demo.Production(today))
	e := b.named("Well head") // rides on the revolve
	var turned plan.SceneID
	for _, c := range b.plan().Carries {
		if c.Carrier == e.Rides && c.Travel == 90 {
			turned = c.Scene
		}
	}
	b.desk.ChooseScene(turned)
	b.pick("Well head")
	handles := cornerHandles(b.desk.View().P, turned, []plan.ElementID{e.ID})
	to := handles[2].At.Add(plane.Point{X: 0.1, Y: 0.2})
	b.place.board.dragCorner(handles[2].ID, to, true)
	after := b.named("Well head")
	// The middle about which an element turns moves with its corners, but the well
	// head is not turned by itself, so the corner is seen where it was let go.
	if got := seenAt(b.desk.View().P, after, turned).Apply(after.Paths[0].Vertices[2].Point); got.To(to) > near {
		t.Errorf("the corner is seen at %v, was let go at %v", got, to)
	}
	b.place.board.dragCorner("0/99", to, true)
	b.place.board.dragCorner("nonsense", to, true)
	if got := b.named("Well head").Paths[0].Vertices; got[2] != after.Paths[0].Vertices[2] || len(got) != len(after.Paths[0].Vertices) {
		t.Error("a corner that is not there was moved")
	}
}

func TestCornersAreNumberedAsInTheTable(t *testing.T) {
	p := demo.Production(today)
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		for _, path := range e.Paths {
			labels := cornerNumbers(p, "", []plan.ElementID{e.ID}, path.ID)
			for j, l := range labels {
				if l.At != path.Vertices[j].Point || l.Text != cornerRows(p, &path)[j].Cells[cornerNumber] {
					t.Fatalf("corner %d of %s is numbered %q at %v", j+1, e.Name, l.Text, l.At)
				}
			}
		}
	}
	if got := cornerNumbers(p, "", []plan.ElementID{"a", "b"}, ""); got != nil {
		t.Errorf("several elements are numbered: %v", got)
	}
}

func TestKeysOnTheDrawing(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove")
	before := b.named("Stove").Paths[0].Vertices[0]
	b.win.Canvas().Focus(b.place.board.canvas)
	b.key(fyne.KeyRight)
	step := b.desk.View().Style().Grain()
	if got, want := b.named("Stove").Paths[0].Vertices[0].Point, before.Add(plane.Point{X: step}); got.To(want) > near {
		t.Errorf("an arrow key moved the corner to %v, want %v", got, want)
	}
	b.key(fyne.KeyDelete)
	for _, e := range b.plan().Elements {
		if e.Name == "Stove" {
			t.Error("Delete left it there")
		}
	}
	b.key(fyne.KeyInsert)
	if !b.place.board.tool.draws() {
		t.Error("Insert does not begin to draw")
	}
	b.key(fyne.KeyEscape)
	if b.place.board.tool != selectThings {
		t.Error("Esc does not put the tool down")
	}
}

func TestMeasuredSaysHowFarAndWhichWay(t *testing.T) {
	p := inFeet(plane.Path{})
	got := measured(p, plane.Point{}, plane.Point{X: -3 * 0.3048, Y: 4 * 0.3048})
	for _, want := range []string{`5' 0"`, `4' 0" upstage`, `3' 0" to stage right`} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
}

func TestAnArcIsDrawnThroughThreePoints(t *testing.T) {
	b := open(t, demo.Production(today))
	before := len(b.plan().Elements)
	b.place.board.take(drawArc)
	for _, p := range []plane.Point{{X: 20}, {X: 21, Y: 1}, {X: 22}} {
		b.place.board.canvas.AddPoint(p)
	}
	if len(b.plan().Elements) != before+1 {
		t.Fatal("no arc was drawn")
	}
	path := b.plan().Elements[before].Paths[0].Path
	if got := bowOf(&path, 0); got < 1-near || got > 1+near {
		t.Errorf("it bows by %v, want 1 m to the left", got)
	}
	b.place.board.take(drawArc)
	for range 3 {
		b.place.board.canvas.AddPoint(plane.Point{X: 30})
	}
	if len(b.plan().Elements) != before+1 || !strings.Contains(b.place.board.typing.words.Text, "No arc") {
		t.Errorf("an arc through one point: %q", b.place.board.typing.words.Text)
	}
}
