package store

import (
	"context"
	"errors"
	"testing"

	"groundrow/prep"
)

func title(p *prep.Production) string { return p.Settings.Title }

func setTitle(s string) func(*prep.Production) {
	return func(p *prep.Production) { p.Settings.Title = s }
}

func mustUndo(tb testing.TB, f *File, want string) {
	tb.Helper()
	if label, err := f.Undo(context.Background()); err != nil || label != want {
		tb.Fatalf("undid %q (%v), want %q", label, err, want)
	}
}

func mustRedo(tb testing.TB, f *File, want string) {
	tb.Helper()
	if label, err := f.Redo(context.Background()); err != nil || label != want {
		tb.Fatalf("redid %q (%v), want %q", label, err, want)
	}
}

func TestUndoAndRedoSurviveARestart(t *testing.T) {
	f := mustCreate(t, kitchen())
	for _, s := range []string{"a", "b", "c"} {
		mustEdit(t, f, "Call it "+s, setTitle(s))
	}
	mustUndo(t, f, "Call it c")
	f.Close()
	f = mustOpen(t, f.Path(), "Ada")
	if label, ok := f.RedoLabel(); !ok || label != "Call it c" {
		t.Errorf("redo offers %q, %v", label, ok)
	}
	mustUndo(t, f, "Call it b")
	mustUndo(t, f, "Call it a")
	if title(f.Now().P) != "The Lamp" {
		t.Errorf("got %q", title(f.Now().P))
	}
	_, err := f.Undo(context.Background())
	wantError(t, err, NotFound, "nothing to undo")
	mustRedo(t, f, "Call it a")
	mustRedo(t, f, "Call it b")
	mustUndo(t, f, "Call it b")
	mustRedo(t, f, "Call it b")
	mustRedo(t, f, "Call it c")
	if title(f.Now().P) != "c" {
		t.Errorf("got %q", title(f.Now().P))
	}
	_, err = f.Redo(context.Background())
	wantError(t, err, NotFound, "nothing to redo")
}

func TestEditEndsRedo(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "One", setTitle("one"))
	mustUndo(t, f, "One")
	mustEdit(t, f, "Two", setTitle("two"))
	if label, ok := f.RedoLabel(); ok {
		t.Errorf("redo still offers %q", label)
	}
	mustUndo(t, f, "Two")
	if _, ok := f.UndoLabel(); ok || title(f.Now().P) != "The Lamp" {
		t.Errorf("got %q with more to undo", title(f.Now().P))
	}
}

func TestUndoIsThePersonsOwn(t *testing.T) {
	f := mustCreate(t, kitchen())
	ben := mustOpen(t, f.Path(), "Ben")
	second := mustOpen(t, f.Path(), "Ada")
	mustEdit(t, f, "Mine", setTitle("mine"))
	mustEdit(t, ben, "Theirs", func(p *prep.Production) { p.Settings.Company = "Else" })
	mustUndo(t, second, "Mine") // the same person in another window
	p := second.Now().P
	if title(p) != "The Lamp" || p.Settings.Company != "Else" {
		t.Errorf("got %q by %q", title(p), p.Settings.Company)
	}
	mustRedo(t, f, "Mine")
	mustUndo(t, ben, "Theirs")
	if p := ben.Now().P; title(p) != "mine" || p.Settings.Company != "" {
		t.Errorf("got %q by %q", title(p), p.Settings.Company)
	}
}

func TestUndoOfWhatAnotherHasChangedSince(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "Mine", setTitle("mine"))
	ben := mustOpen(t, f.Path(), "Ben")
	mustEdit(t, ben, "Theirs", setTitle("theirs"))
	_, err := f.Undo(context.Background())
	conflict, ok := errors.AsType[*Conflict](err)
	if !ok {
		t.Fatalf("got %v, want a conflict", err)
	}
	if c := conflict.Cells[0]; c.Was != "mine" || c.Theirs != "theirs" || c.Mine != "The Lamp" {
		t.Errorf("got %+v", c)
	}
	if err := f.Force(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	if title(f.Now().P) != "The Lamp" {
		t.Errorf("got %q", title(f.Now().P))
	}
	mustRedo(t, f, "Mine")
	if title(f.Now().P) != "theirs" {
		t.Errorf("redo after a forced undo gives %q, want what the undo found", title(f.Now().P))
	}
}

func TestJournalTellsWhoWhatAndHowMuch(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "Rename all", func(p *prep.Production) {
		p.Plan.Scenes[0].Name, p.Plan.Scenes[1].Name = "x", "y"
	})
	mustUndo(t, f, "Rename all")
	entries, err := f.Journal(context.Background(), 10)
	if err != nil || len(entries) != 2 {
		t.Fatalf("got %v, %v", entries, err)
	}
	undo, made := entries[0], entries[1]
	if made.Kind != Edited || made.Who != "Ada" || made.Label != "Rename all" || made.Rows != 2 || made.ID == "" || made.When.IsZero() {
		t.Errorf("got %+v", made)
	}
	if undo.Kind != Undone || undo.Of != made.ID || undo.Seq <= made.Seq || f.Now().Seq != undo.Seq {
		t.Errorf("got %+v after %+v", undo, made)
	}
	if one, _ := f.Journal(context.Background(), 1); len(one) != 1 || one[0].ID != undo.ID {
		t.Errorf("got %+v, want the newest only", one)
	}
}
