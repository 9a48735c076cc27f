package store

import (
	"context"
	"errors"
	"slices"
)

// reference is a column of one table that names a row of another. The schema is
// the only place that says so; SQLite keeps it true, and what is here only finds
// the words for what it would refuse.
type reference struct {
	from   *shape
	column int
	to     *shape
}

// readReferences reads the foreign keys of one column each. Those of corners, of
// two columns, cannot be broken by an edit.
func readReferences(ctx context.Context, q querier) ([]reference, error) {
	var refs []reference
	for _, t := range tables {
		found, err := q.QueryContext(ctx, `SELECT "from", "table" FROM pragma_foreign_key_list(?)`, t.name)
		if err != nil {
			return nil, err
		}
		for found.Next() {
			var column, to string
			if err = found.Scan(&column, &to); err != nil {
				break
			}
			refs = append(refs, reference{t, slices.Index(t.columns, column), tableNamed[to]})
		}
		found.Close()
		if err != nil || found.Err() != nil {
			return nil, errors.Join(err, found.Err())
		}
	}
	return refs, nil
}

// whole looks whether the changes have left something that refers to nothing:
// it names what still refers to a row that went, or what a row that came lacks.
func (r rows) whole(changes []change, refs []reference) error {
	gone := map[*shape]bool{}
	for _, c := range changes {
		t := tableNamed[c.Table]
		if c.After == nil {
			gone[t] = true
			continue
		}
		for _, ref := range refs {
			if ref.from == t {
				if err := r.resolves(ref, joined(c.Key)); err != nil {
					return err
				}
			}
		}
	}
	for _, ref := range refs {
		if !gone[ref.to] {
			continue
		}
		for key := range r[ref.from.name] {
			if err := r.resolves(ref, key); err != nil {
				return err
			}
		}
	}
	return nil
}

// resolves tells whether the row with the key refers to something that is there.
func (r rows) resolves(ref reference, key string) error {
	rec := r[ref.from.name].at(key)
	if rec == nil || rec.cells[ref.column] == nil {
		return nil
	}
	wanted := keyText(rec.cells[ref.column])
	if r[ref.to.name].at(wanted) != nil {
		return nil
	}
	return fail(Invalid, nil, "The %s still refers to a %s (%s) that is not there. Change or remove the one before the other.",
		r.name(ref.from, key, nil), ref.to.noun, wanted)
}
