package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"
)

// writeFile writes a file whole or not at all: what stands there is replaced in
// one step.
func writeFile(path string, write func(io.Writer) error) (err error) {
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

// folder makes the folder that results go to.
func folder(path string) error {
	if path == "" {
		return errors.New("--to is missing: name the folder to write to")
	}
	if err := os.MkdirAll(path, 0o755); err != nil {
		return fmt.Errorf("making the folder %s: %w", path, err)
	}
	return nil
}

// fileName makes a plain file name of a title: letters and figures, and dashes
// between words.
func fileName(title string) string {
	words := strings.FieldsFunc(strings.ToLower(title), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if len(words) == 0 {
		return "untitled"
	}
	return strings.Join(words, "-")
}
