package grid

import (
	"errors"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
)

// copy puts the selected rows on the clipboard, or the current cell when no more than its row is selected.
func (g *Grid) copy() {
	ids := g.Selected()
	if len(ids) < 2 {
		if r, ok := g.row(g.current.row); ok {
			fyne.CurrentApp().Clipboard().SetContent(r.cell(g.current.col))
		}
		return
	}
	var cells [][]string
	for _, id := range ids {
		r, _ := g.row(id)
		line := make([]string, len(g.columns))
		for c := range g.columns {
			line[c] = r.cell(c)
		}
		cells = append(cells, line)
	}
	fyne.CurrentApp().Clipboard().SetContent(Text(cells))
	g.Say(fmt.Sprintf("%d rows copied.", len(ids)))
}

// paste gives a block to OnPaste, or writes it cell by cell from the current cell on. One value pasted while several
// rows are selected goes into each of them.
func (g *Grid) paste(text string) {
	cells := Cells(text)
	if len(cells) == 0 {
		return
	}
	if g.OnPaste != nil {
		g.OnPaste(cells, g.current.row, g.current.col)
		return
	}
	at, ok := g.shownAt[g.current.row]
	if g.OnEdit == nil || !ok {
		return
	}
	ids := g.Shown()[at:] // fixed before the first edit, which may sort the rows anew
	if selected := g.Selected(); len(selected) > 1 && len(cells) == 1 && len(cells[0]) == 1 {
		ids = selected
		for len(cells) < len(ids) {
			cells = append(cells, cells[0])
		}
	}
	g.Say(g.pasteCells(cells, ids, g.current.col))
}

// pasteCells writes the block and returns what is to be said about it.
func (g *Grid) pasteCells(cells [][]string, ids []string, col int) string {
	done, lost := 0, 0
	var refused []error
	for i, line := range cells {
		for j, text := range line {
			c := col + j
			if i >= len(ids) || c >= len(g.columns) {
				lost++
				continue
			}
			if err := g.pasteCell(ids[i], c, strings.TrimSpace(text)); err != nil {
				refused = append(refused, fmt.Errorf("%s, row %d: %w", g.columns[c].Title, i+1, err))
				continue
			}
			done++
		}
	}
	return pasteWords(done, lost, refused)
}

func (g *Grid) pasteCell(id string, col int, text string) error {
	c := g.columns[col]
	r, ok := g.row(id)
	switch {
	case !ok:
		return errors.New("the row is gone")
	case c.Tick && Ticked(text) == Ticked(r.cell(col)), text == r.cell(col):
		return nil
	case c.ReadOnly:
		return errors.New("this column is worked out and cannot be changed")
	case c.Tick && Ticked(text):
		text = On
	case c.Tick:
		text = Off
	}
	return g.OnEdit(id, col, text)
}

// pasteWords says what became of a paste; the first refusals are quoted.
func pasteWords(done, lost int, refused []error) string {
	if lost == 0 && len(refused) == 0 {
		return fmt.Sprintf("%d cells pasted.", done)
	}
	words := fmt.Sprintf("%d of %d cells pasted.", done, done+lost+len(refused))
	for i, err := range refused {
		if i == 3 {
			words += fmt.Sprintf(" And %d more.", len(refused)-i)
			break
		}
		words += " " + strings.TrimSuffix(err.Error(), ".") + "."
	}
	if lost > 0 {
		words += fmt.Sprintf(" %d fell outside the table: add rows first.", lost)
	}
	return words
}
