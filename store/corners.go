package store

import (
	"database/sql/driver"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"groundrow/tapeout/plane"
)

// The corners of a path are rows of a table of their own in the file, and one
// value everywhere else: a corner has no name, only a place in its list, so that
// "the third corner" means nothing once somebody has put another before it. The
// value is text, a JSON list of [over, up, bulge], which compares with == and
// reads well in the journal.

type cornersField struct{ at *[]plane.Vertex }

func corners(at *[]plane.Vertex) field { return cornersField{at} }

func (f cornersField) kind() kind { return isCorners }

func (f cornersField) Value() (driver.Value, error) {
	b := make([]byte, 0, 2+48*len(*f.at))
	for i, v := range *f.at {
		row := [3]float64{v.X, v.Y, v.Bulge}
		for j, x := range row {
			var err error
			if row[j], err = finite(x); err != nil {
				return nil, fmt.Errorf("corner %d: %w", i+1, err)
			}
		}
		b = appendCorner(b, row)
	}
	return closeCorners(b), nil
}

func appendCorner(b []byte, row [3]float64) []byte {
	if len(b) > 0 {
		b = append(b, ',')
	}
	for i, x := range row {
		b = append(b, "[,,"[i])
		b = strconv.AppendFloat(b, x, 'g', -1, 64)
	}
	return append(b, ']')
}

func closeCorners(b []byte) string { return "[" + string(b) + "]" }

func (f cornersField) Scan(from any) error {
	s, err := scanAs[string](from)
	if err != nil {
		return err
	}
	parts, err := splitCorners(s)
	if err != nil {
		return err
	}
	*f.at = nil
	if len(parts) > 0 {
		*f.at = make([]plane.Vertex, len(parts))
	}
	for i, part := range parts {
		row, err := parseCorner(part)
		if err != nil {
			return err
		}
		(*f.at)[i] = plane.Vertex{Point: plane.Point{X: row[0], Y: row[1]}, Bulge: row[2]}
	}
	return nil
}

var errCorners = errors.New("not a list of corners")

// splitCorners returns the corners of a list as "over,up,bulge" each.
func splitCorners(s string) ([]string, error) {
	if s == "[]" {
		return nil, nil
	}
	inner, ok := strings.CutPrefix(s, "[[")
	inner, closed := strings.CutSuffix(inner, "]]")
	if !ok || !closed {
		return nil, errCorners
	}
	return strings.Split(inner, "],["), nil
}

func joinCorners(parts []string) string {
	if len(parts) == 0 {
		return "[]"
	}
	return "[[" + strings.Join(parts, "],[") + "]]"
}

func parseCorner(part string) (row [3]float64, err error) {
	for i := range row {
		var number string
		number, part, _ = strings.Cut(part, ",")
		x, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return row, errCorners
		}
		if row[i], err = finite(x); err != nil {
			return row, errCorners
		}
	}
	if part != "" {
		return row, errCorners
	}
	return row, nil
}

// mergeCorners applies the step from was to mine to theirs. Lists of one length
// are merged corner by corner; a corner that both moved, or a list that became
// longer or shorter on both sides, is a conflict. Putting in or taking out a
// corner moves every later one, so that a shift on their side can never pass
// for an untouched corner.
func mergeCorners(was, theirs, mine string) (merged string, ok bool) {
	w, err1 := splitCorners(was)
	t, err2 := splitCorners(theirs)
	m, err3 := splitCorners(mine)
	if err1 != nil || err2 != nil || err3 != nil || len(w) != len(t) || len(w) != len(m) {
		return "", false
	}
	for i := range w {
		switch {
		case m[i] == w[i] || m[i] == t[i]:
		case t[i] == w[i]:
			t[i] = m[i]
		default:
			return "", false
		}
	}
	return joinCorners(t), true
}
