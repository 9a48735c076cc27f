package grid

import (
	"maps"
	"slices"

	"fyne.io/fyne/v2"
)

// Selected returns the identifiers of the selected rows that are shown, in the order shown.
func (g *Grid) Selected() []string {
	var ids []string
	for _, r := range g.shown {
		if id := g.rows[r].ID; g.selected[id] {
			ids = append(ids, id)
		}
	}
	return ids
}

// Follow selects the rows with these identifiers, in whatever order, unless just these are selected: for what is
// selected elsewhere in the window.
func (g *Grid) Follow(ids ...string) {
	if !sameIDs(g.Selected(), ids) {
		g.Select(ids...)
	}
}

// sameIDs tells whether two lists hold the same identifiers, in whatever order.
func sameIDs(a, b []string) bool {
	in := map[string]bool{}
	for _, id := range a {
		in[id] = true
	}
	return len(a) == len(b) && !slices.ContainsFunc(b, func(id string) bool { return !in[id] })
}

// Select selects rows without calling OnSelect, makes the first of them current and brings it into view. Unknown
// identifiers are passed over; none clears the selection.
func (g *Grid) Select(ids ...string) {
	g.selected = map[string]bool{}
	first := ""
	for _, id := range ids {
		if _, ok := g.byID[id]; ok {
			g.selected[id] = true
			if _, shown := g.shownAt[id]; shown && first == "" {
				first = id
			}
		}
	}
	g.current.row, g.anchor = first, first
	g.reveal()
	g.show()
}

// Focus gives the cells the keyboard.
func (g *Grid) Focus() {
	if c := g.canvas(); c != nil {
		c.Focus(g.body)
	}
}

// canvas returns that which the table is on. The driver learns of it when the table
// is first drawn; one that has just come into sight is on that of the only window.
func (g *Grid) canvas() fyne.Canvas {
	driver := fyne.CurrentApp().Driver()
	if c := driver.CanvasForObject(g.body); c != nil {
		return c
	}
	if all := driver.AllWindows(); len(all) == 1 {
		return all[0].Canvas()
	}
	return nil
}

// step is a move of the current cell. Rows are counted as shown.
type step struct{ rows, cols int }

// moved returns the cell a step away from p, kept inside the table.
func (g *Grid) moved(p place, by step) place {
	if len(g.shown) == 0 {
		return p
	}
	at, ok := g.shownAt[p.row]
	if !ok {
		at, by.rows = 0, 0
	}
	at = max(0, min(at+by.rows, len(g.shown)-1))
	col := max(0, min(p.col+by.cols, len(g.columns)-1))
	return place{g.rows[g.shown[at]].ID, col}
}

// goTo makes a cell current and selects its row, or with extend every row from the anchor to it.
func (g *Grid) goTo(p place, extend bool) {
	if _, ok := g.shownAt[p.row]; !ok {
		return
	}
	before := maps.Clone(g.selected)
	g.current = p
	if !extend {
		g.anchor = p.row
	}
	g.selectRange(g.anchor, p.row)
	g.reveal()
	g.afterSelection(before)
}

// toggle adds a row to the selection or takes it away.
func (g *Grid) toggle(p place) {
	before := maps.Clone(g.selected)
	if g.selected[p.row] {
		delete(g.selected, p.row)
	} else {
		g.selected[p.row] = true
	}
	g.current, g.anchor = p, p.row
	g.afterSelection(before)
}

func (g *Grid) selectAll() {
	before := maps.Clone(g.selected)
	for _, r := range g.shown {
		g.selected[g.rows[r].ID] = true
	}
	g.afterSelection(before)
}

func (g *Grid) selectRange(from, to string) {
	a, ok := g.shownAt[from]
	b := g.shownAt[to]
	if !ok {
		a = b
	}
	g.selected = map[string]bool{}
	for i := min(a, b); i <= max(a, b); i++ {
		g.selected[g.rows[g.shown[i]].ID] = true
	}
}

func (g *Grid) afterSelection(before map[string]bool) {
	g.tools.say("")
	g.show()
	if g.OnSelect != nil && !maps.Equal(before, g.selected) {
		g.OnSelect(g.Selected())
	}
}

// followSelection forgets rows that are gone. When the current row is gone the one that took its place becomes
// current, so that deleting down a list goes on from where it was.
func (g *Grid) followSelection(wasAt int, hadCurrent bool) {
	maps.DeleteFunc(g.selected, func(id string, _ bool) bool { _, ok := g.byID[id]; return !ok })
	if _, ok := g.byID[g.anchor]; !ok {
		g.anchor = ""
	}
	if _, ok := g.byID[g.current.row]; ok {
		return
	}
	g.current.row = ""
	if !hadCurrent || len(g.shown) == 0 {
		return
	}
	g.current.row = g.rows[g.shown[min(wasAt, len(g.shown)-1)]].ID
	g.anchor = g.current.row
	if len(g.selected) == 0 {
		g.selected[g.current.row] = true
	}
}

// sortBy arranges the rows anew and keeps the current cell in view.
func (g *Grid) sortBy(o order) {
	g.order = o
	g.arrange()
	g.reveal()
	g.show()
}

// SetFilter shows only the rows that hold every word of the text.
func (g *Grid) SetFilter(text string) {
	if text == g.filter {
		return
	}
	g.filter = text
	g.tools.setFilter(text)
	g.arrange()
	g.layoutBody()
	g.reveal()
	g.show()
}

// Sort orders the rows by a column, downwards on demand; −1 leaves them as they came.
func (g *Grid) Sort(column int, down bool) { g.sortBy(order{column: column, down: down}) }
