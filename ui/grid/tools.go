package grid

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// tools is the row above the table: the filter, how many rows it leaves, what was last said, and the buttons.
type tools struct {
	g            *Grid
	filter       *filterEntry
	count, words *widget.Label
	add, remove  *widget.Button
	extra        *fyne.Container
	box          *fyne.Container
	setting      bool
	said         string
}

// filterEntry is the filter; Esc empties it and Down or Enter goes to the rows.
type filterEntry struct {
	widget.Entry
	g *Grid
}

func newTools(g *Grid) *tools {
	t := &tools{g: g, filter: &filterEntry{g: g}, count: widget.NewLabel(""), words: widget.NewLabel("")}
	t.filter.ExtendBaseWidget(t.filter)
	t.filter.SetPlaceHolder("Filter (Ctrl+F)")
	t.filter.OnChanged = func(text string) {
		if !t.setting {
			g.SetFilter(text)
		}
	}
	t.words.Truncation = fyne.TextTruncateEllipsis
	t.add = widget.NewButton("Add", func() {
		if g.OnAdd != nil {
			g.OnAdd()
		}
	})
	t.remove = widget.NewButton("Delete", g.deleteSelected)
	t.extra = container.NewHBox()
	left := container.NewHBox(container.New(fixedWidth(180), t.filter), t.count)
	t.box = container.NewBorder(nil, nil, left, container.NewHBox(t.extra, t.remove, t.add), t.words)
	return t
}

// SetTools puts a place's own buttons into the tool row, before Delete and Add.
func (g *Grid) SetTools(objects ...fyne.CanvasObject) {
	g.tools.extra.Objects = objects
	g.tools.extra.Refresh()
}

// SetToolWords names the buttons, such as "Add a task" and "Delete tasks".
func (g *Grid) SetToolWords(add, remove string) {
	g.tools.add.SetText(add)
	g.tools.remove.SetText(remove)
}

// ShowTools shows or hides the tool row; a small table beside a form does without.
func (g *Grid) ShowTools(on bool) {
	if on {
		g.tools.box.Show()
		return
	}
	g.tools.box.Hide()
}

// FocusFilter puts the keyboard into the filter.
func (g *Grid) FocusFilter() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(g.tools.filter); c != nil && g.tools.box.Visible() {
		c.Focus(g.tools.filter)
		g.tools.filter.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}

// Say shows words in the tool row until the selection next changes.
func (g *Grid) Say(words string) { g.tools.say(words) }

func (t *tools) say(words string) {
	t.said = words
	t.show()
	t.g.body.placeNote()
}

// cut reports whether the words are longer than the room that the tool row has for them.
func (t *tools) cut() bool {
	room := t.words.Size().Width - 2*theme.InnerPadding()
	return t.box.Visible() && fyne.MeasureText(t.words.Text, theme.TextSize(), fyne.TextStyle{}).Width > room
}

// Said returns the words in the tool row.
func (g *Grid) Said() string { return g.tools.words.Text }

// show brings the row up to date. When nothing has been said the words are those of the current row's problem.
func (t *tools) show() {
	g := t.g
	setVisible(t.add, g.OnAdd != nil)
	setVisible(t.remove, g.OnDelete != nil)
	if len(g.Selected()) == 0 {
		t.remove.Disable()
	} else {
		t.remove.Enable()
	}
	t.count.SetText(countWords(len(g.shown), len(g.rows)))
	words := t.said
	if r, ok := g.row(g.current.row); ok && words == "" {
		words = r.problem(g.current.col)
		if words == "" {
			words = r.Problem
		}
	}
	t.words.SetText(words)
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

func countWords(shown, all int) string {
	if shown == all {
		return fmt.Sprintf("%d", all)
	}
	return fmt.Sprintf("%d of %d shown", shown, all)
}

func (t *tools) setFilter(text string) {
	if t.filter.Text == text {
		return
	}
	t.setting = true
	t.filter.SetText(text)
	t.setting = false
}

// TypedKey implements fyne.Focusable.
func (f *filterEntry) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		f.g.SetFilter("")
		f.g.Focus()
	case fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnter:
		f.g.Focus()
	default:
		f.Entry.TypedKey(e)
	}
}

// fixedWidth gives its one object this width.
type fixedWidth float32

func (w fixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(w), objects[0].MinSize().Height)
}

func (w fixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// emptyPlace is what a table without rows shows: what belongs there, and the button for the next step.
type emptyPlace struct {
	words  *widget.Label
	button *widget.Button
	box    *fyne.Container
	back   *canvas.Rectangle

	text, action string
	do           func()
}

func newEmptyPlace() *emptyPlace {
	e := &emptyPlace{words: widget.NewLabel(""), button: widget.NewButton("", nil), back: canvas.NewRectangle(nil), text: "Nothing here yet."}
	e.words.Alignment = fyne.TextAlignCenter
	e.words.Wrapping = fyne.TextWrapWord
	inner := container.NewVBox(e.words, container.NewHBox(layout.NewSpacer(), e.button, layout.NewSpacer()))
	e.box = container.NewStack(e.back, container.NewBorder(nil, nil, nil, nil, container.NewVBox(layout.NewSpacer(), inner, layout.NewSpacer())))
	return e
}

// SetEmpty says what a table without rows shows, such as "No tasks yet." with the button "Add the first task". A nil
// action is OnAdd.
func (g *Grid) SetEmpty(text, button string, action func()) {
	g.empty.text, g.empty.action, g.empty.do = text, button, action
	g.showEmpty()
}

// showEmpty covers the cells with words where there are none, or none that pass the filter.
func (g *Grid) showEmpty() {
	e := g.empty
	setVisible(e.box, len(g.shown) == 0)
	if len(g.shown) > 0 {
		return
	}
	e.back.FillColor = theme.Color(theme.ColorNameBackground)
	text, button, do := e.text, e.action, e.do
	if do == nil {
		do = g.OnAdd
	}
	if len(g.rows) > 0 {
		text, button, do = fmt.Sprintf("No row holds “%s”.", g.filter), "Show all", func() { g.SetFilter("") }
	}
	e.words.SetText(text)
	setVisible(e.button, button != "" && do != nil)
	e.button.OnTapped = do
	e.button.SetText(button)
}
