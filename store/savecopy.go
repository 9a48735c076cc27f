package store

import (
	"context"
	"os"
	"path/filepath"
)

// SaveCopy writes the production as it is now, journal and drawings included, to
// one complete file at path. A file of that name is replaced in one step, unless
// it is open somewhere: then, and for the file itself, the copy is refused.
func (f *File) SaveCopy(ctx context.Context, path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return trouble("save the copy", err)
	}
	if err := f.mayReplace(path); err != nil {
		return err
	}
	part := partName(path)
	_, err = f.db.ExecContext(ctx, "VACUUM INTO ?", part)
	if err == nil {
		err = settle(part, path)
	}
	if err != nil {
		removeAll(part, part+"-journal")
	}
	return trouble("save the copy "+filepath.Base(path), err)
}

// mayReplace refuses to put a copy over a file that is in use. A write-ahead log
// beside it would otherwise be taken for the copy's own.
func (f *File) mayReplace(path string) error {
	old, err := os.Stat(path)
	if err != nil {
		return nil // not there, or the rename will tell
	}
	if own, err := os.Stat(f.path); err == nil && os.SameFile(old, own) {
		return fail(Invalid, nil, "%s is the open production itself. Choose another name for the copy.", filepath.Base(path))
	}
	if _, err := os.Stat(path + "-wal"); err == nil {
		return fail(InUse, nil, "%s is open in another window. Close it there, or choose another name for the copy.", filepath.Base(path))
	}
	return nil
}
