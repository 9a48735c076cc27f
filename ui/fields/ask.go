package fields

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// Confirm asks before something is done. Enter accepts, since the button with yesText has the keyboard, and Esc leaves
// things as they are. The toolkit's own dialogs do neither.
func Confirm(win fyne.Window, title, body, yesText string, yes func()) {
	words := widget.NewLabel(body)
	words.Wrapping = fyne.TextWrapWord
	var d dialog.Dialog
	accept := NewButton(yesText, func() {
		d.Hide()
		yes()
	})
	cancel := NewButton("Cancel", func() { d.Hide() })
	d = showDialog(win, title, words, accept, cancel)
	win.Canvas().Focus(accept)
}

// Tell says something that has to be read before going on; Enter and Esc close it.
func Tell(win fyne.Window, title, body string) {
	words := widget.NewLabel(body)
	words.Wrapping = fyne.TextWrapWord
	var d dialog.Dialog
	closing := NewButton("Close", func() { d.Hide() })
	d = showDialog(win, title, words, closing, nil)
	win.Canvas().Focus(closing)
}

// Ask shows a form and calls yes when all its fields have been taken; an error of yes is written under the form, which
// stays open. Enter in a field goes on, Esc leaves without asking. Yes may show the next dialog: this one is gone by then.
func Ask(win fyne.Window, title string, form *Form, yesText string, yes func() error) {
	said := newTrouble()
	var d dialog.Dialog
	var open func()
	try := func() {
		if !form.Commit() {
			return
		}
		at := win.Canvas().Focused()
		d.Hide()
		if err := yes(); err != nil {
			said.say(err.Error())
			open()
			win.Canvas().Focus(at)
		}
	}
	accept := NewButton(yesText, try)
	cancel := NewButton("Cancel", func() { d.Hide() })
	form.OnKeys(try, func() { d.Hide() })
	content := container.NewVBox(form, said.box)
	open = func() { d = showDialog(win, title, content, accept, cancel) }
	open()
	if field := form.first(); field != nil {
		win.Canvas().Focus(field.Target()) // the driver knows the canvas of an object only once it has been drawn
	}
}

// showDialog shows content over the window with the buttons under it; Esc on a button cancels. Cancel may be nil.
func showDialog(win fyne.Window, title string, content fyne.CanvasObject, accept, cancel *Button) dialog.Dialog {
	accept.Importance = widget.HighImportance
	buttons := container.NewHBox(layout.NewSpacer())
	if cancel != nil {
		buttons.Add(cancel)
	}
	buttons.Add(accept)
	d := dialog.NewCustomWithoutButtons(title, container.NewBorder(nil, buttons, nil, nil, content), win)
	accept.escape = d.Hide
	if cancel != nil {
		cancel.escape = d.Hide
	}
	hearKeys(win.Canvas(), d, accept)
	d.Resize(fyne.NewSize(min(460, win.Canvas().Size().Width-40), 10))
	d.Show()
	return d
}

// ShowDialog shows a dialog of the toolkit at a size; Esc closes it while nothing in it has the keyboard, which the
// toolkit leaves out.
func ShowDialog(win fyne.Window, d dialog.Dialog, size fyne.Size) {
	c := win.Canvas()
	before := c.OnTypedKey()
	c.SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			d.Hide()
		}
	})
	d.SetOnClosed(func() { c.SetOnTypedKey(before) })
	d.Resize(size)
	d.Show()
}

// hearKeys keeps Esc and Enter working after a click has taken the keyboard away from the dialog's buttons, until the
// dialog closes.
func hearKeys(c fyne.Canvas, d *dialog.CustomDialog, accept *Button) {
	before := c.OnTypedKey()
	c.SetOnTypedKey(func(e *fyne.KeyEvent) { accept.TypedKey(e) })
	d.SetOnClosed(func() { c.SetOnTypedKey(before) })
}
