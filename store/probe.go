package store

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"strings"
)

// editDSN opens a file for work. The pragmas are in the name, because every new
// connection of the pool must have them. Every edit is on the disk when it shows
// (synchronous FULL).
func editDSN(path string) string {
	return fileDSN(path, "_foreign_keys=on&_txlock=immediate&_journal_mode=WAL&_busy_timeout=5000&_synchronous=FULL&_stmt_cache_size=64")
}

// lookDSN opens a file so that nothing is written. Without a write-ahead log
// nobody has it open, and not even a lock is needed.
func lookDSN(path string) (dsn string, still bool) {
	if info, err := os.Stat(path + "-wal"); err != nil || info.Size() == 0 {
		return fileDSN(path, "immutable=1&mode=ro"), true
	}
	return fileDSN(path, "mode=ro&_busy_timeout=5000"), false
}

func fileDSN(path, options string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: options, OmitHost: true}).String()
}

// header is what the first hundred bytes of a SQLite file say.
// Offsets: https://www.sqlite.org/fileformat.html, section 1.3.
type header struct {
	application uint32
	version     uint32
}

var magic = []byte("SQLite format 3\x00")

// readHeader looks at a file without SQLite, so that a foreign or newer one is
// not touched in any way.
func readHeader(path string) (h header, err error) {
	f, err := os.Open(path)
	if err != nil {
		return h, trouble("open "+filepath.Base(path), err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return h, trouble("open "+filepath.Base(path), err)
	}
	if info.IsDir() {
		return h, fail(Foreign, nil, "%s is a folder. Choose a production file.", filepath.Base(path))
	}
	b := make([]byte, 100)
	n, err := io.ReadFull(f, b)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return h, trouble("read "+filepath.Base(path), err)
	}
	switch {
	case n == 0:
		return h, fail(Foreign, nil, "%s is empty. Choose a production file, or make a new one under another name.", filepath.Base(path))
	case !bytes.HasPrefix(b, magic):
		return h, fail(Foreign, nil, "%s is not a production file.", filepath.Base(path))
	case n < len(b):
		return h, damaged(path, io.ErrUnexpectedEOF)
	}
	return header{application: binary.BigEndian.Uint32(b[68:]), version: binary.BigEndian.Uint32(b[60:])}, nil
}

func damaged(path string, cause error) error {
	return fail(Damaged, cause, "%s is damaged. It has not been touched; salvage what can be read into a new file.", filepath.Base(path))
}

// recognise refuses what is not a production file of this version or an earlier
// one.
func (h header) recognise(path string) error {
	switch {
	case h.application != applicationID:
		return fail(Foreign, nil, "%s belongs to another program. Choose a production file.", filepath.Base(path))
	case h.version > Version:
		return fail(Newer, nil, "%s was written by a later version of this program (file version %d, this program knows %d). It has not been touched; open it with the later version.",
			filepath.Base(path), h.version, Version)
	}
	return nil
}

// probe looks through the whole file without writing, and refuses what is
// foreign, newer or damaged.
func probe(ctx context.Context, path string) error {
	h, err := readHeader(path)
	if err != nil {
		return err
	}
	if err := h.recognise(path); err != nil {
		return err
	}
	dsn, _ := lookDSN(path)
	db, err := sql.Open("sqlite3", dsn)
	if err != nil {
		return trouble("open "+filepath.Base(path), err)
	}
	defer db.Close()
	return check(ctx, db, path)
}

// check looks at the version again, which may be newer in the write-ahead log,
// and runs SQLite's own check of the file's structure.
func check(ctx context.Context, q querier, path string) error {
	application, err := pragma(ctx, q, "application_id")
	if err != nil {
		return unreadable(path, err)
	}
	version, err := pragma(ctx, q, "user_version")
	if err != nil {
		return unreadable(path, err)
	}
	if err := (header{application: uint32(application), version: uint32(version)}).recognise(path); err != nil {
		return err
	}
	var said string
	if err := q.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&said); err != nil {
		return unreadable(path, err)
	}
	if said != "ok" {
		return damaged(path, fmt.Errorf("quick_check: %s", said))
	}
	return nil
}

// unreadable tells damage from other trouble. The header has been recognised, so
// that "not a database" is damage as well.
func unreadable(path string, err error) error {
	err = trouble("check "+filepath.Base(path), err)
	if code := CodeOf(err); code == Damaged || code == Foreign {
		return damaged(path, err)
	}
	return err
}
