package readings

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
)

// entry takes one reading. Enter keeps it, and goes on when there is none; the
// arrow and page keys go to the measures before and after; Esc clears.
type entry struct {
	widget.Entry
	page *Page
	key  string // the measure that the text belongs to
}

func newEntry(p *Page) *entry {
	e := &entry{page: p}
	e.ExtendBaseWidget(e)
	e.TextStyle.Bold = true
	return e
}

// show clears the text when another measure is looked at.
func (e *entry) show(p *Page) {
	if e.key != p.key {
		e.key = p.key
		e.SetText("")
	}
	e.SetPlaceHolder(hint(p.bare))
}

func (e *entry) enter() {
	text := e.Text
	e.key = "" // what is typed has been dealt with, wherever the page goes now
	if err := e.page.keep(text); err != nil {
		e.key = e.page.key
		e.page.face.trouble.Set(fields.Warning, sentence(err), "", nil)
	}
	e.page.face.entry.show(e.page)
	e.page.face.focus()
}

// TypedKey implements fyne.Focusable.
func (e *entry) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		e.enter()
	case fyne.KeyPageDown, fyne.KeyDown:
		e.page.step(1)
	case fyne.KeyPageUp, fyne.KeyUp:
		e.page.step(-1)
	case fyne.KeyEscape:
		e.SetText("")
	default:
		e.Entry.TypedKey(k)
	}
}
