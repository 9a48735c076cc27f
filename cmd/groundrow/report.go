package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// metres is a length in JSON, to a tenth of a millimetre; null when it is none.
type metres float64

// MarshalJSON implements json.Marshaler.
func (m metres) MarshalJSON() ([]byte, error) {
	return decimals(float64(m), 4), nil
}

// degrees is an angle in JSON, to a ten-thousandth.
type degrees float64

// MarshalJSON implements json.Marshaler.
func (d degrees) MarshalJSON() ([]byte, error) {
	return decimals(float64(d), 4), nil
}

// hours is a duration in JSON, to a hundredth.
type hours time.Duration

// MarshalJSON implements json.Marshaler.
func (h hours) MarshalJSON() ([]byte, error) {
	return decimals(time.Duration(h).Hours(), 2), nil
}

// decimals writes a number with at most so many decimals and without a negative
// zero; null for what is no number.
func decimals(v float64, places int) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null")
	}
	unit := math.Pow10(places)
	return strconv.AppendFloat(nil, math.Round(v*unit)/unit+0, 'f', -1, 64)
}

// day writes a day in JSON and in tables, empty for none.
func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// writeJSON writes one JSON value with its fields in the order of the struct.
func (s *session) writeJSON(v any) error {
	e := json.NewEncoder(s.out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return fmt.Errorf("writing the result as JSON: %w", err)
	}
	return nil
}

// none makes an empty list of a missing one, which JSON tells apart.
func none[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// table writes rows in columns, figures to the right.
type table struct {
	rows  [][]string
	right []bool
}

// newTable begins a table; a title that begins with > stands over a column of
// figures.
func newTable(titles ...string) *table {
	t := &table{right: make([]bool, len(titles))}
	head := make([]string, len(titles))
	for i, title := range titles {
		head[i] = title
		if len(title) > 0 && title[0] == '>' {
			head[i], t.right[i] = title[1:], true
		}
	}
	t.rows = append(t.rows, head)
	return t
}

// row adds a row. What a person typed over several lines stays on one.
func (t *table) row(cells ...string) {
	for i, cell := range cells {
		cells[i] = strings.Map(func(r rune) rune {
			if unicode.IsControl(r) {
				return ' '
			}
			return r
		}, cell)
	}
	t.rows = append(t.rows, cells)
}

func (t *table) write(w io.Writer) error {
	wide := make([]int, len(t.right))
	for _, r := range t.rows {
		for i, cell := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for _, r := range t.rows {
		line := ""
		for i, cell := range r {
			if t.right[i] {
				line += fmt.Sprintf("%*s  ", wide[i], cell)
			} else {
				line += fmt.Sprintf("%-*s  ", wide[i], cell)
			}
		}
		if _, err := fmt.Fprintln(w, strings.TrimRight(line, " ")); err != nil {
			return fmt.Errorf("writing the result: %w", err)
		}
	}
	return nil
}
