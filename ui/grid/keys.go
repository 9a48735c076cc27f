package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var (
	_ fyne.Focusable    = (*body)(nil)
	_ fyne.Tabbable     = (*body)(nil)
	_ fyne.Shortcutable = (*body)(nil)
	_ desktop.Keyable   = (*body)(nil)
)

// FocusGained shows which cell the keyboard acts on.
func (b *body) FocusGained() {
	b.focused = true
	if _, ok := b.g.shownAt[b.g.current.row]; !ok && len(b.g.shown) > 0 {
		b.g.current.row = b.g.rows[b.g.shown[0]].ID
	}
	b.Refresh()
}

// FocusLost implements fyne.Focusable.
func (b *body) FocusLost() {
	b.focused, b.shift = false, false
	b.Refresh()
}

// AcceptsTab keeps the Tab key for moving along the row; at the end of the row it leaves the grid.
func (b *body) AcceptsTab() bool { return true }

// KeyDown notes the Shift key for drivers that cannot be asked for it.
func (b *body) KeyDown(e *fyne.KeyEvent) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		b.shift = true
	}
}

// KeyUp implements desktop.Keyable.
func (b *body) KeyUp(e *fyne.KeyEvent) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		b.shift = false
	}
}

func (b *body) shiftHeld() bool { return shiftHeld(b.shift) }

// shiftHeld asks the driver for the Shift key, and falls back on what key events told.
func shiftHeld(told bool) bool {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()&fyne.KeyModifierShift != 0
	}
	return told
}

// TypedRune begins an edit with the character; a space toggles a tick.
func (b *body) TypedRune(r rune) {
	if r == ' ' && b.g.column().Tick {
		b.g.flip()
		return
	}
	b.g.beginTyped(string(r))
}

// column returns that of the current cell.
func (g *Grid) column() Column {
	if g.current.col < 0 || g.current.col >= len(g.columns) {
		return Column{}
	}
	return g.columns[g.current.col]
}

// TypedKey moves about, edits, adds and deletes.
func (b *body) TypedKey(e *fyne.KeyEvent) {
	g := b.g
	if by, ok := b.stepOf(e.Name); ok {
		g.goTo(g.moved(g.current, by), b.shiftHeld() && by.cols == 0)
		return
	}
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyF2:
		g.begin()
	case fyne.KeyBackspace:
		g.beginTyped("")
	case fyne.KeyTab:
		b.tab()
	case fyne.KeyInsert:
		if g.OnAdd != nil {
			g.OnAdd()
		}
	case fyne.KeyDelete:
		g.deleteSelected()
	case fyne.KeyEscape:
		if len(g.selected) > 1 {
			g.goTo(g.current, false)
		}
	}
}

func (b *body) stepOf(key fyne.KeyName) (step, bool) {
	g := b.g
	switch key {
	case fyne.KeyUp:
		return step{rows: -1}, true
	case fyne.KeyDown:
		return step{rows: 1}, true
	case fyne.KeyLeft:
		return step{cols: -1}, true
	case fyne.KeyRight:
		return step{cols: 1}, true
	case fyne.KeyPageUp:
		return step{rows: -g.page()}, true
	case fyne.KeyPageDown:
		return step{rows: g.page()}, true
	case fyne.KeyHome:
		return step{cols: -len(g.columns)}, true
	case fyne.KeyEnd:
		return step{cols: len(g.columns)}, true
	}
	return step{}, false
}

// tab moves along the row and past its end out of the grid, so that the keyboard is never caught here.
func (b *body) tab() {
	by := step{cols: 1}
	if b.shiftHeld() {
		by.cols = -1
	}
	to := b.g.moved(b.g.current, by)
	if to != b.g.current {
		b.g.goTo(to, false)
		return
	}
	c := fyne.CurrentApp().Driver().CanvasForObject(b)
	switch {
	case c == nil:
	case by.cols < 0:
		c.FocusPrevious()
	default:
		c.FocusNext()
	}
}

// TypedShortcut copies, pastes, selects all, goes to the filter and to either end; any other shortcut is passed on to
// the window, which would not see it otherwise.
func (b *body) TypedShortcut(s fyne.Shortcut) {
	g := b.g
	switch s := s.(type) {
	case *fyne.ShortcutCopy:
		g.copy()
		return
	case *fyne.ShortcutPaste:
		g.paste(fyne.CurrentApp().Clipboard().Content())
		return
	case *fyne.ShortcutSelectAll:
		g.selectAll()
		return
	case *desktop.CustomShortcut:
		if s.Modifier == fyne.KeyModifierShortcutDefault && g.controlKey(s.KeyName) {
			return
		}
	}
	if c, ok := fyne.CurrentApp().Driver().CanvasForObject(b).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}

// controlKey handles a key held with Ctrl (Cmd on a Mac).
func (g *Grid) controlKey(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyF:
		g.FocusFilter()
	case fyne.KeyHome:
		g.goTo(g.moved(g.current, step{-len(g.shown), -len(g.columns)}), false)
	case fyne.KeyEnd:
		g.goTo(g.moved(g.current, step{len(g.shown), len(g.columns)}), false)
	case fyne.KeyUp:
		g.goTo(g.moved(g.current, step{rows: -len(g.shown)}), false)
	case fyne.KeyDown:
		g.goTo(g.moved(g.current, step{rows: len(g.shown)}), false)
	default:
		return false
	}
	return true
}

func (g *Grid) deleteSelected() {
	if ids := g.Selected(); g.OnDelete != nil && len(ids) > 0 {
		g.OnDelete(ids)
	}
}
