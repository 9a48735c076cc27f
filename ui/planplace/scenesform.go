package planplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// scenesForm is where an element stands, scene by scene, and how far a carrier
// has gone in each.
type scenesForm struct {
	edit    elementEdit
	every   *fields.Tick
	moving  *moveForm
	stands  *grid.Grid
	travels *grid.Grid
	heading *widget.Label
	carries fyne.CanvasObject
	split   *container.Split
	content fyne.CanvasObject
}

func newScenesForm(edit elementEdit) *scenesForm {
	f := &scenesForm{edit: edit, every: fields.NewTick("In every scene, as drawn"), heading: wrapped("")}
	f.stands = grid.New([]grid.Column{
		{Title: "In", Tick: true, Width: 26},
		{Title: "Scene", Width: 84, Grow: true, ReadOnly: true},
		{Title: "Up by", Width: 68, Right: true, Hint: "DS is minus"},
		{Title: "Over by", Width: 82, Right: true, Hint: "SL or SR"},
		{Title: "Turn", Width: 44, Right: true, Hint: "degrees left"},
	})
	f.stands.ShowTools(false)
	f.stands.SetEmpty("No scenes yet. Add them under The plan.", "", nil)
	f.travels = grid.New([]grid.Column{
		{Title: "Scene", Grow: true, ReadOnly: true}, {Title: "Travel", Width: 96, Right: true},
	})
	f.travels.ShowTools(false)
	f.travels.SetEmpty("No scenes yet. Add them under The plan.", "", nil)
	f.wire()
	f.carries = container.NewBorder(f.heading, nil, nil, nil, f.travels)
	above := container.NewBorder(f.every, nil, nil, nil, f.stands)
	f.split = container.NewVSplit(above, f.carries)
	f.split.Offset = 0.6
	f.moving = newMoveForm(edit.desk, func() []plan.ElementID { return []plan.ElementID{edit.id()} })
	f.content = container.NewBorder(nil, container.NewVBox(widget.NewSeparator(), f.moving.content), nil, nil, f.split)
	return f
}

func (f *scenesForm) wire() {
	f.every.OnCommit = func(on bool) error {
		label := "Place by scene"
		if on {
			label = "Let stand in every scene"
		}
		return f.edit.try(label, func(p *prep.Production, e *plan.Element) error { return placeByScene(p, e, !on) })
	}
	f.stands.OnEdit = func(row string, cell int, text string) error {
		scene := plan.SceneID(row)
		label := "Place in " + f.edit.desk.View().P.Plan.SceneName(scene) + ":"
		return f.edit.try(label, func(p *prep.Production, e *plan.Element) error { return setStand(p, e, scene, cell, text) })
	}
	f.travels.OnEdit = func(row string, _ int, text string) error {
		scene := plan.SceneID(row)
		label := "Set for " + f.edit.desk.View().P.Plan.SceneName(scene) + " the travel of"
		return f.edit.try(label, func(p *prep.Production, e *plan.Element) error { return setTravel(p, e, scene, text) })
	}
	look := func(row string) { f.edit.desk.ChooseScene(plan.SceneID(row)) }
	f.stands.OnActivate, f.travels.OnActivate = look, look
}

func (f *scenesForm) show(v *desk.View, e *plan.Element) {
	f.every.Set(len(e.Stands) == 0)
	f.moving.show(v)
	var rows, travels []grid.Row
	for _, s := range standRows(v.P, e, v.Scene) {
		in := grid.Off
		if s.In {
			in = grid.On
		}
		rows = append(rows, grid.Row{ID: s.ID, Cells: append([]string{in}, s.Cells...), Bold: s.Here, Dim: !s.In})
		travels = append(travels, grid.Row{
			ID: s.ID, Cells: []string{s.Cells[0], showTravel(v.P, e, plan.SceneID(s.ID))}, Bold: s.Here,
		})
	}
	f.stands.SetRows(rows)
	setVisible(f.carries, e.Kind.Carrier())
	if e.Kind.Carrier() {
		f.heading.SetText(travelHeading(v.P, e))
		f.travels.SetRows(travels)
	}
	f.split.Refresh()
}
