package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
)

// asking is what the next points clicked in the drawing are for.
type asking struct {
	words  string // what to click
	points int    // how many
	done   func([]plane.Point)
}

// board is the drawing with its tools.
type board struct {
	desk     *desk.Desk
	canvas   *floorcanvas.Canvas
	ownInk   *fields.Tick
	words    *fields.Tick
	touching *fields.Tick
	measures *fields.Button
	next     *fields.Banner
	ask      *asking
	content  fyne.CanvasObject

	// touched is told which lines have been clicked or boxed.
	touched func(items []int)
	// looked is told when something else is to be seen.
	looked func()
}

func newBoard(d *desk.Desk) *board {
	b := &board{desk: d, canvas: floorcanvas.New(), ownInk: fields.NewTick("Its own colours"), words: fields.NewTick("Its words"),
		touching: fields.NewTick("Pick with what touches"),
		next:     fields.NewBanner(fields.Note, "", "", nil), touched: func([]int) {}, looked: func() {}}
	look := func(bool) error {
		b.looked()
		return nil
	}
	b.ownInk.OnCommit, b.words.OnCommit = look, look
	c := b.canvas
	c.OnSelect = func(ids []string, _ bool) { b.touched(itemsOf(ids)) }
	c.OnHover = func(at plane.Point, _ string) { b.desk.Pointed(at, true) }
	c.OnLeave = func() { b.desk.Pointed(plane.Point{}, false) }
	c.OnDrawing = b.drawing
	c.OnKey = b.key
	b.measures = fields.NewButton("Measure", b.measure)
	bar := container.NewHBox(b.measures, layout.NewSpacer(), b.touching, b.ownInk, b.words,
		fields.NewButton("Whole drawing", c.Fit))
	b.content = container.NewBorder(container.NewVBox(bar, b.next), nil, nil, nil, c)
	return b
}

// askFor has the person click points.
func (b *board) askFor(a asking) {
	b.ask = &a
	b.canvas.SetMode(floorcanvas.Draw)
	b.tell(a.words, "Never mind")
	b.desk.Window().Canvas().Focus(b.canvas)
}

// stop goes back to taking and leaving lines.
func (b *board) stop() {
	b.ask = nil
	b.canvas.SetMode(floorcanvas.Select)
	b.tell("", "")
}

// tell says above the drawing what its next click does.
func (b *board) tell(words, action string) {
	say(b.next, b.content, said{words: words, action: action, do: b.stop})
}

func (b *board) measure() {
	if b.canvas.Mode() == floorcanvas.Measure {
		b.stop()
		return
	}
	b.ask = nil
	b.canvas.SetMode(floorcanvas.Measure)
	b.tell("Click two points to measure between them.", "Done")
}

// drawing follows the points that are set, and answers as soon as there are
// enough of them.
func (b *board) drawing(points []plane.Point) {
	if b.ask == nil || len(points) < b.ask.points {
		return
	}
	done := b.ask.done
	b.stop()
	done(points[:len(points):len(points)])
}

func (b *board) key(e *fyne.KeyEvent) bool {
	if e.Name == fyne.KeyEscape && b.canvas.Mode() != floorcanvas.Select {
		b.stop()
		return true
	}
	return false
}
