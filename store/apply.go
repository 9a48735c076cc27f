package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"
)

// executor is a connection, or a transaction on it.
type executor interface {
	ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
}

// apply writes changes that were made by comparing with what the file holds now.
// Foreign keys are looked at when the transaction ends, so that order is free.
func apply(ctx context.Context, x executor, changes []change) error {
	if _, err := x.ExecContext(ctx, "PRAGMA defer_foreign_keys = ON"); err != nil {
		return err
	}
	for _, c := range changes {
		t := tableNamed[c.Table]
		var err error
		switch {
		case c.After == nil:
			err = t.remove(ctx, x, c.Key)
		case c.Before == nil:
			err = t.insert(ctx, x, c)
		default:
			err = t.update(ctx, x, c)
		}
		if err != nil {
			return fmt.Errorf("write table %s: %w", t.name, err)
		}
	}
	return nil
}

func (s *shape) remove(ctx context.Context, x executor, key []string) error {
	if s.corners != nil {
		if err := s.removeCorners(ctx, x, key); err != nil {
			return err
		}
	}
	_, err := x.ExecContext(ctx, "DELETE FROM "+s.name+where(s.columns[:s.keys]), anys(key)...)
	return err
}

func (s *shape) insert(ctx context.Context, x executor, c change) error {
	names, values := s.plain(c.After)
	marks := strings.TrimSuffix(strings.Repeat("?, ", len(names)), ", ")
	query := fmt.Sprintf("INSERT INTO %s (%s) VALUES (%s)", s.name, strings.Join(names, ", "), marks)
	if _, err := x.ExecContext(ctx, query, values...); err != nil {
		return err
	}
	return s.writeCorners(ctx, x, c)
}

func (s *shape) update(ctx context.Context, x executor, c change) error {
	names, values := s.plain(c.After)
	if len(names) > 0 {
		query := "UPDATE " + s.name + " SET " + strings.Join(names, " = ?, ") + " = ?" + where(s.columns[:s.keys])
		if _, err := x.ExecContext(ctx, query, append(values, anys(c.Key)...)...); err != nil {
			return err
		}
	}
	return s.writeCorners(ctx, x, c)
}

// plain returns the columns of values that are columns of the table itself.
func (s *shape) plain(values map[string]any) (names []string, args []any) {
	for i, c := range s.columns {
		if v, set := values[c]; set && s.kinds[i] != isCorners {
			names, args = append(names, c), append(args, v)
		}
	}
	if v, set := values[seqColumn]; set {
		names, args = append(names, seqColumn), append(args, v)
	}
	return names, args
}

func (s *shape) removeCorners(ctx context.Context, x executor, key []string) error {
	_, err := x.ExecContext(ctx, "DELETE FROM "+s.corners.table+where(s.corners.keys), anys(key)...)
	return err
}

// writeCorners replaces a list of corners, when the change has one.
func (s *shape) writeCorners(ctx context.Context, x executor, c change) error {
	i := slices.Index(s.kinds, isCorners)
	if i < 0 {
		return nil
	}
	list, set := c.After[s.columns[i]]
	if !set {
		return nil
	}
	if err := s.removeCorners(ctx, x, c.Key); err != nil {
		return err
	}
	corners, ok := list.(cornerList)
	if !ok {
		return errCorners
	}
	query := fmt.Sprintf("INSERT INTO %s (%s, seq, %s) VALUES (%s?, ?, ?, ?)", s.corners.table,
		strings.Join(s.corners.keys, ", "), strings.Join(s.corners.columns[:], ", "), strings.Repeat("?, ", s.keys))
	for i := range corners.len() {
		row := corners.corner(i)
		args := append(anys(c.Key), i+1, row[0], row[1], row[2])
		if _, err := x.ExecContext(ctx, query, args...); err != nil {
			return err
		}
	}
	return nil
}

func where(keys []string) string { return " WHERE " + strings.Join(keys, " = ? AND ") + " = ?" }

func anys(key []string) []any {
	args := make([]any, len(key))
	for i, k := range key {
		args[i] = k
	}
	return args
}
