package grid

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// editor is the one entry of the grid, shown over the cell that is edited.
type editor struct {
	widget.Entry
	g     *Grid
	box   *container.ThemeOverride
	shift bool
}

func newEditor(g *Grid) *editor {
	e := &editor{g: g}
	e.ExtendBaseWidget(e)
	e.box = container.NewThemeOverride(e, cellTheme{})
	e.box.Hide()
	return e
}

// cellTheme is the window's theme with an entry no taller than a line of the table.
type cellTheme struct{}

func (cellTheme) base() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

func (t cellTheme) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	return t.base().Color(name, v)
}

func (t cellTheme) Font(style fyne.TextStyle) fyne.Resource { return t.base().Font(style) }

func (t cellTheme) Icon(name fyne.ThemeIconName) fyne.Resource { return t.base().Icon(name) }

func (t cellTheme) Size(name fyne.ThemeSizeName) float32 {
	if name == theme.SizeNameInnerPadding {
		return 3
	}
	return t.base().Size(name)
}

// AcceptsTab keeps Tab for moving to the next cell.
func (e *editor) AcceptsTab() bool { return true }

// KeyDown notes the Shift key for drivers that cannot be asked for it.
func (e *editor) KeyDown(k *fyne.KeyEvent) {
	if k.Name == desktop.KeyShiftLeft || k.Name == desktop.KeyShiftRight {
		e.shift = true
	}
	e.Entry.KeyDown(k)
}

// KeyUp implements desktop.Keyable.
func (e *editor) KeyUp(k *fyne.KeyEvent) {
	if k.Name == desktop.KeyShiftLeft || k.Name == desktop.KeyShiftRight {
		e.shift = false
	}
	e.Entry.KeyUp(k)
}

// TypedKey commits, moves and cancels; other keys edit the text.
func (e *editor) TypedKey(k *fyne.KeyEvent) {
	shift := shiftHeld(e.shift)
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		by := step{rows: 1}
		if shift {
			by.rows = -1
		}
		e.g.commit(by)
	case fyne.KeyUp:
		e.g.commit(step{rows: -1})
	case fyne.KeyDown:
		e.g.commit(step{rows: 1})
	case fyne.KeyTab:
		e.g.commitAlong(shift)
	case fyne.KeyEscape:
		e.g.closeEdit()
		e.g.Focus()
	default:
		e.Entry.TypedKey(k)
	}
}

// FocusGained sends the keyboard on to the cells when the window comes back to an entry that has closed meanwhile.
func (e *editor) FocusGained() {
	if !e.g.edit.open {
		e.g.Focus()
		return
	}
	e.Entry.FocusGained()
}

// FocusLost commits: what was typed is kept when a person goes elsewhere. What is refused stays open and says why.
func (e *editor) FocusLost() {
	e.shift = false
	e.Entry.FocusLost()
	e.g.finishEdit()
}
