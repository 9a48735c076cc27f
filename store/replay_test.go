package store

import (
	"context"
	"errors"
	"maps"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/prep"
)

// Every table of two files, doubles and times by their stored form.
func wantSameTables(t *testing.T, a, b *File) {
	t.Helper()
	one, err1 := load(context.Background(), a.db)
	two, err2 := load(context.Background(), b.db)
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	for _, s := range tables {
		if !maps.EqualFunc(one[s.name], two[s.name], func(x, y record) bool {
			_, differs := s.compare("", &x, &y)
			return !differs
		}) {
			t.Errorf("table %s differs: %v\n%v", s.name, one[s.name], two[s.name])
		}
	}
}

func TestJournalReplaysOnACopy(t *testing.T) {
	ctx := context.Background()
	f := mustCreate(t, randomProduction(0))
	start := filepath.Join(t.TempDir(), "start.groundrow")
	if err := f.SaveCopy(ctx, start); err != nil {
		t.Fatal(err)
	}
	ben := mustOpen(t, f.Path(), "Ben")
	for seed := range uint64(4) {
		f.look(ctx) // each hears of the other's edit first
		mustEdit(t, f, "Everything", func(p *prep.Production) { *p = *randomProduction(seed + 1) })
		ben.look(ctx)
		mustEdit(t, ben, "Move one", func(p *prep.Production) {
			e := p.Plan.Elements
			e[0], e[1] = e[1], e[0]
			e[0].Stands[0].Over += 1.0 / 3
		})
	}
	mustUndo(t, ben, "Move one")
	mustRedo(t, ben, "Move one")
	mustUndo(t, ben, "Move one")
	mustUndo(t, f, "Everything")

	g := mustOpen(t, start, "Cy")
	records, err := f.Records(ctx, 0)
	if err != nil || len(records) != 12 {
		t.Fatalf("%d records, %v", len(records), err)
	}
	for range 2 { // the second time they are all there
		for _, r := range records {
			if err := g.Apply(ctx, r); err != nil {
				t.Fatalf("%s: %v", r.Label, err)
			}
		}
	}
	wantSameTables(t, f, g)
	if d := alike(f.Now().P, g.Now().P); d != "" {
		t.Error(d)
	}
	theirs, err := g.Records(ctx, 0)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(records, theirs); d != "" {
		t.Errorf("the journals differ\n%s", d)
	}
	mustRedo(t, mustOpen(t, start, "Ada"), "Everything") // what she undid on the first machine
}

func TestRecordsThatCannotBeApplied(t *testing.T) {
	f := mustCreate(t, kitchen())
	tests := map[string]string{
		"not JSON":            `[`,
		"an unknown table":    `[{"table":"ghost","key":["a"],"after":{"name":"b"}}]`,
		"an unknown column":   `[{"table":"scene","key":["one"],"before":{"x":"a"},"after":{"x":"b"}}]`,
		"too few keys":        `[{"table":"stand","key":["one"],"after":{}}]`,
		"half a row":          `[{"table":"scene","key":["three"],"after":{"id":"three"}}]`,
		"a list of nonsense":  `[{"table":"floor","key":["studio"],"before":{"corners":[]},"after":{"corners":[[1,2]]}}]`,
		"a number for a name": `[{"table":"scene","key":["one"],"before":{"name":"1.1"},"after":{"name":3}}]`,
		"text for a number":   `[{"table":"level","key":["stage"],"before":{"height_m":0},"after":{"height_m":"3"}}]`,
		"another row's key":   `[{"table":"scene","key":["three"],"after":{"id":"four","name":"","seq":9}}]`,
		"no place in a list":  `[{"table":"scene","key":["one"],"before":{"seq":1},"after":{"seq":"a"}}]`,
		"something for null":  `[{"table":"scene","key":["one"],"before":{"name":"1.1"},"after":{"name":null}}]`,
		"a truth of three":    `[{"table":"floor","key":["studio"],"before":{"own_datum":0},"after":{"own_datum":3}}]`,
	}
	for name, changes := range tests {
		t.Run(name, func(t *testing.T) {
			err := f.Apply(context.Background(), Record{Entry: Entry{ID: name, Who: "Ben", Label: "Change", Kind: Edited}, Changes: []byte(changes)})
			wantError(t, err, Invalid, "")
			if d := alike(kitchen(), mustOpen(t, f.Path(), "Cy").Now().P); d != "" {
				t.Errorf("it has changed something\n%s", d)
			}
		})
	}
}
