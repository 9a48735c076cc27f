package store

import (
	"context"
	"database/sql"
	"fmt"
	"strings"
)

// querier is what a connection and a pool have in common.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// load reads every table.
func load(ctx context.Context, q querier) (rows, error) {
	out := make(rows, len(tables))
	for _, t := range tables {
		s, err := t.load(ctx, q)
		if err != nil {
			return nil, fmt.Errorf("read table %s: %w", t.name, err)
		}
		out[t.name] = s
	}
	return out, nil
}

func (s *shape) load(ctx context.Context, q querier) (sheet, error) {
	lists, err := s.loadCorners(ctx, q)
	if err != nil {
		return nil, err
	}
	found, err := q.QueryContext(ctx, "SELECT "+s.selected(Version)+" FROM "+s.name)
	if err != nil {
		return nil, err
	}
	defer found.Close()
	out := sheet{}
	for found.Next() {
		rec, err := s.scan(found)
		if err != nil {
			return nil, err
		}
		key := s.joinKey(rec.cells)
		s.setCorners(rec, lists[key])
		out[key] = rec
	}
	return out, found.Err()
}

// selected lists the columns of a row as a file of the version has them: an empty
// text where its corners will be, nothing where a later version brought the column,
// and seq last.
func (s *shape) selected(version int64) string {
	names := make([]string, 0, len(s.columns)+1)
	for i, c := range s.columns {
		switch {
		case s.kinds[i] == isCorners:
			c = "''"
		case version < since[s.name+"."+c]:
			c = nothing[s.kinds[i]]
		}
		names = append(names, c)
	}
	if s.single {
		return strings.Join(append(names, "0.0"), ", ")
	}
	return strings.Join(append(names, seqColumn), ", ")
}

// nothing is how SQL writes the value that shape.empty gives a column of the kind.
var nothing = map[kind]string{isText: "''", isRef: "NULL", isWhole: "0", isReal: "0.0"}

func (s *shape) scan(found *sql.Rows) (record, error) {
	rec := record{cells: make([]any, len(s.columns))}
	into := make([]any, len(rec.cells)+1)
	for i := range rec.cells {
		into[i] = &rec.cells[i]
	}
	into[len(rec.cells)] = &rec.seq
	if err := found.Scan(into...); err != nil {
		return rec, err
	}
	for i, v := range rec.cells {
		if b, ok := v.([]byte); ok {
			rec.cells[i] = string(b)
		}
	}
	return rec, nil
}

func (s *shape) setCorners(rec record, list []byte) {
	for i, k := range s.kinds {
		if k == isCorners {
			rec.cells[i] = cornerList(list)
		}
	}
}

// loadCorners returns the corners of every list by the key of its row.
func (s *shape) loadCorners(ctx context.Context, q querier) (map[string][]byte, error) {
	if s.corners == nil {
		return nil, nil
	}
	keys := strings.Join(s.corners.keys, ", ")
	found, err := q.QueryContext(ctx, fmt.Sprintf("SELECT %s, %s FROM %s ORDER BY %s, seq",
		keys, strings.Join(s.corners.columns[:], ", "), s.corners.table, keys))
	if err != nil {
		return nil, err
	}
	defer found.Close()
	key := make([]string, s.keys)
	var row [3]float64
	into := []any{}
	for i := range key {
		into = append(into, &key[i])
	}
	for i := range row {
		into = append(into, &row[i])
	}
	lists := map[string][]byte{}
	for found.Next() {
		if err := found.Scan(into...); err != nil {
			return nil, err
		}
		k := joined(key)
		lists[k] = appendCorner(lists[k], row)
	}
	return lists, found.Err()
}
