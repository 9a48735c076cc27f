package grid

import "fyne.io/fyne/v2"

// edit is the cell that is open, what it held, and why the last attempt was refused.
type edit struct {
	open bool
	at   place
	was  string
	err  string
	busy bool // OnEdit is running; what it does to the focus is no reason to commit again
}

// Edit opens the cell for editing and reports whether it could. A filter that hides the row is taken off: a row that
// was just added must not vanish.
func (g *Grid) Edit(rowID string, column int) bool {
	if _, ok := g.byID[rowID]; !ok || !g.finishEdit() {
		return false
	}
	if _, ok := g.shownAt[rowID]; !ok {
		g.SetFilter("")
	}
	g.goTo(place{rowID, column}, false)
	g.Focus()
	return g.begin()
}

// Editing reports whether a cell is open.
func (g *Grid) Editing() bool { return g.edit.open }

// editable reports whether the current cell can be changed.
func (g *Grid) editable() bool {
	_, ok := g.shownAt[g.current.row]
	return ok && g.OnEdit != nil && !g.column().ReadOnly
}

// begin edits the current cell in the way of its column, with the text that it holds. A cell that cannot be edited is
// activated instead.
func (g *Grid) begin() bool {
	if !g.editable() {
		if _, ok := g.shownAt[g.current.row]; ok && g.OnActivate != nil {
			g.OnActivate(g.current.row)
		}
		return false
	}
	r, _ := g.row(g.current.row)
	switch c := g.column(); {
	case c.Tick:
		g.flip()
	case len(c.Choices) > 0:
		g.pick("")
	default:
		g.open(r.cell(g.current.col))
		g.editor.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	return true
}

// beginTyped edits the current cell with a text that replaces what it holds.
func (g *Grid) beginTyped(text string) {
	if !g.editable() || g.column().Tick {
		return
	}
	if len(g.column().Choices) > 0 {
		g.pick(text)
		return
	}
	g.open(text)
}

// open shows the entry over the current cell.
func (g *Grid) open(text string) {
	r, _ := g.row(g.current.row)
	g.tools.say("")
	g.edit = edit{open: true, at: g.current, was: r.cell(g.current.col)}
	g.editor.SetPlaceHolder(g.column().Hint)
	g.editor.SetText(text)
	g.editor.CursorColumn = len([]rune(text))
	g.editor.box.Show()
	g.reveal()
	g.show()
	if c := g.canvas(); c != nil {
		c.Focus(g.editor)
	}
}

func (g *Grid) closeEdit() {
	if !g.edit.open {
		return
	}
	g.edit = edit{}
	g.editor.box.Hide()
	g.arrange()
	g.show()
}

// finishEdit commits an open edit; false means that it was refused and is still open.
func (g *Grid) finishEdit() bool {
	if !g.edit.open {
		return true
	}
	if g.edit.busy {
		return false
	}
	if text := g.editor.Text; text != g.edit.was && g.OnEdit != nil {
		g.edit.busy = true
		err := g.OnEdit(g.edit.at.row, g.edit.at.col, text)
		g.edit.busy = false
		if err != nil && g.edit.open {
			g.edit.err = err.Error()
			g.show()
			return false
		}
	}
	g.closeEdit()
	return true
}

// commit ends the edit and moves on; the next cell is found before the edit, which may sort its row elsewhere.
func (g *Grid) commit(by step) bool {
	next := g.moved(g.edit.at, by)
	if !g.finishEdit() {
		return false
	}
	g.Focus()
	g.goTo(next, false)
	return true
}

// commitAlong ends the edit and opens the next cell that can be typed into, from row to row.
func (g *Grid) commitAlong(back bool) {
	next, ok := g.nextOpen(g.edit.at, back)
	if !g.commit(step{}) || !ok {
		return
	}
	g.goTo(next, false)
	if len(g.column().Choices) == 0 {
		g.begin()
	}
}

// nextOpen finds the next cell along the rows that is not read-only or a tick.
func (g *Grid) nextOpen(from place, back bool) (place, bool) {
	at, n := g.shownAt[from.row], len(g.columns)
	by := 1
	if back {
		by = -1
	}
	for i := at*n + from.col + by; i >= 0 && i < len(g.shown)*n && abs(i/n-at) <= 1; i += by {
		if c := g.columns[i%n]; !c.ReadOnly && !c.Tick {
			return place{g.rows[g.shown[i/n]].ID, i % n}, true
		}
	}
	return place{}, false
}

func abs(i int) int { return max(i, -i) }

// flip turns the current tick over.
func (g *Grid) flip() {
	if !g.editable() {
		return
	}
	r, _ := g.row(g.current.row)
	to := On
	if Ticked(r.cell(g.current.col)) {
		to = Off
	}
	g.change(g.current, to)
}

// change asks for an edit that was not typed into the cell; an error is said in the tool row.
func (g *Grid) change(p place, text string) {
	if err := g.OnEdit(p.row, p.col, text); err != nil {
		g.Say(err.Error())
	}
}
