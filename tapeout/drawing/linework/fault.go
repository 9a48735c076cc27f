package linework

import (
	"errors"
	"fmt"
)

// Reasons for which a drawing file is refused as a whole; match them with errors.Is.
var (
	ErrNotThatFormat = errors.New("not a file of this format")
	ErrUnsupported   = errors.New("a variety of the format that cannot be read")
	ErrDamaged       = errors.New("the file is damaged or cut short")
	ErrTooLarge      = errors.New("the drawing is too large")
)

// Fault says for a person why a drawing cannot be read.
type Fault struct {
	Reason error  // one of the reasons above
	Where  string // in the file: line 120, page 2; empty: the file as a whole
	What   string // a sentence on what is wrong, without a full stop
	Do     string // a sentence on what can be done about it, without a full stop
}

// Error returns what is wrong, where, and what to do.
func (f *Fault) Error() string {
	text := f.What
	if f.Where != "" {
		text = fmt.Sprintf("%s: %s", f.Where, f.What)
	}
	if f.Do != "" {
		text += ". " + f.Do
	}
	return text
}

// Unwrap returns the reason.
func (f *Fault) Unwrap() error { return f.Reason }
