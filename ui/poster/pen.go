package poster

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// Pen draws one poster. Positions and sizes are in the toolkit's units, from the top left corner.
type Pen struct {
	size    fyne.Size
	grounds []fyne.CanvasObject // under the hover
	objects []fyne.CanvasObject
	zones   []Zone
}

// Width is how wide the poster is.
func (p *Pen) Width() float32 { return p.size.Width }

// Height is how high the poster is.
func (p *Pen) Height() float32 { return p.size.Height }

// Style is how words look. The zero Colour is that of plain text.
type Style struct {
	Size   float32
	Bold   bool
	Colour fyne.ThemeColorName
	Align  fyne.TextAlign
}

// Line is the height of one line of the style.
func (s Style) Line() float32 { return fyne.MeasureText("Ay", s.Size, s.text()).Height }

// Measure is how wide the words are.
func (s Style) Measure(words string) float32 { return fyne.MeasureText(words, s.Size, s.text()).Width }

func (s Style) text() fyne.TextStyle { return fyne.TextStyle{Bold: s.Bold} }

// InBold returns the style in bold.
func (s Style) InBold() Style { s.Bold = true; return s }

// In returns the style in another colour.
func (s Style) In(c fyne.ThemeColorName) Style { s.Colour = c; return s }

// Right returns the style set against the right edge of its width.
func (s Style) Right() Style { s.Align = fyne.TextAlignTrailing; return s }

// Text writes one line in a width and shortens it where there is no room; it returns the width of what was written.
func (p *Pen) Text(x, y, width float32, words string, s Style) float32 {
	words = Shortened(words, width, s)
	if words == "" {
		return 0
	}
	t := canvas.NewText(words, p.Colour(s.Colour))
	t.TextSize, t.TextStyle = s.Size, s.text()
	wide := s.Measure(words)
	switch s.Align {
	case fyne.TextAlignTrailing:
		x += width - wide
	case fyne.TextAlignCenter:
		x += (width - wide) / 2
	}
	t.Move(fyne.NewPos(x, y))
	t.Resize(fyne.NewSize(wide, s.Line()))
	p.objects = append(p.objects, t)
	return wide
}

// Para writes words over as many lines as they need, at most so many, and returns the height.
func (p *Pen) Para(x, y, width float32, most int, words string, s Style) float32 {
	lines := Wrapped(words, width, s, most)
	for i, l := range lines {
		p.Text(x, y+float32(i)*s.Line(), width, l, s)
	}
	return float32(len(lines)) * s.Line()
}

// Ground fills a box under everything else.
func (p *Pen) Ground(x, y, w, h float32, fill fyne.ThemeColorName) {
	r := p.rectangle(x, y, w, h)
	r.FillColor = p.Colour(fill)
	r.CornerRadius = 3
	p.grounds = append(p.grounds, r)
}

// Rule fills a thin box under everything else but what was filled before it.
func (p *Pen) Rule(x, y, w, h float32, ink fyne.ThemeColorName) {
	r := p.rectangle(x, y, w, h)
	r.FillColor = p.Colour(ink)
	p.grounds = append(p.grounds, r)
}

// Frame draws the edge of a box.
func (p *Pen) Frame(x, y, w, h, thick float32, ink fyne.ThemeColorName) {
	r := p.rectangle(x, y, w, h)
	r.FillColor = color.Transparent
	r.StrokeColor, r.StrokeWidth, r.CornerRadius = p.Colour(ink), thick, 3
	p.grounds = append(p.grounds, r)
}

// Bar fills a box above the hover.
func (p *Pen) Bar(x, y, w, h float32, fill fyne.ThemeColorName) *canvas.Rectangle {
	r := p.rectangle(x, y, w, h)
	r.FillColor = p.Colour(fill)
	p.objects = append(p.objects, r)
	return r
}

func (p *Pen) rectangle(x, y, w, h float32) *canvas.Rectangle {
	r := canvas.NewRectangle(nil)
	r.Move(fyne.NewPos(x, y))
	r.Resize(fyne.NewSize(max(0, w), max(0, h)))
	return r
}

// Line draws a straight line.
func (p *Pen) Line(x1, y1, x2, y2, thick float32, ink fyne.ThemeColorName) {
	l := canvas.NewLine(p.Colour(ink))
	l.StrokeWidth = thick
	l.Position1, l.Position2 = fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
	p.objects = append(p.objects, l)
}

// Zone makes a box do something.
func (p *Pen) Zone(x, y, w, h float32, hint string, do func()) {
	p.zones = append(p.zones, Zone{fyne.NewPos(x, y), fyne.NewSize(w, h), hint, do})
}

// Colour is the present colour of a name; the empty one is that of plain text.
func (p *Pen) Colour(name fyne.ThemeColorName) color.Color {
	if name == "" {
		name = theme.ColorNameForeground
	}
	return theme.Color(name)
}

// Shortened returns the words as they fit into the width, with an ellipsis where they are cut.
func Shortened(words string, width float32, s Style) string {
	if s.Measure(words) <= width {
		return words
	}
	runes := []rune(words)
	low, high := 0, len(runes)
	for low < high {
		mid := (low + high + 1) / 2
		if s.Measure(string(runes[:mid])+"…") <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	if low == 0 {
		return ""
	}
	return strings.TrimRight(string(runes[:low]), " ,;") + "…"
}

// Wrapped breaks words into lines that fit the width, at most so many; the last one is shortened where more would be
// needed.
func Wrapped(words string, width float32, s Style, most int) []string {
	var lines []string
	line := ""
	rest := strings.Fields(words)
	for i, word := range rest {
		next := strings.TrimSpace(line + " " + word)
		if line == "" || s.Measure(next) <= width {
			line = next
			continue
		}
		if len(lines) == most-1 {
			line = Shortened(line+" "+strings.Join(rest[i:], " "), width, s)
			return append(lines, line)
		}
		lines = append(lines, Shortened(line, width, s))
		line = word
	}
	if line == "" {
		return lines
	}
	return append(lines, Shortened(line, width, s))
}
