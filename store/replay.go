package store

import (
	"context"
	"encoding/json"
	"fmt"
)

// Record is one change of the journal with all that another copy of the file
// needs to make it too. The bytes of drawings are not in it: they never change,
// and travel by their identifier.
type Record struct {
	Entry
	Changes json.RawMessage
}

// Records returns the changes after the one numbered seq, oldest first.
func (f *File) Records(ctx context.Context, seq int64) ([]Record, error) {
	entries, err := readEntries(ctx, f.db, "WHERE seq > ? ORDER BY seq", seq)
	if err != nil {
		return nil, trouble("read the journal", err)
	}
	records := make([]Record, len(entries))
	for i, e := range entries {
		records[i].Entry = e
		var text string
		if err := f.db.QueryRowContext(ctx, "SELECT changes FROM journal WHERE id = ?", e.ID).Scan(&text); err != nil {
			return nil, trouble("read the journal", err)
		}
		records[i].Changes = json.RawMessage(text)
	}
	return records, nil
}

// Apply makes a change that was recorded on another copy of the file, under its
// own identifier, name and time. Applied in order to a copy of the state that
// they began from, records give the same tables bit for bit. A record that the
// file already has is no change. What has changed here as well is a *Conflict.
func (f *File) Apply(ctx context.Context, r Record) error {
	var have int
	if err := f.db.QueryRowContext(ctx, "SELECT count(*) FROM journal WHERE id = ?", r.ID).Scan(&have); err != nil {
		return trouble("read the journal", err)
	}
	if have > 0 {
		return nil
	}
	changes, err := readChanges(string(r.Changes))
	if err != nil {
		return fail(Invalid, err, "The change “%s” cannot be made here: %v.", r.Label, err)
	}
	if r.Kind != Edited && r.Of == "" {
		err := fmt.Errorf("an %s that takes back nothing", r.Kind)
		return fail(Invalid, err, "The change “%s” cannot be made here: %v.", r.Label, err)
	}
	edit := pending{id: r.ID, who: r.Who, label: r.Label, at: r.When, kind: r.Kind, of: r.Of, changes: changes}
	return f.save(ctx, edit)
}
