package main

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"
)

// setDXF is a drawing in metres: a wall 3 m up with a platform of 1.2 by 0.9 m, drawn
// from its corner at stage right and downstage, and what else is given.
func setDXF(platformX, platformY float64, more ...[5]any) string {
	lines := [][5]any{{"WALLS", -3.0, 3.0, 3.0, 3.0}, {"CENTER LINE", 0.0, -1.0, 0.0, 6.0}, {"PLASTER LINE", -5.0, 0.0, 5.0, 0.0}}
	x, y := platformX, platformY
	for _, e := range [][4]float64{{x, y, x + 1.2, y}, {x + 1.2, y, x + 1.2, y + 0.9}, {x + 1.2, y + 0.9, x, y + 0.9}, {x, y + 0.9, x, y}} {
		lines = append(lines, [5]any{"PLATFORMS", e[0], e[1], e[2], e[3]})
	}
	lines = append(lines, more...)
	var s strings.Builder
	s.WriteString("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n")
	for _, l := range lines {
		fmt.Fprintf(&s, "0\nLINE\n8\n%s\n10\n%g\n20\n%g\n11\n%g\n21\n%g\n", l[:]...)
	}
	s.WriteString("0\nENDSEC\n0\nEOF\n")
	return s.String()
}

func TestARevisionTellsWhatItChangesAndIsTaken(t *testing.T) {
	path := emptyFile(t)
	dir := t.TempDir()
	first := write(t, filepath.Join(dir, "first.dxf"), setDXF(-0.6, 1, [5]any{"WALLS", 4.0, 1.0, 4.0, 2.0}))
	second := write(t, filepath.Join(dir, "second.dxf"), setDXF(-0.3, 1.4, [5]any{"MASKING", -4.0, 4.0, -4.0, 5.5}))
	if got := decode[drawingReport](t, must(t, "import", path, first, "--take", "--json")); got.Revision != nil || len(got.Taken) != 3 {
		t.Fatalf("taken %v, revision %v", got.Taken, got.Revision)
	}
	before := must(t, "history", path)
	got := decode[drawingReport](t, must(t, "import", path, second, "--json"))
	if got.Revision == nil || must(t, "history", path) != before {
		t.Fatal("the report tells of no revision, or has changed the production")
	}
	outcomes := map[string]changeReport{}
	for _, c := range got.Revision.Changes {
		outcomes[c.Outcome] = c
	}
	moved, gone, isNew := outcomes["moved"], outcomes["gone"], outcomes["new"]
	if len(got.Revision.Changes) != 3 || got.Revision.Unchanged != 1 || math.Abs(float64(moved.Moved)-0.5) > 1e-6 ||
		math.Abs(float64(moved.Up)-0.4) > 1e-6 || math.Abs(float64(moved.Over)-0.3) > 1e-6 {
		t.Fatalf("%d as they are, and %+v", got.Revision.Unchanged, got.Revision.Changes)
	}
	if !moved.ToTake || !isNew.ToTake || gone.ToTake || gone.Sentence == "" {
		t.Errorf("moved %+v, new %+v, gone %+v", moved, isNew, gone)
	}
	for _, f := range got.Revision.Floors {
		// Nothing has been printed, so there is nothing to lift; four corners of the
		// platform and two ends of the masking are to be laid.
		if len(f.Lay) != 6 || len(f.Lift) != 0 || f.Down || f.Minutes <= 0 || len(f.Tape) != 1 || math.Abs(float64(f.Tape[0].More)-5.7) > 0.01 {
			t.Errorf("%s: %d to lay, %d to lift, %d minutes, tape %+v", f.Floor, len(f.Lay), len(f.Lift), f.Minutes, f.Tape)
		}
	}
	if len(got.Revision.Floors) == 0 {
		t.Error("no floor is told of")
	}

	taken := decode[drawingReport](t, must(t, "import", path, second, "--revise", "--json"))
	if len(taken.Taken) != 2 || strings.Count(must(t, "history", path), "Revise the plan from second.dxf") != 1 {
		t.Errorf("taken %v", taken.Taken)
	}
	left := decode[drawingReport](t, must(t, "import", path, second, "--json")).Revision.Changes
	if len(left) != 1 || left[0].Outcome != "gone" {
		t.Errorf("afterwards there is still %+v", left)
	}
	must(t, "import", path, second, "--revise", "--gone")
	if left := decode[drawingReport](t, must(t, "import", path, second, "--json")).Revision; len(left.Changes) != 0 || left.Unchanged != 3 {
		t.Errorf("after all has been taken there is still %+v", left)
	}
	if words := must(t, "import", path, first); !strings.Contains(words, "moved") || !strings.Contains(words, "marks to lay") {
		t.Errorf("in words it says %q", words)
	}
}

func TestRevisionsThatCannotBeTaken(t *testing.T) {
	path := emptyFile(t)
	drawing := write(t, filepath.Join(t.TempDir(), "set.dxf"), setDXF(0, 1))
	for says, args := range map[string][]string{
		"the plan is empty": {"--revise"}, "add --revise": {"--gone"}, "choose one": {"--take", "--revise"},
	} {
		if r := command(t, append([]string{"import", path, drawing}, args...)...); r.status != failed || !strings.Contains(r.messages, says) {
			t.Errorf("%v: status %d, %q", args, r.status, r.messages)
		}
	}
}
