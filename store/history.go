package store

import (
	"context"

	"github.com/google/uuid"
)

// history is what one person can undo and redo in a file, made from the journal
// alone, so that it is the same in every window of that person and after a
// restart: undo takes back the person's own latest change that still stands, and
// redo brings back the latest that the person has undone, until the person makes
// another edit. What others do stays in between, and is merged with.
type history struct {
	undo, redo []Entry // the next one last
	seq        int64   // the last journal row taken in
}

// add takes in the next row of the journal.
func (h *history) add(e Entry, who string) {
	h.seq = e.Seq
	if e.Who != who {
		return
	}
	switch {
	case e.Kind == Edited && e.Rows == 0:
		// A remark, such as that the file was salvaged.
	case e.Kind == Edited:
		h.undo, h.redo = append(h.undo, e), nil
	case e.Kind == Undone:
		h.undo, h.redo = without(h.undo, e.Of), append(h.redo, e)
	case e.Kind == Redone:
		h.redo, h.undo = without(h.redo, e.Of), append(h.undo, e)
	}
}

// without drops the entry with the identifier from the end of a stack.
func without(stack []Entry, id string) []Entry {
	if n := len(stack); n > 0 && stack[n-1].ID == id {
		return stack[:n-1]
	}
	return stack
}

// read takes in what has been added to the journal and returns its last row's
// number.
func (h *history) read(ctx context.Context, q querier, who string) (int64, error) {
	entries, err := readEntries(ctx, q, "WHERE seq > ? ORDER BY seq", h.seq)
	if err != nil {
		return 0, err
	}
	for _, e := range entries {
		h.add(e, who)
	}
	return h.seq, nil
}

func last(stack []Entry) (Entry, bool) {
	if len(stack) == 0 {
		return Entry{}, false
	}
	return stack[len(stack)-1], true
}

// UndoLabel returns what Undo would take back; false when there is nothing.
func (f *File) UndoLabel() (string, bool) {
	f.writing.Lock()
	defer f.writing.Unlock()
	e, ok := last(f.history.undo)
	return e.Label, ok
}

// RedoLabel returns what Redo would bring back; false when there is nothing.
func (f *File) RedoLabel() (string, bool) {
	f.writing.Lock()
	defer f.writing.Unlock()
	e, ok := last(f.history.redo)
	return e.Label, ok
}

// Undo takes back the latest change in the file that this person made and that
// still stands, whichever window made it and before or after a restart. It is a
// change like any other: a column that somebody else has changed since makes it
// a *Conflict, which Force can settle. It returns the label of what was undone;
// with nothing to undo, an *Error with code NotFound.
func (f *File) Undo(ctx context.Context) (label string, err error) {
	return f.step(ctx, Undone, func() (Entry, bool) { return last(f.history.undo) })
}

// Redo brings back the latest change that this person has undone, if the person
// has made no other edit since. It is merged as Undo is.
func (f *File) Redo(ctx context.Context) (label string, err error) {
	return f.step(ctx, Redone, func() (Entry, bool) { return last(f.history.redo) })
}

// step runs a row of the journal backwards. Which one is decided inside the
// transaction, when the journal can no longer grow.
func (f *File) step(ctx context.Context, kind Kind, top func() (Entry, bool)) (label string, err error) {
	err = f.commit(ctx, string(kind), func() (pending, bool, error) {
		e, ok := top()
		if !ok {
			return pending{}, false, fail(NotFound, nil, "There is nothing to %s.", kind)
		}
		label = e.Label
		changes, err := readJournalChanges(ctx, f.conn, e.ID)
		return pending{
			id: uuid.NewString(), who: f.who, label: e.Label, at: f.clock(), kind: kind, of: e.ID, changes: inverse(changes),
		}, false, err
	})
	if err != nil {
		return "", err
	}
	return label, nil
}
