package store

import (
	"context"
	"errors"
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
)

// pending is a change that has been thought out and not yet saved.
type pending struct {
	id, who, label string
	at             time.Time
	kind           Kind
	of             string // the journal row that an undo or redo takes back
	changes        []change
	choice         choice
	mine           rows             // the whole state that the editor wanted; nil from the journal
	content        []drawingContent // saved along with the changes
}

// Edit makes one named change. alter gets its own copy of the production as it
// was in base, and changes it as it likes; an error from it is returned as it is
// and nothing is saved. label is what the person did, as undo will call it:
// "Move the platform".
//
// When Edit returns nil the change is on the disk, Now shows it, and listeners
// have been told or are being told on another goroutine. A *Conflict tells that
// somebody else changed the same column after base was taken; an *Error with code
// Invalid, that the result makes no sense. No difference is no change: nothing is
// written and nobody is told.
func (f *File) Edit(ctx context.Context, base Snapshot, label string, alter func(*prep.Production) error) error {
	edit := f.named(label)
	if err := edit.think(base, alter); err != nil || len(edit.changes) == 0 {
		return err
	}
	return f.save(ctx, edit)
}

// Imagine returns the production as an edit would leave it, and makes no change.
func (s Snapshot) Imagine(alter func(*prep.Production) error) (*prep.Production, error) {
	all, err := s.asRows()
	if err != nil {
		return nil, err
	}
	private, err := all.production()
	if err != nil {
		return nil, err
	}
	return private, alter(private)
}

// named begins an edit by this person, now.
func (f *File) named(label string) pending {
	return pending{id: uuid.NewString(), who: f.who, label: label, at: f.clock(), kind: Edited}
}

// think runs an edit on a copy of base and notes what it did.
func (e *pending) think(base Snapshot, alter func(*prep.Production) error) error {
	before, err := base.asRows()
	if err != nil {
		return err
	}
	private, err := before.production()
	if err != nil {
		return fail(Invalid, err, "“%s” cannot be made: %v.", e.label, err)
	}
	if err := alter(private); err != nil {
		return err
	}
	if e.mine, err = rowsFrom(private, before); err != nil {
		return err
	}
	e.changes = difference(before, e.mine)
	return nil
}

// Force makes the edit of a conflict after all: the person's values over those
// of others where they differ, everything else merged as before. What somebody
// else has removed and the edit needs is brought back.
func (f *File) Force(ctx context.Context, conflict *Conflict) error {
	return f.settle(ctx, conflict, takeMine)
}

// KeepTheirs makes the rest of the edit of a conflict and leaves the values of
// others where they differ. Where the edit would have removed something that
// others have changed, it removes nothing.
func (f *File) KeepTheirs(ctx context.Context, conflict *Conflict) error {
	return f.settle(ctx, conflict, takeTheirs)
}

func (f *File) settle(ctx context.Context, conflict *Conflict, who choice) error {
	edit := conflict.edit
	edit.choice = who
	return f.save(ctx, edit)
}

// save merges a pending change with what the file holds now and commits it.
func (f *File) save(ctx context.Context, edit pending) error {
	return f.commit(ctx, edit.label, func() (pending, error) {
		if edit.kind != Edited && edit.choice != ask && !f.history.offers(edit.of) {
			return edit, fail(Invalid, nil, "“%s” has been undone or redone in another window meanwhile.", edit.label)
		}
		return edit, nil
	})
}

// commit saves the change that next returns once the latest state is known, and
// tells the listeners when it is done.
func (f *File) commit(ctx context.Context, label string, next func() (pending, error)) error {
	f.writing.Lock()
	before := f.now.Load()
	err := f.ready()
	if err == nil {
		err = f.transact(ctx, next)
	}
	if after := f.now.Load(); after != before {
		f.listeners.add(*after)
	}
	f.writing.Unlock()
	f.listeners.deliver()
	if _, clash := errors.AsType[*Conflict](err); clash {
		return err
	}
	return trouble("save “"+label+"”", err)
}

// transact does the work of commit. The new state is published only after the
// file has it.
func (f *File) transact(ctx context.Context, next func() (pending, error)) error {
	var made *Snapshot
	var entry Entry
	err := inTransaction(ctx, f.conn, func() error {
		if err := f.refresh(ctx); err != nil {
			return err
		}
		edit, err := next()
		if err != nil {
			return err
		}
		made, entry, err = f.attempt(ctx, edit)
		return err
	})
	if err != nil {
		// What a failed COMMIT has left behind is read before the next edit.
		f.stale = f.stale || made != nil
		return err
	}
	if made != nil {
		f.history.add(entry, f.who)
		f.publish(made)
	}
	return nil
}

// attempt merges and writes inside the transaction. It returns nil when there is
// nothing to save.
func (f *File) attempt(ctx context.Context, edit pending) (*Snapshot, Entry, error) {
	now := f.Now().rows
	m, err := merge(now, edit, f.references)
	if err != nil {
		return nil, Entry{}, err
	}
	if len(m.conflicts) > 0 {
		return nil, Entry{}, &Conflict{Label: edit.label, Cells: m.conflicts, edit: edit}
	}
	edit.changes = m.changes()
	if len(edit.changes) == 0 && edit.kind == Edited {
		return nil, Entry{}, nil
	}
	if err := m.merged.whole(edit.changes, f.references); err != nil {
		return nil, Entry{}, err
	}
	p, err := m.merged.production()
	if err != nil {
		return nil, Entry{}, fail(Invalid, err, "“%s” cannot be made: %v.", edit.label, err)
	}
	entry, err := write(ctx, f.conn, edit)
	if err != nil {
		return nil, Entry{}, err
	}
	return &Snapshot{P: p, Seq: entry.Seq, rows: m.merged}, entry, nil
}

// write puts a change, what came with it and its row of the journal into the
// file.
func write(ctx context.Context, x executor, edit pending) (Entry, error) {
	if err := apply(ctx, x, edit.changes); err != nil {
		return Entry{}, err
	}
	for _, c := range edit.content {
		if err := c.write(ctx, x); err != nil {
			return Entry{}, err
		}
	}
	return writeJournal(ctx, x, edit)
}
