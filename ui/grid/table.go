package grid

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

const (
	minColumn = 24 // a column cannot be dragged narrower: its edge must stay within reach
	cellPad   = 6  // between a cell's edge and its text
	iconSpace = 3  // between a shape and the text after it
)

// span is where a column lies across the table.
type span struct{ x, width float32 }

func (s span) end() float32 { return s.x + s.width }

// rowHeight is that of the entry that a cell becomes while it is edited, so that nothing moves when an edit opens.
func (g *Grid) rowHeight() float32 { return float32(math.Ceil(float64(g.editor.box.MinSize().Height))) }

func (g *Grid) headerHeight() float32 { return g.rowHeight() + 2 }

// titleWidth is the room that a title needs, with its sort arrow.
func titleWidth(title string) float32 {
	size := fyne.MeasureText(title, theme.TextSize(), fyne.TextStyle{Bold: true})
	return max(48, size.Width+2*cellPad+theme.IconInlineSize())
}

// layoutColumns places the columns side by side and shares what room is left among those that grow.
func (g *Grid) layoutColumns(viewport float32) {
	total, growing := float32(0), 0
	for i, w := range g.widths {
		total += w
		if g.columns[i].Grow {
			growing++
		}
	}
	extra := float32(0)
	if growing > 0 && viewport > total {
		extra = (viewport - total) / float32(growing)
	}
	g.spans = g.spans[:0]
	x := float32(0)
	for i, w := range g.widths {
		if g.columns[i].Grow {
			w += extra
		}
		g.spans = append(g.spans, span{x, w})
		x += w
	}
}

// layoutBody fits the columns to the present size and tells the scroll container how large the content is.
func (g *Grid) layoutBody() {
	g.layoutColumns(g.scroll.Size().Width - theme.ScrollBarSmallSize() - iconSpace)
	size := g.scroll.Size().Max(g.body.MinSize())
	if g.body.Size() != size {
		g.body.Resize(size)
	}
	g.clampScroll()
}

func (g *Grid) clampScroll() {
	limit := g.body.Size().Subtract(g.scroll.Size())
	off := g.scroll.Offset
	at := fyne.NewPos(clamp(off.X, 0, limit.Width), clamp(off.Y, 0, limit.Height))
	if at != off {
		g.scrollTo(at)
	}
}

func clamp(v, low, high float32) float32 { return max(low, min(v, high)) }

func (g *Grid) scrollTo(at fyne.Position) {
	g.scroll.ScrollToOffset(at)
	g.scrolled()
}

func (g *Grid) scrolled() {
	g.body.showVisible()
	g.header.Refresh()
}

// page is the number of whole rows in view, at least one.
func (g *Grid) page() int {
	return max(1, int(g.scroll.Size().Height/g.rowHeight()))
}

// reveal scrolls as little as brings the current cell into view.
func (g *Grid) reveal() {
	at, ok := g.shownAt[g.current.row]
	if !ok || g.current.col >= len(g.spans) || g.scroll.Size().IsZero() {
		return
	}
	s, h := g.spans[g.current.col], g.rowHeight()
	off := g.scroll.Offset
	off.Y = into(off.Y, g.scroll.Size().Height, float32(at)*h, h)
	off.X = into(off.X, g.scroll.Size().Width, s.x, s.width)
	if off != g.scroll.Offset {
		g.scrollTo(off)
	}
}

// into returns the offset nearest to off at which a window of the given size holds [at, at+length]; what is longer
// than the window is shown from its start.
func into(off, window, at, length float32) float32 {
	if at+length > off+window {
		off = at + length - window
	}
	return min(off, at)
}

// heldScroll remembers which row is at the top, so that rows added or moved above it do not push it away.
type heldScroll struct {
	g       *Grid
	topID   string
	within  float32
	visible bool // the current cell was in view
}

func (g *Grid) holdScroll() heldScroll {
	h := heldScroll{g: g, visible: g.currentInView()}
	top := int(g.scroll.Offset.Y / g.rowHeight())
	if g.scroll.Offset.Y > 0 && top < len(g.shown) {
		h.topID = g.rows[g.shown[top]].ID
		h.within = g.scroll.Offset.Y - float32(top)*g.rowHeight()
	}
	return h
}

func (h heldScroll) restore() {
	g := h.g
	if at, ok := g.shownAt[h.topID]; ok {
		limit := max(0, g.body.Size().Height-g.scroll.Size().Height)
		y := clamp(float32(at)*g.rowHeight()+h.within, 0, limit)
		g.scrollTo(fyne.NewPos(g.scroll.Offset.X, y))
	}
	if h.visible && !g.currentInView() {
		g.reveal()
	}
}

func (g *Grid) currentInView() bool {
	at, ok := g.shownAt[g.current.row]
	if !ok {
		return false
	}
	y := float32(at) * g.rowHeight()
	return y >= g.scroll.Offset.Y && y+g.rowHeight() <= g.scroll.Offset.Y+g.scroll.Size().Height
}

// tableLayout puts the header above the scrolled cells, and the words for an empty table over them.
type tableLayout struct{ g *Grid }

func (l *tableLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(160, l.g.headerHeight()+3*l.g.rowHeight())
}

func (l *tableLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head := l.g.headerHeight()
	objects[0].Resize(fyne.NewSize(size.Width, head))
	for _, o := range objects[1:] {
		o.Move(fyne.NewPos(0, head))
		o.Resize(fyne.NewSize(size.Width, max(0, size.Height-head)))
	}
	l.g.layoutBody()
	l.g.header.Refresh()
	l.g.body.showAll() // the scroll container has given the cells their size before the columns were laid out
}
