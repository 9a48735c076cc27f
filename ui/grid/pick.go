package grid

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

const (
	pickLines = 60  // more are reached by typing
	pickWidth = 140 // the narrowest pick list
	pickTall  = 320 // the tallest, before it scrolls
)

// picker is the list of choices that opens under a cell. Typing narrows it, the arrow keys and Enter or a click choose.
type picker struct {
	widget.BaseWidget
	choices []string
	choose  func(string)
	close   func()

	typed  string
	found  []string
	at     int
	prompt *canvas.Text
	lines  *fyne.Container
	scroll *container.Scroll
}

// pick opens the choices of the current cell, narrowed by what has been typed already.
func (g *Grid) pick(typed string) {
	c := g.canvas()
	pos, size, ok := g.body.cellAt(g.current)
	if c == nil || !ok {
		return
	}
	at := g.current
	r, _ := g.row(at.row)
	p := newPicker(g.column().Choices)
	pop := widget.NewPopUp(p, c)
	p.close = pop.Hide
	p.choose = func(text string) {
		pop.Hide()
		if now, ok := g.row(at.row); ok && text != now.cell(at.col) {
			g.change(at, text)
		}
	}
	p.narrow(typed, r.cell(at.col))
	pop.Resize(fyne.NewSize(max(pickWidth, size.Width), min(pickTall, p.MinSize().Height+p.lines.MinSize().Height)))
	pop.ShowAtPosition(popPosition(c, fyne.CurrentApp().Driver().AbsolutePositionForObject(g.body).Add(pos), size, pop.Size()))
	c.Focus(p)
	p.reveal()
}

// popPosition puts a pop-up under a cell, or above it where there is no room below.
func popPosition(c fyne.Canvas, at fyne.Position, cell, pop fyne.Size) fyne.Position {
	below := at.AddXY(0, cell.Height)
	if below.Y+pop.Height > c.Size().Height && at.Y > pop.Height {
		return at.SubtractXY(0, pop.Height)
	}
	return below
}

func newPicker(choices []string) *picker {
	p := &picker{choices: choices, prompt: canvas.NewText("", nil), lines: container.New(tightRows{})}
	p.prompt.TextStyle = fyne.TextStyle{Italic: true}
	p.scroll = container.NewVScroll(p.lines)
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer implements fyne.Widget.
func (p *picker) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewBorder(container.New(sidePadding{}, p.prompt), nil, nil, nil, p.scroll))
}

// narrow lists the choices that hold what was typed, and puts the bar on the one that the cell holds now.
func (p *picker) narrow(typed, now string) {
	p.typed, p.found, p.at = typed, nil, 0
	for _, c := range p.choices {
		if strings.Contains(strings.ToLower(c), strings.ToLower(typed)) {
			if c == now {
				p.at = len(p.found)
			}
			p.found = append(p.found, c)
		}
	}
	p.prompt.Text, p.prompt.TextSize = "Type to narrow", theme.TextSize()
	p.prompt.Color = theme.Color(theme.ColorNameForeground)
	if typed != "" {
		p.prompt.Text = typed
	}
	p.prompt.Refresh()
	p.fill()
}

func (p *picker) fill() {
	p.lines.Objects = nil
	for i, c := range p.found {
		if i == pickLines {
			p.lines.Add(newPickLine("and "+strconv.Itoa(len(p.found)-i)+" more", nil))
			break
		}
		p.lines.Add(newPickLine(c, func() { p.choose(c) }))
	}
	if len(p.found) == 0 {
		p.lines.Add(newPickLine("Nothing of that name", nil))
	}
	p.mark()
}

// mark puts the bar on the line that Enter would choose.
func (p *picker) mark() {
	for i, o := range p.lines.Objects {
		o.(*pickLine).setMarked(i == p.at && len(p.found) > 0)
	}
	p.lines.Refresh()
}

func (p *picker) reveal() {
	if p.at < len(p.lines.Objects) {
		o := p.lines.Objects[p.at]
		p.scroll.ScrollToOffset(fyne.NewPos(0, into(p.scroll.Offset.Y, p.scroll.Size().Height, o.Position().Y, o.Size().Height)))
	}
}

// FocusGained implements fyne.Focusable.
func (p *picker) FocusGained() {}

// FocusLost implements fyne.Focusable.
func (p *picker) FocusLost() {}

// TypedRune narrows the list.
func (p *picker) TypedRune(r rune) { p.narrow(p.typed+string(r), "") }

// TypedKey moves the bar, chooses and closes.
func (p *picker) TypedKey(e *fyne.KeyEvent) {
	last := min(len(p.found), pickLines) - 1
	switch e.Name {
	case fyne.KeyDown:
		p.at = min(p.at+1, max(last, 0))
	case fyne.KeyUp:
		p.at = max(p.at-1, 0)
	case fyne.KeyHome:
		p.at = 0
	case fyne.KeyEnd:
		p.at = max(last, 0)
	case fyne.KeyBackspace:
		if runes := []rune(p.typed); len(runes) > 0 {
			p.narrow(string(runes[:len(runes)-1]), "")
		}
	case fyne.KeyReturn, fyne.KeyEnter:
		if p.at <= last {
			p.choose(p.found[p.at])
		}
		return
	case fyne.KeyEscape:
		p.close()
		return
	}
	p.mark()
	p.reveal()
}
