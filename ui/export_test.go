package ui

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// exported writes what the form says now.
func exported(t *testing.T, w *Window, f *exportForm) string {
	t.Helper()
	var b bytes.Buffer
	if err := f.chosen().write(&b, w.desk.View().P); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// pick chooses from a list as a person does.
func (f *exportForm) pick(t *testing.T, x format) {
	t.Helper()
	f.what.Set(x.name)
	if err := f.what.OnCommit(x.name); err != nil {
		t.Fatal(err)
	}
}

func TestEveryFormatCanBeSavedOfEveryFloor(t *testing.T) {
	w := openDemo(t)
	f := newExportForm(w.desk.View())
	for i, x := range w.desk.View().P.Floors {
		f.floor.Set(f.floorNames()[i])
		for _, c := range []struct {
			format
			begins, name string
		}{
			{asDXF, "  0\r\nSECTION", x.Name + ".dxf"},
			{asSVG, "<?xml", x.Name + ".svg"},
			{asPoints, "1,0.0000,0.0000,0.0000,datum", x.Name + " points.csv"},
			{asMarks, "label,kind,up,over", x.Name + " marks.csv"},
		} {
			f.pick(t, c.format)
			if got := exported(t, w, f); !strings.HasPrefix(got, c.begins) {
				t.Errorf("%s of %s begins with %.60q", c.format.name, x.Name, got)
			}
			if got := f.chosen().fileName(); got != c.name {
				t.Errorf("%s of %s is called %q", c.format.name, x.Name, got)
			}
		}
	}
}

func TestTheFormStartsWithWhatIsLookedAt(t *testing.T) {
	w := openDemo(t)
	p := w.desk.View().P
	w.desk.ChooseFloor(p.Floors[1].ID)
	w.desk.ChooseScene(p.Plan.Scenes[1].ID)
	o := newExportForm(w.desk.View()).chosen()
	if o.work.Floor.ID != p.Floors[1].ID || o.work.Scene != p.Plan.Scenes[1].ID {
		t.Errorf("it starts with %s in %s", o.work.Floor.Name, o.work.Scene)
	}
}

func TestAnOriginMakesThePointsPositive(t *testing.T) {
	w := openDemo(t)
	f := newExportForm(w.desk.View())
	f.pick(t, asPoints)
	if err := f.north.OnCommit("1", 0.3048); err != nil {
		t.Fatal(err)
	}
	if err := f.chosen().write(&bytes.Buffer{}, w.desk.View().P); err == nil || !strings.Contains(err.Error(), "northing of") {
		t.Errorf("an origin that is too low: got %v", err)
	}
	for _, at := range []func(string, float64) error{f.north.OnCommit, f.east.OnCommit} {
		if err := at("1000", 304.8); err != nil {
			t.Fatal(err)
		}
	}
	f.names.Set(true)
	rows, err := csv.NewReader(strings.NewReader(exported(t, w, f))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if rows[0][1] != "northing" || rows[1][1] != "1000.0000" || rows[1][2] != "1000.0000" {
		t.Errorf("the list begins %v, %v", rows[0], rows[1])
	}
}

func TestOnlyTheRowsOfTheFormatAreShown(t *testing.T) {
	w := openDemo(t)
	f := newExportForm(w.desk.View())
	for _, x := range formats {
		f.pick(t, x)
		for row, visible := range map[string]bool{rowScale: f.scale.Visible(), rowNorth: f.north.Visible(), rowHeader: f.names.Visible()} {
			want := false
			for _, r := range x.rows {
				want = want || r == row
			}
			if visible != want {
				t.Errorf("%s: the row %s is shown: %v", x.name, row, visible)
			}
		}
	}
}

func TestSavedForOtherProgramsInTheFileNamed(t *testing.T) {
	w := openDemo(t)
	w.desk.Still()
	f := newExportForm(w.desk.View())
	f.pick(t, asMarks)
	dir := t.TempDir()
	w.export(w.desk.View(), f.chosen(), filepath.Join(dir, "marks"))
	w.desk.Settle()
	if got, err := os.ReadFile(filepath.Join(dir, "marks.csv")); err != nil || !strings.HasPrefix(string(got), "label,") {
		t.Errorf("the file holds %.40q, %v", got, err)
	}
	w.export(w.desk.View(), f.chosen(), filepath.Join(dir, "no", "marks"))
	w.desk.Settle()
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("a file that cannot be written is not told of")
	}
}

func TestSaveForOtherProgramsNeedsAFloor(t *testing.T) {
	w := openDemo(t)
	w.askExport()
	if w.win.Canvas().Overlays().Top() == nil {
		t.Fatal("the form does not open")
	}
	w.win.Canvas().Overlays().Remove(w.win.Canvas().Overlays().Top())
	w.desk.Edit("Delete all floors", func(p *prep.Production) error {
		for len(p.Floors) > 0 {
			p.RemoveFloor(p.Floors[0].ID)
		}
		return nil
	})
	w.askExport()
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("nothing is said of a production without floors")
	}
}

func TestFloorsOfOneNameCanBeChosen(t *testing.T) {
	w := openDemo(t)
	w.desk.Edit("Add a floor", func(p *prep.Production) error {
		p.Floors = append(p.Floors, floor.Floor{ID: "twin", Name: p.Floors[0].Name, Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 5, Y: 5})})
		return nil
	})
	f := newExportForm(w.desk.View())
	names := f.floorNames()
	f.floor.Set(names[len(names)-1])
	if got := f.chosen().work.Floor.ID; got != "twin" {
		t.Errorf("%q is the floor %s", names[len(names)-1], got)
	}
}
