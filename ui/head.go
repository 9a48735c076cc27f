package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
)

// allScenes is how the scene picker offers the whole plan.
const allScenes = "all scenes"

// head holds the floor and the scene that are looked at in every place.
type head struct {
	content fyne.CanvasObject
	row     *fyne.Container
	desk    *desk.Desk
	floor   *picker
	scene   *picker
	undo    *widget.Button
	redo    *widget.Button
	floors  []floor.ID
	scenes  []plan.SceneID
	setting bool
}

func newHead(d *desk.Desk) *head {
	h := &head{desk: d}
	h.floor = newPicker(func(string) { h.choseFloor() })
	h.floor.PlaceHolder = "no floor yet"
	h.scene = newPicker(func(string) { h.choseScene() })
	h.undo = widget.NewButton("Undo", d.Undo)
	h.redo = widget.NewButton("Redo", d.Redo)
	h.undo.Importance = widget.LowImportance
	h.redo.Importance = widget.LowImportance
	h.row = container.NewHBox(
		widget.NewLabel("Floor"), h.floor.content, widget.NewLabel("Scene"), h.scene.content,
		layout.NewSpacer(), h.undo, h.redo,
	)
	h.content = container.NewVBox(h.row, widget.NewSeparator())
	return h
}

func (h *head) show(v *desk.View) {
	h.setting = true
	defer func() { h.setting = false }()

	var names []string
	h.floors = nil
	picked := -1
	for i, f := range v.P.Floors {
		names = append(names, f.Name)
		h.floors = append(h.floors, f.ID)
		if f.ID == v.Floor {
			picked = i
		}
	}
	h.floor.show(names, picked)

	names, picked = []string{allScenes}, 0
	h.scenes = []plan.SceneID{""}
	for i, s := range v.P.Plan.Scenes {
		names = append(names, s.Name)
		h.scenes = append(h.scenes, s.ID)
		if s.ID == v.Scene {
			picked = i + 1
		}
	}
	h.scene.show(names, picked)

	file := h.desk.File()
	_, canUndo := file.UndoLabel()
	_, canRedo := file.RedoLabel()
	enable(h.undo, canUndo)
	enable(h.redo, canRedo)
	h.row.Refresh() // the names may need more or less room than before
}

// picker is a choice that is as wide as the name that it shows: the toolkit's own
// has the width of its placeholder.
type picker struct {
	*widget.Select
	room    *canvas.Rectangle
	content fyne.CanvasObject
}

// widestName bounds how much of the head a name may take.
const widestName = 260

func newPicker(chosen func(string)) *picker {
	p := &picker{Select: widget.NewSelect(nil, chosen), room: canvas.NewRectangle(color.Transparent)}
	p.content = container.NewStack(p.room, p.Select)
	return p
}

func (p *picker) show(names []string, picked int) {
	p.SetOptions(names)
	if picked < 0 {
		p.ClearSelected()
		return
	}
	p.SetSelectedIndex(picked)
	text := fyne.MeasureText(names[picked], theme.TextSize(), fyne.TextStyle{})
	arrow := theme.IconInlineSize() + 6*theme.InnerPadding()
	p.room.SetMinSize(fyne.NewSize(min(text.Width+arrow, widestName), 0))
}

func enable(b *widget.Button, on bool) {
	switch {
	case on && b.Disabled():
		b.Enable()
	case !on && !b.Disabled():
		b.Disable()
	}
}

func (h *head) choseFloor() {
	if i := h.floor.SelectedIndex(); !h.setting && i >= 0 && i < len(h.floors) {
		h.desk.ChooseFloor(h.floors[i])
	}
}

func (h *head) choseScene() {
	if i := h.scene.SelectedIndex(); !h.setting && i >= 0 && i < len(h.scenes) {
		h.desk.ChooseScene(h.scenes[i])
	}
}
