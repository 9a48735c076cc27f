package planplace

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

// bench is the place in a window with a production file of its own.
type bench struct {
	t     testing.TB
	win   fyne.Window
	desk  *desk.Desk
	place *place
}

func open(t testing.TB, p *prep.Production) *bench {
	t.Helper()
	place, d := desktest.Open(t, p, build)
	return &bench{t: t, win: d.Window(), desk: d, place: place}
}

func (b *bench) plan() *plan.Plan { return &b.desk.View().P.Plan }

// named finds an element by its name.
func (b *bench) named(name string) *plan.Element {
	b.t.Helper()
	for i := range b.plan().Elements {
		if b.plan().Elements[i].Name == name {
			return &b.plan().Elements[i]
		}
	}
	b.t.Fatalf("there is no %s", name)
	return nil
}

func (b *bench) pick(names ...string) {
	b.t.Helper()
	var ids []plan.ElementID
	for _, n := range names {
		ids = append(ids, b.named(n).ID)
	}
	b.desk.Select(elements(ids))
}

// typeText types into what has the keyboard, in the place of what is there.
func (b *bench) typeText(text string) {
	b.t.Helper()
	f := b.win.Canvas().Focused()
	if f == nil {
		b.t.Fatal("nothing has the keyboard")
	}
	f.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	for _, r := range text {
		f.TypedRune(r)
	}
}

func (b *bench) key(name fyne.KeyName) {
	b.t.Helper()
	if b.win.Canvas().Focused() == nil {
		b.t.Fatal("nothing has the keyboard")
	}
	b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

func TestAnElementIsRenamedInTheForm(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove")
	b.place.side.focusName()
	b.typeText("Kitchen range")
	b.key(fyne.KeyReturn)
	b.named("Kitchen range")
	b.desk.Undo()
	b.named("Stove")
	b.place.side.focusName()
	b.typeText("")
	b.key(fyne.KeyReturn)
	if got := b.place.side.element.what.name.Trouble(); !strings.Contains(got, "needs a name") {
		t.Errorf("an empty name: %q", got)
	}
	b.named("Stove")
}

func TestACornerIsTypedAndAWrongOneIsRefusedAtTheCell(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove")
	b.place.side.element.tabs.SelectIndex(1)
	corners := b.place.side.element.lines.grid
	if !corners.Edit("0", cornerUp) {
		t.Fatal("the cell does not open")
	}
	b.typeText("17' 3 1/4\"")
	b.key(fyne.KeyReturn)
	want := 17*length.Foot + 3.25*length.Inch
	if got := b.named("Stove").Paths[0].Vertices[0].Y; got != want {
		t.Errorf("the corner is %v up, want %v", got, want)
	}
	corners.Edit("0", cornerOver)
	b.typeText("over there")
	b.key(fyne.KeyReturn)
	if !corners.Editing() {
		t.Error("a wrong figure is taken")
	}
	b.key(fyne.KeyEscape)
}

func TestSelectingInTheListAndDeleting(t *testing.T) {
	b := open(t, demo.Production(today))
	before := len(b.plan().Elements)
	b.place.list.picked([]string{"kind::" + string(plan.Door)})
	doors := len(b.desk.View().Selected.IDs)
	if doors < 2 || !b.place.side.several.content.Visible() {
		t.Fatalf("%d doors selected", doors)
	}
	b.place.Remove()
	if got := len(b.plan().Elements); got != before-doors {
		t.Errorf("%d elements left of %d", got, before)
	}
	b.desk.Undo()
	if got := len(b.plan().Elements); got != before {
		t.Errorf("undone to %d elements of %d", got, before)
	}
}

func TestAKindIsChangedForSeveral(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove", "Hearth", "Pantry door")
	s := b.place.side.several
	if s.kind.Value() != "" {
		t.Errorf("a platform and a door are both %q", s.kind.Value())
	}
	if err := s.kind.OnCommit(kindChoices.name(plan.Masking)); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Stove", "Hearth", "Pantry door"} {
		if got := b.named(name).Kind; got != plan.Masking {
			t.Errorf("%s is %s", name, got)
		}
	}
	if s.kind.Value() != kindChoices.name(plan.Masking) {
		t.Errorf("shown as %q", s.kind.Value())
	}
}

func TestScenesAreSaidForSeveral(t *testing.T) {
	b := open(t, demo.Production(today))
	b.pick("Stove", "Hearth")
	s, scene := b.place.side.several, b.plan().Scenes[2]
	if err := s.scenes.OnCommit(scene.Name); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Stove", "Hearth"} {
		if got := b.named(name).Scenes(); len(got) != 1 || got[0] != scene.ID {
			t.Errorf("%s stands in %v", name, got)
		}
	}
	if s.scenes.Shown() != scene.Name {
		t.Errorf("shown as %q", s.scenes.Shown())
	}
	if err := s.scenes.OnCommit("nowhere"); err == nil {
		t.Error("a scene that is not there was taken")
	}
}

func TestDraggingInASceneMovesOnlyThere(t *testing.T) {
	b := open(t, demo.Production(today))
	scene := b.plan().Scenes[0].ID
	b.desk.ChooseScene(scene)
	jetty := b.named("Jetty")
	drawn := jetty.Paths[0].Vertices[0]
	b.pick("Jetty")
	b.place.board.drag("element:"+string(jetty.ID), plane.Point{X: 0.5, Y: 0.25}, true)
	after := b.named("Jetty")
	if after.Paths[0].Vertices[0] != drawn {
		t.Error("the drawing has moved")
	}
	if s := standIn(after, scene); s == nil || s.Over != 0.5 || s.Up != 0.25 {
		t.Errorf("stands at %+v", s)
	}
	if !strings.Contains(b.place.board.typing.words.Text, "in this scene only") {
		t.Errorf("the rule says %q", b.place.board.typing.words.Text)
	}
}
