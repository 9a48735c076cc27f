package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"

	"github.com/google/uuid"
)

// daysToPrepare is how long before the first rehearsal prep week starts, until
// somebody says otherwise.
const daysToPrepare = 6

// askNew asks for the few things that a production cannot do without.
func (w *Window) askNew() {
	title := widget.NewEntry()
	title.SetPlaceHolder("the name of the show")
	title.Validator = func(s string) error {
		if s == "" {
			return fmt.Errorf("the production needs a title")
		}
		return nil
	}
	unit := widget.NewSelect(unitNames(), nil)
	unit.SetSelectedIndex(0)
	first := widget.NewDateEntry()
	day := time.Now().AddDate(0, 0, daysToPrepare)
	first.SetDate(&day)

	dlg := dialog.NewForm("New production", "Choose where to keep it…", "Cancel", []*widget.FormItem{
		{Text: "Title", Widget: title},
		{Text: "Lengths in", Widget: unit, HintText: "what a bare number means; the other spellings are always understood"},
		{Text: "First rehearsal", Widget: first},
	}, func(ok bool) {
		if !ok {
			return
		}
		p := newProduction(title.Text, length.Units[max(unit.SelectedIndex(), 0)], first.Date)
		w.askWhere(title.Text+extension, func(path string) { w.create(path, p) })
	}, w.win)
	dlg.Resize(fyne.NewSize(620, 300))
	dlg.Show()
	w.win.Canvas().Focus(title)
}

// newProduction returns an empty production with a room to be measured, the
// stage to hand on to, the usual tapes and the usual kit.
func newProduction(title string, unit length.Unit, first *time.Time) *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Settings.Title = title
	p.Settings.Unit = string(unit)
	p.Settings.Step = length.DefaultStep(unit)
	if unit != length.FeetInches {
		p.Settings.Paper = "A4"
	}
	p.Plan.Title = title + ", ground plan"
	p.Plan.Scale = 48
	if unit != length.FeetInches {
		p.Plan.Scale = 50
	}
	p.Plan.Baseline = "plaster line"
	if first != nil {
		p.Settings.FirstRehearsal = first.Add(10 * time.Hour)
		p.Settings.PrepStart = first.AddDate(0, 0, -daysToPrepare)
	}
	p.Floors = []floor.Floor{
		{ID: floor.ID(uuid.NewString()), Name: "Rehearsal room", Kind: floor.Room, Rule: floor.AskFirst, Side: floor.Outside},
		{ID: floor.ID(uuid.NewString()), Name: "Stage", Kind: floor.Stage, Rule: floor.AskFirst, Side: floor.Outside},
	}
	p.Stocks = supplies.StandardStocks(uuid.NewString)
	p.Items = supplies.StandardKit(uuid.NewString)
	return p
}

func unitNames() []string {
	var names []string
	for _, u := range length.Units {
		names = append(names, u.Name())
	}
	return names
}
