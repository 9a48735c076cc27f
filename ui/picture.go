package ui

import (
	"image"

	"fyne.io/fyne/v2"

	"groundrow/store"
	"groundrow/ui/desk"
	looks "groundrow/ui/theme"
)

// Load shows a production that is open already, for pictures: work that the
// window would do in the background is done before each picture is taken.
func (w *Window) Load(file *store.File) {
	w.desk.Still()
	w.take(file.Path(), file)
}

// Look sets whether the window is light, dark or as the system has it.
func (w *Window) Look(choice looks.Choice) { w.chooseLook(choice) }

// Picture goes to a place and returns what a window of the size shows there. The
// size is changed on the way, so that everything is laid out anew for what the
// place has just been told to show.
func (w *Window) Picture(place desk.Name, size fyne.Size) image.Image {
	w.goTo(place)
	w.desk.Settle()
	w.win.Resize(size.AddWidthHeight(1, 1))
	w.win.Resize(size)
	return w.win.Canvas().Capture()
}
