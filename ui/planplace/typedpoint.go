package planplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// typedPoint is the row under the toolbar in which the next point of a drawing is
// typed, or the radius of a circle.
type typedPoint struct {
	desk     *desk.Desk
	board    *board
	words    *widget.Label
	up, over *fields.Length
	radius   *fields.Length
	point    *fyne.Container
	round    *fyne.Container
	content  *fyne.Container
	at       plane.Point
	r        float64
}

func newTypedPoint(d *desk.Desk, b *board) *typedPoint {
	t := &typedPoint{desk: d, board: b, words: widget.NewLabel("")}
	t.words.Wrapping = fyne.TextWrapWord
	t.up = t.entry(length.ParseUp, &t.at.Y)
	t.over = t.entry(length.ParseOver, &t.at.X)
	t.radius = t.entry(length.Parse, &t.r)
	t.up.OnKeys(func() { focus(t.over) }, t.leave)
	t.over.OnKeys(t.set, t.leave)
	t.radius.OnKeys(t.setRadius, t.leave)
	t.point = container.NewHBox(widget.NewLabel("up"), wide(110, t.up), widget.NewLabel("over"), wide(110, t.over),
		fields.NewButton("Set", t.set))
	t.round = container.NewHBox(widget.NewLabel("radius"), wide(110, t.radius), fields.NewButton("Set", t.setRadius))
	t.content = container.NewBorder(nil, nil, nil, container.NewVBox(container.NewHBox(t.point, t.round)), t.words)
	t.content.Hide()
	return t
}

func (t *typedPoint) entry(parse func(string, length.Unit) (float64, error), into *float64) *fields.Length {
	l := newLength(t.desk, parse)
	l.OnCommit = func(_ string, m float64) error {
		*into = m
		return nil
	}
	l.OnBlank = func() error { return nil }
	return l
}

// show says what comes next, after so many points.
func (t *typedPoint) show(points int) {
	tool := t.board.tool
	t.words.SetText(tool.next(points))
	was := t.content.Visible()
	setVisible(t.content, tool != selectThings)
	radius := tool == drawCircle && points == 1
	setVisible(t.point, tool.draws() && !radius)
	setVisible(t.round, radius)
	t.content.Refresh()
	if t.content.Visible() != was {
		t.board.content.Refresh() // the rows above the drawing have become more or fewer
	}
}

// say shows what went wrong with a drawing.
func (t *typedPoint) say(words string) {
	t.words.SetText(words)
	setVisible(t.content, true)
	t.board.content.Refresh()
}

// set sets the point that is typed. Nothing typed ends the line, as Enter on the
// drawing does.
func (t *typedPoint) set() {
	if t.up.Shown() == "" && t.over.Shown() == "" {
		t.board.canvas.FinishDrawing(t.board.tool == drawShape)
		return
	}
	if !t.filled(t.up) || !t.filled(t.over) {
		return
	}
	at := t.at
	t.up.SetBlank()
	t.over.SetBlank()
	focus(t.up)
	t.board.canvas.AddPoint(at)
}

func (t *typedPoint) filled(l *fields.Length) bool {
	if l.Shown() == "" {
		t.words.SetText("Both are needed: how far up, and how far over with its side, SL or SR.")
		focus(l)
		return false
	}
	if !l.Commit() {
		focus(l)
		return false
	}
	return true
}

func (t *typedPoint) setRadius() {
	if !t.filled(t.radius) {
		return
	}
	if !(t.r > 0) {
		t.words.SetText("The radius must be more than nothing.")
		return
	}
	r := t.r
	t.radius.SetBlank()
	t.board.typedRadius(r)
}

func (t *typedPoint) leave() { t.board.take(selectThings) }
