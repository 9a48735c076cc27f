package store

import (
	"context"
	"database/sql"
	"os"
	"path/filepath"

	"groundrow/prep"
)

// Extension is how production files end.
const Extension = ".groundrow"

// Look reads what a production file holds and leaves the file as it is, also one of
// an earlier version or one that is open elsewhere: the reading is done from a copy.
func Look(ctx context.Context, path string) (*prep.Production, error) {
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
	folder, err := os.MkdirTemp("", "groundrow-look-*")
	if err != nil {
		return nil, trouble("read "+filepath.Base(path), err)
	}
	defer os.RemoveAll(folder)
	copied := filepath.Join(folder, filepath.Base(path))
	dsn := stillDSN(path)
	if info, err := os.Stat(path + "-wal"); err == nil && info.Size() > 0 {
		dsn = lookDSN(path) // what others have saved last is in the log
	}
	err = inspect(path, dsn, func(db *sql.DB) error {
		_, err := db.ExecContext(ctx, "VACUUM INTO ?", copied)
		return err
	})
	if err != nil {
		return nil, trouble("read "+filepath.Base(path), err)
	}
	f, err := Open(ctx, copied, "")
	if err != nil {
		return nil, err
	}
	return f.Now().P, f.Close()
}
