package store

import (
	"context"
	"errors"
	"slices"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// mustClash makes theirs and then mine on the same snapshot and returns the
// conflict.
func mustClash(t *testing.T, f *File, theirs, mine func(*prep.Production)) *Conflict {
	t.Helper()
	base := f.Now()
	mustEdit(t, f, "Theirs", theirs)
	conflict, ok := errors.AsType[*Conflict](edit(f, base, "Mine", mine))
	if !ok {
		t.Fatal("no conflict")
	}
	return conflict
}

func removeTable(p *prep.Production) { p.Plan.Elements = p.Plan.Elements[:1] }

// Somebody struck the wall and the scene; the person keeps the line that was
// moved: the wall comes back whole.
func TestForceBringsBackWhatTheEditNeeds(t *testing.T) {
	f := mustCreate(t, kitchen())
	conflict := mustClash(t, f,
		func(p *prep.Production) { p.Plan.Elements, p.Plan.Levels = p.Plan.Elements[1:], nil },
		func(p *prep.Production) { p.Plan.Elements[0].Paths[0].Vertices[1].Y = 7 })
	if err := f.Force(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	want := kitchen()
	want.Plan.Elements[0].Paths[0].Vertices[1].Y = 7
	if d := alike(want, f.Now().P); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	mustUndo(t, f, "Mine")
	if got := f.Now().P.Plan; len(got.Elements) != 1 || len(got.Levels) != 0 {
		t.Errorf("after undo: %+v", got)
	}
}

func TestForcedRemoval(t *testing.T) {
	f := mustCreate(t, kitchen())
	conflict := mustClash(t, f, func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk" }, removeTable)
	if err := f.Force(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	if len(f.Now().P.Plan.Elements) != 1 {
		t.Error("the element is still there")
	}
	mustUndo(t, f, "Mine")
	if got := f.Now().P.Plan.Elements; len(got) != 2 || got[1].Name != "Desk" || len(got[1].Stands) != 1 {
		t.Errorf("after undo: %+v", got)
	}
}

func TestKeepTheirs(t *testing.T) {
	tests := map[string]struct{ theirs, mine, want func(*prep.Production) }{
		"the rest of mine is made": {
			func(p *prep.Production) { p.Plan.Levels[0].Height = 2 },
			func(p *prep.Production) { p.Plan.Levels[0].Height, p.Plan.Levels[0].Name = 3, "Upper" },
			func(p *prep.Production) { p.Plan.Levels[0].Height, p.Plan.Levels[0].Name = 2, "Upper" },
		},
		"what they changed is not removed": {
			func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk" },
			func(p *prep.Production) { removeTable(p); p.Plan.Scenes[0].Name = "1.1 Dawn" },
			func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk"; p.Plan.Scenes[0].Name = "1.1 Dawn" },
		},
		"what they removed stays away": {
			removeTable, func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk" }, removeTable,
		},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			f := mustCreate(t, kitchen())
			conflict := mustClash(t, f, tt.theirs, tt.mine)
			if err := f.KeepTheirs(context.Background(), conflict); err != nil {
				t.Fatal(err)
			}
			want := kitchen()
			tt.want(want)
			if d := alike(want, f.Now().P); d != "" {
				t.Errorf("(-want +got)\n%s", d)
			}
		})
	}
}

// A person who lets somebody else's value stand can go on undoing what came
// before.
func TestUndoGoesOnPastWhatOthersChanged(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "First", func(p *prep.Production) { p.Settings.Company = "Ours" })
	mustEdit(t, f, "Second", setTitle("mine"))
	mustEdit(t, mustOpen(t, f.Path(), "Ben"), "Theirs", setTitle("theirs"))
	_, err := f.Undo(context.Background())
	conflict, ok := errors.AsType[*Conflict](err)
	if !ok {
		t.Fatalf("got %v, want a conflict", err)
	}
	if err := f.KeepTheirs(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	mustUndo(t, f, "First")
	if p := f.Now().P; title(p) != "theirs" || p.Settings.Company != "" {
		t.Errorf("got %q by %q", title(p), p.Settings.Company)
	}
	err = f.Force(context.Background(), conflict)
	wantError(t, err, Invalid, "in another window meanwhile")
}

// Who only moved a row in its list does not bring it back from removal.
func TestReorderingBringsNothingBack(t *testing.T) {
	f := mustCreate(t, kitchen())
	base := f.Now()
	mustEdit(t, f, "Strike", func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] })
	err := edit(f, base, "Reorder", func(p *prep.Production) {
		p.Plan.Scenes[0], p.Plan.Scenes[1] = p.Plan.Scenes[1], p.Plan.Scenes[0]
	})
	if err != nil || !slices.Equal(f.Now().P.Plan.Scenes, []plan.Scene{{ID: "one", Name: "1.1"}}) {
		t.Errorf("got %+v, %v", f.Now().P.Plan.Scenes, err)
	}
}
