package main

import (
	"encoding/json"
	"math"
	"path/filepath"
	"strings"
	"testing"
)

func floorsOf(t *testing.T, args ...string) []keptFloor {
	t.Helper()
	var got []keptFloor
	if err := json.Unmarshal([]byte(must(t, append(args, "--json")...)), &got); err != nil {
		t.Fatal(err)
	}
	return got
}

func TestAFloorIsKeptAndTakenAgain(t *testing.T) {
	demo, next := demoFile(t), small(t)
	kept := filepath.Join(t.TempDir(), "tannery")
	must(t, "keep", demo, kept, "--floor", "tannery")
	kept += ".groundrow"
	list := floorsOf(t, "take", next, kept)
	if len(list) != 1 || list[0].Name != "Tannery Hall" || list[0].Walls != 4 || math.Abs(list[0].Area-165.5) > 0.2 {
		t.Fatalf("the kept file holds %+v", list)
	}
	for _, want := range []string{"Tannery Hall", "Tannery Hall (2)"} {
		if got := floorsOf(t, "take", next, kept, "--floor", "Tannery Hall"); len(got) != 1 || got[0].Name != want || got[0].Area != list[0].Area {
			t.Errorf("taken %+v, want %s", got, want)
		}
	}
	// From a past production as it is, several at once.
	got := floorsOf(t, "take", next, demo, "--floor", "Loft Studio", "--floor", "tidewrack")
	if len(got) != 2 || got[0].Name != "Loft Studio" || got[1].Kind != "stage" {
		t.Errorf("taken %+v", got)
	}
	must(t, "undo", next)
	if out := must(t, "take", kept, next); strings.Contains(out, "Loft") || !strings.Contains(out, "Tannery Hall (2)") {
		t.Errorf("after undo the file has\n%s", out)
	}
}

func TestWhatCannotBeKeptOrTakenIsSaid(t *testing.T) {
	path := small(t)
	dir := t.TempDir()
	letter := write(t, filepath.Join(dir, "letter.groundrow"), "Dear designer, the hall is not square at all, as you will see when you come.")
	for name, c := range map[string]struct {
		args []string
		want string
	}{
		"no such floor here":  {[]string{"keep", path, filepath.Join(dir, "a"), "--floor", "Attic"}, "there is no floor called"},
		"already there":       {[]string{"keep", path, letter}, "already something named letter.groundrow"},
		"no production file":  {[]string{"take", path, letter}, "letter.groundrow is not a production file"},
		"no file":             {[]string{"take", path, filepath.Join(dir, "none.groundrow")}, "no such file"},
		"no such floor there": {[]string{"take", path, path, "--floor", "Attic"}, "there is no floor called"},
		"nothing named":       {[]string{"take", path}, "needs FROM"},
	} {
		r := command(t, c.args...)
		if r.status != failed || !strings.Contains(r.messages, c.want) {
			t.Errorf("%s: status %d, %q", name, r.status, r.messages)
		}
	}
}
