// Package store keeps a production in one file, and is the only way to change it.
//
// The file is SQLite with a table for every kind of row. In memory a production
// is one plain value, prep.Production; an edit is a function from one such value
// to the next. The store compares the two row by row and column by column, writes
// what differs and one row of the journal in a single transaction, and hands the
// new value to every listener. An edit made on an older value is merged with what
// others have saved meanwhile; where the same column has changed it is refused as
// a Conflict that carries both values.
//
// Numbers come back bit for bit, except that minus zero becomes zero. Times come
// back as the same instant with the same offset from UTC.
package store

import (
	"context"
	"database/sql"
	"path/filepath"
	"sync"
	"sync/atomic"
	"time"

	"groundrow/prep"
)

// File is an open production file. Its methods may be called from any goroutine.
type File struct {
	path, who string
	readOnly  string // why it cannot be changed; empty when it can
	db        *sql.DB
	clock     func() time.Time

	now atomic.Pointer[Snapshot]

	writing    sync.Mutex // guards what follows, one transaction at a time
	conn       *sql.Conn
	version    int64 // PRAGMA data_version that the snapshot was read at
	stale      bool  // the snapshot must be read again whatever the version says
	history    history
	references []reference
	closed     bool

	listeners listeners
	stop      func() // ends watching and waits for it
}

// Snapshot is the production at one moment.
type Snapshot struct {
	// P is shared by everybody who holds the snapshot: never change it.
	P *prep.Production
	// Seq is the number of the journal's last row; it grows with every change.
	Seq int64

	rows       rows   // P as rows; nil when the snapshot was put together by hand
	undo, redo *Entry // what can be undone and redone next; nil for nothing
}

// asRows returns the rows that an edit of the snapshot starts from.
func (s Snapshot) asRows() (rows, error) {
	if s.rows != nil {
		return s.rows, nil
	}
	return rowsFrom(s.P, nil)
}

// Now returns the latest snapshot. It never waits.
func (f *File) Now() Snapshot { return *f.now.Load() }

// Path returns the absolute path of the file.
func (f *File) Path() string { return f.path }

// Who returns the name under which edits are written to the journal.
func (f *File) Who() string { return f.who }

// ReadOnly tells whether the file can only be looked at, and why, as a sentence.
func (f *File) ReadOnly() (bool, string) { return f.readOnly != "", f.readOnly }

// Close ends watching and closes the file. Every edit is saved already. After it
// only Now, Path, Who and ReadOnly may be called; the others return an error. A
// listener must not call it: it waits for the call that is under way.
func (f *File) Close() error {
	f.stop()
	f.writing.Lock()
	defer f.writing.Unlock()
	if f.closed {
		return nil
	}
	f.closed = true
	_ = f.conn.Close()
	return trouble("close "+filepath.Base(f.path), f.db.Close())
}

// ready refuses work on a file that cannot be changed. f.writing is held.
func (f *File) ready() error {
	if f.closed {
		return fail(Closed, nil, "%s has been closed. Open it again.", filepath.Base(f.path))
	}
	if f.readOnly != "" {
		return fail(ReadOnly, nil, "%s", f.readOnly)
	}
	return nil
}

// refresh reads the file again if another connection has written to it, inside
// a transaction on f.conn with f.writing held.
func (f *File) refresh(ctx context.Context) error {
	version, err := pragma(ctx, f.conn, "data_version")
	if err != nil {
		return err
	}
	if version == f.version && !f.stale {
		return nil
	}
	all, err := load(ctx, f.conn)
	if err != nil {
		return err
	}
	p, err := all.production()
	if err != nil {
		return damaged(f.path, err)
	}
	seq, err := f.history.read(ctx, f.conn, f.who)
	if err != nil {
		return err
	}
	f.version, f.stale = version, false
	if old := f.now.Load(); old != nil && old.Seq == seq && len(difference(old.rows, all)) == 0 {
		return nil
	}
	f.publish(&Snapshot{P: p, Seq: seq, rows: all})
	return nil
}

// publish makes a snapshot the latest. f.writing is held.
func (f *File) publish(s *Snapshot) {
	s.undo, s.redo = f.history.next()
	f.now.Store(s)
}
