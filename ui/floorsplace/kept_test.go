package floorsplace

import (
	"context"
	"path/filepath"
	"testing"

	"groundrow/store"
)

func TestFloorsAreKeptAndTaken(t *testing.T) {
	p := openPlace(t)
	p.desk.Still()
	path := filepath.Join(t.TempDir(), "hall")
	p.keepAt(path)
	p.desk.Settle()
	kept, err := store.Look(context.Background(), path+store.Extension)
	if err != nil || len(kept.Floors) != 1 || kept.Floors[0].Name != p.here().Name || len(kept.Plan.Elements) != 0 {
		t.Fatalf("%v: kept %+v", err, kept)
	}
	before, hall := len(p.view.P.Floors), p.here().Outline.Area()
	if err := p.takeFloors("hall", kept, nil); err == nil {
		t.Error("no floor was taken, and nobody was told")
	}
	if err := p.takeFloors("hall", kept, floorNames(kept.Floors)); err != nil {
		t.Fatal(err)
	}
	if len(p.view.P.Floors) != before+1 || p.here().Name != "Tannery Hall (2)" || p.here().Outline.Area() != hall {
		t.Errorf("%d floors, looking at %s", len(p.view.P.Floors), p.here().Name)
	}
	m, ok := p.view.P.MeasuredRoom(p.here())
	if !ok || !m.InUse {
		t.Error("what was measured did not come along")
	}
	p.desk.Undo()
	if len(p.view.P.Floors) != before {
		t.Errorf("after undo there are %d floors", len(p.view.P.Floors))
	}
}

func TestAFileThatIsNoProductionIsSaid(t *testing.T) {
	p := openPlace(t)
	p.desk.Still()
	p.lookInto(filepath.Join(t.TempDir(), "none.groundrow"))
	p.desk.Settle()
	if p.desk.Window().Canvas().Overlays().Top() == nil {
		t.Error("nobody was told")
	}
}
