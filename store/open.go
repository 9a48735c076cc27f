package store

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/google/uuid"
	_ "github.com/mattn/go-sqlite3" // the database/sql driver

	"groundrow/prep"
)

// Create makes a new production file that holds p (nil: an empty production) and
// opens it. A file that is already there is refused and left as it is. Making the
// file is not in the journal: it cannot be undone.
func Create(ctx context.Context, path, who string, p *prep.Production) (*File, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, trouble("find the folder", err)
	}
	if p == nil {
		p = &prep.Production{}
	}
	all, err := rowsFrom(p, nil)
	if err != nil {
		return nil, err
	}
	if err := reserve(path); err != nil {
		return nil, err
	}
	part := partName(path)
	err = buildFile(ctx, part, func(conn *sql.Conn) error {
		return apply(ctx, conn, difference(rows{}, all))
	})
	if err == nil {
		err = settle(part, path)
	}
	if err != nil {
		removeAll(part, part+"-journal", path)
		return nil, trouble("make "+filepath.Base(path), err)
	}
	return Open(ctx, path, who)
}

// reserve takes the name, so that two windows cannot both make the file.
func reserve(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return fail(InUse, err, "There is already something named %s. Open it, or choose another name.", filepath.Base(path))
	}
	if err != nil {
		return trouble("make "+filepath.Base(path), err)
	}
	return f.Close()
}

// buildFile makes a file with the present schema and fills it in one transaction.
// Nobody knows the file yet: it is put on the disk for good once, at the end.
func buildFile(ctx context.Context, path string, fill func(*sql.Conn) error) error {
	db, err := sql.Open("sqlite3", fileDSN(path, "_foreign_keys=on&_journal_mode=MEMORY&_synchronous=OFF&_stmt_cache_size=64"))
	if err != nil {
		return err
	}
	defer db.Close()
	conn, err := db.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	if err := migrate(ctx, conn); err != nil {
		return err
	}
	return inTransaction(ctx, conn, func() error { return fill(conn) })
}

// Open opens a production file. It is looked through first without writing:
// foreign, newer and damaged files are refused and left untouched. A file that
// may be read but not written is opened for looking only; see ReadOnly.
func Open(ctx context.Context, path, who string) (*File, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, trouble("find the file", err)
	}
	if err := identify(ctx, path); err != nil {
		return nil, err
	}
	if err := probe(ctx, path); err != nil && !cannotWrite(err) {
		return nil, err
	}
	f := &File{path: path, who: who, clock: time.Now}
	err = f.connect(ctx, editDSN(path))
	if cannotWrite(err) {
		f, err = openToLook(ctx, path, who)
	}
	if err != nil {
		return nil, err
	}
	f.watch()
	return f, nil
}

// openToLook opens a file that cannot be written to.
func openToLook(ctx context.Context, path, who string) (*File, error) {
	dsn := lookDSN(path)
	if info, err := os.Stat(path + "-wal"); err != nil || info.Size() == 0 {
		dsn = stillDSN(path) // there is nothing in a log that would be missed
	}
	f := &File{
		path: path, who: who, clock: time.Now,
		readOnly: filepath.Base(path) + " can be looked at but not changed: you may not write to it or to its folder. Save a copy where you may write.",
	}
	return f, f.connect(ctx, dsn)
}

// connect opens the connection that edits go through and reads the file.
func (f *File) connect(ctx context.Context, dsn string) (err error) {
	doing := "open " + filepath.Base(f.path)
	if f.db, err = sql.Open("sqlite3", dsn); err != nil {
		return trouble(doing, err)
	}
	defer func() {
		if err != nil {
			_ = f.db.Close()
		}
	}()
	if f.conn, err = f.db.Conn(ctx); err != nil {
		return trouble(doing, err)
	}
	f.stale = true
	if f.readOnly == "" {
		err = f.prepare(ctx)
	}
	if err == nil {
		f.references, err = readReferences(ctx, f.conn)
	}
	if err == nil {
		err = f.reread(ctx)
	}
	return trouble(doing, err)
}

// prepare finds out whether the file can be written to, and brings it to the
// present version.
func (f *File) prepare(ctx context.Context) error {
	if err := recognise(ctx, f.conn, f.path); err != nil {
		return err
	}
	refused := errors.New("only a trial")
	err := inTransaction(ctx, f.conn, func() error {
		// BEGIN IMMEDIATE alone passes on a file that may only be read.
		if _, err := f.conn.ExecContext(ctx, "PRAGMA user_version = 0"); err != nil {
			return err
		}
		return refused
	})
	if err != refused {
		return err
	}
	return migrate(ctx, f.conn)
}

// reread reads the file in one consistent look. f.writing is held, or nobody
// else has f yet.
func (f *File) reread(ctx context.Context) error {
	if _, err := f.conn.ExecContext(ctx, "BEGIN DEFERRED"); err != nil {
		return err
	}
	err := f.refresh(ctx)
	_, _ = f.conn.ExecContext(context.WithoutCancel(ctx), "ROLLBACK")
	return err
}

// partName names a file beside path that is not finished yet.
func partName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+uuid.NewString()+".part")
}

// settle puts a finished file on the disk for good and gives it its name.
func settle(part, path string) error {
	if err := syncFile(part); err != nil {
		return err
	}
	if err := os.Rename(part, path); err != nil {
		return err
	}
	// Some systems cannot sync a folder; the file itself is safe by now.
	_ = syncFile(filepath.Dir(path))
	return nil
}

func syncFile(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	err = f.Sync()
	return errors.Join(err, f.Close())
}

func removeAll(paths ...string) {
	for _, p := range paths {
		_ = os.Remove(p)
	}
}
