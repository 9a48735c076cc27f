package floorpicture

import (
	"image/color"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
)

func TestNamesOfThingsComeApartAgain(t *testing.T) {
	for _, id := range []string{"a", "a:b", ""} {
		kind, of, ok := Parse(ID(desk.KeepClear, id))
		if kind != desk.KeepClear || of != id || !ok {
			t.Errorf("%q comes back as %q %q %v", id, kind, of, ok)
		}
	}
	if _, _, ok := Parse("nothing"); ok {
		t.Error("a word without a kind is taken for the name of a thing")
	}
	s := desk.Select(desk.Mark, "A", "B")
	if back := Selection(IDs(s)); back.Kind != s.Kind || len(back.IDs) != 2 {
		t.Errorf("the selection comes back as %+v", back)
	}
	mixed := Selection([]string{ID(desk.Mark, "A"), ID(desk.Element, "x"), "rubbish"})
	if mixed.Kind != desk.Mark || len(mixed.IDs) != 1 {
		t.Errorf("of two kinds %+v is selected, want those of the first", mixed)
	}
}

func TestSwatchesAreRead(t *testing.T) {
	if c, ok := Swatch("#c0ffEE"); !ok || c != (color.NRGBA{0xc0, 0xff, 0xee, 0xff}) {
		t.Errorf("read %v %v", c, ok)
	}
	for _, bad := range []string{"", "red", "#12345", "#1234567", "#12345g", "#+12345"} {
		if _, ok := Swatch(bad); ok {
			t.Errorf("%q is taken for a colour", bad)
		}
	}
}

func pictureOfDemo(t *testing.T, scene plan.SceneID, o Options) (floorcanvas.Picture, *prep.FloorWork) {
	t.Helper()
	test.NewTempApp(t)
	p := demo.Production(time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC))
	w := prep.Work(p, p.Floors[0].ID, "")
	return OfFloor(p, w, scene, o), w
}

func selectable(pic floorcanvas.Picture) map[string]bool {
	ids := map[string]bool{}
	for _, s := range pic.Shapes {
		ids[s.ID] = true
	}
	return ids
}

func TestEverythingThatIsLaidCanBeSelected(t *testing.T) {
	pic, w := pictureOfDemo(t, "", Options{Labels: true, Spikes: true})
	ids := selectable(pic)
	for _, l := range w.Lines {
		if !ids[ID(desk.Element, string(l.Element))] {
			t.Errorf("the element %s is laid and not drawn", l.Element)
		}
	}
	labels := 0
	for _, l := range pic.Labels {
		if kind, _, _ := Parse(l.ID); kind == desk.Mark {
			labels++
		}
	}
	if labels != len(w.Marks) {
		t.Errorf("%d labels for %d marks", labels, len(w.Marks))
	}
}

func TestRoomStaysInFloorAxesAndTheDatumMoves(t *testing.T) {
	pic, w := pictureOfDemo(t, "", Options{FloorAxes: true, Placement: true})
	datum := pic.Datum.Apply(plane.Point{})
	if want := w.Floor.Placement.Shift; datum.To(want) > 1e-9 {
		t.Errorf("the datum is drawn at %v, want %v", datum, want)
	}
	in, _ := pictureOfDemo(t, "", Options{})
	if !in.Datum.IsZero() {
		t.Errorf("in datum axes the datum is drawn at %v", in.Datum)
	}
}

func TestWhatOtherScenesNeedIsFaint(t *testing.T) {
	test.NewTempApp(t)
	p := demo.Production(time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC))
	w := prep.Work(p, p.Floors[0].ID, "")
	count := func(o Options) int { return len(OfFloor(p, w, p.Plan.Scenes[1].ID, o).Shapes) }
	if with, without := count(Options{Faint: true}), count(Options{}); with != without+1 {
		t.Errorf("%d shapes with what other scenes need, %d without; want one more", with, without)
	}
}

func TestHiddenElementsAreNotDrawn(t *testing.T) {
	test.NewTempApp(t)
	p := demo.Production(time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC))
	hidden := p.Plan.Elements[3].ID
	ids := selectable(OfPlan(p, "", func(id plan.ElementID) bool { return id != hidden }))
	if ids[ID(desk.Element, string(hidden))] {
		t.Error("a hidden element is drawn")
	}
	if !ids[ID(desk.Element, string(p.Plan.Elements[4].ID))] {
		t.Error("an element is missing that is not hidden")
	}
}
