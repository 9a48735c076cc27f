package planplace

import (
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// drawing follows the points set; a circle and an arc end by themselves.
func (b *board) drawing(points []plane.Point) {
	b.points = points
	b.showWords(b.desk.View())
	if b.tool.full(len(points)) {
		b.canvas.CancelDrawing()
		b.finish(points, false)
	}
}

// typedRadius sets the second point of a circle by its distance from the centre.
func (b *board) typedRadius(r float64) {
	if len(b.points) == 1 {
		b.canvas.AddPoint(b.points[0].Add(plane.Point{X: r}))
	}
}

// finish makes a line of the points and asks for the name of a new element.
func (b *board) finish(points []plane.Point, closed bool) {
	v := b.desk.View()
	path, err := b.tool.drawn(points, closed)
	if err != nil {
		b.typing.say(spoken(err))
		return
	}
	into := b.into
	label := "Draw " + lowerKind(b.tool.kindDrawn())
	if into != "" {
		label = "Draw a line of " + nameOf(v.P, into)
	}
	b.fitted = v.Path // the view in which it was drawn stays
	b.canvas.SetView(b.canvas.GetView())
	var id plan.ElementID
	if !b.desk.Edit(label, func(p *prep.Production) (err error) {
		id, err = takeDrawn(p, into, v.Scene, path, b.tool.kindDrawn(), uuid.NewString)
		return err
	}) {
		return
	}
	b.take(selectThings)
	b.desk.Select(elements([]plan.ElementID{id}))
	if into == "" {
		b.does.name()
	}
}

func lowerKind(k plan.Kind) string { return "a " + string(k) }
