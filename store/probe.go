package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"github.com/mattn/go-sqlite3"
)

// A file is only ever opened through SQLite: on Unix, closing any other handle on
// it would drop the locks that another window of this process holds.

// editDSN opens a file for work. The pragmas are in the name, because every new
// connection of the pool must have them. Every edit is on the disk when it shows
// (synchronous FULL).
func editDSN(path string) string {
	return fileDSN(path, "_foreign_keys=on&_txlock=immediate&_journal_mode=WAL&_busy_timeout=5000&_synchronous=FULL&_stmt_cache_size=64")
}

// stillDSN opens the file alone, without its log, its locks or anything beside
// it: as if nobody could ever write to it.
func stillDSN(path string) string { return fileDSN(path, "immutable=1&mode=ro") }

// lookDSN opens a file to be read while others may write to it.
func lookDSN(path string) string { return fileDSN(path, "mode=ro&_busy_timeout=5000") }

// hasLog tells whether there is a write-ahead log beside the file, which a
// window that has it open keeps there, and one that was killed leaves behind.
func hasLog(path string) bool {
	_, err := os.Stat(path + "-wal")
	return err == nil
}

func fileDSN(path, options string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: options, OmitHost: true}).String()
}

// probe looks through a whole production file without writing to it, and refuses
// one that is newer or damaged.
func probe(ctx context.Context, path string) error {
	dsn := stillDSN(path)
	if hasLog(path) {
		dsn = lookDSN(path)
	}
	return inspect(path, dsn, func(db *sql.DB) error {
		if err := recognise(ctx, db, path); err != nil {
			return err
		}
		return check(ctx, db, path)
	})
}

// identify looks at what the path is and at the file's own first page. What it
// passes is a production file that may be opened.
func identify(ctx context.Context, path string) error {
	name := filepath.Base(path)
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return trouble("open "+name, err)
	case info.IsDir():
		return fail(Foreign, nil, "%s is a folder. Choose a production file.", name)
	case info.Size() == 0:
		return fail(Foreign, nil, "%s is empty. Choose a production file, or make a new one under another name.", name)
	}
	return inspect(path, stillDSN(path), func(db *sql.DB) error { return recognise(ctx, db, path) })
}

// inspect opens a file for one look.
func inspect(path, dsn string, look func(*sql.DB) error) error {
	db, err := sql.Open("sqlite3", dsn)
	if err != nil {
		return trouble("open "+filepath.Base(path), err)
	}
	defer db.Close()
	return look(db)
}

// recognise refuses what is not a production file of this version or an earlier
// one.
func recognise(ctx context.Context, q querier, path string) error {
	name := filepath.Base(path)
	application, err := pragma(ctx, q, "application_id")
	if e, ok := errors.AsType[sqlite3.Error](err); ok && e.Code == sqlite3.ErrNotADB {
		return fail(Foreign, err, "%s is not a production file.", name)
	}
	if err != nil {
		return unreadable(path, err)
	}
	if application != applicationID {
		return fail(Foreign, nil, "%s belongs to another program. Choose a production file.", name)
	}
	version, err := pragma(ctx, q, "user_version")
	if err != nil {
		return unreadable(path, err)
	}
	if version > Version {
		return fail(Newer, nil, "%s was written by a later version of this program (file version %d, this program knows %d). It has not been touched; open it with the later version.",
			name, version, Version)
	}
	return nil
}

// check runs SQLite's own check of the file's structure.
func check(ctx context.Context, q querier, path string) error {
	var said string
	if err := q.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&said); err != nil {
		return unreadable(path, err)
	}
	if said != "ok" {
		return damaged(path, fmt.Errorf("quick_check: %s", said))
	}
	return nil
}

func damaged(path string, cause error) error {
	return fail(Damaged, cause, "%s is damaged. It has not been touched; salvage what can be read into a new file.", filepath.Base(path))
}

// unreadable tells damage from other trouble.
func unreadable(path string, err error) error {
	err = trouble("check "+filepath.Base(path), err)
	if code := CodeOf(err); code == Damaged || code == Foreign {
		return damaged(path, err)
	}
	return err
}
