package planplace

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// board is the drawing with its tools.
type board struct {
	desk    *desk.Desk
	does    actions
	shown   func(plan.ElementID) bool
	canvas  *floorcanvas.Canvas
	tool    tool
	into    plan.ElementID // the element that is drawn on; empty: a new one
	points  []plane.Point  // set so far
	buttons []*fields.Button
	names   *fields.Tick
	typing  *typedPoint
	empty   fyne.CanvasObject
	content *fyne.Container
	fitted  string // the file whose plan has been fitted once
	picking bool   // the selection is being made on the drawing itself
	under   *under // a scan to trace
}

func newBoard(d *desk.Desk, does actions, shown func(plan.ElementID) bool) *board {
	b := &board{desk: d, does: does, shown: shown, canvas: floorcanvas.New()}
	bar := container.NewHBox()
	for i, words := range toolWords {
		button := fields.NewButton(words, func() { b.take(tool(i)) })
		b.buttons = append(b.buttons, button)
		bar.Add(button)
	}
	b.under = newUnder(d, func() { b.show(d.View()) })
	b.names = fields.NewTick("Names")
	b.names.Set(true)
	b.names.OnCommit = func(bool) error {
		b.show(d.View())
		return nil
	}
	bar.Add(layout.NewSpacer())
	bar.Add(b.under.shown)
	bar.Add(b.names)
	bar.Add(fields.NewButton("Whole plan", b.canvas.Fit))
	b.typing = newTypedPoint(d, b)
	b.empty = b.emptyWords()
	b.hear()
	b.content = container.NewBorder(container.NewVBox(bar, b.typing.content), nil, nil, nil,
		container.NewStack(b.canvas, b.empty))
	b.arm()
	return b
}

// emptyWords are what is seen before anything is drawn.
func (b *board) emptyWords() fyne.CanvasObject {
	read := fields.NewButton("Read off the paper…", func() { b.does.read() })
	drawing := fields.NewButton("From a drawing…", func() { b.does.drawing() })
	drawing.Importance = widget.HighImportance
	table := fields.NewButton("Read a table (CSV)…", func() { b.desk.ReadTable() })
	draw := fields.NewButton("Draw", func() { b.take(drawLine) })
	words := fields.Empty("Nothing is drawn yet",
		"The designer's ground plan belongs here. Bring in the drawing, read it off the paper with a scale rule, bring in a table of its corners, or draw it.", "", nil)
	return container.NewVBox(layout.NewSpacer(), words,
		container.NewHBox(layout.NewSpacer(), drawing, read, table, draw, layout.NewSpacer()), layout.NewSpacer())
}

// hear wires the canvas.
func (b *board) hear() {
	c := b.canvas
	c.OnSelect = b.pick
	c.OnHover = func(at plane.Point, _ string) { b.desk.Pointed(at, true) }
	c.OnLeave = func() { b.desk.Pointed(plane.Point{}, false) }
	c.OnDragShape = b.drag
	c.OnDragHandle = b.dragCorner
	c.OnNudge = func(names []string, by plane.Point) { b.move(elementsOf(names), by) }
	c.OnKey = b.key
	c.OnDrawing = b.drawing
	c.OnDraw = b.finish
	c.OnMeasure = func(from, to plane.Point) { b.desk.Told(measured(b.desk.View().P, from, to)) }
}

// take changes what a click does.
func (b *board) take(t tool) {
	b.tool, b.into = t, ""
	b.arm()
	b.desk.Window().Canvas().Focus(b.canvas)
}

// drawInto draws another line of an element.
func (b *board) drawInto(id plan.ElementID) {
	b.tool, b.into = drawLine, id
	b.arm()
	b.desk.Window().Canvas().Focus(b.canvas)
}

// arm sets the canvas and the toolbar to the tool.
func (b *board) arm() {
	modes := map[tool]floorcanvas.Mode{selectThings: floorcanvas.Select, measure: floorcanvas.Measure}
	mode, ok := modes[b.tool]
	if !ok {
		mode = floorcanvas.Draw
	}
	b.canvas.SetMode(mode)
	for i, button := range b.buttons {
		importance := widget.MediumImportance
		if tool(i) == b.tool {
			importance = widget.HighImportance
		}
		if button.Importance != importance {
			button.Importance = importance
			button.Refresh()
		}
	}
	b.points = nil
	if v := b.desk.View(); v != nil {
		b.showWords(v)
	}
}

func (b *board) show(v *desk.View) {
	if v == nil {
		return
	}
	pic := floorpicture.OfPlan(v.P, v.Scene, b.shown)
	ids := selected(v)
	if !b.names.Value() {
		pic.Labels = nil
	}
	pic.Backdrop = b.under.backdrop(v)
	pic.Handles = cornerHandles(v.P, v.Scene, ids)
	pic.Labels = append(pic.Labels, cornerNumbers(v.P, v.Scene, ids, b.does.line())...)
	b.canvas.Step = v.Style().Grain()
	b.canvas.Set(pic)
	names := floorpicture.IDs(elements(ids))
	if !slices.Equal(names, b.canvas.Selected()) {
		b.canvas.SetSelected(names)
		if !b.picking {
			b.canvas.Reveal(names...)
		}
	}
	if len(v.P.Plan.Elements) > 0 && b.fitted != v.Path {
		b.fitted = v.Path
		b.canvas.Fit()
	}
	b.showWords(v)
}

func (b *board) showWords(v *desk.View) {
	words := dragRule(v.P, v.Scene, selected(v))
	if b.tool != selectThings {
		words = b.tool.next(len(b.points))
		if e := v.P.Plan.Element(b.into); e != nil {
			words = "Another line of " + e.Name + ". " + words
		}
	}
	b.typing.show(words, len(b.points))
	setVisible(b.empty, len(v.P.Plan.Elements) == 0 && b.tool == selectThings)
}

// pick answers a click or a box on the drawing.
func (b *board) pick(names []string, additive bool) {
	v := b.desk.View()
	b.picking = true
	defer func() { b.picking = false }()
	ids := elementsOf(names)
	if additive {
		ids = toggled(selected(v), ids)
	}
	if len(ids) == 0 {
		b.desk.Select(desk.Selection{})
		return
	}
	b.desk.Select(elements(ids))
}

// toggled adds what is not yet there and takes away what is.
func toggled(had, with []plan.ElementID) []plan.ElementID {
	out := slices.DeleteFunc(slices.Clone(had), func(id plan.ElementID) bool { return slices.Contains(with, id) })
	for _, id := range with {
		if !slices.Contains(had, id) {
			out = append(out, id)
		}
	}
	return out
}

func elementsOf(names []string) []plan.ElementID {
	var ids []plan.ElementID
	for _, name := range names {
		if kind, id, ok := floorpicture.Parse(name); ok && kind == desk.Element {
			ids = append(ids, plan.ElementID(id))
		}
	}
	return ids
}

// drag moves what was dragged when it is let go.
func (b *board) drag(name string, by plane.Point, done bool) {
	if !done || by == (plane.Point{}) {
		return
	}
	ids := elementsOf([]string{name})
	if all := selected(b.desk.View()); len(ids) > 0 && slices.Contains(all, ids[0]) {
		ids = all
	}
	b.move(ids, by)
}

func (b *board) move(ids []plan.ElementID, by plane.Point) {
	v := b.desk.View()
	if len(ids) == 0 {
		return
	}
	label := "Move " + named(v.P, ids)
	if v.Scene != "" && slices.ContainsFunc(ids, func(id plan.ElementID) bool {
		e := v.P.Plan.Element(id)
		return e != nil && len(e.Stands) > 0
	}) {
		label += " in " + v.P.Plan.SceneName(v.Scene)
	}
	b.desk.Edit(label, func(p *prep.Production) error {
		move(p, ids, v.Scene, by)
		return nil
	})
}

// key answers keys that the canvas offers.
func (b *board) key(e *fyne.KeyEvent) bool {
	if b.tool != selectThings {
		if e.Name == fyne.KeyEscape {
			b.take(selectThings)
		}
		return e.Name == fyne.KeyEscape
	}
	switch e.Name {
	case fyne.KeyDelete:
		b.does.remove()
	case fyne.KeyInsert:
		b.take(drawLine)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyF2:
		b.does.name()
	default:
		return false
	}
	return true
}
