package store

import (
	"context"
	"errors"
	"strconv"
	"strings"
	"testing"

	"github.com/mattn/go-sqlite3"

	"groundrow/prep"
)

// A disk without room is played by a limit on the file's pages.
func TestDiskFull(t *testing.T) {
	f := mustCreate(t, kitchen())
	mustEdit(t, f, "Call it", setTitle("kept"))
	h := hear(f)
	before := f.Now()
	pages, err := pragma(context.Background(), f.conn, "page_count")
	if err != nil {
		t.Fatal(err)
	}
	limit := func(n int64) {
		t.Helper()
		if err := f.conn.QueryRowContext(context.Background(), "PRAGMA max_page_count = "+strconv.FormatInt(n, 10)).Scan(&n); err != nil {
			t.Fatal(err)
		}
	}
	limit(pages)
	long := func(p *prep.Production) { p.Settings.Contact = strings.Repeat("A long letter. ", 10_000) }
	err = edit(f, before, "Write a letter", long)
	wantError(t, err, Full, "disk is full")
	if e, ok := errors.AsType[sqlite3.Error](err); !ok || e.Code != sqlite3.ErrFull {
		t.Errorf("the cause %v is not SQLite's", errors.Unwrap(err))
	}
	if f.Now().Seq != before.Seq || len(h.titles) != 0 {
		t.Error("somebody was told of the edit that failed")
	}
	if d := alike(before.P, mustOpen(t, f.Path(), "Ben").Now().P); d != "" {
		t.Errorf("the file has changed\n%s", d)
	}
	limit(1 << 30)
	if err := edit(f, before, "Write a letter", long); err != nil {
		t.Errorf("with room again: %v", err)
	}
	mustUndo(t, f, "Write a letter")
	mustUndo(t, f, "Call it")
}

func TestFileHeldByAnother(t *testing.T) {
	f := mustCreate(t, kitchen())
	other := mustOpen(t, f.Path(), "Ben")
	if _, err := f.conn.ExecContext(context.Background(), "PRAGMA busy_timeout = 10"); err != nil {
		t.Fatal(err)
	}
	if _, err := other.conn.ExecContext(context.Background(), "BEGIN IMMEDIATE"); err != nil {
		t.Fatal(err)
	}
	wantError(t, edit(f, f.Now(), "Call it", setTitle("else")), InUse, "another program")
	if _, err := other.conn.ExecContext(context.Background(), "ROLLBACK"); err != nil {
		t.Fatal(err)
	}
	mustEdit(t, f, "Call it", setTitle("else"))
}

func TestEditThatIsCalledOff(t *testing.T) {
	f := mustCreate(t, kitchen())
	ctx, cancel := context.WithCancel(context.Background())
	err := f.Edit(ctx, f.Now(), "Call it", func(p *prep.Production) error {
		p.Settings.Title = "else"
		cancel()
		return nil
	})
	if !errors.Is(err, context.Canceled) || title(f.Now().P) != "The Lamp" {
		t.Errorf("got %v and the title %q", err, title(f.Now().P))
	}
	mustEdit(t, f, "Call it", setTitle("after all"))
}
