package grid

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// rowState is what a row looks like apart from its content.
type rowState struct {
	selected, hovered bool
	width             float32
}

// rowView is the drawn objects of one row; it is used again for another row when its own has left the view.
type rowView struct {
	back, line *canvas.Rectangle
	cells      []*cellView
}

func newRowView(columns int) *rowView {
	v := &rowView{back: canvas.NewRectangle(nil), line: canvas.NewRectangle(nil)}
	for range columns {
		v.cells = append(v.cells, &cellView{text: canvas.NewText("", nil)})
	}
	return v
}

func (v *rowView) show(g *Grid, r Row, y float32, state rowState) {
	h := g.rowHeight()
	fill := color.Color(color.Transparent)
	switch {
	case state.selected:
		fill = theme.Color(theme.ColorNameSelection)
	case state.hovered:
		fill = theme.Color(theme.ColorNameHover)
	}
	paint(v.back, fill, fyne.NewPos(0, y), fyne.NewSize(state.width, h))
	paint(v.line, theme.Color(theme.ColorNameSeparator), fyne.NewPos(0, y+h-1), fyne.NewSize(state.width, 1))
	for i, c := range v.cells {
		s := g.spans[i]
		c.show(g.columns[i], r, i, fyne.NewPos(s.x, y), fyne.NewSize(s.width, h))
	}
}

// paint sets a rectangle, and asks for a repaint only where the colour has changed.
func paint(r *canvas.Rectangle, fill color.Color, pos fyne.Position, size fyne.Size) {
	r.Move(pos)
	r.Resize(size)
	if r.FillColor != fill {
		r.FillColor = fill
		r.Refresh()
	}
}

func (v *rowView) appendObjects(objects []fyne.CanvasObject) []fyne.CanvasObject {
	objects = append(objects, v.back, v.line)
	for _, c := range v.cells {
		objects = c.appendObjects(objects)
	}
	return objects
}

// cellView is the drawn objects of one cell. The shapes are made only where a cell has needed them.
type cellView struct {
	text    *canvas.Text
	problem *canvas.Image
	tick    *canvas.Image
	swatch  *canvas.Rectangle
	ticked  bool

	full  string // the text before it was shortened to width, both kept so that it is measured once
	width float32
}

func (c *cellView) show(col Column, r Row, index int, pos fyne.Position, size fyne.Size) {
	left, right := pos.X+cellPad, pos.X+size.Width-cellPad
	side := theme.IconInlineSize() - 3
	middle := pos.Y + (size.Height-side)/2
	if c.showProblem(r.problem(index) != "") {
		c.problem.Move(fyne.NewPos(left, middle))
		c.problem.Resize(fyne.NewSquareSize(side))
		left += side + iconSpace
	}
	if c.showSwatch(col, r) {
		c.swatch.Move(fyne.NewPos(left, middle))
		c.swatch.Resize(fyne.NewSquareSize(side))
		left += side + iconSpace
	}
	if c.showTick(col, r.cell(index)) {
		x := (pos.X + pos.X + size.Width - side) / 2
		c.tick.Move(fyne.NewPos(max(left, x), middle))
		c.tick.Resize(fyne.NewSquareSize(side))
		c.setText("", 0, r)
		return
	}
	c.setText(r.cell(index), max(0, right-left), r)
	min := c.text.MinSize()
	x := left
	if col.Right {
		x = max(left, right-min.Width)
	}
	c.text.Move(fyne.NewPos(x, pos.Y+(size.Height-min.Height)/2))
	c.text.Resize(min)
}

// setText shows as much of the text as the width holds.
func (c *cellView) setText(text string, width float32, r Row) {
	style := fyne.TextStyle{Bold: r.Bold, Italic: r.Dim}
	ink := theme.Color(theme.ColorNameForeground)
	if r.Dim {
		ink = theme.Color(theme.ColorNamePlaceHolder)
	}
	same := c.full == text && c.width == width && c.text.TextStyle == style && c.text.TextSize == theme.TextSize()
	if same && c.text.Color == ink {
		return
	}
	c.text.TextStyle, c.text.TextSize, c.text.Color = style, theme.TextSize(), ink
	c.full, c.width = text, width
	c.text.Text = shorten(firstLine(text), width, style)
	c.text.Refresh()
}

func (c *cellView) showProblem(on bool) bool {
	if on && c.problem == nil {
		c.problem = canvas.NewImageFromResource(theme.NewWarningThemedResource(theme.WarningIcon()))
	}
	if c.problem != nil {
		c.problem.Hidden = !on
	}
	return on
}

func (c *cellView) showSwatch(col Column, r Row) bool {
	on := col.Swatch && r.Swatch != nil
	if on && c.swatch == nil {
		c.swatch = canvas.NewRectangle(nil)
		c.swatch.StrokeWidth = 1
	}
	if c.swatch == nil {
		return false
	}
	c.swatch.Hidden = !on
	if ink := theme.Color(theme.ColorNameForeground); on && (c.swatch.FillColor != r.Swatch || c.swatch.StrokeColor != ink) {
		c.swatch.FillColor, c.swatch.StrokeColor = r.Swatch, ink
		c.swatch.Refresh()
	}
	return on
}

func (c *cellView) showTick(col Column, text string) bool {
	if !col.Tick {
		return false
	}
	on := Ticked(text)
	if c.tick == nil || c.ticked != on {
		icon := theme.CheckButtonIcon()
		if on {
			icon = theme.CheckButtonCheckedIcon()
		}
		if c.tick == nil {
			c.tick = canvas.NewImageFromResource(icon)
		}
		c.tick.Resource, c.ticked = icon, on
		c.tick.Refresh()
	}
	return true
}

func (c *cellView) appendObjects(objects []fyne.CanvasObject) []fyne.CanvasObject {
	if c.swatch != nil {
		objects = append(objects, c.swatch)
	}
	if c.problem != nil {
		objects = append(objects, c.problem)
	}
	if c.tick != nil {
		return append(objects, c.tick)
	}
	return append(objects, c.text)
}
