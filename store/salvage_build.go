package store

import (
	"context"
	"database/sql"
	"errors"
	"path/filepath"
)

// create writes what was salvaged to a new file. Rows that the file refuses are
// left out, and with them what depends on them, until the rest is accepted.
func (s *salvage) create(ctx context.Context, to string) error {
	refs, err := schemaReferences(ctx)
	if err != nil {
		return trouble("salvage", err)
	}
	for {
		s.prune(refs)
		refused, err := s.build(ctx, to)
		if refused == nil {
			return trouble("make "+filepath.Base(to), err)
		}
		t, key := tableNamed[refused.Table], joined(refused.Key)
		s.leave("The %s was left out: %v.", s.rows.name(t, key, nil), err)
		delete(s.rows[t.name], key)
	}
}

// build writes the new file, or tells which row it refuses.
func (s *salvage) build(ctx context.Context, to string) (refused *change, err error) {
	if err := reserve(to); err != nil {
		return nil, err
	}
	part := partName(to)
	err = buildFile(ctx, part, func(conn *sql.Conn) error {
		for _, c := range difference(rows{}, s.rows) {
			if err := apply(ctx, conn, []change{c}); err != nil {
				refused = &c
				return err
			}
		}
		for id, b := range s.content {
			if err := (drawingContent{id, b}).write(ctx, conn); err != nil {
				return err
			}
		}
		_, err := writeJournal(ctx, conn, s.note)
		return err
	})
	if err == nil {
		err = settle(part, to)
	}
	if err != nil {
		removeAll(part, part+"-journal", to)
	}
	if CodeOf(trouble("write", err)) != Invalid {
		refused = nil // trouble with the disk, not with the row
	}
	return refused, err
}

// prune makes the rows refer only to what is there: a reference that may be
// empty is emptied, any other takes its row with it.
func (s *salvage) prune(refs []reference) {
	for again := true; again; {
		again = false
		for _, ref := range refs {
			for key, rec := range s.rows[ref.from.name] {
				if s.rows.resolves(ref, key) == nil {
					continue
				}
				name := s.rows.name(ref.from, key, nil)
				if ref.from.kinds[ref.column] == isRef {
					s.leave("The %s has lost its %s.", name, spoken(ref.from.columns[ref.column]))
					rec.cells[ref.column] = nil
					continue
				}
				s.leave("The %s was left out: the %s that it belongs to is lost.", name, ref.to.noun)
				delete(s.rows[ref.from.name], key)
				again = true
			}
		}
	}
}

// schemaReferences reads the foreign keys of this version from an empty file in
// memory.
func schemaReferences(ctx context.Context) (refs []reference, err error) {
	db, err := sql.Open("sqlite3", ":memory:")
	if err != nil {
		return nil, err
	}
	conn, err := db.Conn(ctx)
	if err != nil {
		return nil, errors.Join(err, db.Close())
	}
	if err = migrate(ctx, conn); err == nil {
		refs, err = readReferences(ctx, conn)
	}
	return refs, errors.Join(err, conn.Close(), db.Close())
}
