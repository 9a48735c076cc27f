package tapeplace

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// whatIf is the list of what could be given up. It is worked out only while it is
// looked at, off the UI goroutine, since everything is counted again for each.
type whatIf struct {
	desk    *desk.Desk
	quietly func(work func(context.Context), done func()) (callOff func())
	callOff func()

	said    *widget.Label
	list    *fyne.Container
	content fyne.CanvasObject
	lines   []*savingLine

	of      *prep.Production // that is shown or being worked out
	looked  bool
	savings []prep.Saving
}

// savingLine is one thing that could be given up.
type savingLine struct {
	name  *widget.Label
	words *widget.Label
	do    *fields.Button
	box   *fyne.Container
	of    prep.Saving
}

func newWhatIf(d *desk.Desk) *whatIf {
	w := &whatIf{desk: d, quietly: d.Quietly, callOff: func() {}, said: widget.NewLabel(""), list: container.NewVBox()}
	w.said.Wrapping = fyne.TextWrapWord
	w.content = container.NewVScroll(container.NewVBox(w.said, w.list))
	return w
}

// look says whether the list is looked at, and brings it up to date if so.
func (w *whatIf) look(on bool, v *desk.View) {
	w.looked = on
	if !on || v == nil || w.of == v.P {
		return
	}
	w.callOff()
	w.of = v.P
	if len(w.savings) == 0 {
		w.said.SetText("Counting everything again without each of them…")
	}
	production, found := v.P, []prep.Saving(nil)
	w.callOff = w.quietly(
		func(context.Context) { found = prep.Savings(production) },
		func() { w.show(production, found) },
	)
}

// show sets the list.
func (w *whatIf) show(p *prep.Production, found []prep.Saving) {
	w.savings = found
	w.said.SetText("What could be given up on the rehearsal floors, most money first. Each is one edit, which can be undone; what is laid otherwise waits for a decision under Floors.")
	if len(found) == 0 {
		w.said.SetText("Nothing that could be given up would save any tape.")
	}
	for len(w.lines) < len(found) {
		w.add()
	}
	for i, l := range w.lines {
		if i >= len(found) {
			l.box.Hide()
			continue
		}
		l.of = found[i]
		l.name.SetText(found[i].Name)
		l.words.SetText(savingWords(p, found[i]))
		l.box.Show()
	}
	w.list.Refresh()
}

func (w *whatIf) add() {
	l := &savingLine{name: widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true}), words: widget.NewLabel("")}
	l.name.Wrapping, l.words.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	l.do = fields.NewButton("Do it", func() { w.giveUp(l.of) })
	l.box = container.NewVBox(
		widget.NewSeparator(),
		container.NewBorder(nil, nil, nil, container.NewVBox(layout.NewSpacer(), l.do, layout.NewSpacer()), container.NewVBox(l.name, l.words)),
	)
	w.lines = append(w.lines, l)
	w.list.Add(l.box)
}

func (w *whatIf) giveUp(s prep.Saving) {
	if w.desk.Edit(s.Name, func(p *prep.Production) error {
		prep.GiveUp(p, s.Name)
		return nil
	}) {
		w.desk.Told("Done: " + s.Name + ". Undo brings it back.")
	}
}
