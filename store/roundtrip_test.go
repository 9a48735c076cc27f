package store

import (
	"context"
	"math"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// alike compares productions: doubles by their bits, times with their offset,
// an empty list as none.
func alike(want, got *prep.Production) string {
	return cmp.Diff(want, got, cmpopts.EquateEmpty(),
		cmp.Comparer(func(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }),
		cmp.Comparer(func(a, b time.Time) bool { return a.Format(time.RFC3339Nano) == b.Format(time.RFC3339Nano) }))
}

func mustCreate(tb testing.TB, p *prep.Production) *File {
	tb.Helper()
	return mustCreateAt(tb, filepath.Join(tb.TempDir(), "play.groundrow"), "Ada", p)
}

func mustCreateAt(tb testing.TB, path, who string, p *prep.Production) *File {
	tb.Helper()
	f, err := Create(context.Background(), path, who, p)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { f.Close() })
	return f
}

func mustOpen(tb testing.TB, path, who string) *File {
	tb.Helper()
	f, err := Open(context.Background(), path, who)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { f.Close() })
	return f
}

// mustEdit edits the latest snapshot.
func mustEdit(tb testing.TB, f *File, label string, change func(*prep.Production)) {
	tb.Helper()
	err := f.Edit(context.Background(), f.Now(), label, func(p *prep.Production) error { change(p); return nil })
	if err != nil {
		tb.Fatalf("%s: %v", label, err)
	}
}

func TestEveryFieldComesBack(t *testing.T) {
	for seed := range uint64(20) {
		want := randomProduction(seed)
		f := mustCreate(t, want)
		if d := alike(want, f.Now().P); d != "" {
			t.Fatalf("seed %d: after Create (-want +got)\n%s", seed, d)
		}
		f.Close()
		if d := alike(want, mustOpen(t, f.Path(), "Ada").Now().P); d != "" {
			t.Fatalf("seed %d: after Open (-want +got)\n%s", seed, d)
		}
	}
}

// From any production to any other is one edit; undo and redo of it come back
// to the same bits.
func TestEditFromAnythingToAnything(t *testing.T) {
	for seed := range uint64(10) {
		was, want := randomProduction(seed), randomProduction(seed+100)
		f := mustCreate(t, was)
		mustEdit(t, f, "Change everything", func(p *prep.Production) { *p = *want })
		if d := alike(want, f.Now().P); d != "" {
			t.Fatalf("seed %d: after the edit\n%s", seed, d)
		}
		if _, err := f.Undo(context.Background()); err != nil {
			t.Fatal(err)
		}
		if d := alike(was, f.Now().P); d != "" {
			t.Fatalf("seed %d: after undo\n%s", seed, d)
		}
		if _, err := f.Redo(context.Background()); err != nil {
			t.Fatal(err)
		}
		if d := alike(want, mustOpen(t, f.Path(), "Ada").Now().P); d != "" {
			t.Fatalf("seed %d: after redo\n%s", seed, d)
		}
	}
}

func TestEmptyProductionComesBack(t *testing.T) {
	f := mustCreate(t, nil)
	if d := alike(&prep.Production{}, f.Now().P); d != "" {
		t.Fatal(d)
	}
}

func TestMinusZeroIsZero(t *testing.T) {
	f := mustCreate(t, nil)
	mustEdit(t, f, "Add level", func(p *prep.Production) {
		p.Plan.Levels = []plan.Level{{ID: "l", Height: math.Copysign(0, -1)}}
	})
	if h := f.Now().P.Plan.Levels[0].Height; math.Signbit(h) {
		t.Errorf("height %v keeps the sign of minus zero, which the file does not", h)
	}
}

func TestValuesThatMakeNoSense(t *testing.T) {
	level := func(l plan.Level) func(*prep.Production) {
		return func(p *prep.Production) { p.Plan.Levels = append(p.Plan.Levels, l) }
	}
	tests := map[string]struct {
		change func(*prep.Production)
		names  string
	}{
		"a length that is not a number": {level(plan.Level{ID: "a", Name: "Upper", Height: math.NaN()}), "level “Upper”"},
		"an endless length":             {level(plan.Level{ID: "a", Name: "Upper", Height: math.Inf(-1)}), "level “Upper”"},
		"bytes that are not text":       {level(plan.Level{ID: "a", Name: "Up\xff"}), "name"},
		"a zero byte in text":           {level(plan.Level{ID: "a\x00b", Name: "Upper"}), "id"},
		"the same row twice":            {level(plan.Level{ID: "base", Name: "Upper"}), "two of the level “Upper”"},
		"a corner that is nowhere": {func(p *prep.Production) {
			p.Floors = []floor.Floor{{ID: "f", Name: "Studio", Outline: plane.Open(plane.Point{X: math.NaN()})}}
		}, "corner 1"},
		"a year that cannot be written": {func(p *prep.Production) {
			p.Settings.PrepStart = time.Date(12000, 1, 1, 0, 0, 0, 0, time.UTC)
		}, "prep start"},
		"a negative budget": {func(p *prep.Production) { p.Settings.BudgetCents = -1 }, "The budget must not be negative."},
		"an unknown unit":   {func(p *prep.Production) { p.Settings.Unit = "yards" }, "The unit must be ft, m, cm or mm."},
		"a level that is not there": {func(p *prep.Production) {
			p.Plan.Elements = []plan.Element{{ID: "e", Name: "House", Level: "nowhere"}}
		}, "element “House” still refers to a level"},
	}
	f := mustCreate(t, &prep.Production{Plan: plan.Plan{Levels: []plan.Level{{ID: "base", Name: "Stage"}}}})
	before := f.Now()
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			err := f.Edit(context.Background(), f.Now(), "Change", func(p *prep.Production) error { tt.change(p); return nil })
			wantError(t, err, Invalid, tt.names)
			if f.Now().Seq != before.Seq || alike(before.P, f.Now().P) != "" {
				t.Error("the refused edit has changed something")
			}
		})
	}
}
