package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var (
	_ fyne.Tappable     = (*body)(nil)
	_ desktop.Mouseable = (*body)(nil)
	_ desktop.Hoverable = (*body)(nil)
)

// MouseDown selects at once; what a second click does waits for the release. A double click is left out on purpose:
// it would delay every click by the time in which a second might follow.
func (b *body) MouseDown(e *desktop.MouseEvent) {
	p, ok := b.hit(e.Position)
	b.pressed = &press{}
	if !b.g.finishEdit() {
		return
	}
	had := b.focused
	b.g.Focus() // first, so that a field elsewhere commits to the row that it shows before another is selected
	if e.Button == desktop.MouseButtonSecondary && ok && b.g.selected[p.row] {
		ok = false // keep the selection for the menu
	}
	if ok {
		b.pressed.editsOnRelease = b.click(p, e.Modifier, had)
	}
}

// click selects and reports whether the release is to edit: the cell was current already and had the keyboard, or it
// is a tick.
func (b *body) click(p place, with fyne.KeyModifier, had bool) bool {
	switch {
	case with&fyne.KeyModifierShift != 0:
		b.g.goTo(p, true)
	case with&fyne.KeyModifierShortcutDefault != 0:
		b.g.toggle(p)
	default:
		again := had && b.g.current == p && b.g.selected[p.row]
		b.g.goTo(p, false)
		return again || b.g.columns[p.col].Tick
	}
	return false
}

// MouseUp implements desktop.Mouseable.
func (b *body) MouseUp(*desktop.MouseEvent) {}

// Tapped edits where the press has found that it should. Drivers that report no press are served as well.
func (b *body) Tapped(e *fyne.PointEvent) {
	p := b.pressed
	b.pressed = nil
	if p == nil {
		b.MouseDown(&desktop.MouseEvent{PointEvent: *e, Button: desktop.MouseButtonPrimary})
		p, b.pressed = b.pressed, nil
	}
	if !p.editsOnRelease {
		return
	}
	if b.g.column().Tick {
		b.g.flip()
		return
	}
	b.g.begin()
}

// MouseIn implements desktop.Hoverable.
func (b *body) MouseIn(e *desktop.MouseEvent) { b.hover(e.Position) }

// MouseMoved implements desktop.Hoverable.
func (b *body) MouseMoved(e *desktop.MouseEvent) { b.hover(e.Position) }

// MouseOut implements desktop.Hoverable.
func (b *body) MouseOut() { b.hoverCell(place{}) }

func (b *body) hover(pos fyne.Position) {
	p, _ := b.hit(pos)
	b.hoverCell(p)
}

func (b *body) hoverCell(p place) {
	if p == b.hovered {
		return
	}
	before := b.hovered
	b.hovered = p
	if before.row != p.row {
		b.redraw(before.row)
		b.redraw(p.row)
	}
	b.placeNote()
}

// redraw brings one row up to date if it is in view.
func (b *body) redraw(id string) {
	at, ok := b.g.shownAt[id]
	if _, drawn := b.views[at]; ok && drawn {
		b.showRow(at)
	}
}
