package floorsplace

import (
	"fmt"
	"math"
	"strconv"

	"fyne.io/fyne/v2"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// tool is what a click on the canvas does.
type tool string

// The tools; the empty one selects.
const (
	drawWalls     tool = "walls"
	drawObstacle  tool = "obstacle"
	drawKeepClear tool = "keep clear"
	drawStep      tool = "step"
	setPivot      tool = "pivot"
)

// hint says what the tool waits for; otherwise the words given.
func (t tool) hint(otherwise string) string {
	switch t {
	case drawWalls:
		return "Click the corners of the room in order; click the first one again to close it. Esc gives up."
	case drawObstacle:
		return "Click the corners of what stands in the way; click the first one again to close it. Esc gives up."
	case drawKeepClear:
		return "Click the corners of what must stay free; click the first one again to close it. Esc gives up."
	case drawStep:
		return "Click along the step with the higher floor on your left, and double-click its end. Esc gives up."
	case drawWay:
		return wayHint
	case setPivot:
		return "Click the place from which a tape is pulled."
	}
	return otherwise
}

func (p *place) toolbar() fyne.CanvasObject {
	draw := func(t tool) func() { return func() { p.take(t) } }
	p.bar = fields.NewToolbar(
		fields.Tool{Text: "Select", Do: draw("")},
		fields.Tool{Text: "Draw the walls", Do: draw(drawWalls)},
		fields.Tool{Text: "Room as measured", Do: func() { p.workAt(p.measure.content) }},
		fields.Tool{Text: "Type the corners…", Do: p.askRoom},
		fields.Tool{},
		fields.Tool{Text: "Obstacle", Do: draw(drawObstacle)},
		fields.Tool{Text: "Keep clear", Do: draw(drawKeepClear)},
		fields.Tool{Text: "Pivot", Do: draw(setPivot)},
		fields.Tool{Text: moreTools, Do: p.askMore},
		fields.Tool{},
		fields.Tool{Text: "Measure", Do: func() { p.take(""); p.canvas.SetMode(floorcanvas.Measure) }},
		fields.Tool{Text: "Whole floor", Do: p.Fit},
		fields.Tool{Text: "Names", Do: func() { p.names = !p.names; p.Show(p.view) }},
	)
	return p.bar
}

// take takes a tool into the hand.
func (p *place) take(t tool) {
	p.tool = t
	mode := floorcanvas.Draw
	if t == "" || p.pointing() {
		mode = floorcanvas.Select
	}
	p.canvas.SetMode(mode)
	if p.view != nil {
		p.Show(p.view)
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(p.canvas); c != nil {
		c.Focus(p.canvas)
	}
}

func (p *place) buildCanvas() {
	c := floorcanvas.New()
	c.OnSelect = func(ids []string, _ bool) {
		if !p.pointing() {
			p.desk.Select(floorpicture.Selection(ids))
		}
	}
	c.OnHover = func(at plane.Point, _ string) { p.pointed(at) }
	c.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	c.OnTap = func(at plane.Point, s floorcanvas.Snap) {
		if s.What != "" {
			p.tapped(s.Point)
			return
		}
		p.tapped(p.rounded(at))
	}
	c.OnDraw = p.drawn
	c.OnDrawing = p.enough
	c.CanDrag = func(id string) bool {
		kind, _, _ := floorpicture.Parse(id)
		return movable(kind)
	}
	c.OnDragShape = func(id string, by plane.Point, done bool) {
		if _, of, ok := floorpicture.Parse(id); ok && done && by != (plane.Point{}) {
			p.moveThing(of, by)
		}
	}
	c.OnNudge = func(ids []string, by plane.Point) {
		if kind, of, ok := floorpicture.Parse(first(ids)); ok && (movable(kind) || kind == desk.Pivot) {
			p.moveThing(of, by)
		}
	}
	c.OnDragHandle = p.dragged
	c.OnKey = func(key *fyne.KeyEvent) bool {
		switch key.Name {
		case fyne.KeyDelete:
			p.Remove()
			return true
		case fyne.KeyEscape:
			p.take("")
			return true
		}
		return false
	}
	p.canvas = c
}

// movable tells whether a thing of the kind is dragged as a whole; a pivot has a handle.
func movable(kind desk.Kind) bool {
	switch kind {
	case desk.Obstacle, desk.KeepClear, desk.Step, desk.Feature:
		return true
	}
	return false
}

func first(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return ids[0]
}

func (p *place) moveThing(id string, by plane.Point) {
	p.edit("Move a thing in the room", func(f *floor.Floor) error {
		t, ok := findThing(f, id)
		if !ok {
			return errGone("this")
		}
		t.move(by)
		return nil
	})
}

func (p *place) tapped(at plane.Point) {
	if !p.pointing() {
		return
	}
	if p.tool == drawFeature {
		p.take("")
		p.addFeature(p.drawing, []plane.Point{at})
		return
	}
	var id string
	if p.edit("Add a pivot", func(f *floor.Floor) error { id = addPivot(f, at); return nil }) {
		p.desk.Select(desk.Select(desk.Pivot, id))
	}
	p.take("")
}

// drawn takes what was drawn with the tool in the hand.
func (p *place) drawn(points []plane.Point, _ bool) {
	shape := plane.Closed(points...)
	t := p.tool
	p.take("")
	var id string
	switch t {
	case drawWalls:
		p.edit("Draw the walls", func(f *floor.Floor) error { return setOutline(f, shape) })
	case drawObstacle:
		if p.edit("Add an obstacle", func(f *floor.Floor) error { id = addObstacle(f, shape); return floor.CheckShape(shape) }) {
			p.desk.Select(desk.Select(desk.Obstacle, id))
		}
	case drawFeature, drawWay:
		p.addDrawn(t, points)
	case drawKeepClear:
		if p.edit("Keep an area clear", func(f *floor.Floor) error { id = addKeepClear(f, shape); return floor.CheckShape(shape) }) {
			p.desk.Select(desk.Select(desk.KeepClear, id))
		}
	case drawStep:
		if p.edit("Add a step in the floor", func(f *floor.Floor) (err error) { id, err = addStep(f, points); return err }) {
			p.desk.Select(desk.Select(desk.Step, id))
		}
	}
}

// dragged follows a handle: a corner of the room, a pivot, or the plan itself.
func (p *place) dragged(id string, at plane.Point, done bool) {
	kind, of, ok := floorpicture.Parse(id)
	if !ok {
		return
	}
	if !done {
		p.sayDrag(kind, of, at)
		return
	}
	switch kind {
	case floorpicture.Placement:
		if of == floorpicture.ShiftPlan {
			at = p.rounded(at)
		}
		p.edit("Set the plan in the room", func(f *floor.Floor) error {
			f.Placement = placed(f.Placement, of, at)
			return nil
		})
	case floorpicture.Corner:
		p.edit("Move a corner of the room", func(f *floor.Floor) error { return moveCorner(f, of, at) })
	case desk.Pivot:
		p.edit("Move a pivot", func(f *floor.Floor) error {
			t, ok := findThing(f, of)
			if !ok {
				return errGone("the pivot")
			}
			*t.at = at
			return nil
		})
	}
}

// rounded is a place on the floor whose lengths a person can read off a tape: what
// is set by hand is no finer than that.
func (p *place) rounded(at plane.Point) plane.Point {
	step := p.view.P.Settings.Step
	if step <= 0 {
		return at
	}
	return plane.Point{X: math.Round(at.X/step) * step, Y: math.Round(at.Y/step) * step}
}

func (p *place) sayDrag(kind desk.Kind, of string, at plane.Point) {
	style := p.view.Style()
	words := "along " + style.Format(at.X) + ", into the room " + style.Format(at.Y)
	if f := p.view.P.Floor(p.view.Floor); f != nil && kind == floorpicture.Placement && of == floorpicture.TurnPlan {
		words = fmt.Sprintf("turned by %.1f°", placed(f.Placement, of, at).Turn*180/math.Pi)
	}
	if f := p.view.P.Floor(p.view.Floor); f != nil && kind == floorpicture.Placement {
		words += p.keepsThere(f, placed(f.Placement, of, at))
	}
	p.said.SetText(words)
}

// keepsThere says what the plan keeps where it is being dragged; the case is made once
// for a drag.
func (p *place) keepsThere(f *floor.Floor, m plane.Motion) string {
	if p.scored.of != f {
		p.scored.of = f
		p.scored.scoring, _ = placement.New(&p.view.P.Plan, f)
	}
	if p.scored.scoring == nil {
		return ""
	}
	k := p.scored.scoring.At(m)
	words := " · " + prep.KeptWords(k)
	if broken := prep.BreachWords(p.view.P, k); broken != "" {
		words += " · " + broken
	}
	return words
}

// turnStep is how finely a turn is set by hand, in radians; it can be typed more
// finely.
const turnStep = 0.5 * math.Pi / 180

// placed is the placement after a handle was dragged to a place on the floor.
func placed(m plane.Motion, handle string, at plane.Point) plane.Motion {
	if handle == floorpicture.ShiftPlan {
		m.Shift = at
		return m
	}
	turn := at.Sub(m.Shift).Angle() - math.Pi/2
	m.Turn = math.Round(math.Remainder(turn, 2*math.Pi)/turnStep) * turnStep
	return m
}

func moveCorner(f *floor.Floor, corner string, at plane.Point) error {
	i, err := strconv.Atoi(corner)
	if err != nil || i < 0 || i >= len(f.Outline.Vertices) {
		return errGone("the corner")
	}
	outline := plane.Path{Closed: true, Vertices: append([]plane.Vertex(nil), f.Outline.Vertices...)}
	outline.Vertices[i].Point = at
	return setOutline(f, outline)
}
