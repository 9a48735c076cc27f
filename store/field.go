package store

import (
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"math"
	"strings"
	"time"
	"unicode/utf8"
)

// kind is what a column holds, which JSON alone does not tell: 3 may be a whole
// number or a length.
type kind int

const (
	isText kind = iota
	isRef
	isWhole
	isReal
	isCorners
)

// field is one column of one row, bound to the place in the production where its
// value lives. It serves both directions, so that writing and reading cannot
// come to differ.
type field interface {
	sql.Scanner   // from the file into the production
	driver.Valuer // from the production into the file
	kind() kind
}

var errWrongType = errors.New("a value of the wrong type")

func scanAs[V any](from any) (V, error) {
	v, ok := from.(V)
	if !ok {
		return v, fmt.Errorf("%w: %T", errWrongType, from)
	}
	return v, nil
}

// textField is text of any named type.
type textField[S ~string] struct{ at *S }

func text[S ~string](at *S) field { return textField[S]{at} }

func (f textField[S]) kind() kind { return isText }

// Value refuses what would not come back the same from SQLite or from JSON.
func (f textField[S]) Value() (driver.Value, error) {
	s := string(*f.at)
	if !utf8.ValidString(s) || strings.ContainsRune(s, 0) {
		return nil, fmt.Errorf("%q is not readable text", s)
	}
	return s, nil
}

func (f textField[S]) Scan(from any) error {
	s, err := scanAs[string](from)
	*f.at = S(s)
	return err
}

// refField names another row; empty is NULL, so that a foreign key lets it be.
type refField[S ~string] struct{ textField[S] }

func ref[S ~string](at *S) field { return refField[S]{textField[S]{at}} }

func (f refField[S]) kind() kind { return isRef }

func (f refField[S]) Value() (driver.Value, error) {
	if *f.at == "" {
		return nil, nil
	}
	return f.textField.Value()
}

func (f refField[S]) Scan(from any) error {
	if from == nil {
		*f.at = ""
		return nil
	}
	return f.textField.Scan(from)
}

type realField struct{ at *float64 }

func number(at *float64) field { return realField{at} }

func (f realField) kind() kind { return isReal }

// Value refuses what is not a number, and makes minus zero plain zero, as
// SQLite does.
func (f realField) Value() (driver.Value, error) { return finite(*f.at) }

func finite(x float64) (float64, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, errors.New("it is not a number")
	}
	if x == 0 {
		return 0, nil
	}
	return x, nil
}

func (f realField) Scan(from any) (err error) {
	*f.at, err = scanAs[float64](from)
	return err
}

type wholeField struct{ at *int }

func whole(at *int) field { return wholeField{at} }

func (f wholeField) kind() kind                   { return isWhole }
func (f wholeField) Value() (driver.Value, error) { return int64(*f.at), nil }

func (f wholeField) Scan(from any) error {
	n, err := scanAs[int64](from)
	*f.at = int(n)
	return err
}

type truthField struct{ at *bool }

func truth(at *bool) field { return truthField{at} }

func (f truthField) kind() kind { return isWhole }

func (f truthField) Value() (driver.Value, error) {
	if *f.at {
		return int64(1), nil
	}
	return int64(0), nil
}

func (f truthField) Scan(from any) error {
	n, err := scanAs[int64](from)
	*f.at = n != 0
	return err
}

// timeField is RFC 3339 text with its offset from UTC; the zero time is empty.
type timeField struct{ at *time.Time }

func moment(at *time.Time) field { return timeField{at} }

func (f timeField) kind() kind { return isText }

func (f timeField) Value() (driver.Value, error) {
	if f.at.IsZero() {
		return "", nil
	}
	b, err := f.at.MarshalText()
	if err != nil {
		return nil, fmt.Errorf("it is not a date that can be written: %w", err)
	}
	return string(b), nil
}

func (f timeField) Scan(from any) error {
	s, err := scanAs[string](from)
	if err != nil {
		return err
	}
	if s == "" {
		*f.at = time.Time{}
		return nil
	}
	*f.at, err = time.Parse(time.RFC3339Nano, s)
	return err
}

// constField is the key of a table with one row.
type constField string

func (f constField) kind() kind                   { return isText }
func (f constField) Value() (driver.Value, error) { return string(f), nil }
func (f constField) Scan(any) error               { return nil }
