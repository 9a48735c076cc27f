package store

import (
	"context"
	"database/sql"
	"fmt"
	"math"
)

// manyRows bounds the search for single rows between two damaged places.
const manyRows = 20_000

// readRows reads what can be read of one table: from the front until something
// is in the way, from the back until something is in the way, and what lies
// between one by one. It never fails; the report tells whether rows are missing.
func (s *salvage) readRows(ctx context.Context, db *sql.DB, table, columns string, n int) [][]any {
	query := fmt.Sprintf("SELECT rowid, %s FROM %s NOT INDEXED WHERE rowid", columns, table)
	front, first, err := scanRows(ctx, db, query+" > ? ORDER BY rowid", math.MinInt64, n)
	all := front
	if err != nil {
		back, end, _ := scanRows(ctx, db, query+" > ? ORDER BY rowid DESC", first, n)
		if len(back) > 0 {
			for id := first + 1; id < end && id < first+manyRows; id++ {
				one, _, _ := scanRows(ctx, db, query+" = ?", id, n)
				all = append(all, one...)
			}
		}
		for i := range back {
			all = append(all, back[len(back)-1-i])
		}
	}
	s.report.Tables = append(s.report.Tables, Salvaged{Table: table, Rows: len(all), Complete: err == nil})
	return all
}

// scanRows reads rows until the end or the first that cannot be read, and the
// rowid of the last that could.
func scanRows(ctx context.Context, db *sql.DB, query string, from int64, n int) (all [][]any, last int64, err error) {
	last = from
	found, err := db.QueryContext(ctx, query, from)
	if err != nil {
		return nil, last, err
	}
	defer found.Close()
	for found.Next() {
		cells := make([]any, n)
		into := []any{&last}
		for i := range cells {
			into = append(into, &cells[i])
		}
		if err := found.Scan(into...); err != nil {
			return all, last, err
		}
		for i, v := range cells {
			if b, ok := v.([]byte); ok {
				cells[i] = string(b)
			}
		}
		all = append(all, cells)
	}
	return all, last, found.Err()
}
