package ui

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"groundrow/store"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// mostShown bounds how far back the history is shown.
const mostShown = 2000

// showHistory lists who changed what and when, latest first.
func (w *Window) showHistory() {
	file := w.desk.File()
	if file == nil {
		return
	}
	entries, err := file.Journal(context.Background(), mostShown)
	if err != nil {
		w.desk.Fail(err)
		return
	}
	table := grid.New([]grid.Column{
		{Title: "When", Width: 150, ReadOnly: true}, {Title: "Who", Width: 170, ReadOnly: true},
		{Title: "What", Width: 420, ReadOnly: true},
	})
	table.SetRows(historyRows(entries))
	dlg := dialog.NewCustom("History", "Close", table, w.win)
	fields.ShowDialog(w.win, dlg, fyne.NewSize(820, 520))
}

func historyRows(entries []store.Entry) []grid.Row {
	said := map[store.Kind]string{store.Undone: "Undone: ", store.Redone: "Done again: "}
	var rows []grid.Row
	for _, e := range entries {
		rows = append(rows, grid.Row{ID: e.ID, Cells: []string{
			e.When.Local().Format("Mon 2 Jan 15:04:05"), e.Who, said[e.Kind] + e.Label,
		}})
	}
	return rows
}
