package readings

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/length"
	"groundrow/ui/fields"
)

// The type of what is read from a distance, and how high a button for a thumb is, in
// toolkit pixels.
const (
	titleSize    = 60
	expectedSize = 32
	titleRoom    = 440
	thumb        = 52
)

// face is the widgets of the page.
type face struct {
	whole    fyne.CanvasObject
	count    *widget.Label
	title    *canvas.Text
	where    *widget.Label
	expected *canvas.Text
	other    *widget.Label
	entry    *entry
	trouble  *fields.Banner
	noted    *fields.Banner // what became of the reading before
	said     *fields.Banner // what has been read of this measure
	verdict  *fields.Banner
	bare     *widget.RadioGroup
	back     *fields.Button
	ticks    [4]*widget.Check
	setting  bool
}

func newFace(p *Page) *face {
	f := &face{count: wrapped(), where: wrapped(), other: widget.NewLabel(""), title: canvas.NewText("", nil), expected: canvas.NewText("", nil)}
	f.title.TextStyle.Bold, f.title.Alignment = true, fyne.TextAlignCenter
	f.expected.TextStyle.Bold, f.expected.TextSize = true, expectedSize
	f.trouble, f.noted = fields.NewBanner(fields.Warning, "", "", nil), fields.NewBanner(fields.Note, "", "", nil)
	f.said, f.verdict = fields.NewBanner(fields.Note, "", "", nil), fields.NewBanner(fields.Note, "", "", nil)
	f.entry = newEntry(p)
	f.bare = widget.NewRadioGroup([]string{inFeet, inMetres}, func(chosen string) {
		if !f.setting {
			p.bare = unitOf(chosen, p.view.P.Unit())
			f.entry.SetPlaceHolder(hint(p.bare))
		}
	})
	f.bare.Horizontal, f.bare.Required = true, true
	f.back = fields.NewButton("Take it back", p.takeBack)
	for i := range f.ticks {
		f.ticks[i] = widget.NewCheck("", func(on bool) {
			if t := turnOf(p.view.P, p.all, p.list, p.at); !f.setting && i/2 < len(t.ends) {
				p.tick(t.ends[i/2].label, i%2 == 1, on)
			}
		})
	}
	keep := fields.NewButton("Keep", func() { f.entry.enter() })
	keep.Importance = widget.HighImportance
	onward := tall(fields.NewButton("Previous", func() { p.step(-1); f.focus() }), keep, fields.NewButton("Skip, next", func() { p.step(1); f.focus() }))
	top := container.NewVBox(f.count, f.title, f.where,
		container.NewHBox(widget.NewLabel("Expected"), f.expected, f.other),
		container.NewBorder(nil, nil, nil, f.back, container.NewThemeOverride(f.entry, large{})), f.trouble, f.noted)
	rest := container.NewVBox(f.said, container.NewGridWithColumns(2, f.ticks[0], f.ticks[1], f.ticks[2], f.ticks[3]),
		container.NewHBox(widget.NewLabel("A bare number is"), f.bare), f.verdict)
	f.whole = container.NewPadded(container.NewBorder(top, container.NewVBox(f.keys(), onward), nil, nil, container.NewVScroll(rest)))
	return f
}

func wrapped() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping, l.SizeName = fyne.TextWrapWord, theme.SizeNameSubHeadingText
	return l
}

// tall puts buttons side by side, high enough for a thumb.
func tall(buttons ...fyne.CanvasObject) fyne.CanvasObject {
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(fyne.NewSize(0, thumb))
	return container.NewStack(room, container.NewGridWithColumns(len(buttons), buttons...))
}

// keys are the figures for a screen without a keyboard.
func (f *face) keys() fyne.CanvasObject {
	rows := container.NewVBox()
	for _, row := range [][]string{{"1", "2", "3", "4", "5", "⌫"}, {"6", "7", "8", "9", "0", "."}, {"'", "\"", "/", "space", "m", "cm"}} {
		var buttons []fyne.CanvasObject
		for _, key := range row {
			buttons = append(buttons, widget.NewButton(key, func() { f.press(key) }))
		}
		rows.Add(tall(buttons...))
	}
	return rows
}

func (f *face) press(key string) {
	switch key {
	case "⌫":
		f.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	case "space":
		f.entry.TypedRune(' ')
	default:
		for _, r := range key {
			f.entry.TypedRune(r)
		}
	}
	f.focus()
}

// focus brings the keyboard back to the reading.
func (f *face) focus() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(f.entry); c != nil {
		c.Focus(f.entry)
	}
}

// note says what became of the reading before; of the measure itself the same is
// not said twice.
func (f *face) note(kind fields.Kind, text string) {
	f.noted.Set(kind, text, "", nil)
	if text != "" {
		f.said.Set(fields.Note, "", "", nil)
	}
}

// show sets all of it from the page.
func (f *face) show(p *Page) {
	f.setting = true
	defer func() { f.setting = false }()
	t := turnOf(p.view.P, p.work, p.list, p.at)
	ink := theme.Color(theme.ColorNameForeground)
	f.count.SetText(t.count)
	f.title.Text, f.title.Color, f.title.TextSize = t.title, ink, fitting(t.title)
	f.title.Refresh()
	f.where.SetText(t.where)
	f.expected.Text, f.expected.Color = t.expected, ink
	f.expected.Refresh()
	f.other.SetText("or " + t.other)
	if f.noted.Words() != "" {
		t.said = "" // it has just been said
	}
	f.said.Set(t.kind, t.said, "", nil)
	kind, verdict := p.verdict()
	f.verdict.Set(kind, verdict, "", nil)
	f.trouble.Set(fields.Warning, "", "", nil)
	f.entry.show(p)
	f.back.SetEnabled(p.last != "")
	if f.bare.Selected != unitName(p.bare) {
		f.bare.SetSelected(unitName(p.bare))
	}
	for i, c := range f.ticks {
		if i/2 >= len(t.ends) {
			c.Hide()
			continue
		}
		e := t.ends[i/2]
		c.Text, c.Checked = e.label+" placed", e.placed
		if i%2 == 1 {
			c.Text, c.Checked = e.label+" checked", e.checked
		}
		c.Show()
		c.Refresh()
	}
}

// fitting returns the largest type in which a title is no wider than the page.
func fitting(title string) float32 {
	size := float32(titleSize)
	if wide := fyne.MeasureText(title, size, fyne.TextStyle{Bold: true}).Width; wide > titleRoom {
		size *= titleRoom / wide
	}
	return size
}

const (
	inFeet   = "feet"
	inMetres = "metres"
)

func unitName(u length.Unit) string {
	if u.Metric() {
		return inMetres
	}
	return inFeet
}

// unitOf returns the unit of a bare number; the production's own where that is of
// the system that was chosen.
func unitOf(name string, own length.Unit) length.Unit {
	switch {
	case name == unitName(own):
		return own
	case name == inMetres:
		return length.Metres
	}
	return length.FeetInches
}

func hint(u length.Unit) string {
	if u.Metric() {
		return "What the tape reads, in " + u.Name()
	}
	return "What the tape reads: 12' 6 1/2\""
}

// large is the window's theme with type for reading at arm's length.
type large struct{}

func (large) Color(n fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	return fyne.CurrentApp().Settings().Theme().Color(n, v)
}
func (large) Font(s fyne.TextStyle) fyne.Resource {
	return fyne.CurrentApp().Settings().Theme().Font(s)
}
func (large) Icon(n fyne.ThemeIconName) fyne.Resource {
	return fyne.CurrentApp().Settings().Theme().Icon(n)
}
func (large) Size(n fyne.ThemeSizeName) float32 {
	if n == theme.SizeNameText {
		n = theme.SizeNameHeadingText
	}
	return fyne.CurrentApp().Settings().Theme().Size(n)
}
