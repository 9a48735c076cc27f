package store

import (
	"context"
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Whatever a journal row of another machine says, it is refused, or it can be
// merged and comes back from the journal as it was.
func FuzzChanges(f *testing.F) {
	for seed := range uint64(3) {
		was, err1 := rowsFrom(randomProduction(seed), nil)
		is, err2 := rowsFrom(randomProduction(seed+10), was)
		text, err3 := json.Marshal(difference(was, is)[:3])
		if err1 != nil || err2 != nil || err3 != nil {
			f.Fatal(err1, err2, err3)
		}
		f.Add(string(text))
	}
	f.Add(`[{"table":"scene","key":["one"],"before":{"name":"1.1"},"after":{"name":null,"seq":1e999}}]`)
	f.Add(`[{"table":"path","key":["wall","p"],"before":{"corners":[[0,1,0]]},"after":{"corners":[[0,1]]}}]`)
	f.Add(`[{"table":"level","key":["a"],"after":{"id":"a","name":"","height_m":-0.0,"seq":1}},{}]`)
	start, err := rowsFrom(kitchen(), nil)
	if err != nil {
		f.Fatal(err)
	}
	refs, err := schemaReferences(context.Background())
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		changes, err := readChanges(text)
		if err != nil {
			return
		}
		again, err := json.Marshal(changes)
		if err != nil {
			t.Fatalf("accepted and cannot be written: %v", err)
		}
		back, err := readChanges(string(again))
		if err != nil {
			t.Fatalf("written and cannot be read: %v", err)
		}
		if d := cmp.Diff(changes, back, cmpopts.IgnoreUnexported(change{}), cmpopts.EquateEmpty()); d != "" {
			t.Fatalf("comes back otherwise\n%s", d)
		}
		m, err := merge(start, pending{changes: changes}, refs)
		if err == nil && len(m.conflicts) == 0 && m.merged.whole(m.changes(), refs) == nil {
			if _, err := m.merged.production(); err != nil {
				t.Fatalf("merged and cannot be put together: %v", err)
			}
		}
	})
}
