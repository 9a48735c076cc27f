package store

import (
	"context"
	"encoding/binary"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// A file of every version is kept, so that the step from each to the next can be
// tested for good. A file that is there is never written again.
var writeGolden = flag.Bool("golden", false, "write the file of this version, once, when the version is new")

// keptBefore is what the kept file of a version holds before its one edit, "Call
// it": what kitchen is made of, and what the version has brought.
func keptBefore(version int) *prep.Production {
	p := kitchen()
	if version >= 2 {
		p.Readings = []prep.Reading{{
			ID: "read", Floor: p.Floors[0].ID, From: "A", To: prep.FirstPivot, Metres: 3.81, Text: "12' 6\"",
			By: "Ada", On: time.Date(2031, 3, 10, 11, 30, 0, 0, time.UTC),
		}}
	}
	if version >= 3 {
		p.Drawings = []prep.Drawing{{ID: "scan", Name: "plot.png", Format: "PNG", On: time.Date(2031, 3, 10, 11, 45, 0, 0, time.UTC), By: "Ada"}}
		p.KnownPoints = []prep.KnownPoint{
			{ID: "one", Drawing: "scan", Pixel: plane.Point{X: 12.5, Y: 880}, Floor: plane.Point{X: -6.1}},
			{ID: "two", Drawing: "scan", Pixel: plane.Point{X: 990, Y: 881}, Floor: plane.Point{X: 6.1}},
		}
	}
	if version >= 4 {
		f := &p.Floors[0]
		f.Measured = floor.Measured{
			Walls: []floor.MeasuredWall{
				{ID: "wall-1", Name: "windows", Length: 9.144, Turn: 90, Square: true},
				{ID: "wall-2", Length: 6.1, Rise: 0.25},
			},
			Points:    []floor.MeasuredPoint{{ID: "hook", Name: "hook in the floor"}},
			Diagonals: []floor.Diagonal{{ID: "across", From: "wall-1", To: "hook", Length: 4.57}},
		}
		f.Steps = []floor.Step{{ID: "step", Name: "step to the alcove", Rise: 0.15, Line: plane.Open(plane.Point{X: 1}, plane.Point{X: 1, Y: 4})}}
	}
	if version >= 5 {
		f := &p.Floors[0]
		f.BoardDirection, f.BoardModule = 90, 0.0825
		f.Features = []floor.Feature{{ID: "door", Name: "Yard door", Kind: floor.RoomDoor, Opens: floor.OpensOut,
			Shape: plane.Open(plane.Point{X: 10, Y: 2}, plane.Point{X: 10, Y: 2.9})}}
		f.Ways = []floor.Way{{ID: "out", Name: "Out by the yard", Kind: floor.WayOut,
			From: floor.Spot{At: plane.Point{X: 1, Y: 7}}, To: floor.Spot{Thing: "door"}, Width: 0.9144}}
	}
	if version >= 6 {
		at := time.Date(2031, 3, 21, 17, 0, 0, 0, time.UTC)
		p.Progress = append(p.Progress,
			marks.Progress{Floor: p.Floors[0].ID, Label: "WORN", Placed: floor.Decision{By: "Ada", On: at}, Worn: floor.Decision{By: "Ben", On: at}},
			marks.Progress{Floor: p.Floors[0].ID, Label: "GONE", Lifted: floor.Decision{By: "Cy", On: at}})
		p.Moves = []prep.Move{{ID: "aside", Floor: p.Floors[0].ID, Element: p.Plan.Elements[0].ID, Over: 0.6, Up: -0.15, Turn: 12,
			Points: "A, B", Reason: "the door did not clear", By: "Ben", On: at}}
	}
	// The errors of placing came with version 7: an older file takes the usual ones.
	p.Settings.Errors = prep.DefaultErrors
	if version >= 7 {
		p.Settings.Errors = prep.Errors{TapeClass: "III", Stretch: 0.0005, Placing: 0.003, Pivot: 0.0025, Squaring: survey.ByGrid,
			ByEye: 0.03, BySquare: 0.004, ByGrid: 0.0015, Allowed: 0.02}
		p.MethodChoices = []prep.MethodChoice{
			{ID: "whole", Floor: p.Floors[0].ID, Whole: true, Method: survey.TwoTapes},
			{ID: "one", Floor: p.Floors[0].ID, At: plane.Point{X: -1.5, Y: 3}, Method: survey.UpAndOver},
		}
	}
	if version >= 8 {
		p.Answers = []prep.Answer{{
			ID: "answer", Floor: p.Floors[0].ID, Element: p.Plan.Elements[0].ID, About: "Back wall",
			Question: "Where does it go?", Text: "Cut it at the radiator.", By: "The director",
			On: time.Date(2031, 3, 11, 9, 15, 0, 0, time.UTC),
		}}
	}
	if version >= 9 {
		f := &p.Floors[0]
		f.Wishes = floor.Wishes{Angles: floor.InSteps, Step: 22.5, Area: 1, Sight: 0.5}
		f.Fronts = []floor.Front{{ID: "south", Toward: -1.5707963}}
		p.Plan.Elements[0].Weight = 3
	}
	return p
}

// golden is what the kept files hold, after one edit, "Call it", that can be
// undone.
func golden(version int) *prep.Production {
	p := keptBefore(version)
	p.Settings.Title = "The Lantern"
	return p
}

func TestFilesOfEveryVersionOpen(t *testing.T) {
	for version := 1; version <= Version; version++ {
		kept := filepath.Join("testdata", fmt.Sprintf("version%d.groundrow", version))
		if _, err := os.Stat(kept); err != nil && version == Version && *writeGolden {
			f := mustCreate(t, keptBefore(version))
			mustEdit(t, f, "Call it", setTitle("The Lantern"))
			if err := f.SaveCopy(context.Background(), kept); err != nil {
				t.Fatal(err)
			}
		}
		path := filepath.Join(t.TempDir(), "old.groundrow")
		mustWrite(t, path, mustRead(t, kept))
		f := mustOpen(t, path, "Ada")
		if d := alike(golden(version), f.Now().P); d != "" {
			t.Errorf("version %d (-want +got)\n%s", version, d)
		}
		mustUndo(t, f, "Call it")
		if d := alike(keptBefore(version), f.Now().P); d != "" {
			t.Errorf("version %d after undo (-want +got)\n%s", version, d)
		}
		f.Close()
		wantHeader(t, path, Version, applicationID)
	}
}

// wantHeader looks at the bytes of a closed file.
// Offsets: https://www.sqlite.org/fileformat.html, section 1.3.
func wantHeader(t *testing.T, path string, version, application uint32) {
	t.Helper()
	b := mustRead(t, path)
	v, a := binary.BigEndian.Uint32(b[60:]), binary.BigEndian.Uint32(b[68:])
	if v != version || a != application {
		t.Errorf("the header has version %d of application %#x, want %d of %#x", v, a, version, application)
	}
}

// A step that fails leaves the version before, whole.
func TestStepThatFailsIsRolledBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "play.groundrow")
	mustExec(t, path, "CREATE TABLE scene (other TEXT)") // in the way of step 1
	err := buildFile(context.Background(), path, nil)
	if err == nil {
		t.Fatal("the step has passed over a table that was in its way")
	}
	wantHeader(t, path, 0, 0)
	mustExec(t, path, "CREATE TABLE production (free TEXT)") // nothing of the step is there
}

func TestTablesAreStrictAndComplete(t *testing.T) {
	f := mustCreate(t, nil)
	var loose string
	err := f.db.QueryRow("SELECT coalesce(group_concat(name), '') FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite_%' AND NOT strict").Scan(&loose)
	if err != nil || loose != "" {
		t.Errorf("not strict: %s (%v)", loose, err)
	}
	for _, s := range tables {
		var have int
		if err := f.db.QueryRow("SELECT count(*) FROM pragma_table_info(?)", s.name).Scan(&have); err != nil {
			t.Fatal(err)
		}
		want := len(s.columns)
		if s.corners != nil {
			want--
		}
		if !s.single {
			want++
		}
		if have != want {
			t.Errorf("table %s has %d columns and its description %d", s.name, have, want)
		}
	}
}
