package desk

import (
	"context"
	"errors"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"groundrow/store"
	"groundrow/ui/fields"
)

var errNoFile = errors.New("no production is open: start a new one or open a file first")

func isConflict(err error) bool {
	var c *store.Conflict
	return errors.As(err, &c)
}

// Fail tells the person what went wrong. A clash with somebody else's change is
// shown with both values, to choose from.
func (d *Desk) Fail(err error) {
	var clash *store.Conflict
	if errors.As(err, &clash) {
		d.askBoth(clash)
		return
	}
	fields.Tell(d.win, "This could not be done", err.Error())
}

// askBoth shows what both people wrote and keeps the one that is chosen. Either
// way the rest of the change is made.
func (d *Desk) askBoth(clash *store.Conflict) {
	file := d.file
	text := widget.NewLabel(clashWords(file.Now().P, clash))
	dlg := dialog.NewCustomConfirm("Two changes to the same thing", "Use mine", "Keep theirs", text, func(mine bool) {
		if d.file != file {
			return
		}
		settle := file.KeepTheirs
		if mine {
			settle = file.Force
		}
		d.settled(settle(context.Background(), clash))
	}, d.win)
	dlg.Resize(dialogSize)
	dlg.Show()
}
