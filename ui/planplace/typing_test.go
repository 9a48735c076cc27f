package planplace

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
)

func TestDrawingByTyping(t *testing.T) {
	b := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	if !b.place.board.empty.Visible() {
		t.Error("an empty plan does not say what belongs there")
	}
	b.place.board.take(drawCircle)
	if b.place.board.empty.Visible() {
		t.Error("the words stand in the way of the drawing")
	}
	typing := b.place.board.typing
	focus(b.desk, typing.up)
	b.typeText("6")
	b.key(fyne.KeyReturn)
	b.typeText("2 SR")
	b.key(fyne.KeyReturn)
	if !typing.round.Visible() {
		t.Fatal("the radius is not asked for")
	}
	focus(b.desk, typing.radius)
	b.typeText("3'")
	b.key(fyne.KeyReturn)
	if len(b.plan().Elements) != 1 {
		t.Fatal("no circle was drawn")
	}
	e := b.plan().Elements[0]
	middle, _ := e.Anchor()
	if want := (plane.Point{X: -2 * length.Foot, Y: 6 * length.Foot}); middle.To(want) > near {
		t.Errorf("its centre is %v, want %v", middle, want)
	}
	if b.place.board.canvas.Mode() != floorcanvas.Select {
		t.Error("the tool is still in hand")
	}
	b.typeText("Well head")
	b.key(fyne.KeyReturn)
	b.named("Well head")
}

func TestReadingAnElementByKeyboardAlone(t *testing.T) {
	b := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	b.place.openSheet()
	b.typeText("Kitchen wall")
	b.key(fyne.KeyReturn)
	for _, c := range [][2]string{{"20", "4"}, {"20", "8' 6\" SL"}, {"20-6", "9 SR"}} {
		b.typeText(c[0])
		b.win.Canvas().Focus(b.place.sheet.over.Target())
		b.typeText(c[1])
		b.key(fyne.KeyReturn)
	}
	b.typeText("wrong")
	b.win.Canvas().Focus(b.place.sheet.over.Target())
	if b.place.sheet.up.Trouble() == "" {
		t.Error("a wrong figure is not named at its field")
	}
	b.win.Canvas().Focus(b.place.sheet.up.Target())
	b.typeText("")
	b.key(fyne.KeyReturn)
	e := b.named("Kitchen wall")
	if n := len(e.Paths[0].Vertices); n != 3 {
		t.Fatalf("%d corners", n)
	}
	if got, want := e.Paths[0].Vertices[2].Point, (plane.Point{X: -9 * length.Foot, Y: 20.5 * length.Foot}); got.To(want) > near {
		t.Errorf("the last corner is at %v, want %v", got, want)
	}
	b.place.closeSheet()
	if got := cornerRows(b.desk.View().P, &e.Paths[0])[2].Cells[cornerUp]; got != "20-6" {
		t.Errorf("typed 20-6, shown %q", got)
	}
}

func TestScenesAndLevelsAreAddedRenamedAndReordered(t *testing.T) {
	b := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	b.place.side.plan.tabs.SelectIndex(1)
	scenes := b.place.side.plan.scenes
	scenes.add()
	b.typeText("1.1 The quay")
	b.key(fyne.KeyReturn)
	scenes.add()
	b.typeText("1.2 The kitchen")
	b.key(fyne.KeyReturn)
	scenes.grid.Select(string(b.plan().Scenes[1].ID))
	scenes.shift(-1)
	if got := b.plan().Scenes; got[0].Name != "1.2 The kitchen" || got[1].Name != "1.1 The quay" {
		t.Errorf("scenes %+v", got)
	}
	b.place.side.plan.tabs.SelectIndex(2)
	levels := b.place.side.plan.levels
	levels.add()
	b.key(fyne.KeyEscape)
	id := string(b.plan().Levels[0].ID)
	levels.grid.Edit(id, 1)
	b.typeText("9'")
	b.key(fyne.KeyReturn)
	if got := b.plan().Levels[0].Height; got != 9*length.Foot {
		t.Errorf("the level is %v high", got)
	}
}

func TestTheScaleIsChecked(t *testing.T) {
	b := open(t, demo.Production(today))
	check := b.place.side.plan.check
	focus(b.desk, check.known)
	b.typeText("36'")
	b.key(fyne.KeyReturn)
	focus(b.desk, check.measured)
	b.typeText("8.5")
	b.key(fyne.KeyReturn)
	scale := b.place.side.plan.scale
	scale.field.Set("")
	focus(b.desk, scale.field)
	b.typeText("quarter inch")
	b.key(fyne.KeyReturn)
	if scale.field.Trouble() == "" || b.plan().Scale != 48 {
		t.Errorf("a wrong scale: %q, %v", scale.field.Trouble(), b.plan().Scale)
	}
	b.typeText("1:50")
	b.key(fyne.KeyReturn)
	if b.plan().Scale != 50 {
		t.Errorf("the scale is %v", b.plan().Scale)
	}
}

func TestHidingLeavesTheDrawingAlone(t *testing.T) {
	b := open(t, demo.Production(today))
	id := b.named("Revolve").ID
	if err := b.place.list.ticked(string(id), seeColumn, ""); err != nil || b.place.list.shown(id) {
		t.Error("it is still to be seen", err)
	}
	b.named("Revolve")
	if !b.place.list.showAll.Visible() {
		t.Error("there is no way to see all again")
	}
}

func TestDuplicatingSelectsTheCopies(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove")
	b.place.Duplicate()
	b.named("Stove 2")
	ids := selected(b.desk.View())
	if len(ids) != 1 || ids[0] != b.named("Stove 2").ID {
		t.Errorf("selected %v", ids)
	}
	if text := b.place.Copy(); !strings.Contains(text, "Stove 2\toutline\t1\t") {
		t.Errorf("copied %q", text)
	}
}

func BenchmarkShow(b *testing.B) {
	on := open(b, demo.Production(today))
	on.pick("Stove")
	for b.Loop() {
		on.place.Show(on.desk.View())
	}
}

func TestInMetresEverythingReadsInMetres(t *testing.T) {
	p := demo.Production(today)
	p.Settings.Unit, p.Settings.Step = string(length.Metres), length.DefaultStep(length.Metres)
	b := open(t, p)
	b.pick("Stove")
	b.place.side.element.tabs.SelectIndex(1)
	b.place.side.element.lines.grid.Edit("0", cornerOver)
	b.typeText("3,25 SR")
	b.key(fyne.KeyReturn)
	if got := b.named("Stove").Paths[0].Vertices[0].X; got != -3.25 {
		t.Errorf("typed 3,25 SR, got %v", got)
	}
	if got := cornerRows(b.desk.View().P, &b.named("Stove").Paths[0])[0].Cells[cornerOver]; got != "3,25 SR" {
		t.Errorf("typed 3,25 SR, shown %q", got)
	}
	if got := b.place.side.element.lines.hint.Text; !strings.Contains(got, "metres") {
		t.Errorf("the unit is not said: %q", got)
	}
}

func TestBeingSentToAnElementLeavesThePageForReading(t *testing.T) {
	b := open(t, demo.Production(today))
	b.place.openSheet()
	b.typeText("Half read")
	b.key(fyne.KeyReturn)
	b.pick("Stove")
	if b.place.reading() {
		t.Error("the page is still open")
	}
	b.place.openSheet()
	if got := b.place.sheet.reading.name; got != "Half read" {
		t.Errorf("what was read is lost: %q", got)
	}
}

func TestBeingSentToASceneOpensItsListOnce(t *testing.T) {
	b := open(t, demo.Production(today))
	tabs := b.place.side.plan.tabs
	b.desk.Select(desk.Select(desk.Scene, string(b.plan().Scenes[2].ID)))
	if tabs.SelectedIndex() != 1 {
		t.Fatal("the scenes are not shown")
	}
	tabs.SelectIndex(0)
	b.place.Show(b.desk.View())
	if tabs.SelectedIndex() != 0 {
		t.Error("showing the same again turned the page back")
	}
}

func TestTheViewStaysWhenTheFirstElementIsDrawn(t *testing.T) {
	b := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	before := b.place.board.canvas.GetView()
	b.place.board.take(drawLine)
	b.place.board.canvas.AddPoint(plane.Point{})
	b.place.board.canvas.AddPoint(plane.Point{X: 1})
	b.place.board.canvas.FinishDrawing(false)
	if len(b.plan().Elements) != 1 || b.place.board.canvas.GetView() != before {
		t.Errorf("%d elements, seen from %+v, before from %+v", len(b.plan().Elements), b.place.board.canvas.GetView(), before)
	}
}
