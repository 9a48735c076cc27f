package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// welcome is what the window shows before a production is open.
func (w *Window) welcome() fyne.CanvasObject {
	name := canvas.NewText(Title, w.app.Settings().Theme().Color(theme.ColorNameForeground, w.app.Settings().ThemeVariant()))
	name.TextSize, name.TextStyle.Bold = 30, true
	job := widget.NewLabel("From the designer's ground plan to full-size tape on the floor,\nand everything else that has to be ready by the first rehearsal.")

	start := widget.NewButton("New production…", w.askNew)
	start.Importance = widget.HighImportance
	box := container.NewVBox(name, job, start,
		widget.NewButton("Open a production file…", w.askOpen),
		widget.NewButton("Look round in the demo", w.openDemo),
	)
	recents := w.recents()
	if len(recents) > 0 {
		box.Add(widget.NewLabelWithStyle("Opened lately", fyne.TextAlignLeading, fyne.TextStyle{Bold: true}))
	}
	for _, path := range recents {
		b := widget.NewButton(filepath.Base(path)+"    in "+filepath.Dir(path), func() { w.Open(path) })
		b.Alignment, b.Importance = widget.ButtonAlignLeading, widget.LowImportance
		box.Add(b)
	}
	return container.NewCenter(box)
}
