package ui

import (
	"path/filepath"
	"strings"
	"testing"

	"groundrow/store"
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

func TestWhatADamagedFileLostIsNamedAsAPersonNamesIt(t *testing.T) {
	r := store.Report{Tables: []store.Salvaged{{Table: "item", Rows: 3}, {Table: "stand_in", Rows: 1}, {Table: "scene", Rows: 2, Complete: true}}}
	got := salvaged(r)
	for _, want := range []string{"the kit", "stand in", "3 rows"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	if strings.Contains(got, "scene") || strings.Contains(got, "_") {
		t.Errorf("it says %q", got)
	}
}
