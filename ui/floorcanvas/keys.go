package floorcanvas

import (
	"slices"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// FocusGained implements the toolkit's focus.
func (c *Canvas) FocusGained() {
	c.focused, c.byKeys = true, true
	c.showOverlay()
}

// FocusLost implements the toolkit's focus.
func (c *Canvas) FocusLost() {
	c.focused = false
	c.showOverlay()
}

// AcceptsTab implements the toolkit's focus: Tab goes from one thing to the next,
// and past the last one to the next widget.
func (c *Canvas) AcceptsTab() bool { return true }

// TypedRune implements the toolkit's keyboard.
func (c *Canvas) TypedRune(r rune) {
	const factor = 1.25
	switch r {
	case '+', '=':
		c.Zoom(factor)
	case '-', '−':
		c.Zoom(1 / factor)
	case '0':
		c.Fit()
		if c.OnView != nil {
			c.OnView(c.view)
		}
	}
}

// TypedKey implements the toolkit's keyboard.
func (c *Canvas) TypedKey(e *fyne.KeyEvent) {
	c.byKeys = true
	if c.toolKey(e.Name) || (c.OnKey != nil && c.OnKey(e)) {
		return
	}
	switch e.Name {
	case fyne.KeyTab:
		c.cycle(held()&fyne.KeyModifierShift != 0)
	case fyne.KeyEscape:
		if len(c.order) > 0 && c.OnSelect != nil {
			c.OnSelect(nil, false)
		}
	case fyne.KeyUp:
		c.arrowKey(0, 1)
	case fyne.KeyDown:
		c.arrowKey(0, -1)
	case fyne.KeyLeft:
		c.arrowKey(-1, 0)
	case fyne.KeyRight:
		c.arrowKey(1, 0)
	}
}

// toolKey uses the keys that belong to something half done.
func (c *Canvas) toolKey(k fyne.KeyName) bool {
	switch {
	case k == fyne.KeyEscape && c.press != nil:
		c.cancelDrag()
		c.showOverlay()
	case k == fyne.KeyEscape && c.mode == Draw && len(c.drawn) > 0:
		c.CancelDrawing()
	case k == fyne.KeyEscape && c.mode == Measure && len(c.measure) > 0:
		c.measure = nil
		c.showOverlay()
	case k == fyne.KeyBackspace && c.mode == Draw && len(c.drawn) > 0:
		c.drawn = c.drawn[:len(c.drawn)-1]
		c.drawingChanged()
	case (k == fyne.KeyReturn || k == fyne.KeyEnter) && c.mode == Draw && len(c.drawn) > 0:
		c.FinishDrawing(false)
	default:
		return false
	}
	return true
}

// arrowKey moves the selection by a step, or the view when nothing is selected.
// The direction is the screen's.
func (c *Canvas) arrowKey(right, up float64) {
	if len(c.order) == 0 || c.OnNudge == nil {
		const pixels = 60
		c.panBy(-right*pixels, up*pixels)
		return
	}
	step := c.Step
	if !(step > 0) {
		step = 0.01
		if !c.sc.Style.Unit.Metric() {
			step = length.Inch / 2
		}
	}
	if held()&fyne.KeyModifierShift != 0 {
		step *= 10
	}
	delta := plane.Motion{Turn: -c.view.Turn}.Rotate(plane.Point{X: right, Y: up}.Times(step))
	c.OnNudge(c.Selected(), delta)
}

// cycle selects the next thing, or the one before; past the end the focus goes
// on, so that the keyboard is never caught.
func (c *Canvas) cycle(back bool) {
	ids := c.sc.selectable()
	at := -1
	if n := len(c.order); n > 0 {
		at = slices.Index(ids, c.order[n-1])
	}
	next := at + 1
	if back {
		next = at - 1
		if at < 0 {
			next = len(ids) - 1
		}
	}
	if next >= 0 && next < len(ids) && c.OnSelect != nil {
		c.OnSelect([]string{ids[next]}, false)
		c.Reveal(ids[next])
		return
	}
	cv := fyne.CurrentApp().Driver().CanvasForObject(c)
	switch {
	case cv == nil:
	case back:
		cv.FocusPrevious()
	default:
		cv.FocusNext()
	}
}
