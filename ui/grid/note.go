package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

const noteWidth = 300

// note is the small panel beside a cell that says, in words after a triangle, why an edit was refused or what is
// wrong with the cell, or the whole of a text that the cell is too narrow for.
type note struct {
	back  *canvas.Rectangle
	icon  *widget.Icon
	words *widget.Label
	box   *fyne.Container
}

func newNote() *note {
	n := &note{
		back:  canvas.NewRectangle(nil),
		icon:  widget.NewIcon(theme.NewWarningThemedResource(theme.WarningIcon())),
		words: widget.NewLabel(""),
	}
	n.words.Wrapping = fyne.TextWrapWord
	n.back.StrokeWidth = 1
	n.box = container.NewStack(n.back, container.NewBorder(nil, nil, n.icon, nil, n.words))
	n.box.Hide()
	return n
}

// noteFor decides what is said and at which cell: a refused edit first, then what the tool row has no room for, then
// the cell that is pointed at, then the current one.
func (b *body) noteFor() (at place, words string, warning bool) {
	g := b.g
	if g.edit.open {
		return g.edit.at, g.edit.err, true
	}
	if g.tools.said != "" && g.tools.cut() {
		return g.current, g.tools.said, false
	}
	if r, ok := g.row(b.hovered.row); ok {
		if p := r.problem(b.hovered.col); p != "" {
			return b.hovered, p, true
		}
		if text := r.cell(b.hovered.col); b.shortened(b.hovered) {
			return b.hovered, text, false
		}
	}
	if r, ok := g.row(g.current.row); ok && b.focused {
		return g.current, r.problem(g.current.col), true
	}
	return place{}, "", false
}

// shortened reports whether a cell in view shows less than its text.
func (b *body) shortened(p place) bool {
	at, ok := b.g.shownAt[p.row]
	v := b.views[at]
	if !ok || v == nil || p.col >= len(v.cells) {
		return false
	}
	c := v.cells[p.col]
	return c.tick == nil && c.text.Text != c.full
}

// placeNote shows the note under its cell, or above it where there is no room below.
func (b *body) placeNote() {
	n := b.g.note
	at, words, warning := b.noteFor()
	pos, size, ok := b.cellAt(at)
	if words == "" || !ok {
		setVisible(n.box, false)
		return
	}
	n.set(words, warning)
	width := min(float32(noteWidth), max(120, b.g.scroll.Size().Width-8))
	n.box.Resize(fyne.NewSize(width, n.box.MinSize().Height))
	height := n.box.MinSize().Height
	n.box.Resize(fyne.NewSize(width, height))
	view := b.g.scroll
	x := clamp(pos.X, view.Offset.X, max(view.Offset.X, view.Offset.X+view.Size().Width-width-4))
	y := pos.Y + size.Height + 2
	if above := pos.Y - height - 2; y+height > view.Offset.Y+view.Size().Height && above >= view.Offset.Y {
		y = above
	}
	n.box.Move(fyne.NewPos(x, y))
	setVisible(n.box, true)
}

func (n *note) set(words string, warning bool) {
	fill, edge := theme.Color(theme.ColorNameOverlayBackground), theme.Color(theme.ColorNameForeground)
	if warning {
		edge = theme.Color(theme.ColorNameWarning)
	}
	if n.back.FillColor != fill || n.back.StrokeColor != edge {
		n.back.FillColor, n.back.StrokeColor = fill, edge
		n.back.Refresh()
	}
	setVisible(n.icon, warning)
	if n.words.Text != words {
		n.words.SetText(words)
	}
}
