package store

import (
	"database/sql/driver"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"groundrow/tapeout/plane"
)

// cornerList is the corners of one path. They are rows of a table of their own in
// the file, and one value everywhere else: a corner has no name, only a place in
// its list, so that "the third corner" means nothing once somebody has put
// another before it.
//
// The text is the bits of over, up and bulge of every corner, which compares
// with == and is quick to make and to read.
type cornerList string

// cornerSize is how many bytes one corner takes.
const cornerSize = 3 * 8

var errCorners = errors.New("not a list of corners")

func (l cornerList) len() int { return len(l) / cornerSize }

func (l cornerList) at(i int) cornerList { return l[i*cornerSize : (i+1)*cornerSize] }

// corner returns over, up and bulge of a corner.
func (l cornerList) corner(i int) (row [3]float64) {
	for j := range row {
		at := i*cornerSize + 8*j
		row[j] = math.Float64frombits(binary.BigEndian.Uint64([]byte(l[at : at+8])))
	}
	return row
}

func appendCorner(b []byte, row [3]float64) []byte {
	for _, x := range row {
		b = binary.BigEndian.AppendUint64(b, math.Float64bits(x))
	}
	return b
}

// vertices returns the corners as a path has them; nil for none.
func (l cornerList) vertices() []plane.Vertex {
	if l == "" {
		return nil
	}
	out := make([]plane.Vertex, l.len())
	for i := range out {
		row := l.corner(i)
		out[i] = plane.Vertex{Point: plane.Point{X: row[0], Y: row[1]}, Bulge: row[2]}
	}
	return out
}

// MarshalJSON writes the list as the journal has it: [[over, up, bulge], …].
func (l cornerList) MarshalJSON() ([]byte, error) {
	rows := make([][3]float64, l.len())
	for i := range rows {
		rows[i] = l.corner(i)
	}
	return json.Marshal(rows)
}

// cornersFromJSON reads back what a decoder with UseNumber made of the list.
func cornersFromJSON(rows []any) (cornerList, error) {
	b := make([]byte, 0, cornerSize*len(rows))
	for _, r := range rows {
		numbers, ok := r.([]any)
		if !ok || len(numbers) != 3 {
			return "", errCorners
		}
		var row [3]float64
		for i, n := range numbers {
			number, ok := n.(json.Number)
			if !ok {
				return "", errCorners
			}
			x, err := number.Float64()
			if err != nil {
				return "", errCorners
			}
			row[i] = x
		}
		b = appendCorner(b, row)
	}
	return cornerList(b), nil
}

// mergeCorners applies the step from was to mine to theirs. Lists of one length
// are merged corner by corner; a corner that both moved, or a list that became
// longer or shorter on either side, is a conflict. Putting in or taking out a
// corner moves every later one, so that a shift on their side can never pass
// for an untouched corner.
func mergeCorners(was, theirs, mine cornerList) (merged cornerList, ok bool) {
	if len(was) != len(theirs) || len(was) != len(mine) {
		return "", false
	}
	b := make([]byte, 0, len(was))
	for i := range was.len() {
		w, t, m := was.at(i), theirs.at(i), mine.at(i)
		switch {
		case m == w || m == t:
			b = append(b, t...)
		case t == w:
			b = append(b, m...)
		default:
			return "", false
		}
	}
	return cornerList(b), true
}

type cornersField struct{ at *[]plane.Vertex }

func corners(at *[]plane.Vertex) field { return cornersField{at} }

func (f cornersField) kind() kind { return isCorners }

func (f cornersField) Value() (driver.Value, error) {
	b := make([]byte, 0, cornerSize*len(*f.at))
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
	return cornerList(b), nil
}

func (f cornersField) Scan(from any) error {
	list, err := scanAs[cornerList](from)
	*f.at = list.vertices()
	return err
}
