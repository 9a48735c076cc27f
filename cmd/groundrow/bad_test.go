package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// onFile are the commands that take a production file, with what else they need.
var onFile = map[string][]string{
	"history": nil, "undo": nil, "redo": nil, "place": nil, "week": nil, "check": nil, "marks": nil, "readings": nil, "read": {"A", "B", "3 m"}, "tape": nil,
	"buy": nil, "crew": nil, "standins": nil, "transfer": nil, "print": {"--to", "."}, "export": {"plan"},
	"pictures": {"--to", "."}, "import": {"plan.csv"},
}

func TestEveryCommandRefusesAFileThatIsNone(t *testing.T) {
	dir := t.TempDir()
	foreign := write(t, filepath.Join(dir, "notes.groundrow"), "Remember the tape.\n")
	newer := newerFile(t)
	for name, rest := range onFile {
		for _, f := range []struct{ what, path, says string }{
			{"a missing file", filepath.Join(dir, "nowhere.groundrow"), "no such file"},
			{"a foreign file", foreign, "not a production file"},
			{"a newer file", newer, "later version"},
		} {
			r := command(t, append([]string{name, f.path}, rest...)...)
			if r.status != failed || !strings.Contains(r.messages, f.says) || r.out != "" {
				t.Errorf("%s of %s: status %d, out %q, messages %q", name, f.what, r.status, r.out, r.messages)
			}
		}
	}
}

// newerFile is a production file that claims to come from a later version. The
// version lies at byte 60 of the header, big-endian (SQLite, Database File
// Format, section 1.3).
func newerFile(t *testing.T) string {
	t.Helper()
	path := small(t)
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	content[63] = 99
	return write(t, path, string(content))
}

func TestBadInput(t *testing.T) {
	path := demoFile(t)
	dir := t.TempDir()
	table := write(t, filepath.Join(dir, "plan.csv"), "element,up,over\nWall,one,2\n")
	drawing := write(t, filepath.Join(dir, "plan.dxf"), "0\nEOF\n")
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   string
	}{
		{"unknown command", []string{"tpae"}, failed, "did you mean take or tape?"},
		{"unknown command with a file", []string{"measure", path}, failed, "no command"},
		{"missing file for the window", []string{filepath.Join(dir, "x.groundrow")}, failed, "would start one"},
		{"unknown option", []string{"tape", path, "--colour"}, failed, "--help lists the options"},
		{"no file", []string{"tape"}, failed, "needs FILE"},
		{"too many files", []string{"tape", path, path}, failed, "takes no"},
		{"unknown floor", []string{"marks", path, "--floor", "Attic"}, failed, "there are: Tannery Hall"},
		{"unknown scene", []string{"standins", path, "--scene", "9.9"}, failed, "there are: 1.1"},
		{"unknown sheet", []string{"print", path, "poster", "--to", dir}, failed, "there are: floor plan"},
		{"unknown paper", []string{"print", path, "kit", "--paper", "B5", "--to", dir}, failed, "Tabloid"},
		{"wrong scale", []string{"print", path, "kit", "--scale", "large", "--to", dir}, failed, "scale"},
		{"no folder", []string{"print", path, "kit"}, failed, "--to is missing"},
		{"folder below a file", []string{"print", path, "kit", "--to", filepath.Join(table, "paper")}, failed, "making the folder"},
		{"export to a folder that is not there", []string{"export", path, "plan", "--to", filepath.Join(dir, "no", "plan.csv")}, failed, "writing"},
		{"unknown export", []string{"export", path, "poem"}, failed, "there are: marks; plan; calendar; copy; dxf; svg; points; drawing"},
		{"copy to nowhere", []string{"export", path, "copy"}, failed, "needs --to"},
		{"unknown person", []string{"export", path, "calendar", "--person", "Nobody"}, failed, "there are:"},
		{"wrong length", []string{"place", path, "--along", "12q"}, failed, "not a length"},
		{"wrong angle", []string{"place", path, "--turn", "steep"}, failed, "degrees"},
		{"wrong unit", []string{"new", filepath.Join(dir, "n"), "--unit", "ell"}, failed, "there are: ft, m, cm, mm"},
		{"wrong day", []string{"new", filepath.Join(dir, "n"), "--first", "Monday"}, failed, "2031-03-10"},
		{"new over a file", []string{"new", path}, failed, "already something"},
		{"demo over a file", []string{"demo", path}, failed, "already something"},
		{"table that is not there", []string{"import", path, filepath.Join(dir, "no.csv")}, failed, "no file"},
		{"table that is a folder", []string{"import", path, dir}, failed, "is a folder"},
		{"drawing that is none", []string{"import", path, drawing}, failed, "no DXF drawing"},
		{"table with a wrong length", []string{"import", path, table}, problems, "“one”"},
		{"room that is a plan", []string{"import", path, table, "--room", "Loft Studio"}, failed, "no table of a room"},
		{"room that is not there", []string{"import", path, table, "--room", "Attic"}, failed, "there are:"},
		{"nothing to undo", []string{"undo", path}, failed, "othing"},
		{"wrong size", []string{"pictures", path, "--size", "1e9x1", "--to", dir}, failed, "1366x768"},
		{"wrong look", []string{"pictures", path, "--look", "loud", "--to", dir}, failed, "neither light nor dark"},
		{"same floor twice", []string{"transfer", path, "--from", "Loft", "--to", "Loft"}, failed, "itself"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := command(t, c.args...)
			if r.status != c.status || !strings.Contains(r.messages, c.says) {
				t.Errorf("status %d, messages %q; want %d and %q", r.status, r.messages, c.status, c.says)
			}
		})
	}
}

func TestATableWithAFaultChangesNothing(t *testing.T) {
	path := small(t)
	before := must(t, "history", path)
	table := write(t, filepath.Join(t.TempDir(), "plan.csv"), "element,up,over\nDoor,1,0\n,2,0\nWall,one,2\n")
	if r := command(t, "import", path, table, "--json"); r.status != problems || len(decode[taken](t, r.out).Problems) != 1 {
		t.Errorf("status %d, result %s; want %d and the one problem", r.status, r.out, problems)
	}
	if must(t, "history", path) != before {
		t.Error("the production has changed")
	}
	if r := command(t, "import", path, table, "--partly"); r.status != problems {
		t.Errorf("status %d with --partly, want %d: something was left out", r.status, problems)
	}
	if marks := decode[[]mark](t, must(t, "marks", path, "--json")); len(marks) != 4 {
		t.Errorf("%d marks, want those of the wall and of the door that could be read", len(marks))
	}
}

func TestAReadOnlyFolder(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("nothing is read only to root")
	}
	path := small(t)
	dir := filepath.Dir(path)
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o755)
	must(t, "marks", path)
	must(t, "print", path, "kit", "--to", t.TempDir())
	for _, args := range [][]string{
		{"new", filepath.Join(dir, "n")}, {"print", path, "kit", "--to", dir}, {"place", path, "--along", "1"},
		{"export", path, "copy", "--to", filepath.Join(dir, "c.groundrow")},
	} {
		if r := command(t, args...); r.status != failed || r.messages == "" {
			t.Errorf("%v: status %d, messages %q", args, r.status, r.messages)
		}
	}
}

func TestADamagedFileIsRefusedAndSalvaged(t *testing.T) {
	path := demoFile(t)
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	const page = 4096 // a page in the middle, all but its head; small pages would make it several
	middle := len(content) / 2 / page * page
	for i := middle + 100; i < middle+page; i++ {
		content[i] = 0xa5
	}
	write(t, path, string(content))
	if r := command(t, "marks", path); r.status != failed || !strings.Contains(r.messages, "amaged") {
		t.Errorf("status %d, messages %q", r.status, r.messages)
	}
	saved := filepath.Join(t.TempDir(), "saved.groundrow")
	if r := command(t, "salvage", path, saved); r.status == failed {
		t.Fatalf("nothing salvaged: %s", r.messages)
	}
	must(t, "marks", saved)
	if r := command(t, "salvage", path, saved); r.status != failed {
		t.Errorf("salvaging over a file: status %d, want %d", r.status, failed)
	}
}

func TestWithoutADisplayTheWindowSaysWhatToDo(t *testing.T) {
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	if r := command(t); r.status != failed || !strings.Contains(r.messages, "groundrow print") {
		t.Errorf("status %d, messages %q", r.status, r.messages)
	}
}

func TestEveryCommandHasHelpByExample(t *testing.T) {
	for _, c := range program(&session{}).Commands() {
		if c.Long == "" || !strings.HasPrefix(c.Example, "  groundrow "+c.Name()) {
			t.Errorf("%s: help without words or without an example of its own", c.Name())
		}
		if c.Flags().Lookup("json") != nil && !documentsJSON(c) {
			t.Errorf("%s: the example does not show what --json gives", c.Name())
		}
	}
	if got := must(t, "print", "--help"); !strings.Contains(got, "floor plan") {
		t.Errorf("the help of print does not name the sheets: %s", got)
	}
}

func documentsJSON(c *cobra.Command) bool {
	return strings.Contains(c.Example, "--json") && strings.Contains(c.Example, "→")
}
