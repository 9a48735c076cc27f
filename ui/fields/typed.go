// Package fields has the pieces of a form: entries that commit, choices, ticks, dates, the form that lays them out, and
// the small dialogs and panels made of them.
//
// All fields behave alike. A person's change is committed by Enter or by going elsewhere, through OnCommit; its error
// is written under the field, in words, and what was typed stays. Esc brings back what was there. Set shows a value: it
// never calls OnCommit, and never overwrites what is being typed.
package fields

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Field is one piece of a form.
type Field interface {
	fyne.CanvasObject
	Enable()
	Disable()
	// Target is what takes the keyboard.
	Target() fyne.Focusable
	// Commit commits what has been typed and reports whether it was taken.
	Commit() bool
	// Reset drops what has been typed and any trouble, and shows the value last set.
	Reset()
	// OnKeys sets what Enter, after a commit, and Esc, when there is nothing to bring back, do beyond the field.
	OnKeys(enter, escape func())
}

// typed is what all fields with an entry have in common.
type typed struct {
	widget.BaseWidget
	entry   *input
	trouble *trouble
	whole   fyne.CanvasObject

	saved string // what the production holds, as text
	base  string // what was last put into the entry, to tell whether a person has changed it
	busy  bool   // OnCommit is running
	take  func(text string) error
}

// input is the entry of a typed field.
type input struct {
	widget.Entry
	t             *typed
	enter, escape func()
}

// start builds the field; beside goes to the right of the entry and may be nil.
func (t *typed) start(self fyne.Widget, take func(string) error, beside fyne.CanvasObject) {
	t.entry = &input{t: t}
	t.entry.ExtendBaseWidget(t.entry)
	t.take = take
	t.trouble = newTrouble()
	t.whole = container.NewVBox(container.NewBorder(nil, nil, nil, beside, t.entry), t.trouble.box)
	t.ExtendBaseWidget(self)
}

// CreateRenderer implements fyne.Widget.
func (t *typed) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.whole) }

// SetHint shows how to write the value while the entry is empty.
func (t *typed) SetHint(hint string) { t.entry.SetPlaceHolder(hint) }

// Enable lets the field be changed.
func (t *typed) Enable() { t.entry.Enable() }

// Disable shows the value without letting it be changed.
func (t *typed) Disable() { t.entry.Disable() }

// Target implements Field.
func (t *typed) Target() fyne.Focusable { return t.entry }

// OnKeys implements Field.
func (t *typed) OnKeys(enter, escape func()) { t.entry.enter, t.entry.escape = enter, escape }

// Shown returns the text in the entry.
func (t *typed) Shown() string { return t.entry.Text }

// Trouble returns what is written under the field, or nothing.
func (t *typed) Trouble() string { return t.trouble.words.Text }

// changed reports whether a person has changed the text since it was put there.
func (t *typed) changed() bool { return t.entry.Text != t.base }

// setText shows what the production holds. What is being typed stays; what was typed and refused stays as long as the
// production still holds the same.
func (t *typed) setText(text string) {
	same := t.saved == text
	t.saved = text
	if t.busy || (t.changed() && (t.hasFocus() || same)) {
		return
	}
	t.put(text)
	t.trouble.say("")
}

func (t *typed) put(text string) {
	t.base = text
	if t.entry.Text != text {
		t.entry.SetText(text)
	}
	t.base = t.entry.Text // the entry may have made line breaks of its own
}

func (t *typed) hasFocus() bool {
	c := fyne.CurrentApp().Driver().CanvasForObject(t.entry)
	return c != nil && c.Focused() == t.entry
}

// Commit implements Field.
func (t *typed) Commit() bool {
	if t.busy {
		return true
	}
	if !t.changed() {
		t.trouble.say("")
		return true
	}
	text, before := t.entry.Text, t.saved
	t.busy = true
	err := t.take(text)
	t.busy = false
	if err != nil {
		t.trouble.say(err.Error())
		return false
	}
	if t.saved == before {
		t.saved = text
	}
	t.trouble.say("")
	t.put(t.saved)
	return true
}

// Reset implements Field.
func (t *typed) Reset() {
	t.put(t.saved)
	t.trouble.say("")
}

// TypedKey commits on Enter and restores on Esc.
func (e *input) TypedKey(k *fyne.KeyEvent) {
	switch {
	case (k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter) && !e.MultiLine:
		e.accept()
	case k.Name == fyne.KeyEscape && (e.t.changed() || e.t.Trouble() != ""):
		e.t.Reset()
	case k.Name == fyne.KeyEscape && e.escape != nil:
		e.escape()
	default:
		e.Entry.TypedKey(k)
	}
}

func (e *input) accept() {
	if e.t.Commit() && e.enter != nil {
		e.enter()
	}
}

// AcceptsTab lets Tab go on to the next field, out of several lines of text as well.
func (e *input) AcceptsTab() bool { return false }

// TypedShortcut commits several lines of text on Ctrl+Enter.
func (e *input) TypedShortcut(s fyne.Shortcut) {
	if c, ok := s.(*desktop.CustomShortcut); ok && c.Modifier == fyne.KeyModifierShortcutDefault &&
		(c.KeyName == fyne.KeyReturn || c.KeyName == fyne.KeyEnter) {
		e.accept()
		return
	}
	e.Entry.TypedShortcut(s)
}

// FocusLost commits: what was typed is kept when a person goes elsewhere.
func (e *input) FocusLost() {
	e.Entry.FocusLost()
	e.t.Commit()
}

// trouble is a line of words under a field, after a triangle so that it does not depend on a colour.
type trouble struct {
	words *widget.Label
	box   *fyne.Container
}

func newTrouble() *trouble {
	t := &trouble{words: widget.NewLabel("")}
	t.words.Wrapping = fyne.TextWrapWord
	icon := widget.NewIcon(theme.NewWarningThemedResource(theme.WarningIcon()))
	t.box = container.NewBorder(nil, nil, icon, nil, t.words)
	t.box.Hide()
	return t
}

func (t *trouble) say(words string) {
	if t.words.Text == words {
		return
	}
	t.words.SetText(words)
	if words == "" {
		t.box.Hide()
		return
	}
	t.box.Show()
}
