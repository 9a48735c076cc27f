package planplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// newLength is a field for a length in the production's unit.
func newLength(d *desk.Desk, parse func(string, length.Unit) (float64, error)) *fields.Length {
	return fields.NewLength(
		func(text string) (float64, error) { return parse(text, d.View().P.Unit()) },
		func(m float64) string { return d.View().Style().Bare(m) },
	)
}

// focus gives a field the keyboard. The window is asked, since a field that has
// not been painted yet does not know its window.
func focus(d *desk.Desk, f fields.Field) {
	if target := f.Target(); target != nil {
		d.Window().Canvas().Focus(target)
	}
}

// wide gives an object a width.
func wide(width float32, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(atLeast(width), o)
}

type atLeast float32

func (w atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(float32(w), 0))
}

func (w atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// twoLines is the height of two lines of words, in toolkit pixels.
const twoLines = 44

// tall gives an object a height at least.
type tall float32

func (h tall) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(0, float32(h)))
}

func (h tall) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }
