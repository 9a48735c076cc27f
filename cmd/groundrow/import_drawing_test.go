package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// planDXF is a ground plan in millimetres, with its lengths in metres by layer as
// python3-ezdxf gives them: see testdata/dxf/README.md.
const planDXF = "../../testdata/dxf/plan.dxf"

func emptyFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "ferry.groundrow")
	must(t, "new", path, "--title", "The Lantern Ferry", "--unit", "ft")
	return path
}

func TestADrawingIsReportedOnAndChangesNothing(t *testing.T) {
	path := emptyFile(t)
	before := must(t, "history", path)
	got := decode[drawingReport](t, must(t, "import", path, planDXF, "--json"))
	if got.Format != "DXF" || got.Version != "R2010" || got.Unit != "millimetre" || got.UnitSize != 0.001 || got.UnitWhy == "" {
		t.Errorf("got %s %s in %s (%v m): %q", got.Format, got.Version, got.Unit, got.UnitSize, got.UnitWhy)
	}
	for _, l := range got.Layers {
		switch l.Layer {
		case "OLD VERSION":
			if l.Visible != 0 || l.VisibleLength != 0 || math.Abs(float64(l.Length)-13.585) > 0.001 {
				t.Errorf("a layer that is off: %+v", l)
			}
		case "SET PLATFORMS":
			if l.Entities != 2 || math.Abs(float64(l.Length)-23.574) > 0.001 {
				t.Errorf("platforms: %+v, want 2 of 23.574 m", l)
			}
		}
	}
	if got.Datum == nil || got.PerUnit == nil || *got.PerUnit != 0.001 || got.Extents == nil || len(got.Taken) != 0 {
		t.Errorf("datum %v, scale %v, extents %v, taken %v", got.Datum, got.PerUnit, got.Extents, got.Taken)
	}
	for _, l := range got.LeftAside {
		if l.Count < 1 || l.Why == "" {
			t.Errorf("left aside without a number or a reason: %+v", l)
		}
	}
	if must(t, "history", path) != before {
		t.Error("a report has changed the production")
	}
}

func TestADrawingIsTakenInOneChangeAndKept(t *testing.T) {
	path := emptyFile(t)
	got := decode[drawingReport](t, must(t, "import", path, planDXF, "--take", "--json"))
	if len(got.Taken) == 0 || len(got.Taken) != len(got.Elements) {
		t.Fatalf("%d of %d elements taken", len(got.Taken), len(got.Elements))
	}
	if n := strings.Count(must(t, "history", path), "Bring in plan.dxf"); n != 1 {
		t.Errorf("%d changes, want one", n)
	}
	if marks := decode[[]mark](t, must(t, "marks", path, "--json")); len(marks) < 50 {
		t.Errorf("only %d marks follow", len(marks))
	}
	must(t, "undo", path)
	if marks := must(t, "export", path, "plan"); strings.Count(marks, "\n") > 1 {
		t.Error("undo has left elements on the plan")
	}
}

func TestTypedScaleAndOriginOfADrawing(t *testing.T) {
	path := emptyFile(t)
	at := func(args ...string) drawingReport {
		t.Helper()
		return decode[drawingReport](t, must(t, append([]string{"import", path, planDXF, "--json"}, args...)...))
	}
	plain, twice := at(), at("--scale", "1:20")
	if math.Abs(float64(twice.Length/plain.Length)-20) > 1e-3 {
		t.Errorf("at 1:20 the lines are %v m, at full size %v m", twice.Length, plain.Length)
	}
	moved := at("--origin", "1500, -20.5")
	if moved.Datum.X != 1500 || moved.Datum.Y != -20.5 || moved.Datum.Why != "It was given." {
		t.Errorf("the datum is %+v", *moved.Datum)
	}
	if inches := at("--unit", "in"); *inches.PerUnit != 0.0254 {
		t.Errorf("an inch is %v m", *inches.PerUnit)
	}
}

func TestDrawingsThatCannotBeTaken(t *testing.T) {
	path := emptyFile(t)
	dir := t.TempDir()
	nowhere := "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nA\n10\n0\n20\n0\n11\n5\n21\n5\n0\nENDSEC\n0\nEOF\n"
	before := must(t, "history", path)
	for _, c := range []struct {
		name, file string
		args       []string
		says       string
	}{
		{"a file that is not there", filepath.Join(dir, "no.dxf"), nil, "cannot be opened"},
		{"an empty file", write(t, filepath.Join(dir, "empty.dxf"), ""), nil, "is empty"},
		{"no drawing at all", write(t, filepath.Join(dir, "words.dxf"), "Dear all,\n"), nil, "no DXF"},
		{"a PDF that is none", write(t, filepath.Join(dir, "plan.pdf"), "<html>"), nil, "is called a PDF but is none"},
		{"a picture", write(t, filepath.Join(dir, "plan.png"), "\x89PNG\r\n\x1a\n"), []string{"--take"}, "has no lines"},
		{"no scale", write(t, filepath.Join(dir, "nowhere.dxf"), nowhere), []string{"--take", "--origin", "0,0"}, "--scale"},
		{"a page that is not there", planDXF, []string{"--page", "2"}, "no page 2"},
		{"an origin that is none", planDXF, []string{"--origin", "here"}, "no place in the drawing"},
		{"a unit that is none", planDXF, []string{"--unit", "ell"}, "no unit"},
		{"a scale that is none", planDXF, []string{"--scale", "large"}, "scale"},
	} {
		r := command(t, append([]string{"import", path, c.file}, c.args...)...)
		if r.status != failed || !strings.Contains(r.messages, c.says) {
			t.Errorf("%s: status %d, %q; want %d and %q", c.name, r.status, r.messages, failed, c.says)
		}
	}
	if must(t, "history", path) != before {
		t.Error("a refused drawing has changed the production")
	}
}

func TestWordsOfADrawingAreQuoted(t *testing.T) {
	path := emptyFile(t)
	name := "../../../tmp/$(touch x)\x1b[31m"
	file := write(t, filepath.Join(t.TempDir(), "odd.dxf"),
		"0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLINE\n8\n"+name+"\n10\n0\n20\n0\n11\n5\n21\n5\n0\nENDSEC\n0\nEOF\n")
	if out := must(t, "import", path, file, "--take", "--origin", "0,0"); strings.ContainsRune(out, 0x1b) {
		t.Errorf("a sign that a terminal obeys: %q", out)
	}
	var got drawingReport
	if err := json.Unmarshal([]byte(must(t, "import", path, file, "--json")), &got); err != nil || len(got.Layers) == 0 {
		t.Errorf("%v: %+v", err, got.Layers)
	}
	if _, err := os.Stat("x"); err == nil {
		t.Error("a name has been run")
	}
}
