package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"groundrow/prep"
)

// mustExec runs SQL on a file behind the program's back.
func mustExec(tb testing.TB, path string, script string) {
	tb.Helper()
	db, err := sql.Open("sqlite3", fileDSN(path, ""))
	if err != nil {
		tb.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec(script); err != nil {
		tb.Fatal(err)
	}
}

func mustRead(tb testing.TB, path string) []byte {
	tb.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// finished makes a production file, closes it and returns its path.
func finished(tb testing.TB, p *prep.Production) string {
	tb.Helper()
	f := mustCreate(tb, p)
	if err := f.Close(); err != nil {
		tb.Fatal(err)
	}
	return f.Path()
}

func TestFilesThatAreRefusedAndLeftUntouched(t *testing.T) {
	tests := map[string]struct {
		make func(t *testing.T, path string)
		code Code
		says string
	}{
		"a text file":       {func(t *testing.T, path string) { mustWrite(t, path, []byte("Dear all,\n")) }, Foreign, "not a production file"},
		"an empty file":     {func(t *testing.T, path string) { mustWrite(t, path, nil) }, Foreign, "is empty"},
		"a foreign SQLite":  {func(t *testing.T, path string) { mustExec(t, path, "CREATE TABLE a (b)") }, Foreign, "another program"},
		"a newer file":      {func(t *testing.T, path string) { madeWith(t, path, fmt.Sprintf("PRAGMA user_version = %d", Version+1)) }, Newer, "later version"},
		"the head of one":   {func(t *testing.T, path string) { cut(t, path, 60) }, Damaged, "salvage"},
		"half of one":       {func(t *testing.T, path string) { cut(t, path, 64<<10) }, Damaged, "salvage"},
		"one with a hole":   {func(t *testing.T, path string) { madeWith(t, path, ""); hole(t, path, 3) }, Damaged, "salvage"},
		"one with no roots": {func(t *testing.T, path string) { madeWith(t, path, ""); hole(t, path, 0) }, Damaged, "salvage"},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "play.groundrow")
			tt.make(t, path)
			before := mustRead(t, path)
			f, err := Open(context.Background(), path, "Ada")
			if err == nil {
				f.Close()
			}
			wantError(t, err, tt.code, tt.says)
			if !bytes.Equal(before, mustRead(t, path)) {
				t.Error("the file has been written to")
			}
			if beside, _ := filepath.Glob(path + "-*"); len(beside) > 0 {
				t.Errorf("left behind: %v", beside)
			}
		})
	}
}

func mustWrite(tb testing.TB, path string, b []byte) {
	tb.Helper()
	if err := os.WriteFile(path, b, 0o666); err != nil {
		tb.Fatal(err)
	}
}

// madeWith puts a production file at path and runs SQL on it.
func madeWith(t *testing.T, path, script string) {
	t.Helper()
	if err := os.Rename(finished(t, randomProduction(1)), path); err != nil {
		t.Fatal(err)
	}
	mustExec(t, path, script)
}

func cut(t *testing.T, path string, size int64) {
	t.Helper()
	madeWith(t, path, "")
	if err := os.Truncate(path, size); err != nil {
		t.Fatal(err)
	}
}

// hole overwrites one page, all but its first hundred bytes.
func hole(t *testing.T, path string, page int64) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := f.WriteAt(bytes.Repeat([]byte{0xa5}, 3996), 4096*page+100); err != nil {
		t.Fatal(err)
	}
}

func TestWhatCannotBeOpened(t *testing.T) {
	dir := t.TempDir()
	_, err := Open(context.Background(), filepath.Join(dir, "none.groundrow"), "Ada")
	wantError(t, err, NotFound, "no such file")
	_, err = Open(context.Background(), dir, "Ada")
	wantError(t, err, Foreign, "is a folder")
}

func TestCreateRefusesWhatIsThere(t *testing.T) {
	path := finished(t, kitchen())
	before := mustRead(t, path)
	_, err := Create(context.Background(), path, "Ada", nil)
	wantError(t, err, InUse, "already something named")
	if !bytes.Equal(before, mustRead(t, path)) {
		t.Error("the file that was there has changed")
	}
	_, err = Create(context.Background(), filepath.Join(filepath.Dir(path), "no", "folder"), "Ada", nil)
	wantError(t, err, NotFound, "no such file or folder")
}

func TestCreateThatFailsLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	p := kitchen()
	p.Settings.BudgetCents = -1
	_, err := Create(context.Background(), filepath.Join(dir, "play.groundrow"), "Ada", p)
	wantError(t, err, Invalid, "budget")
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestStrangePathsAreNames(t *testing.T) {
	for _, name := range []string{"a b?mode=ro&x=%20#1.groundrow", "Œuvre “½”.groundrow", "percent%2Fslash"} {
		path := filepath.Join(t.TempDir(), name)
		f := mustCreateAt(t, path, "Ada", kitchen())
		mustEdit(t, f, "Call it", setTitle("else"))
		f.Close()
		if title(mustOpen(t, path, "Ada").Now().P) != "else" {
			t.Errorf("%s does not keep its edit", name)
		}
	}
}

func TestClosedFileRefusesWork(t *testing.T) {
	f := mustCreate(t, kitchen())
	f.Close()
	wantError(t, edit(f, f.Now(), "Late", setTitle("late")), Closed, "has been closed")
	if err := f.Close(); err != nil {
		t.Errorf("closing twice: %v", err)
	}
}

// Looking only needs no log beside the file and no lock: as from a disc.
func TestLookingOnly(t *testing.T) {
	path := finished(t, kitchen())
	before := mustRead(t, path)
	f, err := openToLook(context.Background(), path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	f.watch()
	defer f.Close()
	if ro, why := f.ReadOnly(); !ro || why == "" {
		t.Errorf("got %v, %q", ro, why)
	}
	if d := alike(kitchen(), f.Now().P); d != "" {
		t.Error(d)
	}
	wantError(t, edit(f, f.Now(), "Call it", setTitle("else")), ReadOnly, "not changed")
	_, err = f.Undo(context.Background())
	wantError(t, err, ReadOnly, "not changed")
	if err := f.SaveCopy(context.Background(), filepath.Join(t.TempDir(), "copy.groundrow")); err != nil {
		t.Errorf("saving a copy of it: %v", err)
	}
	if !bytes.Equal(before, mustRead(t, path)) {
		t.Error("looking has changed the file")
	}
}

func TestFilesThatMayNotBeWritten(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("the superuser may write everywhere")
	}
	tests := map[string]struct {
		file, folder os.FileMode
		copied       bool // a copy that has never been opened for work
	}{
		"the file":              {0o444, 0o755, false},
		"the folder":            {0o644, 0o555, false},
		"file and folder":       {0o444, 0o555, false},
		"a copy":                {0o444, 0o755, true},
		"a copy and its folder": {0o444, 0o555, true},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "play.groundrow")
			f := mustCreate(t, kitchen())
			if err := f.SaveCopy(context.Background(), path); err != nil {
				t.Fatal(err)
			}
			if !tt.copied {
				mustOpen(t, path, "Ada").Close()
			}
			dir := filepath.Dir(path)
			if err := errors.Join(os.Chmod(path, tt.file), os.Chmod(dir, tt.folder)); err != nil {
				t.Fatal(err)
			}
			defer os.Chmod(dir, 0o755)
			before := mustRead(t, path)
			g := mustOpen(t, path, "Ada")
			if ro, why := g.ReadOnly(); !ro || why == "" {
				t.Error("the file passes for one that can be changed")
			}
			wantError(t, edit(g, g.Now(), "Call it", setTitle("else")), ReadOnly, "not changed")
			g.Close()
			if !bytes.Equal(before, mustRead(t, path)) {
				t.Error("looking has changed the file")
			}
		})
	}
}
