package sheets

import (
	"github.com/jung-kurt/gofpdf"

	"groundrow/tapeout/plane"
)

// pen is how a line is drawn so that it can be told from the others in black and
// white: by its width and its dashes, in millimetres.
type pen struct {
	Width float64
	Dash  string // name of the pattern, see dashes
}

// dashes are the patterns by name: on, off, on, off …
var dashes = map[string][]float64{
	"solid":        nil,
	"long":         {6, 1.6},
	"long-short":   {6, 1.3, 1.2, 1.3},
	"medium":       {3, 1.5},
	"long-two":     {7, 1.2, 1, 1.2, 1, 1.2},
	"three-one":    {9, 1.2, 3, 1.2},
	"dots":         {0.7, 0.9},
	"fine":         {1.2, 1.4},
	"centre line":  {9, 1.5, 1.5, 1.5},
	"baseline":     {5, 1.2, 0.8, 1.2, 0.8, 1.2},
	"short-spaced": {2, 3},
	"three dots":   {3, 0.8, 0.5, 0.8, 0.5, 0.8, 0.5, 0.8},
}

// stockPens are given to the stocks of a plan in order. Neighbours differ in both width
// and pattern; a plan with more stocks starts again, thinner.
var stockPens = []pen{
	{0.75, "solid"}, {0.75, "long"}, {0.4, "solid"}, {0.75, "long-short"},
	{0.4, "medium"}, {1.2, "solid"}, {0.5, "long-two"}, {1, "three-one"},
	{1.2, "medium"}, {0.5, "short-spaced"},
}

// The pens that are no stock.
var (
	wallPen     = pen{1.6, "solid"}
	brokenPen   = pen{0.6, "dots"}
	centrePen   = pen{0.25, "centre line"}
	baselinePen = pen{0.25, "baseline"}
	spikedPen   = pen{0.2, "fine"}
	doubtPen    = pen{1.4, "solid"}
	spikePen    = pen{0.5, "solid"}
	cutPen      = pen{0.2, "fine"}
	acrossPen   = pen{0.2, "medium"}
	stepPen     = pen{0.5, "three dots"}
	guidePen    = pen{0.35, "short-spaced"}
)

func stockPen(i int) pen {
	p := stockPens[i%len(stockPens)]
	for range i / len(stockPens) {
		p.Width *= 0.6
	}
	return p
}

// take makes the pen current.
func (p *press) take(n pen) {
	p.pdf.SetLineWidth(n.Width)
	p.pdf.SetDashPattern(dashes[n.Dash], 0)
	p.pdf.SetLineCapStyle("butt")
	p.pdf.SetLineJoinStyle("round")
}

// curveError is how far a drawn curve may depart from the true one on paper, in
// metres: below what a printer shows.
const curveError = 0.00002

// trace draws edges that follow each other as one line, so that its dashes run on.
func (p *press) trace(edges []plane.Edge, v view) {
	drawn := false
	var at plane.Point
	for _, e := range edges {
		if !drawableEdge(e) {
			continue
		}
		if !drawn || e.A != at {
			p.pdf.MoveTo(v.x(e.A), v.y(e.A))
		}
		for _, q := range e.Flatten(v.scale.OnFloor(curveError))[1:] {
			p.pdf.LineTo(v.x(q), v.y(q))
		}
		at, drawn = e.B, true
	}
	if drawn {
		p.pdf.DrawPath("D")
	}
}

// wall draws the walls of the room as a double line, so that they are no tape.
func (p *press) wall(edges []plane.Edge, v view) {
	p.take(wallPen)
	p.trace(edges, v)
	p.hollow()
	p.trace(edges, v)
	p.filled()
}

// hollow goes over the pen's line once more in white, which leaves its edges.
func (p *press) hollow() {
	p.pdf.SetLineWidth(wallPen.Width - 0.5)
	p.pdf.SetDrawColor(255, 255, 255)
}

// filled ends hollow.
func (p *press) filled() { p.pdf.SetDrawColor(0, 0, 0) }

// clip limits drawing to the inside of the edges until ClipEnd.
func (p *press) clip(outline []plane.Edge, v view) {
	var points []gofpdf.PointType
	for _, e := range outline {
		for _, q := range e.Flatten(v.scale.OnFloor(curveError))[1:] {
			points = append(points, gofpdf.PointType{X: v.x(q), Y: v.y(q)})
		}
	}
	p.pdf.ClipPolygon(points, false)
}

// hatch shades an area: lines one way for what is to be kept clear, both ways
// for what stands in the room, so that the two differ without a grey.
func (p *press) hatch(a area, v view) {
	var outline []plane.Edge
	for _, e := range a.Shape.Edges() {
		if drawableEdge(e) {
			outline = append(outline, e)
		}
	}
	box, ok := a.Shape.Bounds()
	if !ok || len(outline) == 0 || !drawable(box.Min) || !drawable(box.Max) {
		return
	}
	p.clip(outline, v)
	p.take(pen{0.15, "solid"})
	on := inset{v.frame.x, v.frame.y, v.frame.w, v.frame.h}
	x1, x2 := max(v.x(box.Min), on.x), min(v.x(box.Max), on.right())
	y1, y2 := max(v.y(box.Max), on.y), min(v.y(box.Min), on.bottom())
	gap, h := 3.2, y2-y1
	if a.Solid {
		gap = 1.8
	}
	// The lines keep their places on the paper, so that two areas that touch are
	// shaded as one.
	for x := gap * float64(int((x1-h)/gap)-1); x < x2+h; x += gap {
		p.pdf.Line(x, y1, x+h, y2)
		if a.Solid {
			p.pdf.Line(x+h, y1, x, y2)
		}
	}
	p.pdf.ClipEnd()
	if a.Solid {
		p.take(pen{0.5, "solid"})
	} else {
		p.take(pen{0.3, "medium"})
	}
	p.trace(outline, v)
}
