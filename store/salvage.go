package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/google/uuid"
)

// Report tells what Salvage could and could not read.
type Report struct {
	Tables []Salvaged
	// Left are sentences about single rows that were read and could not be kept:
	// their values made no sense, or what they belong to is gone.
	Left []string
}

// Salvaged is what came out of one table.
type Salvaged struct {
	Table    string
	Rows     int
	Complete bool // false: at least one row could not be read
}

// Complete tells whether nothing was lost but the journal.
func (r Report) Complete() bool {
	for _, t := range r.Tables {
		if !t.Complete {
			return false
		}
	}
	return len(r.Left) == 0
}

// Salvage reads what can be read of a damaged file into a new one at to, which
// must not exist. The damaged file is not written to: the work is done on a copy
// beside the new file. No window may have it open. The journal is not carried
// over: that of the new file begins with the salvage itself, and there is nothing
// to undo.
func Salvage(ctx context.Context, damagedPath, to, who string) (Report, error) {
	s := &salvage{rows: rows{}, content: map[string][]byte{}}
	s.note = pending{id: uuid.NewString(), who: who, at: time.Now(), kind: Edited, label: "Salvage " + filepath.Base(damagedPath)}
	damagedPath, err := filepath.Abs(damagedPath)
	if err != nil {
		return s.report, trouble("find the file", err)
	}
	if err := identify(ctx, damagedPath); err != nil && CodeOf(err) != Damaged {
		return s.report, err
	}
	to, err = filepath.Abs(to)
	if err != nil {
		return s.report, trouble("find the folder", err)
	}
	if _, err := os.Stat(to); !errors.Is(err, fs.ErrNotExist) {
		return s.report, fail(InUse, err, "There is already something named %s. Choose another name.", filepath.Base(to))
	}
	if err := s.readCopy(ctx, damagedPath, partName(to)); err != nil {
		return s.report, trouble("salvage "+filepath.Base(damagedPath), err)
	}
	if s.nothing() {
		return s.report, fail(Damaged, nil, "Nothing in %s can be read any more. Go back to the last copy of it.", filepath.Base(damagedPath))
	}
	return s.report, s.create(ctx, to)
}

// salvage is the work of one call.
type salvage struct {
	report  Report
	rows    rows
	content map[string][]byte // bytes of drawings
	note    pending           // what the journal of the new file begins with
}

func (s *salvage) nothing() bool {
	for _, t := range s.report.Tables {
		if t.Rows > 0 {
			return false
		}
	}
	return true
}

// readCopy reads all tables from a copy of the file and of the log beside it.
func (s *salvage) readCopy(ctx context.Context, from, part string) error {
	defer removeAll(part, part+"-wal", part+"-shm")
	if err := copyFile(from, part); err != nil {
		return err
	}
	if err := copyFile(from+"-wal", part+"-wal"); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	db, err := openDamaged(ctx, part)
	if err != nil {
		return err
	}
	defer db.Close()
	version, err := pragma(ctx, db, "damaged.user_version")
	if err != nil || version == 0 {
		version = Version // it cannot be read: every table may have been there
	}
	for _, t := range tables {
		if err := ctx.Err(); err != nil {
			return err
		}
		s.rows[t.name] = sheet{}
		if version < since[t.name] {
			continue
		}
		s.readTable(ctx, db, t, version)
	}
	s.readContent(ctx, db)
	return nil
}

// openDamaged opens the copy beside an empty database in memory, with the check of
// its list of tables off (writable_schema): a file that was cut off has lost some
// of that list, and SQLite would otherwise refuse to read any of the rest. The
// driver reads the list before it takes such a setting, so the copy is attached
// after it; the names of its tables mean the same either way.
func openDamaged(ctx context.Context, part string) (*sql.DB, error) {
	db, err := sql.Open("sqlite3", ":memory:")
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1) // the attached file belongs to one connection
	for _, step := range []struct {
		statement string
		args      []any
	}{
		{"PRAGMA writable_schema = on", nil},
		{"ATTACH ? AS damaged", []any{part}},
	} {
		if _, err := db.ExecContext(ctx, step.statement, step.args...); err != nil {
			return nil, errors.Join(err, db.Close())
		}
	}
	return db, nil
}

// readTable reads one table and the corners that belong to it.
func (s *salvage) readTable(ctx context.Context, db *sql.DB, t *shape, version int64) {
	lists := map[string][]byte{}
	if t.corners != nil {
		columns := append(append([]string{}, t.corners.keys...), t.corners.columns[:]...)
		for _, cells := range s.readRows(ctx, db, t.corners.table, strings.Join(columns, ", "), len(columns)) {
			var row [3]float64
			for i := range row {
				row[i], _ = cells[t.keys+i].(float64)
			}
			key := t.joinKey(cells)
			lists[key] = appendCorner(lists[key], row)
		}
	}
	for _, cells := range s.readRows(ctx, db, t.name, t.selected(version), len(t.columns)+1) {
		rec := record{cells: cells[:len(t.columns)]}
		rec.seq, _ = cells[len(t.columns)].(float64)
		key := t.joinKey(rec.cells)
		t.setCorners(rec, lists[key])
		if err := t.sound(rec.cells); err != nil {
			s.leave("The %s was left out: %v.", t.title(rec.cells), err)
			continue
		}
		s.rows[t.name][key] = rec
	}
}

func (s *salvage) readContent(ctx context.Context, db *sql.DB) {
	for _, cells := range s.readRows(ctx, db, "drawing_content", "drawing, content", 2) {
		id, known := cells[0].(string)
		if bytes, whole := cells[1].(string); known && whole {
			s.content[id] = []byte(bytes)
		}
	}
}

func (s *salvage) leave(format string, args ...any) {
	s.report.Left = append(s.report.Left, fmt.Sprintf(format, args...))
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}
