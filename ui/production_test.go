package ui

import (
	"path/filepath"
	"testing"
)

func TestTheSpaceThatPressedTheButtonIsNoPartOfTheName(t *testing.T) {
	folder := filepath.Join(t.TempDir(), " kept ")
	for typed, want := range map[string]string{
		" Harbour.groundrow":         "Harbour.groundrow",
		"The Long Harbour.groundrow": "The Long Harbour.groundrow",
	} {
		if got := trimmed(filepath.Join(folder, typed)); got != filepath.Join(folder, want) {
			t.Errorf("%q became %q", typed, got)
		}
	}
}
