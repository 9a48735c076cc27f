package ui

import (
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/store"
	"groundrow/ui/desk"
)

// openDemo returns a window with the demo open in it.
func openDemo(t *testing.T) *Window {
	t.Helper()
	path := filepath.Join(t.TempDir(), "demo.groundrow")
	file, err := store.Create(context.Background(), path, "A tester", demo.Production(time.Now()))
	if err != nil {
		t.Fatal(err)
	}
	w := New(test.NewTempApp(t))
	w.win.Resize(fyne.NewSize(1366, 768))
	w.desk.Still()
	w.take(path, file)
	t.Cleanup(func() {
		if err := w.desk.Close(); err != nil {
			t.Error(err)
		}
	})
	return w
}

func TestEveryPlaceOpens(t *testing.T) {
	w := openDemo(t)
	for _, name := range desk.Names {
		w.desk.Went(name)
		p := w.here()
		if p == nil || p.Name() != name {
			t.Fatalf("the place %s does not open", name)
		}
		if !w.rail.items[name].picked {
			t.Errorf("the rail does not show that %s is open", name)
		}
		if size := w.win.Content().MinSize(); size.Width > 1366 || size.Height > 768 {
			t.Errorf("%s needs %v, more than a screen of 1366 by 768", name, size)
		}
	}
}

func TestUndoAndRedoFromTheHead(t *testing.T) {
	w := openDemo(t)
	title := func() string { return w.desk.View().P.Settings.Title }
	before := title()
	if !w.head.undo.Disabled() {
		t.Error("there is something to undo in a new file")
	}
	if w.desk.Undo(); w.win.Canvas().Overlays().Top() != nil || !strings.Contains(w.status.said.Text, "nothing to undo") {
		t.Errorf("undo in a new file is a mishap, or is not answered: %q", w.status.said.Text)
	}
	w.desk.Edit("Rename the show", func(p *prep.Production) error { p.Settings.Title = "Another"; return nil })
	if got := w.win.Title(); got != "Another — Groundrow" {
		t.Errorf("the window is called %q", got)
	}
	test.Tap(w.head.undo)
	if title() != before {
		t.Errorf("after undo the show is called %q", title())
	}
	test.Tap(w.head.redo)
	if title() != "Another" {
		t.Errorf("after redo the show is called %q", title())
	}
}

func TestFloorAndSceneHoldAcrossPlaces(t *testing.T) {
	w := openDemo(t)
	p := w.desk.View().P
	w.head.floor.SetSelectedIndex(1)
	w.head.scene.SetSelectedIndex(2)
	for _, name := range desk.Names {
		w.goTo(name)
		v := w.desk.View()
		if v.Floor != p.Floors[1].ID || v.Scene != p.Plan.Scenes[1].ID {
			t.Fatalf("in %s the floor is %s and the scene %s", name, v.Floor, v.Scene)
		}
	}
	w.desk.Edit("Delete the floor", func(p *prep.Production) error { p.RemoveFloor(p.Floors[1].ID); return nil })
	if v := w.desk.View(); v.Floor != p.Floors[0].ID {
		t.Error("a floor that is gone is still looked at")
	}
}

func TestProblemsAreListedAsSentences(t *testing.T) {
	w := openDemo(t)
	if len(w.status.open) == 0 {
		t.Fatal("the demo has no problems")
	}
	test.Tap(w.status.problems)
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("the list of problems does not open")
	}
}

func TestWindowOpensWhereItWasLeft(t *testing.T) {
	app := test.NewTempApp(t)
	w := New(app)
	w.at = desk.Marks
	w.keepState()
	if again := New(app); again.at != desk.Marks {
		t.Errorf("it opens at %s", again.at)
	}
	app.Preferences().SetString(keyAt, "Nowhere")
	if again := New(app); again.at != desk.Week {
		t.Errorf("after nonsense it opens at %s", again.at)
	}
}
