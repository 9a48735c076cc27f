package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
)

// railWidth fits the longest name with its state.
const railWidth = 116

// rail names the places in the order of the job, each with its state as a shape
// and a word.
type rail struct {
	content fyne.CanvasObject
	items   map[desk.Name]*railItem
}

func newRail(goTo func(desk.Name)) *rail {
	r := &rail{items: map[desk.Name]*railItem{}}
	box := container.NewVBox()
	for _, name := range desk.Names {
		item := newRailItem(name, func() { goTo(name) })
		r.items[name] = item
		box.Add(item)
	}
	r.content = container.NewHBox(container.NewVScroll(box), widget.NewSeparator())
	return r
}

func (r *rail) show(v *desk.View, at desk.Name) {
	states := prep.PlaceStates(v.P, v.Work)
	for name, item := range r.items {
		item.set(name == at, states[string(name)])
	}
}

// railItem is one place on the rail.
type railItem struct {
	widget.BaseWidget
	name    desk.Name
	tapped  func()
	picked  bool
	hovered bool
	focused bool
	state   prep.State
}

var (
	_ fyne.Tappable     = (*railItem)(nil)
	_ fyne.Focusable    = (*railItem)(nil)
	_ desktop.Hoverable = (*railItem)(nil)
)

func newRailItem(name desk.Name, tapped func()) *railItem {
	i := &railItem{name: name, tapped: tapped}
	i.ExtendBaseWidget(i)
	return i
}

func (i *railItem) set(picked bool, state prep.State) {
	if i.picked == picked && i.state == state {
		return
	}
	i.picked, i.state = picked, state
	i.Refresh()
}

// Tapped goes to the place.
func (i *railItem) Tapped(*fyne.PointEvent) { i.tapped() }

// TypedKey goes to the place by keyboard.
func (i *railItem) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace || e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		i.tapped()
	}
}

// TypedRune is part of being focusable; the rail takes no text.
func (i *railItem) TypedRune(rune) {}

// FocusGained and FocusLost draw the ring.
func (i *railItem) FocusGained() { i.focused = true; i.Refresh() }
func (i *railItem) FocusLost()   { i.focused = false; i.Refresh() }

// MouseIn, MouseMoved and MouseOut draw the hover.
func (i *railItem) MouseIn(*desktop.MouseEvent)    { i.hovered = true; i.Refresh() }
func (i *railItem) MouseMoved(*desktop.MouseEvent) {}
func (i *railItem) MouseOut()                      { i.hovered = false; i.Refresh() }

// CreateRenderer draws name, shape and word.
func (i *railItem) CreateRenderer() fyne.WidgetRenderer {
	r := &railRenderer{
		item: i,
		back: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent),
		name: canvas.NewText(string(i.name), nil), word: canvas.NewText("", nil),
		round: canvas.NewCircle(color.Transparent), square: canvas.NewRectangle(color.Transparent),
	}
	r.back.CornerRadius = 4
	r.name.TextSize, r.word.TextSize = 14, 11
	r.Refresh()
	return r
}

type railRenderer struct {
	item       *railItem
	back, bar  *canvas.Rectangle
	name, word *canvas.Text
	round      *canvas.Circle
	square     *canvas.Rectangle
}

func (r *railRenderer) Destroy()           {}
func (r *railRenderer) MinSize() fyne.Size { return fyne.NewSize(railWidth, 46) }
func (r *railRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.back, r.bar, r.name, r.round, r.square, r.word}
}

func (r *railRenderer) Layout(size fyne.Size) {
	r.back.Resize(size)
	r.bar.Resize(fyne.NewSize(4, size.Height))
	r.name.Move(fyne.NewPos(12, 5))
	r.word.Move(fyne.NewPos(26, 25))
	for _, o := range []fyne.CanvasObject{r.round, r.square} {
		o.Resize(fyne.NewSize(9, 9))
		o.Move(fyne.NewPos(12, 28))
	}
}

// Refresh sets colours and shapes: an empty ring for nothing yet, a filled half
// tone for under way, a filled circle for ready, a square for what needs a person.
func (r *railRenderer) Refresh() {
	th, v := fyne.CurrentApp().Settings().Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	of := func(n fyne.ThemeColorName) color.Color { return th.Color(n, v) }
	ink := of(theme.ColorNameForeground)
	r.name.Color, r.word.Color = ink, ink
	r.name.TextStyle.Bold = r.item.picked
	r.word.Text = string(r.item.state)
	r.back.FillColor, r.bar.FillColor = color.Transparent, color.Transparent
	r.back.StrokeWidth = 0
	switch {
	case r.item.picked:
		r.back.FillColor = of(theme.ColorNameSelection)
		r.bar.FillColor = of(theme.ColorNamePrimary)
	case r.item.hovered:
		r.back.FillColor = of(theme.ColorNameHover)
	}
	if r.item.focused {
		r.back.StrokeWidth, r.back.StrokeColor = 2, of(theme.ColorNamePrimary)
	}
	r.shape(ink, of)
	canvas.Refresh(r.item)
}

func (r *railRenderer) shape(ink color.Color, of func(fyne.ThemeColorName) color.Color) {
	r.round.StrokeWidth, r.round.StrokeColor, r.round.FillColor = 1.5, ink, color.Transparent
	r.square.FillColor = color.Transparent
	switch r.item.state {
	case "":
		r.round.StrokeColor = color.Transparent
	case prep.UnderWay:
		r.round.FillColor = of(theme.ColorNameDisabled)
	case prep.Ready:
		r.round.FillColor = of(theme.ColorNameSuccess)
		r.round.StrokeColor = of(theme.ColorNameSuccess)
	case prep.NeedsYou:
		r.round.StrokeColor = color.Transparent
		r.square.FillColor = of(theme.ColorNameWarning)
	}
}
