package planplace

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/theme"
)

// lay puts the page together: what is typed at left, the running picture at
// right.
func (s *paperSheet) lay() fyne.CanvasObject {
	title := heading()
	title.SetText("Read off the paper")
	how := wrapped("One reads the scale rule aloud, another types: up, Tab, over, Enter, then the next corner. " +
		"Enter on nothing ends the element. A stage right figure takes SR after it.")
	form := fields.NewForm()
	s.form = form
	form.Add("name", "Name", s.name)
	form.Add("kind", "Kind", s.kind)
	form.Add("level", "Level", s.level)
	form.Add("ruler", "Read in", s.ruler)
	form.Add("edge", "Its edge", s.edge)
	form.AddBeside("rule", "", s.rule)
	form.Section("Next corner")
	form.Add("up", "Up", s.up)
	form.Add("over", "Over", s.over)
	form.Add("bow", "Bow to it", s.bow)
	form.AddWide("closed", s.closed)
	back := fields.NewButton("Take back the last corner", s.back)
	finish := fields.NewButton("Finish the element", s.finish)
	finish.Importance = widget.HighImportance
	done := fields.NewButton("Back to the plan", s.leave)
	left := container.NewBorder(
		container.NewVBox(container.NewBorder(nil, nil, nil, fields.NewButton("The plot's scale…", s.askScale), title), how, form, s.said),
		container.NewHBox(done, layout.NewSpacer(), back, finish), nil, nil, s.corners)
	split := container.NewHSplit(left, s.canvas)
	split.Offset = 0.36
	return split
}

// begin is told when the page is opened.
func (s *paperSheet) begin(v *desk.View) {
	s.say(fields.Note, "")
	s.show(v)
	s.canvas.Fit()
	if s.reading.name == "" {
		focus(s.desk, s.name)
		return
	}
	focus(s.desk, s.up)
}

func (s *paperSheet) show(v *desk.View) {
	if v == nil || !s.canvas.Visible() {
		return
	}
	s.levels = levelOptions(v.P)
	s.level.SetOptions(s.levels.names...)
	s.level.Set(s.levels.name(s.reading.level))
	s.kind.Set(kindChoices.name(s.reading.kind))
	s.ruler.Set(rulerChoices.name(s.reading.on))
	s.closed.Set(s.reading.closed)
	through := lensOf(v.P, &s.reading)
	s.edge.Set(through.edge.String())
	s.form.ShowRow("edge", s.reading.on == scaleEdge)
	s.scale.show(v)
	s.check.show(v)
	unit := through.unit.Name()
	for _, l := range []*fields.Length{s.up, s.over, s.bow} {
		l.SetUnit(unit)
	}
	words := through.words(v.P)
	s.rule.SetText(words)
	setVisible(s.rule, words != "")
	s.draw(v)
}

// words say what a reading comes to on the floor; empty where it is the same.
func (l lens) words(p *prep.Production) string {
	switch {
	case l.on == fullSize:
		return ""
	case l.on != scaleEdge:
		return onPaperWords(p)
	case !l.scale.Valid():
		return "The plot's scale is not known, so it is taken to be that of the edge. Check it by one known dimension."
	}
	ten := 10 * length.Foot
	if p.Unit().Metric() {
		ten = 10
	}
	style := p.Style()
	return fmt.Sprintf("The plot is at %s: %s on the edge are %s on the floor.", l.scale, style.Format(ten), style.Format(ten*l.stretch()))
}

// askScale opens what is known of the plot's scale, with its check by one known
// dimension.
func (s *paperSheet) askScale() {
	form := fields.NewForm()
	form.Add("scale", "Scale", s.scale.field)
	form.AddBeside("words", "", s.scale.words)
	box := container.NewVBox(form, s.check.content)
	dlg := dialog.NewCustom("The plot's scale", "Done", box, s.desk.Window())
	dlg.SetOnClosed(func() { focus(s.desk, s.up) })
	dlg.Resize(scaleDialog)
	dlg.Show()
	s.show(s.desk.View())
}

var scaleDialog = fyne.NewSize(460, 400)

// draw shows the corners read so far, in the table and over the plan.
func (s *paperSheet) draw(v *desk.View) {
	rows := make([]grid.Row, len(s.reading.corners))
	for i, c := range s.reading.corners {
		rows[i] = grid.Row{ID: strconv.Itoa(i), Cells: []string{strconv.Itoa(i + 1), c.up, c.over, c.bowText}}
	}
	s.corners.SetRows(rows)
	pic := floorpicture.OfPlan(v.P, "", func(plan.ElementID) bool { return true })
	path := s.reading.path()
	pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: path.Edges(), Ink: theme.Selection, Width: 3, Z: 5})
	for i, p := range path.Points() {
		pic.Dots = append(pic.Dots, floorcanvas.Dot{At: p, Sign: floorcanvas.Square, Ink: theme.Selection})
		pic.Labels = append(pic.Labels, floorcanvas.Label{At: p, Text: strconv.Itoa(i + 1), Bold: true, Anchor: floorcanvas.AboveRight, Priority: 1})
	}
	s.canvas.Set(pic)
	s.reveal(path.Points())
}

// reveal keeps the last corner in sight, and everything when the plan is empty.
func (s *paperSheet) reveal(points []plane.Point) {
	if len(points) == 0 {
		return
	}
	at := s.canvas.PositionOf(points[len(points)-1])
	size := s.canvas.Size()
	const margin = 40
	if at.X < margin || at.Y < margin || at.X > size.Width-margin || at.Y > size.Height-margin {
		s.canvas.Fit()
	}
}
