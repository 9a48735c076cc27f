package floorcanvas

import (
	"math"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// aimed returns the point that a click of the tool at p would set. A straight
// line, which Shift asks for, goes up or over from its last point.
func (c *Canvas) aimed(p plane.Point, straight bool) Snap {
	s := c.snapTo(p, nil)
	if n := len(c.drawn); c.mode == Draw && n >= 3 && c.closes(p) {
		return Snap{Point: c.drawn[0], What: "close"}
	}
	last, ok := c.lastPoint()
	if !ok || !straight {
		return s
	}
	d := c.sc.Datum.Inverse().Rotate(s.Point.Sub(last))
	if math.Abs(d.X) > math.Abs(d.Y) {
		d.Y = 0
	} else {
		d.X = 0
	}
	return Snap{Point: last.Add(c.sc.Datum.Rotate(d)), What: "straight"}
}

// straightened tells whether Shift is held.
func straightened() bool { return held()&fyne.KeyModifierShift != 0 }

func (c *Canvas) closes(p plane.Point) bool {
	return p.To(c.drawn[0]) <= snapReach*c.view.Scale
}

func (c *Canvas) lastPoint() (plane.Point, bool) {
	of := c.drawn
	if c.mode == Measure {
		of = c.measure
	}
	if len(of) == 0 || (c.mode == Measure && len(of) == 2) {
		return plane.Point{}, false
	}
	return of[len(of)-1], true
}

func (c *Canvas) drawClick(p plane.Point, double bool) {
	if double && len(c.drawn) > 0 {
		c.FinishDrawing(false)
		return
	}
	s := c.aimed(p, straightened())
	if s.What == "close" {
		c.FinishDrawing(true)
		return
	}
	c.AddPoint(s.Point)
}

// AddPoint sets the next point of the line being drawn, as a click does: for a
// form in which it is typed.
func (c *Canvas) AddPoint(p plane.Point) {
	if c.mode != Draw || !near(p) {
		return
	}
	c.drawn = append(c.drawn, p)
	c.drawingChanged()
}

// FinishDrawing ends the line being drawn. A line of one point is dropped.
func (c *Canvas) FinishDrawing(closed bool) {
	points := c.drawn
	c.drawn = nil
	c.drawingChanged()
	if len(points) > 1 && c.OnDraw != nil {
		c.OnDraw(points, closed && len(points) > 2)
	}
}

// CancelDrawing drops the line being drawn.
func (c *Canvas) CancelDrawing() {
	c.drawn = nil
	c.drawingChanged()
}

func (c *Canvas) drawingChanged() {
	c.showOverlay()
	if c.OnDrawing != nil {
		c.OnDrawing(append([]plane.Point(nil), c.drawn...))
	}
}

func (c *Canvas) showDrawing(inks theme.Inks) {
	if c.mode != Draw {
		return
	}
	col := inks.Colour(theme.Selection)
	for i := 0; i+1 < len(c.drawn); i++ {
		c.segment(c.drawn[i], c.drawn[i+1], 2.5, col)
	}
	for _, p := range c.drawn {
		c.over.ringAt(c.PositionOf(p), 4, 2, col)
	}
	if last, ok := c.lastPoint(); ok && c.hover.in {
		c.segment(last, c.hover.snap.Point, 1.5, col)
	}
}

func (c *Canvas) measureClick(p plane.Point) {
	s := c.aimed(p, straightened())
	if len(c.measure) == 2 {
		c.measure = nil
	}
	c.measure = append(c.measure, s.Point)
	if len(c.measure) == 2 && c.OnMeasure != nil {
		c.OnMeasure(c.measure[0], c.measure[1])
	}
}

func (c *Canvas) showMeasure(inks theme.Inks) {
	if c.mode != Measure || len(c.measure) == 0 {
		return
	}
	col := inks.Colour(theme.Selection)
	a, b := c.measure[0], c.hover.snap.Point
	if len(c.measure) == 2 {
		b = c.measure[1]
	} else if !c.hover.in {
		b = a
	}
	c.segment(a, b, 2, col)
	c.over.ringAt(c.PositionOf(a), 4, 2, col)
	c.over.ringAt(c.PositionOf(b), 4, 2, col)
	if len(c.measure) == 2 {
		c.over.word(c.PositionOf(a.Towards(b, 0.5)), c.sc.Style.Format(a.To(b)), inks, c.Size())
	}
}

// showSnap says at the pointer what a click would catch, and how long the line
// to it would be.
func (c *Canvas) showSnap(inks theme.Inks) {
	if !c.hover.in || (c.mode != Draw && c.mode != Measure) {
		return
	}
	s := c.hover.snap
	words := s.What
	if last, ok := c.lastPoint(); ok {
		words = c.sc.Style.Format(last.To(s.Point)) + snapWords(s)
	}
	if s.What != "" {
		c.over.ringAt(c.PositionOf(s.Point), 6, 1.5, inks.Colour(theme.Hover))
	}
	if words != "" {
		c.over.word(c.hover.pos, words, inks, c.Size())
	}
}
