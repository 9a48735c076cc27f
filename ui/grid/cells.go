package grid

import (
	"slices"
	"strings"
)

// Cells reads a block of cells as spreadsheets put it on the clipboard: tabs between cells, one row a line, a cell with
// a line break or a tab in quotes, in which a quote is doubled. Quotes elsewhere, as in 12' 6", and quotes that are
// never closed are taken as they are. Blank lines are rows of one empty cell: dropping them would shift what follows.
func Cells(text string) [][]string {
	text = strings.TrimSuffix(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	if text == "" {
		return nil
	}
	cells := [][]string{nil}
	for {
		cell, rest, quoted := quotedCell(text)
		if !quoted {
			end := strings.IndexAny(text, "\t\n")
			if end < 0 {
				end = len(text)
			}
			cell, rest = text[:end], text[end:]
		}
		last := len(cells) - 1
		cells[last] = append(cells[last], cell)
		if rest == "" {
			return cells
		}
		if rest[0] == '\n' {
			cells = append(cells, nil)
		}
		text = rest[1:]
	}
}

// quotedCell reads a cell in quotes from the start of text; rest begins with the tab or line break after it, or is
// empty. ok is false where there is no such cell.
func quotedCell(text string) (cell, rest string, ok bool) {
	if !strings.HasPrefix(text, `"`) {
		return "", "", false
	}
	for at := 1; at < len(text); at++ {
		if text[at] != '"' {
			continue
		}
		if at+1 < len(text) && text[at+1] == '"' {
			at++
			continue
		}
		rest = text[at+1:]
		if rest != "" && rest[0] != '\t' && rest[0] != '\n' {
			return "", "", false
		}
		return strings.ReplaceAll(text[1:at], `""`, `"`), rest, true
	}
	return "", "", false
}

// Text writes cells in the form that Cells reads.
func Text(cells [][]string) string {
	var b strings.Builder
	for _, row := range cells {
		for i, c := range row {
			if i > 0 {
				b.WriteByte('\t')
			}
			if strings.ContainsAny(c, "\t\n\r") || strings.HasPrefix(c, "\"") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Copied returns the titles and the selected rows as tab-separated text; all rows when none is selected, nothing when
// there is none.
func Copied(columns []Column, rows []Row, selected []string) string {
	if len(rows) == 0 {
		return ""
	}
	titles := make([]string, len(columns))
	for i, c := range columns {
		titles[i] = c.Title
	}
	cells := [][]string{titles}
	for _, r := range rows {
		if len(selected) == 0 || slices.Contains(selected, r.ID) {
			cells = append(cells, r.Cells)
		}
	}
	return Text(cells)
}
