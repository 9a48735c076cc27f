package store_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"groundrow/store"
)

func TestAFileIsWrittenWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "points.csv")
	says := func(text string, err error) func(io.Writer) error {
		return func(w io.Writer) error {
			if _, failed := io.WriteString(w, text); failed != nil {
				return failed
			}
			return err
		}
	}
	if err := store.WriteWhole(path, says("first", nil)); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("half way")
	if err := store.WriteWhole(path, says("sec", broken)); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "first" {
		t.Errorf("after a failure the file holds %q, %v", got, err)
	}
	if err := store.WriteWhole(path, says("second", nil)); err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "second" {
		t.Errorf("the file holds %q, %v", got, err)
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
		t.Errorf("%d files are left, %v", len(left), err)
	}
	if err := store.WriteWhole(filepath.Join(dir, "no", "points.csv"), says("", nil)); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
}
