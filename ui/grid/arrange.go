package grid

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// order is what the rows are sorted by; column −1 leaves them as they came.
type order struct {
	column int
	down   bool
}

// next returns the order after a click on the header of a column: up, down, as they came.
func (o order) next(column int) order {
	switch {
	case o.column != column:
		return order{column: column}
	case !o.down:
		return order{column: column, down: true}
	}
	return order{column: -1}
}

// arrange decides which rows are shown and in which order. The row being edited stays whatever the filter says, so
// that an edit never disappears under the hands.
func (g *Grid) arrange() {
	words := strings.Fields(strings.ToLower(g.filter))
	g.shown = g.shown[:0]
	for i, r := range g.rows {
		if matches(r, words) || (g.edit.open && r.ID == g.edit.at.row) {
			g.shown = append(g.shown, i)
		}
	}
	if c := g.order.column; c >= 0 && c < len(g.columns) {
		compare := g.columns[c].Compare
		if compare == nil {
			compare = Natural
		}
		slices.SortStableFunc(g.shown, func(a, b int) int {
			return compareCells(g.rows[a].cell(c), g.rows[b].cell(c), compare, g.order.down)
		})
	}
	g.shownAt = make(map[string]int, len(g.shown))
	for i, r := range g.shown {
		g.shownAt[g.rows[r].ID] = i
	}
}

// compareCells keeps empty cells last whichever way the column is sorted: they are what is still to be filled in.
func compareCells(a, b string, compare func(a, b string) int, down bool) int {
	if a == "" || b == "" {
		return cmp.Compare(btoi(a == ""), btoi(b == ""))
	}
	if down {
		return compare(b, a)
	}
	return compare(a, b)
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// matches reports whether every word occurs somewhere in the row. Words are in lower case.
func matches(r Row, words []string) bool {
	if len(words) == 0 {
		return true
	}
	all := strings.ToLower(strings.Join(r.Cells, "\n"))
	for _, w := range words {
		if !strings.Contains(all, w) {
			return false
		}
	}
	return true
}

// Natural compares as a person orders a list: numbers by value and before words, words without regard to case, and
// figures within words by value, so that "Flat 9" comes before "Flat 10".
func Natural(a, b string) int {
	x, xIsNumber := number(a)
	y, yIsNumber := number(b)
	switch {
	case xIsNumber && yIsNumber:
		return cmp.Compare(x, y)
	case xIsNumber != yIsNumber:
		return btoi(yIsNumber) - btoi(xIsNumber)
	}
	return naturalText(strings.ToLower(a), strings.ToLower(b))
}

// number reads a plain decimal number, with or without thousands commas. What Go would also accept, such as "inf" or
// "0x1p4", is a word here.
func number(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if s == "" || strings.Trim(s, "+-.,0123456789") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
	return v, err == nil
}

// naturalText compares chunk by chunk, where a chunk is a run of figures or a single other character.
func naturalText(a, b string) int {
	for a != "" && b != "" {
		da, db := digits(a), digits(b)
		if da == "" || db == "" {
			if a[0] != b[0] {
				return cmp.Compare(a[0], b[0])
			}
			a, b = a[1:], b[1:]
			continue
		}
		if c := compareDigits(da, db); c != 0 {
			return c
		}
		a, b = a[len(da):], b[len(db):]
	}
	return cmp.Compare(len(a), len(b))
}

// digits returns the figures that s begins with.
func digits(s string) string {
	end := strings.IndexFunc(s, func(r rune) bool { return r > unicode.MaxASCII || !unicode.IsDigit(r) })
	if end < 0 {
		return s
	}
	return s[:end]
}

// compareDigits compares whole numbers of any length by value.
func compareDigits(a, b string) int {
	a, b = strings.TrimLeft(a, "0"), strings.TrimLeft(b, "0")
	if c := cmp.Compare(len(a), len(b)); c != 0 {
		return c
	}
	return strings.Compare(a, b)
}

// Ticked reports whether the text of a Tick cell means on. What spreadsheets and people write for it is understood:
// anything but nothing, no, n, false, off, 0 and a dash.
func Ticked(text string) bool {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "no", "n", "false", "off", "0", "-", "–":
		return false
	}
	return true
}
