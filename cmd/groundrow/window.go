package main

import (
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"groundrow/assets/desktop"
	"groundrow/cmd/internal/display"
	"groundrow/ui"
)

// appID is the name under which the toolkit keeps the window's settings.
const appID = "groundrow"

var errNoDisplay = errors.New("there is no display to open a window on. " +
	"The commands work without one: groundrow print FILE --to FOLDER writes the sheets, " +
	"groundrow pictures FILE --to FOLDER pictures of the window; groundrow --help lists them all")

// openWindow opens the window, with a production file unless path is empty, and
// returns when it is closed.
func openWindow(path string) (err error) {
	if !display.Named() {
		return errNoDisplay
	}
	// The toolkit panics when the display that is named does not answer.
	shown := false
	defer func() {
		if r := recover(); r != nil {
			if shown {
				panic(r)
			}
			err = fmt.Errorf("%w (%v)", errNoDisplay, r)
		}
	}()
	a := app.NewWithID(appID)
	a.SetIcon(fyne.NewStaticResource("groundrow.svg", desktop.Icon))
	a.Lifecycle().SetOnStarted(func() { shown = true })
	w := ui.New(a)
	if path != "" {
		w.Open(path)
	}
	w.Run()
	return nil
}
