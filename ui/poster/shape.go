package poster

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Sign is a small shape that says something without a colour.
type Sign uint8

// The signs.
const (
	NoSign   Sign = iota
	Ring          // nothing yet
	Disc          // settled, or under way, by its colour and its word
	Square        // needs somebody
	Triangle      // take care
	Diamond       // a deadline
	Tick          // done
	Pin           // held to its time
	Chevron       // goes somewhere
)

// Shape draws a sign so large across, centred on a point.
func (p *Pen) Shape(sign Sign, x, y, size float32, ink fyne.ThemeColorName) {
	c := p.Colour(ink)
	half := size / 2
	put := func(o fyne.CanvasObject, s float32) {
		o.Move(fyne.NewPos(x-s/2, y-s/2))
		o.Resize(fyne.NewSquareSize(s))
		p.objects = append(p.objects, o)
	}
	switch sign {
	case Ring:
		o := canvas.NewCircle(color.Transparent)
		o.StrokeColor, o.StrokeWidth = c, 1.5
		put(o, size)
	case Disc:
		put(canvas.NewCircle(c), size)
	case Square:
		put(canvas.NewRectangle(c), size*0.9)
	case Triangle:
		put(canvas.NewPolygon(3, c), size*1.25)
	case Diamond:
		put(canvas.NewPolygon(4, c), size*1.1)
	case Tick:
		p.Line(x-half, y, x-half*0.3, y+half*0.7, 1.8, ink)
		p.Line(x-half*0.3, y+half*0.7, x+half, y-half*0.7, 1.8, ink)
	case Pin:
		put(canvas.NewCircle(c), size*0.6)
		p.Line(x, y, x, y+half*1.3, 1.5, ink)
	case Chevron:
		p.Line(x-half*0.4, y-half*0.7, x+half*0.4, y, 1.6, ink)
		p.Line(x+half*0.4, y, x-half*0.4, y+half*0.7, 1.6, ink)
	}
}
