package planplace

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// rowTools are the buttons under a list of scenes or levels.
func rowTools(add, up, down, remove func()) *fields.Toolbar {
	return fields.NewToolbar(
		fields.Tool{Text: "Add", Do: add}, fields.Tool{Text: "Earlier", Do: up},
		fields.Tool{Text: "Later", Do: down}, fields.Tool{}, fields.Tool{Text: "Delete", Do: remove},
	)
}

// scenesList is the scenes of the show in their order.
type scenesList struct {
	desk    *desk.Desk
	grid    *grid.Grid
	content fyne.CanvasObject
}

func newScenesList(d *desk.Desk) *scenesList {
	l := &scenesList{desk: d}
	l.grid = grid.New([]grid.Column{
		{Title: "Scene", Grow: true, Hint: "1.2 The kitchen"}, {Title: "Elements", ReadOnly: true, Right: true},
	})
	l.grid.ShowTools(false)
	l.grid.SetEmpty("No scenes yet. Without any, the set stands as drawn all the time.", "Add the first scene", l.add)
	l.grid.OnAdd = l.add
	l.grid.OnDelete = func([]string) { l.remove() }
	l.grid.OnEdit = func(row string, _ int, text string) error {
		name := strings.TrimSpace(text)
		return d.TryEdit("Rename a scene to "+name, func(p *prep.Production) error {
			return renameScene(p, plan.SceneID(row), name)
		})
	}
	l.grid.OnActivate = func(row string) { d.ChooseScene(plan.SceneID(row)) }
	tools := rowTools(l.add, func() { l.shift(-1) }, func() { l.shift(1) }, l.remove)
	l.content = container.NewBorder(nil, tools, nil, nil, l.grid)
	return l
}

func (l *scenesList) show(v *desk.View) {
	rows := make([]grid.Row, len(v.P.Plan.Scenes))
	for i, s := range v.P.Plan.Scenes {
		n := 0
		for j := range v.P.Plan.Elements {
			if _, in := v.P.Plan.Where(&v.P.Plan.Elements[j], s.ID); in {
				n++
			}
		}
		rows[i] = grid.Row{ID: string(s.ID), Cells: []string{s.Name, fmt.Sprint(n)}, Bold: s.ID == v.Scene}
	}
	l.grid.SetRows(rows)
}

func (l *scenesList) add() {
	id := plan.SceneID(uuid.NewString())
	if l.desk.Edit("Add a scene", func(p *prep.Production) error {
		p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: id, Name: fmt.Sprintf("Scene %d", len(p.Plan.Scenes)+1)})
		return nil
	}) {
		l.grid.Edit(string(id), 0)
	}
}

func (l *scenesList) shift(by int) {
	for _, id := range firstOf(l.grid.Selected()) {
		l.desk.Edit("Reorder the scenes", func(p *prep.Production) error {
			p.Plan.Scenes = shiftRow(p.Plan.Scenes, sceneAt(p, plan.SceneID(id)), by)
			return nil
		})
	}
}

// remove deletes the selected scenes. Where elements would go with them it asks.
func (l *scenesList) remove() {
	v := l.desk.View()
	ids := l.grid.Selected()
	if len(ids) == 0 {
		return
	}
	lost := 0
	for _, id := range ids {
		lost += onlyIn(v.P, plan.SceneID(id))
	}
	do := func() {
		l.desk.Edit("Delete "+prep.Counted(len(ids), "scene"), func(p *prep.Production) error {
			for _, id := range ids {
				p.RemoveScene(plan.SceneID(id))
			}
			return nil
		})
	}
	if lost == 0 {
		do()
		return
	}
	fields.Confirm(l.desk.Window(), "Delete "+prep.Counted(len(ids), "scene")+"?",
		prep.Counted(lost, "element")+" standing in no other scene would be deleted too. Undo brings everything back.", "Delete", do)
}

func firstOf(ids []string) []string { return ids[:min(len(ids), 1)] }

// levelsList is the levels of the set above the stage floor.
type levelsList struct {
	desk    *desk.Desk
	grid    *grid.Grid
	content fyne.CanvasObject
}

func newLevelsList(d *desk.Desk) *levelsList {
	l := &levelsList{desk: d}
	l.grid = grid.New([]grid.Column{
		{Title: "Level", Grow: true, Hint: "Upper storey"}, {Title: "Height", Width: 84, Right: true, Hint: "above the stage floor"},
		{Title: "Elements", ReadOnly: true, Right: true},
	})
	l.grid.ShowTools(false)
	l.grid.SetEmpty("No levels yet: everything is on the stage floor.", "Add the first level", l.add)
	l.grid.OnAdd = l.add
	l.grid.OnDelete = func([]string) { l.remove() }
	l.grid.OnEdit = l.edit
	tools := rowTools(l.add, func() { l.shift(-1) }, func() { l.shift(1) }, l.remove)
	l.content = container.NewBorder(nil, tools, nil, nil, l.grid)
	return l
}

func (l *levelsList) edit(row string, cell int, text string) error {
	text = strings.TrimSpace(text)
	id := plan.LevelID(row)
	if cell == 0 {
		return l.desk.TryEdit("Rename a level to "+text, func(p *prep.Production) error { return renameLevel(p, id, text) })
	}
	return l.desk.TryEdit("Set the height of "+levelName(l.desk.View().P, id), func(p *prep.Production) error {
		level := p.Plan.Level(id)
		if level == nil {
			return errGone
		}
		m, err := length.Parse(text, p.Unit())
		if err != nil {
			return err
		}
		level.Height = m
		p.KeepTyped(row, "height", text)
		return nil
	})
}

func (l *levelsList) show(v *desk.View) {
	count := map[plan.LevelID]int{}
	for _, e := range v.P.Plan.Elements {
		count[e.Level]++
	}
	rows := make([]grid.Row, len(v.P.Plan.Levels))
	for i, level := range v.P.Plan.Levels {
		rows[i] = grid.Row{ID: string(level.ID), Cells: []string{
			level.Name, v.P.ShowLength(string(level.ID), "height", level.Height), fmt.Sprint(count[level.ID]),
		}}
	}
	l.grid.SetRows(rows)
}

func (l *levelsList) add() {
	id := plan.LevelID(uuid.NewString())
	if l.desk.Edit("Add a level", func(p *prep.Production) error {
		p.Plan.Levels = append(p.Plan.Levels, plan.Level{ID: id, Name: fmt.Sprintf("Level %d", len(p.Plan.Levels)+1)})
		return nil
	}) {
		l.grid.Edit(string(id), 0)
	}
}

func (l *levelsList) shift(by int) {
	for _, id := range firstOf(l.grid.Selected()) {
		l.desk.Edit("Reorder the levels", func(p *prep.Production) error {
			p.Plan.Levels = shiftRow(p.Plan.Levels, levelAt(p, plan.LevelID(id)), by)
			return nil
		})
	}
}

func (l *levelsList) remove() {
	ids := l.grid.Selected()
	if len(ids) == 0 {
		return
	}
	if l.desk.Edit("Delete "+prep.Counted(len(ids), "level"), func(p *prep.Production) error {
		for _, id := range ids {
			p.RemoveLevel(plan.LevelID(id))
		}
		return nil
	}) {
		l.desk.Told("Deleted. What was on it is now on the stage floor; Undo brings it back.")
	}
}
