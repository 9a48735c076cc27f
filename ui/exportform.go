package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// The rows of the form that not every format needs.
const (
	rowAxes   = "axes"
	rowScale  = "scale"
	rowNorth  = "north"
	rowEast   = "east"
	rowHeader = "header"
)

var exportRows = []string{rowAxes, rowScale, rowNorth, rowEast, rowHeader}

// axesWords name the axes in the form, in the order of layout.AllAxes.
var axesWords = []string{"From the datum: over and up", "As the room was measured"}

// exportForm asks for what is saved for other programs. What was chosen is in the
// outgoing at any time.
type exportForm struct {
	view  *desk.View
	form  *fields.Form
	what  *fields.Choice
	floor *fields.Choice
	scene *fields.Choice
	axes  *fields.Choice
	scale *fields.Text
	north *fields.Length
	east  *fields.Length
	names *fields.Tick
	out   outgoing
}

func newExportForm(v *desk.View) *exportForm {
	f := &exportForm{view: v, form: fields.NewForm()}
	f.choices()
	f.scaleRow()
	f.north = f.lengthRow(rowNorth, "Northing of the origin", &f.out.origin.Y)
	f.east = f.lengthRow(rowEast, "Easting of the origin", &f.out.origin.X)
	f.names = fields.NewTick("Name the columns in the first row")
	f.form.Add(rowHeader, "", f.names)
	f.show(formats[0].name)
	return f
}

// choices adds what is chosen from lists.
func (f *exportForm) choices() {
	p := f.view.P
	var kinds []string
	for _, x := range formats {
		kinds = append(kinds, x.name)
	}
	f.what = fields.NewChoice(kinds...)
	f.what.Set(kinds[0])
	f.what.OnCommit = func(name string) error {
		f.show(name)
		return nil
	}
	floors := f.floorNames()
	f.floor = fields.NewChoice(floors...)
	f.floor.Set(floors[max(0, slices.IndexFunc(p.Floors, func(x floor.Floor) bool { return x.ID == f.view.Floor }))])
	f.scene = fields.NewChoice(f.sceneNames()...)
	f.scene.Set(p.Plan.SceneName(f.view.Scene))
	f.axes = fields.NewChoice(axesWords...)
	f.axes.Set(axesWords[0])
	f.form.Add("what", "Save", f.what)
	f.form.Add("floor", "Floor", f.floor)
	f.form.Add("scene", "Scene", f.scene)
	f.form.Add(rowAxes, "Axes", f.axes)
}

// sceneNames are all scenes, after the words for all of them.
func (f *exportForm) sceneNames() []string {
	names := []string{f.view.P.Plan.SceneName("")}
	for _, s := range f.view.P.Plan.Scenes {
		names = append(names, s.Name)
	}
	return names
}

func (f *exportForm) scaleRow() {
	f.out.scale = length.Scale(f.view.P.Plan.Scale)
	if !f.out.scale.Valid() {
		f.out.scale = length.UsualScale(f.view.P.Unit())
	}
	f.scale = fields.NewText()
	f.scale.Set(f.out.scale.String())
	f.scale.OnCommit = func(text string) (err error) {
		s, err := length.ParseScale(text)
		if err == nil {
			f.out.scale = s
		}
		return err
	}
	f.form.Add(rowScale, "Scale", f.scale)
}

// lengthRow adds a length that may be left empty, which is zero.
func (f *exportForm) lengthRow(row, label string, at *float64) *fields.Length {
	unit := f.view.P.Unit()
	field := fields.NewLength(func(text string) (float64, error) { return length.Parse(text, unit) }, length.Style{Unit: unit}.Bare)
	field.SetUnit(unit.Name())
	field.OnCommit = func(_ string, metres float64) error {
		*at = metres
		return nil
	}
	field.OnBlank = func() error {
		*at = 0
		return nil
	}
	f.form.Add(row, label, field)
	return field
}

// show shows the rows that matter to a format. What is half typed in the others is
// dropped: a field that nobody sees must not hold up the rest.
func (f *exportForm) show(name string) {
	i := slices.IndexFunc(formats, func(x format) bool { return x.name == name })
	f.out.format = formats[max(i, 0)]
	needs := func(row string) bool { return slices.Contains(f.out.format.rows, row) }
	for _, row := range exportRows {
		f.form.ShowRow(row, needs(row))
	}
	if !needs(rowScale) {
		f.scale.Set(f.out.scale.String())
	}
	if !needs(rowNorth) {
		f.north.Set("", f.out.origin.Y)
		f.east.Set("", f.out.origin.X)
	}
}

// chosen returns what the form says now.
func (f *exportForm) chosen() outgoing {
	p, o := f.view.P, f.out
	on := max(0, slices.Index(f.floorNames(), f.floor.Value()))
	scene := plan.SceneID("")
	if i := slices.Index(f.sceneNames(), f.scene.Value()); i > 0 {
		scene = p.Plan.Scenes[i-1].ID
	}
	o.work = f.view.Work(p.Floors[on].ID).In(scene)
	o.axes = layout.AllAxes[max(0, slices.Index(axesWords, f.axes.Value()))]
	o.header = f.names.Value()
	return o
}

// floorNames are those of the floors, in order; floors of one name are numbered.
func (f *exportForm) floorNames() []string {
	var names []string
	for _, x := range f.view.P.Floors {
		name := x.Name
		for n := 2; slices.Contains(names, name); n++ {
			name = fmt.Sprintf("%s (%d)", x.Name, n)
		}
		names = append(names, name)
	}
	return names
}

// ask shows the form; save gets what was chosen, and its error is written there.
func (f *exportForm) ask(win fyne.Window, save func(outgoing) error) {
	fields.Ask(win, "Save for other programs", f.form, "Save…", func() error { return save(f.chosen()) })
}
