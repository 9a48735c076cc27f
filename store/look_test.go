package store

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

// Looking reads what is saved last, also while the file is open, and writes nothing.
func TestLookReadsAndLeavesTheFileAsItIs(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "Call it", setTitle("The Lantern"))
	got, err := Look(context.Background(), f.Path())
	if err != nil || title(got) != "The Lantern" {
		t.Fatalf("%v", err)
	}
	if d := alike(f.Now().P, got); d != "" {
		t.Error(d)
	}
	f.Close()
	before := mustRead(t, f.Path())
	if _, err := Look(context.Background(), f.Path()); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(before, mustRead(t, f.Path())) {
		t.Error("the file has changed")
	}
}

// A file of an earlier version is read, and stays of that version.
func TestLookAtAnEarlierVersion(t *testing.T) {
	for version := 1; version <= Version; version++ {
		path := filepath.Join(t.TempDir(), "old.groundrow")
		mustWrite(t, path, mustRead(t, filepath.Join("testdata", fmt.Sprintf("version%d.groundrow", version))))
		got, err := Look(context.Background(), path)
		if err != nil {
			t.Fatalf("version %d: %v", version, err)
		}
		if d := alike(golden(version), got); d != "" {
			t.Errorf("version %d (-want +got)\n%s", version, d)
		}
		wantHeader(t, path, uint32(version), applicationID)
	}
}

func TestLookRefusesWhatIsNoProductionFile(t *testing.T) {
	folder := t.TempDir()
	text := filepath.Join(folder, "letter.txt")
	if err := os.WriteFile(text, []byte("Dear designer, the plan is lovely, and the hall is not square at all."), 0o600); err != nil {
		t.Fatal(err)
	}
	empty := filepath.Join(folder, "empty.groundrow")
	mustWrite(t, empty, nil)
	for path, code := range map[string]Code{text: Foreign, empty: Foreign, folder: Foreign, filepath.Join(folder, "none.groundrow"): NotFound} {
		if _, err := Look(context.Background(), path); CodeOf(err) != code {
			t.Errorf("%s: %v, want the code %q", filepath.Base(path), err, code)
		}
	}
}
