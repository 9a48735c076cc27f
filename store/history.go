package store

import (
	"context"
	"slices"
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

// without drops the entry with the identifier from a stack. It is the last one,
// unless the same person has worked on two machines.
func without(stack []Entry, id string) []Entry {
	return slices.DeleteFunc(stack, func(e Entry) bool { return e.ID == id })
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

// next returns what can be undone and redone next; nil for nothing.
func (h *history) next() (undo, redo *Entry) {
	if n := len(h.undo); n > 0 {
		e := h.undo[n-1]
		undo = &e
	}
	if n := len(h.redo); n > 0 {
		e := h.redo[n-1]
		redo = &e
	}
	return undo, redo
}

// offers tells whether the entry is still to be undone or redone.
func (h *history) offers(id string) bool {
	is := func(e Entry) bool { return e.ID == id }
	return slices.ContainsFunc(h.undo, is) || slices.ContainsFunc(h.redo, is)
}

// UndoLabel returns what Undo would take back; false when there is nothing. It
// belongs to the state that Now shows, and never waits.
func (f *File) UndoLabel() (string, bool) { return labelOf(f.Now().undo) }

// RedoLabel returns what Redo would bring back; false when there is nothing.
func (f *File) RedoLabel() (string, bool) { return labelOf(f.Now().redo) }

func labelOf(e *Entry) (string, bool) {
	if e == nil {
		return "", false
	}
	return e.Label, true
}

// Undo takes back the latest change in the file that this person made and that
// still stands, whichever window made it and before or after a restart. It is a
// change like any other: a column that somebody else has changed since makes it
// a *Conflict, which Force can settle. It returns the label of what was undone;
// with nothing to undo, an *Error with code NotFound.
func (f *File) Undo(ctx context.Context) (label string, err error) {
	return f.step(ctx, Undone, func() *Entry { undo, _ := f.history.next(); return undo })
}

// Redo brings back the latest change that this person has undone, if the person
// has made no other edit since. It is merged as Undo is.
func (f *File) Redo(ctx context.Context) (label string, err error) {
	return f.step(ctx, Redone, func() *Entry { _, redo := f.history.next(); return redo })
}

// step runs a row of the journal backwards. Which one is decided inside the
// transaction, when the journal can no longer grow.
func (f *File) step(ctx context.Context, kind Kind, next func() *Entry) (label string, err error) {
	err = f.commit(ctx, string(kind), func() (pending, error) {
		e := next()
		if e == nil {
			return pending{}, fail(NotFound, nil, "There is nothing to %s.", kind)
		}
		changes, err := readJournalChanges(ctx, f.conn, e.ID)
		edit := f.named(e.Label)
		edit.kind, edit.of, edit.changes = kind, e.ID, inverse(changes)
		label = e.Label
		return edit, err
	})
	if err != nil {
		return "", err
	}
	return label, nil
}
