package store

import (
	"context"
	"encoding/json"
	"fmt"
	"time"
)

// Kind is what sort of change a row of the journal records.
type Kind string

// The kinds.
const (
	Edited Kind = "edit"
	Undone Kind = "undo"
	Redone Kind = "redo"
)

// Entry is one change as the journal lists it.
type Entry struct {
	ID    string // globally unique
	Seq   int64  // grows by the order in which this file took the changes
	Who   string
	When  time.Time
	Label string // what the person did; an undo keeps the label of what it took back
	Kind  Kind
	Of    string // the entry that an undo or redo takes back; empty for an edit
	Rows  int    // how many rows changed
}

// Journal returns the latest changes, newest first; limit 0 returns all.
func (f *File) Journal(ctx context.Context, limit int) ([]Entry, error) {
	if limit <= 0 {
		limit = -1
	}
	entries, err := readEntries(ctx, f.db, "ORDER BY seq DESC LIMIT ?", limit)
	return entries, trouble("read the journal", err)
}

func readEntries(ctx context.Context, q querier, which string, args ...any) ([]Entry, error) {
	found, err := q.QueryContext(ctx, "SELECT seq, id, who, at, label, kind, coalesce(of, ''), rows FROM journal "+which, args...)
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var entries []Entry
	for found.Next() {
		var e Entry
		var at string
		if err := found.Scan(&e.Seq, &e.ID, &e.Who, &at, &e.Label, &e.Kind, &e.Of, &e.Rows); err != nil {
			return nil, err
		}
		if err := moment(&e.When).Scan(at); err != nil {
			return nil, fmt.Errorf("read the time of change %s: %w", e.ID, err)
		}
		entries = append(entries, e)
	}
	return entries, found.Err()
}

// readJournalChanges reads what one entry changed.
func readJournalChanges(ctx context.Context, q querier, id string) ([]change, error) {
	var text string
	if err := q.QueryRowContext(ctx, "SELECT changes FROM journal WHERE id = ?", id).Scan(&text); err != nil {
		return nil, err
	}
	return readChanges(text)
}

// writeJournal adds the row of a change.
func writeJournal(ctx context.Context, x executor, edit pending) (Entry, error) {
	e := Entry{ID: edit.id, Who: edit.who, When: edit.at, Label: edit.label, Kind: edit.kind, Of: edit.of, Rows: len(edit.changes)}
	if edit.changes == nil {
		edit.changes = []change{}
	}
	changes, err := json.Marshal(edit.changes)
	if err != nil {
		return e, fmt.Errorf("write the journal: %w", err)
	}
	at, err := moment(&e.When).Value()
	if err != nil {
		return e, fmt.Errorf("write the journal: %w", err)
	}
	of, err := ref(&e.Of).Value()
	if err != nil {
		return e, fmt.Errorf("write the journal: %w", err)
	}
	result, err := x.ExecContext(ctx, "INSERT INTO journal (id, who, at, label, kind, of, rows, changes) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
		e.ID, e.Who, at, e.Label, string(e.Kind), of, e.Rows, string(changes))
	if err != nil {
		return e, err
	}
	e.Seq, err = result.LastInsertId()
	return e, err
}
