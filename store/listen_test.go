package store

import (
	"context"
	"slices"
	"sync"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// heard collects titles from snapshots as they come.
type heard struct {
	mu     sync.Mutex
	titles []string
	seqs   []int64
	more   chan struct{}
}

func hear(f *File) *heard {
	h := &heard{more: make(chan struct{}, 1000)}
	f.Listen(func(s Snapshot) {
		h.mu.Lock()
		defer h.mu.Unlock()
		h.titles, h.seqs = append(h.titles, title(s.P)), append(h.seqs, s.Seq)
		h.more <- struct{}{}
	})
	return h
}

// wait waits until a snapshot with the title has come. The limit only keeps a
// broken program from hanging the test.
func (h *heard) wait(t *testing.T, want string) {
	t.Helper()
	limit := time.After(20 * time.Second)
	for {
		h.mu.Lock()
		found := slices.Contains(h.titles, want)
		h.mu.Unlock()
		if found {
			return
		}
		select {
		case <-h.more:
		case <-limit:
			t.Fatalf("%q never came; %q did", want, h.titles)
		}
	}
}

func TestListenersAreToldAfterTheCommit(t *testing.T) {
	f := mustCreate(t, kitchen())
	other := mustOpen(t, f.Path(), "Ben")
	var inFile, inNow string
	stop := f.Listen(func(s Snapshot) {
		inNow = title(f.Now().P)
		_ = other.db.QueryRow("SELECT title FROM production").Scan(&inFile)
	})
	mustEdit(t, f, "Call it", setTitle("else"))
	if inFile != "else" || inNow != "else" {
		t.Errorf("when told, the file held %q and the snapshot %q", inFile, inNow)
	}
	stop()
	mustEdit(t, f, "Call it", setTitle("more"))
	if inNow != "else" {
		t.Error("told after stop")
	}
}

func TestListenerMayEdit(t *testing.T) {
	f := mustCreate(t, kitchen())
	h := hear(f)
	f.Listen(func(s Snapshot) {
		if title(s.P) == "first" {
			mustEdit(t, f, "Answer", setTitle("second"))
		}
	})
	mustEdit(t, f, "Call it", setTitle("first"))
	if !slices.Equal(h.titles, []string{"first", "second"}) {
		t.Errorf("heard %q", h.titles)
	}
}

func TestEditsElsewhereAreHeard(t *testing.T) {
	f := mustCreate(t, kitchen())
	window := mustOpen(t, f.Path(), "Ada")
	h := hear(window)
	mustEdit(t, f, "Call it", setTitle("from the other window"))
	h.wait(t, "from the other window")
	if label, ok := window.UndoLabel(); !ok || label != "Call it" {
		t.Errorf("the other window of the same person offers to undo %q", label)
	}
	mustExec(t, f.Path(), "UPDATE production SET title = 'from another program'")
	h.wait(t, "from another program")
}

// Nobody is told of what was not saved, not even a look at the file later.
func TestRefusedEditsTellNobody(t *testing.T) {
	f := mustCreate(t, kitchen())
	base := f.Now()
	mustEdit(t, f, "Call it", setTitle("else"))
	h := hear(f)
	if edit(f, base, "Clash", setTitle("mine")) == nil {
		t.Fatal("no conflict")
	}
	wantError(t, edit(f, f.Now(), "Spend", func(p *prep.Production) { p.Settings.BudgetCents = -1 }), Invalid, "budget")
	f.look(context.Background())
	f.stale = true // as after a COMMIT that failed
	f.look(context.Background())
	if len(h.titles) != 0 {
		t.Errorf("told of %q", h.titles)
	}
}

// A stale window's edit is merged before it has heard of the other's.
func TestEditOnWhatHasNotBeenHeardYet(t *testing.T) {
	f := mustCreate(t, kitchen())
	window := mustOpen(t, f.Path(), "Ben")
	h := hear(window)
	mustEdit(t, f, "Call it", setTitle("else"))
	mustEdit(t, window, "Add", func(p *prep.Production) { p.Settings.Company = "The Company" })
	p := window.Now().P
	if title(p) != "else" || p.Settings.Company != "The Company" {
		t.Errorf("got %q by %q", title(p), p.Settings.Company)
	}
	h.wait(t, "else")
}

// Many goroutines on two handles: nothing is lost, nothing is told out of order.
func TestEditsFromManySides(t *testing.T) {
	f := mustCreate(t, kitchen())
	handles := []*File{f, mustOpen(t, f.Path(), "Ben")}
	h := hear(f)
	var wait sync.WaitGroup
	for i := range 4 {
		wait.Go(func() {
			g := handles[i%2]
			for n := range 5 {
				id := plan.SceneID([]byte{'a' + byte(i), '0' + byte(n)})
				err := g.Edit(context.Background(), g.Now(), "Add a scene", func(p *prep.Production) error {
					p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: id})
					return nil
				})
				if err != nil {
					t.Error(err)
				}
				g.UndoLabel()
			}
		})
	}
	wait.Wait()
	if got := len(mustOpen(t, f.Path(), "Cy").Now().P.Plan.Scenes); got != 22 {
		t.Errorf("%d scenes, want 22", got)
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	if !slices.IsSorted(h.seqs) {
		t.Errorf("told in the order %v", h.seqs)
	}
}
