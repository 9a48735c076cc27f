package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/mattn/go-sqlite3"
)

// Code says what kind of trouble an Error is, for a program to act on.
type Code string

// The codes.
const (
	NotFound Code = "not found" // no such file, row or drawing
	Foreign  Code = "foreign"   // something that is not a production file
	Newer    Code = "newer"     // written by a later version of the program
	Damaged  Code = "damaged"   // a production file that cannot be trusted
	InUse    Code = "in use"    // held by another program for too long, or already there
	ReadOnly Code = "read only" // may be read, may not be changed
	Full     Code = "full"      // no room left on the disk
	Disk     Code = "disk"      // the disk did not do what it was asked
	Invalid  Code = "invalid"   // the change makes no sense
	Closed   Code = "closed"    // the file has been closed
)

// Error is trouble with a production file. Its text is a sentence for people
// that says what was wrong and what to do.
type Error struct {
	Code     Code
	Sentence string
	Cause    error // nil when there is none to tell
}

func (e *Error) Error() string { return e.Sentence }

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }

// CodeOf returns the code of err, or "" when it is not an Error of this package.
func CodeOf(err error) Code {
	if e, ok := errors.AsType[*Error](err); ok {
		return e.Code
	}
	return ""
}

func fail(code Code, cause error, format string, args ...any) error {
	return &Error{Code: code, Sentence: fmt.Sprintf(format, args...), Cause: cause}
}

// trouble turns an error of the database or the file system into an Error. doing
// is what was attempted, as in "save the change".
func trouble(doing string, err error) error {
	if err == nil {
		return nil
	}
	if _, ok := errors.AsType[*Error](err); ok {
		return err
	}
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return fmt.Errorf("%s: %w", doing, err)
	}
	if e, ok := errors.AsType[sqlite3.Error](err); ok {
		return databaseTrouble(doing, e)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fail(NotFound, err, "Could not %s: there is no such file or folder. Look where it has gone.", doing)
	case errors.Is(err, fs.ErrPermission):
		return fail(ReadOnly, err, "Could not %s: you may not write there. Choose a folder of your own.", doing)
	}
	return fail(Disk, err, "Could not %s: %v.", doing, err)
}

// databaseTrouble reads the extended result code first, since the plain one
// covers several causes. The codes: https://www.sqlite.org/rescode.html
func databaseTrouble(doing string, e sqlite3.Error) error {
	switch e.ExtendedCode {
	case sqlite3.ErrConstraintForeignKey:
		return fail(Invalid, e, "Could not %s: something still refers to what was removed.", doing)
	case sqlite3.ErrConstraintCheck:
		return fail(Invalid, e, "Could not %s. %s", doing, checkSentence(e))
	case sqlite3.ErrIoErrShortRead:
		return fail(Damaged, e, "Could not %s: the file is shorter than it should be. Salvage what can be read into a new file.", doing)
	}
	switch e.Code {
	case sqlite3.ErrFull:
		return fail(Full, e, "Could not %s: the disk is full. Nothing was changed; make room and do it again.", doing)
	case sqlite3.ErrBusy, sqlite3.ErrLocked:
		return fail(InUse, e, "Could not %s: another program has held the file for too long. Close it there and do it again.", doing)
	case sqlite3.ErrReadonly, sqlite3.ErrPerm, sqlite3.ErrAuth:
		return fail(ReadOnly, e, "Could not %s: the file cannot be written to. Save a copy where you may write.", doing)
	case sqlite3.ErrCorrupt:
		return fail(Damaged, e, "Could not %s: the file is damaged. Salvage what can be read into a new file.", doing)
	case sqlite3.ErrNotADB:
		return fail(Foreign, e, "Could not %s: this is not a production file.", doing)
	case sqlite3.ErrCantOpen:
		return fail(Disk, e, "Could not %s: the file or its folder cannot be opened. Check that you may read and write there.", doing)
	case sqlite3.ErrConstraint, sqlite3.ErrTooBig, sqlite3.ErrMismatch:
		return fail(Invalid, e, "Could not %s: the file refuses the value (%v).", doing, e)
	}
	return fail(Disk, e, "Could not %s: %v.", doing, e)
}

// cannotWrite tells whether SQLite was kept from writing, a log beside the file
// included, which reading alone may not need.
func cannotWrite(err error) bool {
	e, ok := errors.AsType[sqlite3.Error](err)
	return ok && (e.Code == sqlite3.ErrReadonly || e.Code == sqlite3.ErrCantOpen || e.Code == sqlite3.ErrPerm)
}

// checkSentence returns the name of the CHECK that failed, which is a sentence.
// SQLite tells it nowhere but in its message.
func checkSentence(e sqlite3.Error) string {
	_, name, ok := strings.Cut(e.Error(), "failed: ")
	if !ok || !strings.HasSuffix(name, ".") {
		return "A value is not one that the file allows."
	}
	return name
}
