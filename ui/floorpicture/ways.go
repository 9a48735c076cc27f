package floorpicture

import (
	"image/color"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// ways draws each way as a band as broad as the person who must get through, along the
// middle of what is free, and its narrowest place as a measured gap with its figure.
func (d *drawing) ways() {
	for _, w := range d.w.Ways {
		ink := theme.Done
		switch {
		case w.Short():
			ink = theme.Wrong
		case w.Way.Width <= 0:
			ink = theme.Datum
		}
		d.band(w, ink)
		d.narrowest(w, ink)
		d.wayEnds(w, ink)
	}
}

// bandOf is how broad the band of a way is drawn, in metres: as required, as free where
// that is less, and a person's breadth where nothing is required (common practice, no
// source).
func bandOf(w *prep.WayWork) float64 {
	required := w.Way.Width
	if required <= 0 {
		required = 0.6
	}
	return min(required, w.Found.Width)
}

func (d *drawing) band(w *prep.WayWork, ink theme.Ink) {
	path := w.Path()
	if len(path) < 2 {
		return
	}
	edges := make([]plane.Edge, len(path)-1)
	for i := range edges {
		edges[i] = plane.Edge{A: path[i], B: path[i+1]}.Moved(d.fromFloor)
	}
	id := ID(desk.Way, w.Way.ID)
	d.pic.Shapes = append(d.pic.Shapes,
		floorcanvas.Shape{Edges: edges, Ink: ink, Colour: wash(ink), Metres: bandOf(w), Z: -3},
		floorcanvas.Shape{ID: id, Edges: edges, Ink: ink, Width: 1.5, Dash: floorcanvas.Dashed, Z: -1})
}

// wash is a light shade of an ink on the paper.
func wash(ink theme.Ink) color.NRGBA {
	inks := theme.CurrentInks()
	paper, full := inks.Colour(theme.Paper), inks.Colour(ink)
	mix := func(a, b uint8) uint8 { return uint8((4*int(a) + int(b)) / 5) }
	return color.NRGBA{R: mix(paper.R, full.R), G: mix(paper.G, full.G), B: mix(paper.B, full.B), A: 0xff}
}

// narrowest draws the gap from one side to the other with a stroke across each end,
// and writes how wide it is.
func (d *drawing) narrowest(w *prep.WayWork, ink theme.Ink) {
	if w.Found.Limit == "" || w.From.Gone || w.To.Gone {
		return
	}
	id := ID(desk.Way, w.Way.ID)
	gap := plane.Edge{A: w.Found.At[0], B: w.Found.At[1]}.Moved(d.fromFloor)
	edges := []plane.Edge{gap}
	if u, ok := gap.B.Sub(gap.A).Unit(); ok {
		for _, end := range []plane.Point{gap.A, gap.B} {
			across := u.Left().Times(gapStroke)
			edges = append(edges, plane.Edge{A: end.Add(across), B: end.Sub(across)})
		}
	}
	text := w.Breadth(d.p)
	if w.Short() && w.Way.Width > 0 {
		text += " of " + d.p.Style().Format(w.Way.Width)
	}
	d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: edges, Ink: ink, Width: 2.5, Z: 4})
	d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
		ID: id, At: gap.At(0.5), Text: text, Bold: true, Ink: ink, Anchor: floorcanvas.AboveRight, Priority: 3,
	})
}

// gapStroke is half the stroke across an end of the narrowest place, in metres.
const gapStroke = 0.12

func (d *drawing) wayEnds(w *prep.WayWork, ink theme.Ink) {
	id := ID(desk.Way, w.Way.ID)
	for i, end := range []prep.WayEnd{w.From, w.To} {
		at := d.fromFloor.Apply(end.At)
		d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{ID: id, At: at, Sign: floorcanvas.Disc, Ink: ink, Size: 8})
		if i == 0 {
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{ID: id, At: at, Text: w.Way.Name, Size: 11, Ink: ink, Anchor: floorcanvas.Below})
		}
	}
}
