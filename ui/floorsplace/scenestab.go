package floorsplace

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// scenesTab tells what is down all the time and what only in some scenes, and steps
// through the scenes.
type scenesTab struct {
	uses    *grid.Grid
	scenes  *grid.Grid
	content fyne.CanvasObject
}

// allScenes stands among the scenes for all of them together.
const allScenes = "all"

func newScenesTab(p *place) *scenesTab {
	t := &scenesTab{}
	t.uses = grid.New([]grid.Column{
		{Title: "Element", Width: 150, ReadOnly: true},
		{Title: "Down", Width: 160, Grow: true, ReadOnly: true},
		{Title: "Places", Width: 60, Right: true, ReadOnly: true},
		{Title: "Lines", Width: 90, Right: true, ReadOnly: true},
		{Title: "Tape", Width: 110, Swatch: true, ReadOnly: true},
	})
	t.uses.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Element, IDs: ids}) }
	t.uses.SetEmpty("This floor lays nothing in this scene.", "", nil)
	t.scenes = grid.New([]grid.Column{
		{Title: "Look at", Width: 96, Grow: true, ReadOnly: true},
		{Title: "Lines in use", Width: 96, Right: true, ReadOnly: true},
		{Title: "Not always", Width: 86, Right: true, ReadOnly: true},
		{Title: "Spikes", Width: 54, Right: true, ReadOnly: true},
	})
	t.scenes.ShowTools(false)
	t.scenes.OnSelect = func(ids []string) {
		switch {
		case len(ids) == 0:
		case ids[0] == allScenes:
			p.desk.ChooseScene("")
		default:
			p.desk.ChooseScene(plan.SceneID(ids[0]))
		}
	}
	split := container.NewHSplit(t.uses, t.scenes)
	split.SetOffset(0.6)
	t.content = split
	return t
}

func (t *scenesTab) show(v *desk.View, w *prep.FloorWork) {
	t.uses.SetRows(useRows(v, w))
	if v.Selected.Kind == desk.Element {
		t.uses.Select(v.Selected.IDs...)
	}
	t.scenes.SetRows(sceneRows(v, w))
	at := string(v.Scene)
	if at == "" {
		at = allScenes
	}
	t.scenes.Select(at)
}

// useRows lists what the floor lays in the scene that is looked at, or in any.
func useRows(v *desk.View, w *prep.FloorWork) []grid.Row {
	style := v.Style()
	var rows []grid.Row
	for _, u := range prep.SceneUses(v.P, w) {
		e := v.P.Plan.Element(u.Element)
		if _, in := v.P.Plan.Where(e, v.Scene); !in {
			continue
		}
		lines, tape := style.Format(u.Laid), ""
		if u.Spiked {
			lines = "spikes"
		}
		row := grid.Row{ID: string(e.ID), Bold: u.Always}
		if s := v.P.Stock(e.Stock); s != nil {
			tape = s.Name
			row.Swatch = swatch(s.Swatch)
		}
		row.Cells = []string{e.Name, prep.UseWords(v.P, u), number(u.Positions), lines, tape}
		rows = append(rows, row)
	}
	return rows
}

func sceneRows(v *desk.View, w *prep.FloorWork) []grid.Row {
	style := v.Style()
	rows := []grid.Row{{ID: allScenes, Cells: []string{v.P.Plan.SceneName("")}}}
	for _, t := range prep.SceneTapes(v.P, w) {
		rows = append(rows, grid.Row{ID: string(t.Scene), Cells: []string{
			v.P.Plan.SceneName(t.Scene), style.Format(t.Laid), style.Format(t.Only), fmt.Sprint(t.Spikes),
		}})
	}
	return rows
}
