package ui

import (
	"fyne.io/fyne/v2"

	"groundrow/ui/readings"
)

// showReadings opens the page on which check measures are entered with one hand, in
// a window of its own, or brings it to the front.
func (w *Window) showReadings() {
	v := w.desk.View()
	if v == nil {
		return
	}
	if w.readings == nil {
		w.openReadings()
	}
	w.reader.Show(v)
	w.readings.Show()
	w.readings.RequestFocus()
	w.reader.Focus()
}

func (w *Window) openReadings() {
	w.reader = readings.New(w.desk)
	w.readings = w.app.NewWindow("Readings — " + Title)
	w.readings.SetPadded(false)
	w.readings.SetContent(w.reader.Content())
	w.readings.Resize(readings.Size)
	w.readings.SetOnClosed(func() { w.readings, w.reader = nil, nil })
	for _, key := range []fyne.KeyName{fyne.KeyZ, fyne.KeyY} {
		do := w.desk.Undo
		if key == fyne.KeyY {
			do = w.desk.Redo
		}
		w.readings.Canvas().AddShortcut(ctrl(key), func(fyne.Shortcut) { do() })
	}
}
