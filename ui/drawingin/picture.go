package drawingin

import (
	"image/color"
	"strconv"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// itemID is what a line of the drawing is called in the picture.
func itemID(i int) string { return "line " + strconv.Itoa(i) }

// itemsOf are the lines that the picture's names stand for.
func itemsOf(ids []string) []int {
	var items []int
	for _, id := range ids {
		if n, err := strconv.Atoi(strings.TrimPrefix(id, "line ")); err == nil {
			items = append(items, n)
		}
	}
	return items
}

// look is what the picture of a drawing is to show besides its lines.
type look struct {
	style    length.Style
	baseline string
	ownInk   bool // lines in the drawing's own colours
	words    bool // the drawing's words
	dim      *dimension
}

// dimension is one distance that a person can compare with what is known.
type dimension struct {
	from, to plane.Point // drawing units
	text     string      // as it would be on the floor
}

// picture shows the drawing in metres as it would lie on the floor: what comes in
// in full ink, what is left aside faint.
func (d *drawn) picture(l look) floorcanvas.Picture {
	pic := floorcanvas.Picture{Datum: d.axes(), HideDatum: !d.datum.set, Baseline: l.baseline, Style: l.style}
	for i := range d.sheet.Items {
		item := &d.sheet.Items[i]
		if item.Hidden && !d.take[i] {
			continue
		}
		pic.Shapes = append(pic.Shapes, d.shape(i, l))
	}
	if l.words {
		pic.Labels = d.words()
	}
	if l.dim != nil {
		d.addDimension(&pic, *l.dim)
	}
	return pic
}

func (d *drawn) shape(i int, l look) floorcanvas.Shape {
	item := &d.sheet.Items[i]
	s := floorcanvas.Shape{ID: itemID(i), Ink: theme.FaintLine, Width: 1, Edges: make([]plane.Edge, len(item.Edges))}
	for j, e := range item.Edges {
		s.Edges[j] = plane.Edge{A: d.shown(e.A), B: d.shown(e.B), Bulge: e.Bulge}
	}
	if len(item.Dash) > 1 {
		s.Dash = floorcanvas.Dashed
	}
	if d.take[i] {
		s.Ink, s.Width, s.Z = theme.Line, 1.75, 1
		if l.ownInk && item.Colour.Known {
			s.Colour = rgb(item.Colour)
		}
	}
	return s
}

func rgb(c linework.Colour) color.Color {
	return color.NRGBA{R: uint8(c.RGB >> 16), G: uint8(c.RGB >> 8), B: uint8(c.RGB), A: 0xFF}
}

// maxWords bounds how many of the drawing's words are shown.
const maxWords = 400

func (d *drawn) words() []floorcanvas.Label {
	var labels []floorcanvas.Label
	for _, t := range d.sheet.Texts {
		text := strings.TrimSpace(strings.ReplaceAll(t.Text, "\n", " "))
		if t.Hidden || text == "" || len(labels) == maxWords {
			continue
		}
		labels = append(labels, floorcanvas.Label{At: d.shown(t.At), Text: clipped(text), Size: 11, Ink: theme.FaintLabel, Offset: 1})
	}
	return labels
}

// clipped keeps words of a drawing short enough for a line.
func clipped(text string) string {
	const longest = 60
	if r := []rune(text); len(r) > longest {
		return string(r[:longest]) + "…"
	}
	return text
}

func (d *drawn) addDimension(pic *floorcanvas.Picture, m dimension) {
	a, b := d.shown(m.from), d.shown(m.to)
	pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: []plane.Edge{{A: a, B: b}}, Ink: theme.Selection, Width: 2.5, Z: 3})
	for _, p := range []plane.Point{a, b} {
		pic.Dots = append(pic.Dots, floorcanvas.Dot{At: p, Sign: floorcanvas.Ring, Ink: theme.Selection})
	}
	pic.Labels = append(pic.Labels, floorcanvas.Label{
		At: a.Towards(b, 0.5), Text: m.text, Size: 14, Bold: true, Ink: theme.Selection, Anchor: floorcanvas.Above, Priority: 9, Fixed: true,
	})
}
