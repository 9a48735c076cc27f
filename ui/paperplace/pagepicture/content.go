package pagepicture

import (
	"image"
	"image/color"
	"math"
	"unicode/utf16"
)

// state is what q keeps and Q brings back.
type state struct {
	stroke, fill color.NRGBA
	width        float64 // points
	dash         []float64
	clip         *image.Alpha // nil: the whole page
	font         string
	size         float64 // points
}

// drawing is one page on its way into a picture.
type drawing struct {
	doc   *Document
	out   *surface
	now   state
	kept  []state
	stack []token
	path  path
	clips bool // the path becomes part of the clip when it is ended
	at    [2]float64
}

// Render draws a page, counted from 0, so many device pixels wide, on white.
// A page that is not there is white. It can be called from any goroutine.
func (d *Document) Render(page, width int) *image.RGBA {
	width = max(1, min(width, maxWidth))
	scale := float64(width) / d.width
	out := newSurface(width, max(1, min(int(math.Round(d.height*scale)), maxWidth)), scale, d.height)
	if page < 0 || page >= len(d.pages) {
		return out.img
	}
	black := color.NRGBA{A: 255}
	dr := drawing{doc: d, out: out, now: state{stroke: black, fill: black, width: 0.57}}
	r := reader{b: d.pages[page]}
	for {
		t, ok := r.next()
		if !ok {
			return out.img
		}
		if t.kind != operator {
			dr.stack = append(dr.stack, t)
			continue
		}
		dr.do(t.text)
		dr.stack = dr.stack[:0]
	}
}

// maxWidth bounds a picture's sides in pixels.
const maxWidth = 4000

// num returns the operand i, counted from the first; what is missing is zero.
func (d *drawing) num(i int) float64 {
	if i < len(d.stack) {
		return d.stack[i].num
	}
	return 0
}

// do carries out an operator; unknown ones change nothing that could be seen.
func (d *drawing) do(op string) {
	switch op {
	case "q":
		d.kept = append(d.kept, d.now)
	case "Q":
		if n := len(d.kept); n > 0 {
			d.now, d.kept = d.kept[n-1], d.kept[:n-1]
		}
	case "w":
		d.now.width = d.num(0)
	case "d":
		d.setDash()
	case "G", "RG":
		d.now.stroke = d.colour()
	case "g", "rg":
		d.now.fill = d.colour()
	case "Tf":
		d.setFont()
	case "Td":
		d.at = [2]float64{d.num(0), d.num(1)}
	case "Tj":
		d.show()
	default:
		d.draw(op)
	}
}

// draw carries out the operators that make and end paths.
func (d *drawing) draw(op string) {
	p := func(i int) point { return d.out.place(d.num(i), d.num(i+1)) }
	switch op {
	case "m":
		d.path.move(p(0))
	case "l":
		d.path.line(p(0))
	case "c":
		d.path.curve(p(0), p(2), p(4))
	case "h":
		d.path.close()
	case "re":
		x, y, w, h := d.num(0), d.num(1), d.num(2), d.num(3)
		d.path.move(d.out.place(x, y))
		d.path.line(d.out.place(x+w, y))
		d.path.line(d.out.place(x+w, y+h))
		d.path.line(d.out.place(x, y+h))
		d.path.close()
	case "W", "W*":
		d.clips = true
	case "s":
		d.path.close()
		d.end(false, true)
	case "S":
		d.end(false, true)
	case "f", "F", "f*":
		d.end(true, false)
	case "b", "b*":
		d.path.close()
		d.end(true, true)
	case "B", "B*":
		d.end(true, true)
	case "n":
		d.end(false, false)
	}
}

// end fills and strokes the path, makes it the clip if that was asked for, and
// begins a new one.
func (d *drawing) end(fill, stroke bool) {
	if fill {
		d.out.fill(d.path, d.now.fill, d.now.clip)
	}
	if stroke {
		d.out.stroke(d.path, d.now)
	}
	if d.clips {
		d.now.clip = d.out.clipped(d.path, d.now.clip)
		d.clips = false
	}
	d.path = path{}
}

// colour reads one grey or three primaries.
func (d *drawing) colour() color.NRGBA {
	level := func(i int) uint8 { return uint8(math.Round(255 * max(0, min(1, d.num(i))))) }
	if len(d.stack) < 3 {
		return color.NRGBA{level(0), level(0), level(0), 255}
	}
	return color.NRGBA{level(0), level(1), level(2), 255}
}

func (d *drawing) setDash() {
	d.now.dash = nil
	sum := 0.0
	for _, t := range d.stack {
		if t.kind == shut {
			break
		}
		if t.kind == number && t.num >= 0 {
			d.now.dash = append(d.now.dash, t.num)
			sum += t.num
		}
	}
	if !(sum*d.out.scale > leastDash) {
		d.now.dash = nil
	}
}

// leastDash is the length of a whole dash in pixels below which a broken line
// cannot be told from a solid one, and would only cost time.
const leastDash = 0.5

func (d *drawing) setFont() {
	if len(d.stack) > 1 && d.stack[0].kind == name {
		d.now.font, d.now.size = d.stack[0].text, d.num(1)
	}
}

// show writes a string, which is in UTF-16 with the large byte first.
func (d *drawing) show() {
	if len(d.stack) == 0 || d.stack[0].kind != text {
		return
	}
	b := d.stack[0].text
	units := make([]uint16, 0, len(b)/2)
	for i := 0; i+1 < len(b); i += 2 {
		units = append(units, uint16(b[i])<<8|uint16(b[i+1]))
	}
	d.out.write(string(utf16.Decode(units)), d.at, d.now, d.doc.bold[d.now.font])
}
