package fields

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Empty is what a place shows that has nothing in it yet: what belongs there, and a button for the next step. Without
// button text there is no button.
func Empty(title, body, buttonText string, action func()) fyne.CanvasObject {
	head := widget.NewLabelWithStyle(title, fyne.TextAlignCenter, fyne.TextStyle{Bold: true})
	head.Wrapping = fyne.TextWrapWord
	words := widget.NewLabelWithStyle(body, fyne.TextAlignCenter, fyne.TextStyle{})
	words.Wrapping = fyne.TextWrapWord
	box := container.NewVBox(layout.NewSpacer(), head, words)
	if buttonText != "" {
		b := NewButton(buttonText, action)
		b.Importance = widget.HighImportance
		box.Add(container.NewHBox(layout.NewSpacer(), b, layout.NewSpacer()))
	}
	box.Add(layout.NewSpacer())
	return container.New(narrow(460), box)
}

// narrow centres its object and keeps it from being wider than a line that is pleasant to read.
type narrow float32

func (n narrow) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (n narrow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(size.Width, float32(n))
	objects[0].Move(fyne.NewPos((size.Width-width)/2, 0))
	objects[0].Resize(fyne.NewSize(width, size.Height))
}

// Kind is how much a banner matters; each has a shape of its own.
type Kind int

// The kinds of banner.
const (
	Note    Kind = iota // worth knowing: a circled i
	Warning             // wants attention: a triangle
	Danger              // stops the work or can hurt: a ring with an exclamation mark
	Good                // done or right: a tick
)

func (k Kind) icon() fyne.Resource {
	switch k {
	case Warning:
		return theme.NewWarningThemedResource(theme.WarningIcon())
	case Danger:
		return theme.NewErrorThemedResource(theme.ErrorIcon())
	case Good:
		return theme.NewSuccessThemedResource(theme.ConfirmIcon())
	}
	return theme.NewPrimaryThemedResource(theme.InfoIcon())
}

func (k Kind) edge() fyne.ThemeColorName {
	switch k {
	case Warning:
		return theme.ColorNameWarning
	case Danger:
		return theme.ColorNameError
	case Good:
		return theme.ColorNameSuccess
	}
	return theme.ColorNamePrimary
}

// Banner is a strip of words after a shape, with at most one thing to do about it. It is hidden while it has no words.
type Banner struct {
	widget.BaseWidget
	kind   Kind
	icon   *widget.Icon
	words  *widget.Label
	button *Button
	back   *canvas.Rectangle
}

// NewBanner returns a banner; action may be empty for words alone.
func NewBanner(kind Kind, text, action string, do func()) *Banner {
	b := &Banner{icon: widget.NewIcon(nil), words: widget.NewLabel(""), button: NewButton("", nil), back: canvas.NewRectangle(nil)}
	b.words.Wrapping = fyne.TextWrapWord
	b.back.StrokeWidth = 1
	b.back.CornerRadius = 3
	b.ExtendBaseWidget(b)
	b.Set(kind, text, action, do)
	return b
}

// Set changes what the banner says.
func (b *Banner) Set(kind Kind, text, action string, do func()) {
	b.kind = kind
	b.icon.SetResource(kind.icon())
	b.words.SetText(text)
	b.button.SetText(action)
	b.button.OnTapped = do
	show(b.button, action != "" && do != nil)
	show(b, text != "")
	b.paint()
}

func show(o fyne.CanvasObject, on bool) {
	switch {
	case on == o.Visible():
	case on:
		o.Show()
	default:
		o.Hide()
	}
}

// Refresh takes the colours of the present theme.
func (b *Banner) Refresh() {
	b.paint()
	b.BaseWidget.Refresh()
}

func (b *Banner) paint() {
	b.back.FillColor = theme.Color(theme.ColorNameInputBackground)
	b.back.StrokeColor = theme.Color(b.kind.edge())
	b.back.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (b *Banner) CreateRenderer() fyne.WidgetRenderer {
	middle := func(o fyne.CanvasObject) fyne.CanvasObject {
		return container.NewVBox(layout.NewSpacer(), o, layout.NewSpacer())
	}
	row := container.NewBorder(nil, nil, container.NewPadded(b.icon), container.NewPadded(middle(b.button)), middle(b.words))
	return widget.NewSimpleRenderer(container.NewStack(b.back, row))
}

// Words returns what the banner says.
func (b *Banner) Words() string { return b.words.Text }
