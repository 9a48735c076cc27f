// Package poster is a picture made of words, lines and shapes that is drawn afresh for every size, with zones in it
// that can be clicked or reached by the keyboard: a page to be read, not a form to be filled in.
package poster

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Poster draws itself with a pen. Call Refresh after what it shows has changed.
type Poster struct {
	widget.BaseWidget

	// Draw fills the pen's size, from the top left corner.
	Draw func(*Pen)
	// Need returns the height that a width needs; nil is none.
	Need func(width float32) float32
	// OnHover tells which zone the pointer is over; empty words are none.
	OnHover func(hint string)

	zones  []Zone
	at     int  // the zone that the keyboard has reached
	over   int  // the zone under the pointer; −1 is none
	ringed bool // the keyboard is in use: show where its focus is

	hover, ring *canvas.Rectangle
	drawn       []fyne.CanvasObject
	painted     fyne.Size
}

// Zone is a part of a poster that does something.
type Zone struct {
	At   fyne.Position
	Size fyne.Size
	Hint string // what it does or names, in words
	Do   func()
}

func (z Zone) holds(p fyne.Position) bool {
	return p.X >= z.At.X && p.Y >= z.At.Y && p.X < z.At.X+z.Size.Width && p.Y < z.At.Y+z.Size.Height
}

var (
	_ fyne.Tappable      = (*Poster)(nil)
	_ fyne.Focusable     = (*Poster)(nil)
	_ desktop.Hoverable  = (*Poster)(nil)
	_ desktop.Cursorable = (*Poster)(nil)
)

// New returns a poster that is drawn by the function.
func New(draw func(*Pen)) *Poster {
	p := &Poster{Draw: draw, over: -1, hover: canvas.NewRectangle(nil), ring: canvas.NewRectangle(nil)}
	p.hover.CornerRadius, p.ring.CornerRadius, p.ring.StrokeWidth = 3, 3, 2
	p.ExtendBaseWidget(p)
	return p
}

// Zones returns what can be clicked, in the order drawn.
func (p *Poster) Zones() []Zone { return p.zones }

// MinSize is as high as the present width needs.
func (p *Poster) MinSize() fyne.Size {
	p.ExtendBaseWidget(p)
	if p.Need == nil {
		return fyne.NewSize(leastWidth, leastHeight)
	}
	return fyne.NewSize(leastWidth, p.Need(max(leastWidth, p.Size().Width)))
}

const (
	leastWidth  = 320
	leastHeight = 80
)

// CreateRenderer implements fyne.Widget.
func (p *Poster) CreateRenderer() fyne.WidgetRenderer { return &renderer{p} }

type renderer struct{ p *Poster }

func (r *renderer) Destroy()                     {}
func (r *renderer) MinSize() fyne.Size           { return r.p.MinSize() }
func (r *renderer) Layout(size fyne.Size)        { r.p.fit(size) }
func (r *renderer) Objects() []fyne.CanvasObject { return r.p.drawn }
func (r *renderer) Refresh() {
	r.p.paint()
	canvas.Refresh(r.p)
}

// fit draws for a new size.
func (p *Poster) fit(size fyne.Size) {
	if size != p.painted {
		p.paint()
	}
}

// paint draws everything anew under the hover, which lies under the words.
func (p *Poster) paint() {
	size := p.Size()
	if size.Width <= 0 || size.Height <= 0 {
		return
	}
	p.painted = size
	pen := &Pen{size: size}
	p.Draw(pen)
	p.zones = pen.zones
	p.at = max(0, min(p.at, len(p.zones)-1))
	if p.over >= len(p.zones) {
		p.over = -1
	}
	p.drawn = append(pen.grounds, p.hover)
	p.drawn = append(p.drawn, pen.objects...)
	p.drawn = append(p.drawn, p.ring)
	p.showMarks()
}

// showMarks puts the hover and the ring on their zones.
func (p *Poster) showMarks() {
	place := func(r *canvas.Rectangle, zone int, on bool) {
		if !on || zone < 0 || zone >= len(p.zones) {
			r.Hide()
			return
		}
		r.Move(p.zones[zone].At)
		r.Resize(p.zones[zone].Size)
		r.Show()
		r.Refresh()
	}
	p.hover.FillColor = theme.Color(theme.ColorNameHover)
	p.ring.StrokeColor = theme.Color(theme.ColorNamePrimary)
	place(p.hover, p.over, true)
	place(p.ring, p.at, p.ringed)
}

func (p *Poster) zoneAt(pos fyne.Position) int {
	for i := len(p.zones) - 1; i >= 0; i-- { // the last drawn lies on top
		if p.zones[i].holds(pos) {
			return i
		}
	}
	return -1
}

// Tapped does what the zone under the pointer does.
func (p *Poster) Tapped(e *fyne.PointEvent) {
	p.ringed = false
	i := p.zoneAt(e.Position)
	if i >= 0 {
		p.at = i
	}
	p.showMarks()
	if i >= 0 {
		p.zones[i].Do()
	}
}

// TypedKey moves the ring with the arrows and does with Enter or Space what its zone does.
func (p *Poster) TypedKey(e *fyne.KeyEvent) {
	if len(p.zones) == 0 {
		return
	}
	p.ringed = true
	switch e.Name {
	case fyne.KeyDown, fyne.KeyRight:
		p.at = (p.at + 1) % len(p.zones)
	case fyne.KeyUp, fyne.KeyLeft:
		p.at = (p.at + len(p.zones) - 1) % len(p.zones)
	case fyne.KeyHome:
		p.at = 0
	case fyne.KeyEnd:
		p.at = len(p.zones) - 1
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.zones[p.at].Do()
		return
	default:
		return
	}
	p.showMarks()
	p.tell(p.zones[p.at].Hint)
}

// TypedRune implements fyne.Focusable; a poster takes no text.
func (p *Poster) TypedRune(rune) {}

// FocusGained shows the ring.
func (p *Poster) FocusGained() { p.ringed = true; p.showMarks() }

// FocusLost hides the ring.
func (p *Poster) FocusLost() { p.ringed = false; p.showMarks() }

// MouseIn implements desktop.Hoverable.
func (p *Poster) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved marks the zone under the pointer.
func (p *Poster) MouseMoved(e *desktop.MouseEvent) { p.hoverOn(p.zoneAt(e.Position)) }

// MouseOut implements desktop.Hoverable.
func (p *Poster) MouseOut() { p.hoverOn(-1) }

func (p *Poster) hoverOn(zone int) {
	if zone == p.over {
		return
	}
	p.over = zone
	p.showMarks()
	hint := ""
	if zone >= 0 {
		hint = p.zones[zone].Hint
	}
	p.tell(hint)
}

func (p *Poster) tell(hint string) {
	if p.OnHover != nil {
		p.OnHover(hint)
	}
}

// Cursor is a hand over what can be clicked.
func (p *Poster) Cursor() desktop.Cursor {
	if p.over >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}
