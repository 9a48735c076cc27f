package drawingin

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
)

// words are what the labels in an object say.
func words(o fyne.CanvasObject) string {
	var all []string
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *widget.Label:
			all = append(all, o.Text)
		case *fyne.Container:
			for _, c := range o.Objects {
				walk(c)
			}
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(o).Objects() {
				walk(c)
			}
		}
	}
	walk(o)
	return strings.Join(all, "\n")
}

// tapable is the button with the words in an object.
func tapable(o fyne.CanvasObject, text string) fyne.Tappable {
	var found fyne.Tappable
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *fields.Button:
			if o.Text == text {
				found = o
			}
		case *fyne.Container:
			for _, c := range o.Objects {
				walk(c)
			}
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(o).Objects() {
				walk(c)
			}
		}
	}
	walk(o)
	return found
}
