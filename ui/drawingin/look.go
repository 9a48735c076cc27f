package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
)

// wrapped are words that may take several lines.
func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func heading(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.TextStyle.Bold = true
	l.Truncation = fyne.TextTruncateEllipsis
	return l
}

// said is what a banner is to say.
type said struct {
	kind   fields.Kind
	words  string
	action string
	do     func()
}

// say writes on a banner, whose surroundings are laid out anew when it appears or
// goes.
func say(banner *fields.Banner, around fyne.CanvasObject, what said) {
	was := banner.Visible()
	banner.Set(what.kind, what.words, what.action, what.do)
	if banner.Visible() != was {
		around.Refresh()
	}
}

func setVisible(o fyne.CanvasObject, on bool) {
	switch {
	case on == o.Visible():
	case on:
		o.Show()
	default:
		o.Hide()
	}
}
