package fields

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Button is a button that answers Enter as well as the space bar, and passes Esc on.
type Button struct {
	widget.Button
	escape func()
}

// NewButton returns a button.
func NewButton(text string, tapped func()) *Button {
	b := &Button{}
	b.Text, b.OnTapped = text, tapped
	b.ExtendBaseWidget(b)
	return b
}

// SetEnabled lets the button be pressed or not; what is so already is not drawn anew.
func (b *Button) SetEnabled(on bool) {
	switch {
	case on == !b.Disabled():
	case on:
		b.Enable()
	default:
		b.Disable()
	}
}

// TypedKey implements fyne.Focusable.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		if !b.Disabled() {
			b.Tapped(nil)
		}
	case fyne.KeyEscape:
		if b.escape != nil {
			b.escape()
		}
	default:
		b.Button.TypedKey(e)
	}
}

// Tool is one button of a toolbar. Keys, such as "Ctrl+D", is written after the words; the shortcut itself is wired
// where the keyboard is heard.
type Tool struct {
	Text string
	Keys string
	Do   func()
	Main bool // the one that a person came for
}

// Toolbar is a row of buttons with words.
type Toolbar struct {
	widget.BaseWidget
	buttons map[string]*Button
	box     *fyne.Container
}

// NewToolbar returns a row of buttons. A Tool without text is a gap.
func NewToolbar(items ...Tool) *Toolbar {
	t := &Toolbar{buttons: map[string]*Button{}, box: container.NewHBox()}
	t.ExtendBaseWidget(t)
	for _, item := range items {
		if item.Text == "" {
			t.box.Add(widget.NewSeparator())
			continue
		}
		words := item.Text
		if item.Keys != "" {
			words += " (" + item.Keys + ")"
		}
		b := NewButton(words, item.Do)
		if item.Main {
			b.Importance = widget.HighImportance
		}
		t.buttons[item.Text] = b
		t.box.Add(b)
	}
	return t
}

// CreateRenderer implements fyne.Widget.
func (t *Toolbar) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.box) }

// SetEnabled enables or disables the button with these words; an unknown one is passed over.
func (t *Toolbar) SetEnabled(text string, on bool) {
	b, ok := t.buttons[text]
	switch {
	case !ok || on != b.Disabled():
	case on:
		b.Enable()
	default:
		b.Disable()
	}
}

// ShowMenu opens a menu under the button with these words; an unknown one is passed
// over.
func (t *Toolbar) ShowMenu(text string, menu *fyne.Menu) {
	b, ok := t.buttons[text]
	if !ok {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(b); c != nil {
		widget.ShowPopUpMenuAtRelativePosition(menu, c, fyne.NewPos(0, b.Size().Height), b)
	}
}
