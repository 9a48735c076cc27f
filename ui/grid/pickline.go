package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// pickLine is one choice.
type pickLine struct {
	widget.BaseWidget
	text   string
	tapped func()
	marked bool
	back   *canvas.Rectangle
	label  *canvas.Text
}

var (
	_ fyne.Tappable     = (*pickLine)(nil)
	_ desktop.Hoverable = (*pickLine)(nil)
)

// newPickLine returns a line; nil for tapped makes it words that cannot be chosen. An empty choice reads as "(none)".
func newPickLine(text string, tapped func()) *pickLine {
	if text == "" {
		text = "(none)"
	}
	l := &pickLine{text: text, tapped: tapped, back: canvas.NewRectangle(nil), label: canvas.NewText(text, nil)}
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer implements fyne.Widget.
func (l *pickLine) CreateRenderer() fyne.WidgetRenderer {
	l.paint(false)
	padded := container.New(sidePadding{}, l.label)
	return widget.NewSimpleRenderer(container.NewStack(l.back, padded))
}

func (l *pickLine) setMarked(on bool) {
	l.marked = on
	l.paint(false)
}

func (l *pickLine) paint(hovered bool) {
	l.label.Color, l.label.TextSize = theme.Color(theme.ColorNameForeground), theme.TextSize()
	l.back.FillColor = nil
	switch {
	case l.marked:
		l.back.FillColor = theme.Color(theme.ColorNameSelection)
	case hovered:
		l.back.FillColor = theme.Color(theme.ColorNameHover)
	}
	l.label.Refresh()
	l.back.Refresh()
}

// Tapped chooses the line.
func (l *pickLine) Tapped(*fyne.PointEvent) {
	if l.tapped != nil {
		l.tapped()
	}
}

// MouseIn implements desktop.Hoverable.
func (l *pickLine) MouseIn(*desktop.MouseEvent) { l.paint(true) }

// MouseMoved implements desktop.Hoverable.
func (l *pickLine) MouseMoved(*desktop.MouseEvent) {}

// MouseOut implements desktop.Hoverable.
func (l *pickLine) MouseOut() { l.paint(false) }

// tightRows stacks lines without gaps.
type tightRows struct{}

func (tightRows) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.Size{}
	for _, o := range objects {
		size.Width = max(size.Width, o.MinSize().Width)
		size.Height += o.MinSize().Height
	}
	return size
}

func (tightRows) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		h := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, h))
		y += h
	}
}

// sidePadding keeps text off the left and right edges.
type sidePadding struct{}

func (sidePadding) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(2*cellPad, 4)
}

func (sidePadding) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(cellPad, 2))
	objects[0].Resize(size.SubtractWidthHeight(2*cellPad, 4))
}
