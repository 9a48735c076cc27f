package floorcanvas

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// overlay is what changes with the pointer: objects of the toolkit above the
// picture, so that a moving pointer paints no picture anew.
type overlay struct {
	root                *fyne.Container
	alongTop, alongLeft *canvas.Line // the pointer on the rulers
	ring                *canvas.Rectangle

	lines []*canvas.Line // kept from one show to the next
	used  int
	rest  []fyne.CanvasObject
}

func newOverlay() *overlay {
	o := &overlay{
		root:     &fyne.Container{},
		alongTop: canvas.NewLine(color.Transparent), alongLeft: canvas.NewLine(color.Transparent),
		ring: canvas.NewRectangle(color.Transparent),
	}
	o.ring.StrokeWidth = 2
	o.alongTop.Hide()
	o.alongLeft.Hide()
	o.ring.Hide()
	return o
}

// maxOverlay bounds how many lines are objects: something of more is shown by
// its first ones, which is enough to know it by.
const maxOverlay = 600

func (o *overlay) line(a, b fyne.Position, width float32, c color.Color) {
	if o.used >= maxOverlay {
		return
	}
	if o.used == len(o.lines) {
		o.lines = append(o.lines, canvas.NewLine(c))
	}
	l := o.lines[o.used]
	o.used++
	shift := fyne.NewPos(rulerLeft, rulerTop)
	l.Position1, l.Position2 = a.Subtract(shift), b.Subtract(shift)
	l.StrokeWidth, l.StrokeColor = width, c
}

func (o *overlay) ringAt(at fyne.Position, r, width float32, c color.Color) {
	ring := canvas.NewCircle(color.Transparent)
	ring.StrokeColor, ring.StrokeWidth = c, width
	ring.Move(at.SubtractXY(rulerLeft+r, rulerTop+r))
	ring.Resize(fyne.NewSquareSize(2 * r))
	o.rest = append(o.rest, ring)
}

// word writes a text on a plate beside a place, within a size.
func (o *overlay) word(at fyne.Position, text string, inks theme.Inks, within fyne.Size) {
	t := canvas.NewText(text, inks.Colour(theme.Paper))
	t.TextSize = 12
	size := t.MinSize()
	plate := canvas.NewRectangle(inks.Colour(theme.Label))
	plate.CornerRadius = 3
	plate.Resize(size.AddWidthHeight(10, 4))
	pos := at.AddXY(14-rulerLeft, 14-rulerTop)
	pos.X = max(min(pos.X, within.Width-rulerLeft-plate.Size().Width-2), 2)
	pos.Y = max(min(pos.Y, within.Height-rulerTop-plate.Size().Height-2), 2)
	plate.Move(pos)
	t.Move(pos.AddXY(5, 2))
	t.Resize(size)
	o.rest = append(o.rest, plate, t)
}

// begin and end enclose what is shown next.
func (o *overlay) begin() { o.used, o.rest = 0, o.rest[:0] }

func (o *overlay) end() {
	objects := make([]fyne.CanvasObject, 0, o.used+len(o.rest))
	for _, l := range o.lines[:o.used] {
		objects = append(objects, l)
	}
	o.root.Objects = append(objects, o.rest...)
	o.root.Refresh()
}

// showOverlay brings what lies above the picture up to date.
func (c *Canvas) showOverlay() {
	inks := theme.CurrentInks()
	o := c.over
	o.begin()
	c.showHover(inks)
	c.showDrag(inks)
	c.showDrawing(inks)
	c.showMeasure(inks)
	c.showSnap(inks)
	o.end()
	c.showPointer(inks)
	o.ring.StrokeColor = inks.Colour(theme.Selection)
	if show := c.focused && c.byKeys; o.ring.Hidden == show {
		o.ring.Hidden = !show
		o.ring.Refresh()
	}
}

func (c *Canvas) showPointer(inks theme.Inks) {
	o, at := c.over, c.hover.pos
	for _, l := range []*canvas.Line{o.alongTop, o.alongLeft} {
		l.StrokeColor, l.StrokeWidth = inks.Colour(theme.Selection), 1.5
		l.Hidden = !c.hover.in
	}
	o.alongTop.Position1, o.alongTop.Position2 = fyne.NewPos(at.X, 0), fyne.NewPos(at.X, rulerTop)
	o.alongLeft.Position1, o.alongLeft.Position2 = fyne.NewPos(0, at.Y), fyne.NewPos(rulerLeft, at.Y)
	o.alongTop.Refresh()
	o.alongLeft.Refresh()
}

// trace draws the chains and dots of an identifier, shifted by delta.
func (c *Canvas) trace(id string, delta plane.Point, width float32, col color.Color) {
	if id == "" {
		return
	}
	for _, of := range [][]chain{c.sc.shapes, c.sc.areas} {
		for i := range of {
			if of[i].id == id {
				c.traceChain(&of[i], delta, width, col)
			}
		}
	}
	for _, d := range c.sc.Dots {
		if d.ID == id {
			c.over.ringAt(c.PositionOf(d.At.Add(delta)), float32(sizeOf(d))/2+3, width, col)
		}
	}
}

func (c *Canvas) traceChain(ch *chain, delta plane.Point, width float32, col color.Color) {
	for _, run := range ch.pieces {
		for i := 0; i+1 < len(run); i++ {
			c.segment(run[i].Add(delta), run[i+1].Add(delta), width, col)
		}
	}
}

// segment shows a straight line, cut to the widget: objects much larger than the
// window would lose their place in single precision.
func (c *Canvas) segment(a, b plane.Point, width float32, col color.Color) {
	l := c.lens()
	x0, y0 := l.px(a)
	x1, y1 := l.px(b)
	s := c.Size()
	sf := surface{}
	sf.clip.Max.X, sf.clip.Max.Y = int(s.Width)+1, int(s.Height)+1
	if t, ok := sf.trim(stretch{x0, y0, x1, y1}, 8); ok {
		c.over.line(fyne.NewPos(float32(t.x0), float32(t.y0)), fyne.NewPos(float32(t.x1), float32(t.y1)), width, col)
	}
}
