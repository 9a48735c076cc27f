package floorcanvas

import (
	"fyne.io/fyne/v2"

	"groundrow/tapeout/plane"
)

func (c *Canvas) port() port {
	s := c.Size()
	return portOf(float64(s.Width), float64(s.Height), 1, false)
}

// lens looks through the widget in toolkit pixels.
func (c *Canvas) lens() lens { return newLens(c.view, c.port(), 1) }

func (c *Canvas) pointAt(pos fyne.Position) plane.Point {
	l := c.lens()
	return l.point(float64(pos.X), float64(pos.Y))
}

// PositionOf returns where a point of the picture is on the widget.
func (c *Canvas) PositionOf(p plane.Point) fyne.Position {
	l := c.lens()
	x, y := l.px(p)
	return fyne.NewPos(float32(x), float32(y))
}

// Fit shows everything, at the present turn, and again whenever the canvas changes
// its size until another view is chosen.
func (c *Canvas) Fit() {
	p := c.port()
	c.setView(c.sc.fit(c.view.Turn, p.w, p.h))
	c.fitting = true
}

// FitTo shows a box of the picture, at the present turn.
func (c *Canvas) FitTo(b plane.Box) {
	if !near(b.Min) || !near(b.Max) {
		return
	}
	p := c.port()
	c.setView(fitted(b, c.view.Turn, p.w, p.h))
}

// Reveal brings what has the identifiers into sight without changing the scale,
// unless it is too large for it. Unknown identifiers are left out.
func (c *Canvas) Reveal(ids ...string) {
	b, ok := c.sc.boxOf(setOf(ids))
	if !ok {
		return
	}
	p := c.port()
	l := c.lens()
	seen := l.seen(p)
	if seen.Holds(b.Min) && seen.Holds(b.Max) {
		return
	}
	v := c.view
	if w, h := seen.Width(), seen.Height(); b.Width() > w || b.Height() > h {
		v = fitted(b, v.Turn, p.w, p.h)
	}
	v.Centre = b.Centre()
	c.setView(v)
}

func (s *scene) boxOf(ids map[string]bool) (b plane.Box, ok bool) {
	add := func(id string, with plane.Box) {
		if !ids[id] {
			return
		}
		if !ok {
			b, ok = with, true
		}
		b = b.Union(with)
	}
	for _, c := range s.shapes {
		add(c.id, c.box)
	}
	for _, c := range s.areas {
		add(c.id, c.box)
	}
	for _, d := range s.Dots {
		add(d.ID, plane.Box{Min: d.At, Max: d.At})
	}
	return b, ok
}

// SetView looks at a part of the picture. A view without a scale fits everything
// at its turn.
func (c *Canvas) SetView(v View) {
	if !(v.Scale > 0) {
		c.view.Turn = View{Turn: v.Turn, Scale: 1}.sound().Turn
		c.Fit()
		return
	}
	c.setView(v)
}

// GetView returns what is looked at.
func (c *Canvas) GetView() View { return c.view }

func (c *Canvas) setView(v View) {
	v = v.sound()
	c.fitting = false
	if v == c.view {
		return
	}
	c.view = v
	c.Refresh()
}

// moveView is setView by a person.
func (c *Canvas) moveView(v View) {
	c.setView(v)
	if c.OnView != nil {
		c.OnView(c.view)
	}
}

// Zoom magnifies by a factor about the middle.
func (c *Canvas) Zoom(factor float64) {
	p := c.port()
	c.zoomAt(factor, p.x+p.w/2, p.y+p.h/2)
}

func (c *Canvas) zoomAt(factor, x, y float64) {
	if !(factor > 0) {
		return
	}
	l := c.lens()
	c.moveView(l.zoomed(factor, x, y))
}

func (c *Canvas) panBy(dx, dy float64) {
	l := c.lens()
	p := c.port()
	v := c.view
	v.Centre = l.point(p.x+p.w/2-dx, p.y+p.h/2-dy)
	c.moveView(v)
}
