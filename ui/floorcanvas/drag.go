package floorcanvas

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// wheelFactor makes one notch of a usual wheel, which the toolkit counts as 25, a
// fifth larger. A runaway wheel is held to a factor of ten at a time.
func wheelFactor(dy float32) float64 {
	const notch = 25
	return math.Pow(1.2, min(max(float64(dy)/notch, -12), 12))
}

// Dragged implements the toolkit's dragging.
func (c *Canvas) Dragged(e *fyne.DragEvent) {
	if c.press == nil {
		return
	}
	p := c.press
	step := e.Position.Subtract(p.now)
	p.now, p.moved = e.Position, true
	c.hover = hover{in: true, pos: p.now}
	if c.OnHover != nil {
		c.OnHover(c.pointAt(p.now), p.id)
	}
	switch p.does {
	case panning:
		c.panBy(float64(step.X), float64(step.Y))
		return
	case draggingShape:
		p.target = c.snapTo(c.pointAt(p.now), map[string]bool{p.id: true})
		p.delta = p.target.Point.Sub(p.point)
		c.OnDragShape(p.id, p.delta, false)
	case draggingHandle:
		p.target = c.snapTo(c.pointAt(p.now), nil)
		c.OnDragHandle(p.handle.ID, p.target.Point, false)
	}
	c.showOverlay()
}

// DragEnd implements the toolkit's dragging.
func (c *Canvas) DragEnd() { c.endDrag() }

// endDrag lets go. The toolkit tells of it twice, by the button and by the drag.
func (c *Canvas) endDrag() {
	p := c.press
	if p == nil {
		return
	}
	c.press = nil
	c.hover = hover{in: true, pos: p.now}
	if p.moved {
		switch p.does {
		case draggingShape:
			c.OnDragShape(p.id, p.delta, true)
		case draggingHandle:
			c.OnDragHandle(p.handle.ID, p.target.Point, true)
		case boxing:
			if c.OnSelect != nil {
				c.OnSelect(c.boxed(p), true)
			}
		}
	}
	c.showOverlay()
}

// cancelDrag calls a drag off.
func (c *Canvas) cancelDrag() {
	p := c.press
	if p == nil {
		return
	}
	c.press = nil
	if !p.moved {
		return
	}
	switch p.does {
	case draggingShape:
		c.OnDragShape(p.id, plane.Point{}, true)
	case draggingHandle:
		c.OnDragHandle(p.handle.ID, p.handle.At, true)
	}
}

// boxed lists what lies wholly in the box that was drawn on the screen.
func (c *Canvas) boxed(p *press) []string {
	l := c.lens()
	r := rect{
		float64(min(p.pos.X, p.now.X)), float64(min(p.pos.Y, p.now.Y)),
		float64(max(p.pos.X, p.now.X)), float64(max(p.pos.Y, p.now.Y)),
	}
	inside := func(q plane.Point) bool { return r.holds(l.px(q)) }
	out := map[string]bool{}
	for _, of := range [][]chain{c.sc.shapes, c.sc.areas} {
		for i := range of {
			for _, run := range of[i].pieces {
				for _, q := range run {
					out[of[i].id] = out[of[i].id] || !inside(q)
				}
			}
		}
	}
	for _, d := range c.sc.Dots {
		out[d.ID] = out[d.ID] || !inside(d.At)
	}
	var ids []string
	for _, id := range c.sc.selectable() {
		if left, known := out[id]; known && !left {
			ids = append(ids, id)
		}
	}
	return ids
}

// showDrag shows what is dragged where it would come to lie.
func (c *Canvas) showDrag(inks theme.Inks) {
	p := c.press
	if p == nil || !p.moved {
		return
	}
	col := inks.Colour(theme.Selection)
	switch p.does {
	case draggingShape:
		c.trace(p.id, p.delta, 3, col)
		if c.selected[p.id] {
			for _, id := range c.order {
				if id != p.id {
					c.trace(id, p.delta, 3, col)
				}
			}
		}
		c.over.line(c.PositionOf(p.point), c.PositionOf(p.point.Add(p.delta)), 1, col)
		c.over.word(p.now, c.sc.shiftWords(p.delta)+snapWords(p.target), inks, c.Size())
	case draggingHandle:
		at := c.PositionOf(p.target.Point)
		c.over.line(c.PositionOf(p.handle.At), at, 1, col)
		c.over.ringAt(at, 8, 2, col)
		c.over.word(p.now, c.sc.placeWords(p.target.Point)+snapWords(p.target), inks, c.Size())
	case boxing:
		a, b := p.pos, p.now
		corners := []fyne.Position{a, fyne.NewPos(b.X, a.Y), b, fyne.NewPos(a.X, b.Y)}
		for i := range corners {
			c.over.line(corners[i], corners[(i+1)%4], 1.5, col)
		}
	}
}

func snapWords(s Snap) string {
	if s.What == "" {
		return ""
	}
	return "  ·  " + s.What
}

func (c *Canvas) takeFocus() {
	if cv := fyne.CurrentApp().Driver().CanvasForObject(c); cv != nil {
		cv.Focus(c)
	}
	c.byKeys = false
}

// held returns the modifier keys that are down now.
func held() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

func (c *Canvas) snapOff() bool { return c.noSnap || held()&fyne.KeyModifierAlt != 0 }

// snapTo returns what a point is drawn to, unless snapping is off.
func (c *Canvas) snapTo(p plane.Point, skip map[string]bool) Snap {
	if c.snapOff() {
		return Snap{Point: p}
	}
	return c.sc.snap(p, c.view.Scale, skip)
}
