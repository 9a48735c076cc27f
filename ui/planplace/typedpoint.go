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

// typedPoint is where the next point of a drawing is typed, or the radius of a
// circle. The words are as high as two lines, so that the drawing stays where it
// is when a tool is taken up.
type typedPoint struct {
	desk     *desk.Desk
	board    *board
	words    *widget.Label
	up, over *fields.Text
	radius   *fields.Text
	point    *fyne.Container
	round    *fyne.Container
	content  *fyne.Container
}

func newTypedPoint(d *desk.Desk, b *board) *typedPoint {
	t := &typedPoint{desk: d, board: b, words: wrapped(""), up: fields.NewText(), over: fields.NewText(), radius: fields.NewText()}
	t.over.SetHint("SL or SR")
	t.up.OnKeys(t.upEntered, t.leave)
	t.over.OnKeys(t.set, t.leave)
	t.radius.OnKeys(t.setRadius, t.leave)
	t.point = container.NewHBox(widget.NewLabel("up"), wide(96, t.up), widget.NewLabel("over"), wide(96, t.over),
		fields.NewButton("Set", t.set))
	t.round = container.NewHBox(widget.NewLabel("radius"), wide(96, t.radius), fields.NewButton("Set", t.setRadius))
	t.content = container.New(tall(twoLines), container.NewBorder(nil, nil, nil,
		container.NewVBox(container.NewHBox(t.point, t.round)), t.words))
	return t
}

// show says what a click does, or what comes next after so many points.
func (t *typedPoint) show(words string, points int) {
	tool := t.board.tool
	radius := tool == drawCircle && points == 1
	setVisible(t.point, tool.draws() && !radius)
	setVisible(t.round, radius)
	t.say(words)
	t.content.Refresh()
}

func (t *typedPoint) say(words string) {
	if t.words.Text != words {
		t.words.SetText(words)
	}
}

// upEntered goes on to the over, or ends the line where nothing at all is typed.
func (t *typedPoint) upEntered() {
	if t.up.Shown() == "" && t.over.Shown() == "" {
		t.set()
		return
	}
	focus(t.desk, t.over)
}

// set sets the point that is typed. Nothing typed ends the line, as Enter on the
// drawing does.
func (t *typedPoint) set() {
	if t.up.Shown() == "" && t.over.Shown() == "" {
		t.board.canvas.FinishDrawing(t.board.tool == drawShape)
		return
	}
	up, ok := t.read(t.up, length.ParseUp)
	if !ok {
		return
	}
	over, ok := t.read(t.over, length.ParseOver)
	if !ok {
		return
	}
	t.up.Set("")
	t.over.Set("")
	focus(t.desk, t.up)
	t.board.canvas.AddPoint(plane.Point{X: over, Y: up})
}

// read takes what is typed; what is wrong with it is said beside it, where there
// is room for the words.
func (t *typedPoint) read(from *fields.Text, parse func(string, length.Unit) (float64, error)) (float64, bool) {
	m, err := parse(from.Shown(), t.desk.View().P.Unit())
	if err != nil {
		t.say(spoken(err))
		t.board.content.Refresh()
		focus(t.desk, from)
		return 0, false
	}
	from.Commit()
	return m, true
}

func (t *typedPoint) setRadius() {
	r, ok := t.read(t.radius, length.Parse)
	if !ok {
		return
	}
	if !(r > 0) {
		t.say("The radius must be more than nothing.")
		return
	}
	t.radius.Set("")
	t.board.typedRadius(r)
}

func (t *typedPoint) leave() { t.board.take(selectThings) }
