package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// today is the day on which the tests work.
var today = time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC)

// ran is what one run of the program did.
type ran struct {
	status        int
	out, messages string
}

// command runs the program in this process, on a machine whose window has never
// been told who works there.
func command(t *testing.T, args ...string) ran {
	t.Helper()
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	var out, messages bytes.Buffer
	s := &session{out: &out, messages: &messages, now: func() time.Time { return today }}
	status := s.run(context.Background(), args)
	return ran{status, out.String(), messages.String()}
}

// must runs the program and wants everything to be well.
func must(t *testing.T, args ...string) string {
	t.Helper()
	r := command(t, args...)
	if r.status != good {
		t.Fatalf("groundrow %s: status %d: %s", strings.Join(args, " "), r.status, r.messages)
	}
	return r.out
}

// demoFile writes the demo.
func demoFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "demo.groundrow")
	must(t, "demo", path)
	return path
}

func write(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// small starts a production in metres with a room and one wall in it.
func small(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "small.groundrow")
	must(t, "new", path, "--title", "The Salt Road", "--unit", "m", "--first", "2031-03-10")
	must(t, "import", path, write(t, filepath.Join(dir, "hall.csv"), "corner,x,y\nA,0,0\nB,12,0\nC,12,9\nD,0,9\n"), "--room", "Rehearsal room")
	must(t, "import", path, write(t, filepath.Join(dir, "plan.csv"), "element,kind,up,over\nBack wall,wall,5,3 SR\n,,5,3 SL\n"))
	must(t, "place", path, "--along", "6", "--into", "1.5")
	return path
}

func decode[T any](t *testing.T, text string) (v T) {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&v); err != nil {
		t.Fatalf("the result is no such JSON: %v\n%s", err, text)
	}
	return v
}

func TestPlaceTellsHowThePlanLies(t *testing.T) {
	want := `{
  "floor": "Rehearsal room",
  "along_m": 6,
  "into_m": 1.5,
  "turn_deg": 0,
  "outside": []
}
`
	if got := must(t, "place", small(t), "--json"); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestPlaceComesBackAsTyped(t *testing.T) {
	path := demoFile(t)
	if got := must(t, "place", path, "--along", `19' 9 1/4"`); !strings.Contains(got, `19' 9 1/4" along`) {
		t.Errorf("got %s", got)
	}
}

func TestPlaceSetsWhatIsTypedAndKeepsTheRest(t *testing.T) {
	path := small(t)
	must(t, "place", path, "--turn", "-90")
	got := decode[placing](t, must(t, "place", path, "--json"))
	if got.Along != 6 || got.Into != 1.5 || got.Turn != -90 {
		t.Errorf("got %+v, want 6 along, 1.5 into, turned by -90", got)
	}
	if len(got.Outside) != 1 || got.Outside[0].Length != 1.5 {
		t.Errorf("outside: %+v, want the 1.5 m of the wall that stick out below the room", got.Outside)
	}
}

func TestMarksOfOneWall(t *testing.T) {
	want := `[
  {
    "label": "A",
    "kind": "end",
    "what": "Back wall",
    "up_m": 5,
    "over_m": -3,
    "two_tape": null,
    "method": "up and over",
    "method_recommended": "up and over",
    "method_chosen": false,`
	got := must(t, "marks", small(t), "--json")
	if !strings.HasPrefix(got, want) {
		t.Errorf("got %s, want it to begin with %s", got, want)
	}
	if list := decode[[]mark](t, got); len(list) != 2 {
		t.Errorf("%d marks, want one at each end of the wall", len(list))
	} else if a := list[0]; !(a.Within > 0) || !a.Good || len(a.Ways) != 3 || a.Ways[1].Usable || a.Ways[1].Why != "two tapes need two pivots" ||
		!slices.Equal(a.Scenes, []string{"all scenes"}) {
		t.Errorf("the first: %+v", a)
	}
}

func TestTapeOfOneWall(t *testing.T) {
	for _, r := range decode[[]tapeRun](t, must(t, "tape", small(t), "--json")) {
		if r.Undecided && r.Lines != 6 {
			t.Errorf("%v m of lines have no tape chosen, want the 6 m of the wall", r.Lines)
		}
	}
}

func TestUndoTakesBackACommandAndRedoBringsItBack(t *testing.T) {
	path := small(t)
	if got := must(t, "undo", path); got != "Undone: Set the plan in Rehearsal room\n" {
		t.Errorf("undo says %q", got)
	}
	if got := decode[placing](t, must(t, "place", path, "--json")); got.Along != 0 {
		t.Errorf("the plan still lies %v along", got.Along)
	}
	must(t, "redo", path)
	if got := decode[placing](t, must(t, "place", path, "--json")); got.Along != 6 {
		t.Errorf("the plan lies %v along after redo, want 6", got.Along)
	}
	changes := decode[[]change](t, must(t, "history", path, "--json"))
	if len(changes) < 3 || changes[0].Kind != "redo" || changes[1].Kind != "undo" {
		t.Errorf("the history is %+v, want redo and undo on top", changes)
	}
	if last := decode[[]change](t, must(t, "history", path, "--last", "1", "--json")); len(last) != 1 {
		t.Errorf("the last change is %d changes", len(last))
	}
}

func TestUndoTakesBackOnlyOnesOwn(t *testing.T) {
	path := small(t)
	if r := command(t, "undo", path, "--who", "somebody else"); r.status != failed {
		t.Errorf("status %d, want %d: somebody else has changed nothing", r.status, failed)
	}
}

func TestTheWindowsNameIsTheNameOfTheCommands(t *testing.T) {
	config := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", config)
	dir := filepath.Join(config, "fyne", appID)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, "preferences.json"), `{"who":"Wren Halloway","window wide":1366}`)
	if got := (&session{}).worker(); got != "Wren Halloway" {
		t.Errorf("the commands work as %q", got)
	}
}

// A room comes in with its diagonals and right angles, and its lengths stay as typed.
func TestARoomComesInAsItWasMeasured(t *testing.T) {
	path := small(t)
	table := write(t, filepath.Join(t.TempDir(), "hall.csv"),
		"wall,length,turn,square,from,to\nfront,12 m,,yes,,\nmirrors,9 m,,yes,,\n,12 m,,,,\n,900 cm,,,,\n,15 m,,,A,C\n,49' 2 9/16\",,,B,D\n")
	must(t, "import", path, table, "--room", "Rehearsal room")
	to := t.TempDir()
	must(t, "print", path, "room as measured", "--floor", "Rehearsal room", "--csv", "--preview", "--to", to)
	text, err := os.ReadFile(filepath.Join(to, "rehearsal-room-room-as-measured.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"A–B,front,12 m,12.000 m", "D–A,,900 cm,", "B–D,\"49' 2 9/16"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("the sheet lacks %q:\n%s", want, text)
		}
	}
	wrong := write(t, filepath.Join(t.TempDir(), "hall.csv"), "length,from,to\n12,,\n9,,\n12,,\n9,,\n22,A,C\n")
	if r := command(t, "import", path, wrong, "--room", "Rehearsal room"); r.status != problems || !strings.Contains(r.messages, "A–C is 22.000 m straight across") {
		t.Errorf("status %d, %q", r.status, r.messages)
	}
}
