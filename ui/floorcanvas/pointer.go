package floorcanvas

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// hover is where the pointer is while no button is down.
type hover struct {
	in     bool
	pos    fyne.Position
	id     string
	handle Handle
	onGrip bool // on a handle
	snap   Snap
}

// press is a button held down.
type press struct {
	button desktop.MouseButton
	mods   fyne.KeyModifier
	pos    fyne.Position // where it went down
	point  plane.Point
	id     string
	handle Handle
	does   gesture
	moved  bool
	now    fyne.Position
	delta  plane.Point // of a dragged shape
	target Snap        // of a dragged shape or handle
}

type gesture uint8

const (
	panning gesture = iota
	draggingShape
	draggingHandle
	boxing
)

// click is the last one, to know a double click by. The toolkit's own double tap
// would delay every single one.
type click struct {
	at  time.Time
	pos fyne.Position
}

const doubleClick = 400 * time.Millisecond

func (c *Canvas) showHover(inks theme.Inks) {
	if c.press != nil || !c.hover.in {
		return
	}
	col := inks.Colour(theme.Hover)
	if c.hover.onGrip {
		c.over.ringAt(c.PositionOf(c.hover.handle.At), 13, 2, col)
		if c.hover.handle.Name != "" {
			c.over.word(c.hover.pos, c.hover.handle.Name, inks, c.Size())
		}
		return
	}
	if c.mode == Select {
		c.trace(c.hover.id, plane.Point{}, 3, col)
	}
}

// MouseIn implements the toolkit's hovering.
func (c *Canvas) MouseIn(e *desktop.MouseEvent) { c.MouseMoved(e) }

// MouseMoved implements the toolkit's hovering.
func (c *Canvas) MouseMoved(e *desktop.MouseEvent) {
	if c.press != nil {
		return
	}
	p := c.pointAt(e.Position)
	c.hover = hover{in: true, pos: e.Position}
	if c.mode == Select && c.OnDragHandle != nil {
		c.hover.handle, c.hover.onGrip = c.sc.pickHandle(p, c.view.Scale)
	}
	if !c.hover.onGrip {
		c.hover.id = c.pick(p)
	}
	if c.mode == Draw || c.mode == Measure {
		c.hover.snap = c.aimed(p, straightened())
	}
	c.showOverlay()
	if c.OnHover != nil {
		c.OnHover(p, c.hover.id)
	}
}

// MouseOut implements the toolkit's hovering.
func (c *Canvas) MouseOut() {
	c.hover = hover{}
	c.showOverlay()
	if c.OnLeave != nil {
		c.OnLeave()
	}
}

// Cursor implements the toolkit's pointer forms.
func (c *Canvas) Cursor() desktop.Cursor {
	switch {
	case c.mode == Draw || c.mode == Measure:
		return desktop.CrosshairCursor
	case c.mode == Select && (c.hover.onGrip || c.hover.id != ""):
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// MouseDown implements the toolkit's buttons.
func (c *Canvas) MouseDown(e *desktop.MouseEvent) {
	if c.press != nil {
		return // a second button during a drag
	}
	c.takeFocus()
	p := c.pointAt(e.Position)
	c.press = &press{button: e.Button, mods: e.Modifier, pos: e.Position, now: e.Position, point: p}
	c.press.id = c.pick(p)
	if e.Button != desktop.MouseButtonPrimary || c.mode != Select {
		return
	}
	if h, ok := c.sc.pickHandle(p, c.view.Scale); ok && c.OnDragHandle != nil {
		c.press.handle, c.press.does = h, draggingHandle
		return
	}
	switch {
	case c.draggable(c.press.id):
		c.press.does = draggingShape
		c.press.point = c.grip(p, c.press.id)
	case e.Modifier&fyne.KeyModifierShift != 0:
		c.press.does = boxing
	}
}

func (c *Canvas) draggable(id string) bool {
	return id != "" && c.OnDragShape != nil && (c.CanDrag == nil || c.CanDrag(id))
}

// grip returns the point by which something is held: its corner or end when one
// is near, so that corners can be put onto corners.
func (c *Canvas) grip(p plane.Point, id string) plane.Point {
	s := c.sc.snap(p, c.view.Scale, nil)
	if s.ID == id && s.What != SnapLine && !c.snapOff() {
		return s.Point
	}
	return p
}

// MouseUp implements the toolkit's buttons.
func (c *Canvas) MouseUp(e *desktop.MouseEvent) {
	p := c.press
	if p == nil || p.button != e.Button {
		return
	}
	if p.moved {
		c.endDrag()
		return
	}
	c.press = nil
	switch p.button {
	case desktop.MouseButtonPrimary:
		c.clicked(p, e.Position)
	case desktop.MouseButtonSecondary:
		if c.OnMenu != nil {
			c.OnMenu(p.point, p.id, e.AbsolutePosition)
		}
	}
	c.showOverlay()
}

func (c *Canvas) clicked(p *press, pos fyne.Position) {
	now := time.Now()
	double := now.Sub(c.last.at) < doubleClick && rectAround(c.last.pos, 3).holds(float64(pos.X), float64(pos.Y))
	c.last = click{now, pos}
	if double {
		c.last = click{}
	}
	switch c.mode {
	case Draw:
		c.drawClick(c.pointAt(pos), double)
	case Measure:
		c.measureClick(c.pointAt(pos))
	case Select:
		c.selectClick(p)
	}
}

func (c *Canvas) selectClick(p *press) {
	additive := p.mods&(fyne.KeyModifierShift|fyne.KeyModifierShortcutDefault) != 0
	if c.OnSelect != nil && (p.id != "" || !additive) && p.does != draggingHandle {
		c.OnSelect(setList(p.id), additive)
	}
	if c.OnTap != nil {
		at := c.pointAt(p.pos)
		c.OnTap(at, c.snapTo(at, nil))
	}
}

func rectAround(p fyne.Position, reach float64) rect {
	x, y := float64(p.X), float64(p.Y)
	return rect{x, y, x, y}.grown(reach)
}

func setList(id string) []string {
	if id == "" {
		return nil
	}
	return []string{id}
}

// Scrolled implements the toolkit's wheel: it zooms to the pointer.
func (c *Canvas) Scrolled(e *fyne.ScrollEvent) {
	c.zoomAt(wheelFactor(e.Scrolled.DY), float64(e.Position.X), float64(e.Position.Y))
}
