package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
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
		var firstDay time.Time
		if first.Date != nil {
			firstDay = *first.Date
		}
		p := prep.New(title.Text, length.Units[max(unit.SelectedIndex(), 0)], firstDay, uuid.NewString)
		w.askWhere(title.Text+extension, func(path string) { w.create(path, p) })
	}, w.win)
	dlg.Resize(fyne.NewSize(620, 300))
	dlg.Show()
	w.win.Canvas().Focus(title)
}

func unitNames() []string {
	var names []string
	for _, u := range length.Units {
		names = append(names, u.Name())
	}
	return names
}
