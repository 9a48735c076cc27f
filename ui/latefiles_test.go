package ui

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
)

// What the file dialog does with the name that is confirmed.
func TestAFileThatIsPickedIsEmptiedOnlyWhenItIsWritten(t *testing.T) {
	test.NewTempApp(t)
	openFilesLate()
	openFilesLate() // a second window
	path := filepath.Join(t.TempDir(), "show.groundrow")
	if err := os.WriteFile(path, []byte("a whole production"), 0o600); err != nil {
		t.Fatal(err)
	}
	content := func() string {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	w, err := storage.Writer(storage.NewFileURI(path))
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil || content() != "a whole production" {
		t.Fatalf("picking it alone leaves %q (%v)", content(), err)
	}
	if w, err = storage.Writer(storage.NewFileURI(path)); err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{"so", "on"} {
		if _, err := w.Write([]byte(part)); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil || content() != "soon" {
		t.Errorf("written into it leaves %q (%v)", content(), err)
	}
	fresh := storage.NewFileURI(filepath.Join(filepath.Dir(path), "new.groundrow"))
	if w, err = storage.Writer(fresh); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Error(err)
	}
	if is, err := storage.Exists(fresh); is || err != nil {
		t.Errorf("a name alone makes a file: %v (%v)", is, err)
	}
}
