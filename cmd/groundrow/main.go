package main

import (
	"os"

	"fyne.io/fyne/v2/app"

	"groundrow/ui"
)

func main() {
	w := ui.New(app.NewWithID("groundrow"))
	if len(os.Args) > 1 {
		w.Open(os.Args[1])
	}
	w.Run()
}
