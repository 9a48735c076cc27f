package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// body draws the cells. It is the content of the scroll container and the part of the grid that has the focus.
type body struct {
	widget.BaseWidget
	g       *Grid
	focused bool
	shift   bool // held down, as far as key events told
	pressed *press
	hovered place

	views   map[int]*rowView // by position among the shown rows
	free    []*rowView
	ring    *canvas.Rectangle
	objects []fyne.CanvasObject
}

// press remembers a mouse button going down until the tap that ends it.
type press struct{ editsOnRelease bool }

func newBody(g *Grid) *body {
	b := &body{g: g, views: map[int]*rowView{}, ring: canvas.NewRectangle(nil)}
	b.ring.StrokeWidth = 2
	b.ExtendBaseWidget(b)
	return b
}

// MinSize is the size of all rows, so that the scroll container knows how far there is to go.
func (b *body) MinSize() fyne.Size {
	width := float32(0)
	if n := len(b.g.spans); n > 0 {
		width = b.g.spans[n-1].end()
	}
	return fyne.NewSize(width, float32(len(b.g.shown))*b.g.rowHeight())
}

// CreateRenderer implements fyne.Widget.
func (b *body) CreateRenderer() fyne.WidgetRenderer { return &bodyRenderer{b} }

// forget drops the drawn rows, for when the columns have changed.
func (b *body) forget() {
	b.views = map[int]*rowView{}
	b.free = nil
}

// visible returns the range of shown rows that are in view.
func (b *body) visible() (from, to int) {
	h := b.g.rowHeight()
	from = max(0, int(b.g.scroll.Offset.Y/h))
	to = min(len(b.g.shown), int((b.g.scroll.Offset.Y+b.g.scroll.Size().Height)/h)+1)
	return from, max(from, to)
}

// showVisible gives objects to the rows that came into view and takes them from those that left.
func (b *body) showVisible() {
	from, to := b.visible()
	changed := false
	for i, v := range b.views {
		if i < from || i >= to {
			b.free = append(b.free, v)
			delete(b.views, i)
			changed = true
		}
	}
	for i := from; i < to; i++ {
		if _, ok := b.views[i]; !ok {
			b.views[i] = b.take()
			b.showRow(i)
			changed = true
		}
	}
	if changed || b.objects == nil {
		b.collect(from, to)
		canvas.Refresh(b)
	}
	b.placeOverlays()
}

// showAll brings every row in view up to date.
func (b *body) showAll() {
	b.showVisible()
	for i := range b.views {
		b.showRow(i)
	}
	b.placeOverlays()
	from, to := b.visible()
	b.collect(from, to)
}

func (b *body) take() *rowView {
	if n := len(b.free); n > 0 {
		v := b.free[n-1]
		b.free = b.free[:n-1]
		return v
	}
	return newRowView(len(b.g.columns))
}

func (b *body) showRow(i int) {
	r := b.g.rows[b.g.shown[i]]
	b.views[i].show(b.g, r, float32(i)*b.g.rowHeight(), rowState{
		selected: b.g.selected[r.ID],
		hovered:  b.hovered.row == r.ID,
		width:    b.Size().Width,
	})
}

// collect lists the objects in the order in which they are painted; the edit and the note lie above all rows.
func (b *body) collect(from, to int) {
	b.objects = b.objects[:0:0]
	for i := from; i < to; i++ {
		b.objects = b.views[i].appendObjects(b.objects)
	}
	b.objects = append(b.objects, b.ring, b.g.editor.box, b.g.note.box)
}

// placeOverlays moves the ring around the current cell, the open edit and the note to where they belong now.
func (b *body) placeOverlays() {
	pos, size, ok := b.cellAt(b.g.current)
	b.ring.Hidden = !ok
	if ok {
		b.ring.StrokeColor = theme.Color(theme.ColorNamePlaceHolder)
		if b.focused || b.g.edit.open {
			b.ring.StrokeColor = theme.Color(theme.ColorNamePrimary)
		}
		b.ring.Move(pos.AddXY(1, 1))
		b.ring.Resize(size.SubtractWidthHeight(2, 2))
		b.ring.Refresh()
	}
	if pos, size, ok := b.cellAt(b.g.edit.at); ok && b.g.edit.open {
		b.g.editor.box.Move(pos)
		b.g.editor.box.Resize(size)
	}
	b.placeNote()
}

// cellAt returns where a cell lies in the body.
func (b *body) cellAt(p place) (fyne.Position, fyne.Size, bool) {
	at, ok := b.g.shownAt[p.row]
	if !ok || p.col < 0 || p.col >= len(b.g.spans) {
		return fyne.Position{}, fyne.Size{}, false
	}
	s, h := b.g.spans[p.col], b.g.rowHeight()
	return fyne.NewPos(s.x, float32(at)*h), fyne.NewSize(s.width, h), true
}

// hit returns the cell under a position; ok is false beside and below the cells.
func (b *body) hit(pos fyne.Position) (place, bool) {
	i := int(pos.Y / b.g.rowHeight())
	if pos.Y < 0 || i >= len(b.g.shown) {
		return place{}, false
	}
	for col, s := range b.g.spans {
		if pos.X >= s.x && pos.X < s.end() {
			return place{b.g.rows[b.g.shown[i]].ID, col}, true
		}
	}
	return place{}, false
}

type bodyRenderer struct{ b *body }

func (r *bodyRenderer) Destroy()                     {}
func (r *bodyRenderer) MinSize() fyne.Size           { return r.b.MinSize() }
func (r *bodyRenderer) Layout(fyne.Size)             { r.b.showAll() }
func (r *bodyRenderer) Objects() []fyne.CanvasObject { return r.b.objects }
func (r *bodyRenderer) Refresh() {
	r.b.showAll()
	canvas.Refresh(r.b)
}
