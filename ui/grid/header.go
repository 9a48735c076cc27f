package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// edgeReach is how near to the edge between two titles the pointer takes hold of it.
const edgeReach = 5

// header is the row of titles above the cells: a click sorts, an edge is dragged to change a width. It stays where it
// is while the cells scroll down, and follows them sideways.
type header struct {
	widget.BaseWidget
	g      *Grid
	back   *canvas.Rectangle
	titles []*titleView
	edge   int // the column whose edge is under the pointer or dragged, −1 for none
	start  float32
	from   float32
	moving bool
}

type titleView struct {
	text  *canvas.Text
	arrow *canvas.Image
	line  *canvas.Rectangle
}

var (
	_ fyne.Tappable      = (*header)(nil)
	_ fyne.Draggable     = (*header)(nil)
	_ desktop.Hoverable  = (*header)(nil)
	_ desktop.Cursorable = (*header)(nil)
	_ desktop.Mouseable  = (*header)(nil)
)

func newHeader(g *Grid) *header {
	h := &header{g: g, back: canvas.NewRectangle(nil), edge: -1}
	h.ExtendBaseWidget(h)
	return h
}

// Tapped sorts by the column under the pointer.
func (h *header) Tapped(e *fyne.PointEvent) {
	if h.edgeAt(e.Position.X) >= 0 {
		return
	}
	x := e.Position.X + h.g.scroll.Offset.X
	for i, s := range h.g.spans {
		if x >= s.x && x < s.end() {
			h.g.sortBy(h.g.order.next(i))
			return
		}
	}
}

// MouseDown takes hold of an edge.
func (h *header) MouseDown(e *desktop.MouseEvent) {
	h.edge = h.edgeAt(e.Position.X)
	h.from = e.Position.X
	if h.edge >= 0 {
		h.start = h.g.spans[h.edge].width
	}
}

// MouseUp implements desktop.Mouseable.
func (h *header) MouseUp(*desktop.MouseEvent) {}

// Dragged changes the width of the column whose edge is held. What the column had grown by becomes its own.
func (h *header) Dragged(e *fyne.DragEvent) {
	if h.edge < 0 || h.edge >= len(h.g.widths) {
		return
	}
	h.moving = true
	h.g.columns[h.edge].Grow = false
	h.g.widths[h.edge] = max(minColumn, h.start+e.Position.X-h.from)
	h.g.show()
}

// DragEnd lets go of the edge.
func (h *header) DragEnd() {
	h.moving = false
	h.edge = -1
}

// MouseIn implements desktop.Hoverable.
func (h *header) MouseIn(e *desktop.MouseEvent) { h.MouseMoved(e) }

// MouseMoved notes the edge under the pointer, for its shape.
func (h *header) MouseMoved(e *desktop.MouseEvent) {
	if !h.moving {
		h.edge = h.edgeAt(e.Position.X)
	}
}

// MouseOut implements desktop.Hoverable.
func (h *header) MouseOut() {
	if !h.moving {
		h.edge = -1
	}
}

// Cursor shows that an edge can be dragged.
func (h *header) Cursor() desktop.Cursor {
	if h.edge >= 0 {
		return desktop.HResizeCursor
	}
	return desktop.DefaultCursor
}

func (h *header) edgeAt(x float32) int {
	x += h.g.scroll.Offset.X
	for i, s := range h.g.spans {
		if d := x - s.end(); d >= -edgeReach && d <= edgeReach {
			return i
		}
	}
	return -1
}

// CreateRenderer implements fyne.Widget.
func (h *header) CreateRenderer() fyne.WidgetRenderer { return &headerRenderer{h: h} }

type headerRenderer struct {
	h       *header
	objects []fyne.CanvasObject
}

func (r *headerRenderer) Destroy()                     {}
func (r *headerRenderer) MinSize() fyne.Size           { return fyne.NewSize(minColumn, r.h.g.headerHeight()) }
func (r *headerRenderer) Objects() []fyne.CanvasObject { return r.objects }

func (r *headerRenderer) Refresh() {
	r.Layout(r.h.Size())
	canvas.Refresh(r.h)
}

func (r *headerRenderer) Layout(size fyne.Size) {
	h := r.h
	paint(h.back, theme.Color(theme.ColorNameHeaderBackground), fyne.Position{}, size)
	r.objects = append(r.objects[:0:0], h.back)
	for len(h.titles) < len(h.g.spans) {
		h.titles = append(h.titles, newTitleView())
	}
	for i, s := range h.g.spans {
		s.x -= h.g.scroll.Offset.X
		t := h.titles[i]
		t.show(h.g.columns[i], s, size.Height)
		t.showArrow(h.g.order, i, s, size.Height)
		r.objects = append(r.objects, t.text, t.arrow, t.line)
	}
}

func newTitleView() *titleView {
	return &titleView{
		text:  canvas.NewText("", nil),
		arrow: canvas.NewImageFromResource(theme.MenuDropUpIcon()),
		line:  canvas.NewRectangle(nil),
	}
}

func (t *titleView) show(col Column, s span, height float32) {
	style := fyne.TextStyle{Bold: true}
	room := s.width - 2*cellPad
	t.text.Text = shorten(col.Title, room, style)
	t.text.TextStyle, t.text.TextSize = style, theme.TextSize()
	t.text.Color = theme.Color(theme.ColorNameForeground)
	min := t.text.MinSize()
	x := s.x + cellPad
	if col.Right {
		x = s.end() - cellPad - min.Width
	}
	t.text.Move(fyne.NewPos(x, (height-min.Height)/2))
	t.text.Resize(min)
	t.text.Refresh()
	paint(t.line, theme.Color(theme.ColorNameSeparator), fyne.NewPos(s.end()-1, 3), fyne.NewSize(1, height-6))
}

// showArrow puts the arrow where the title is not: after it, or before it where figures are aligned to the right.
func (t *titleView) showArrow(o order, i int, s span, height float32) {
	t.arrow.Hidden = o.column != i
	if t.arrow.Hidden {
		return
	}
	icon := theme.MenuDropUpIcon()
	if o.down {
		icon = theme.MenuDropDownIcon()
	}
	if t.arrow.Resource != icon {
		t.arrow.Resource = icon
		t.arrow.Refresh()
	}
	side := theme.IconInlineSize()
	x := min(t.text.Position().X+t.text.Size().Width, s.end()-side)
	if t.text.Position().X > s.x+cellPad+1 {
		x = max(s.x, t.text.Position().X-side)
	}
	t.arrow.Move(fyne.NewPos(x, (height-side)/2))
	t.arrow.Resize(fyne.NewSquareSize(side))
}
