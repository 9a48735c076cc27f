package store

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// WriteWhole writes a file for another program whole or not at all: what stands
// there is replaced in one step, once everything has been written.
func WriteWhole(path string, write func(io.Writer) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := errors.Join(write(f), f.Chmod(0o644), f.Close()); err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	if err := os.Rename(f.Name(), path); err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}
