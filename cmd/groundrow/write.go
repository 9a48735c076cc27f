package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"unicode"
)

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
