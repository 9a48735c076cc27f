package layout

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// Millimetres on paper.
const (
	margin     = 10.0
	lineWidth  = 0.3
	thinWidth  = 0.18
	swathWidth = 1.4 // of the colour that lies under a line of tape
	wordHeight = 2.4
	markRadius = 0.5
	legendStep = 5.0
	legendWide = 70.0
	sample     = 14.0
)

// WriteSVG writes the layout as a drawing that is true to scale when it is printed
// at its own size: lengths are in millimetres on paper. Every line of tape is black,
// with its own pattern for each stock, over a swath of the stock's colour, so that
// it can be read on a printer that has black only; a legend says which is which.
// What is laid as a broken line is dotted. A layout without anything in it, or one
// that is not all finite, is refused.
func (l *Layout) WriteSVG(w io.Writer, scale length.Scale) error {
	box, ok := l.Bounds()
	switch {
	case !scale.Valid():
		return fmt.Errorf("writing the drawing: a scale of %s cannot be drawn", scale.Ratio())
	case !ok:
		return errors.New("writing the drawing: there is nothing on this floor yet")
	case !box.Min.Finite() || !box.Max.Finite():
		return errors.New("writing the drawing: something has no position; look at the plan and at the floor")
	}
	p := page{toPaper: 1000 / float64(scale), box: box}
	doc := p.document(l, scale)
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return fmt.Errorf("writing the drawing: %w", err)
	}
	e := xml.NewEncoder(w)
	e.Indent("", " ")
	if err := e.Encode(doc); err != nil {
		return fmt.Errorf("writing the drawing: %w", err)
	}
	return nil
}

// page places metres on paper.
type page struct {
	toPaper float64 // millimetres for a metre
	box     plane.Box
}

// at returns the place on paper, millimetres, Y down.
func (p page) at(q plane.Point) plane.Point {
	return plane.Point{X: margin + (q.X-p.box.Min.X)*p.toPaper, Y: margin + (p.box.Max.Y-q.Y)*p.toPaper}
}

type svg struct {
	XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
	Version string   `xml:"version,attr"`
	Width   string   `xml:"width,attr"`
	Height  string   `xml:"height,attr"`
	ViewBox string   `xml:"viewBox,attr"`
	Title   string   `xml:"title"`
	Desc    string   `xml:"desc"`
	Groups  []group  `xml:"g"`
}

type group struct {
	ID     string  `xml:"id,attr,omitempty"`
	Stroke string  `xml:"stroke,attr,omitempty"`
	Fill   string  `xml:"fill,attr,omitempty"`
	Width  string  `xml:"stroke-width,attr,omitempty"`
	Dash   string  `xml:"stroke-dasharray,attr,omitempty"`
	Size   string  `xml:"font-size,attr,omitempty"`
	Family string  `xml:"font-family,attr,omitempty"`
	Title  string  `xml:"title,omitempty"`
	Groups []group `xml:"g,omitempty"`
	Paths  []path  `xml:"path,omitempty"`
	Dots   []dot   `xml:"circle,omitempty"`
	Texts  []text  `xml:"text,omitempty"`
}

type path struct {
	D    string `xml:"d,attr"`
	Dash string `xml:"stroke-dasharray,attr,omitempty"`
}

type dot struct {
	X string `xml:"cx,attr"`
	Y string `xml:"cy,attr"`
	R string `xml:"r,attr"`
}

type text struct {
	X    string `xml:"x,attr"`
	Y    string `xml:"y,attr"`
	Text string `xml:",chardata"`
}

// document draws the layers, the marks and the legend.
func (p page) document(l *Layout, scale length.Scale) svg {
	w, h := 2*margin+p.box.Width()*p.toPaper, 2*margin+p.box.Height()*p.toPaper
	top := h
	looks := looksOf(l.Layers)
	h += legendStep * float64(len(looks)+1)
	w = max(w, 2*margin+legendWide)
	doc := svg{
		Version: "1.1", Width: mm(w) + "mm", Height: mm(h) + "mm", ViewBox: "0 0 " + mm(w) + " " + mm(h),
		Title: strings.Join(nonEmpty(l.Title, l.Floor, l.Scene), " — "),
		Desc:  l.caption(scale),
	}
	for i, layer := range l.Layers {
		doc.Groups = append(doc.Groups, p.layer(layer, looks[i], i))
	}
	doc.Groups = append(doc.Groups, p.marks(l.Marks), legend(l, looks, top, doc.Title+"; "+doc.Desc))
	return doc
}

func (l *Layout) caption(scale length.Scale) string {
	return strings.Join(nonEmpty(revision(l.Revision), "scale "+scale.String(), "lengths in millimetres on paper", "axes "+string(l.Axes)), "; ")
}

func revision(r string) string {
	if r == "" {
		return ""
	}
	return "revision " + r
}

func nonEmpty(texts ...string) []string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, t)
		}
	}
	return out
}

// layer draws one layer: the swaths of its colour, then its lines, then its words.
func (p page) layer(layer Layer, look look, n int) group {
	g := group{ID: fmt.Sprintf("layer-%d", n+1), Title: layer.Name}
	lines := group{Stroke: look.stroke, Fill: "none", Width: mm(look.width), Dash: look.dash}
	for _, q := range layer.Paths {
		drawn := path{D: p.data(q.Edges)}
		if q.Broken {
			drawn.Dash = dotted
		}
		lines.Paths = append(lines.Paths, drawn)
	}
	if look.swath != "" {
		swaths := group{Stroke: look.swath, Fill: "none", Width: mm(swathWidth)}
		for _, q := range lines.Paths {
			swaths.Paths = append(swaths.Paths, path{D: q.D})
		}
		g.Groups = append(g.Groups, swaths)
	}
	g.Groups = append(g.Groups, lines)
	if len(layer.Texts) > 0 {
		words := group{Fill: "black", Size: mm(wordHeight), Family: "sans-serif"}
		for _, t := range layer.Texts {
			at := p.at(t.At)
			words.Texts = append(words.Texts, text{mm(at.X), mm(at.Y), t.Text})
		}
		g.Groups = append(g.Groups, words)
	}
	return g
}

func (p page) marks(marks []Point) group {
	g := group{ID: "marks", Fill: "black", Title: MarkLayer}
	for _, m := range marks {
		at := p.at(m.At)
		g.Dots = append(g.Dots, dot{mm(at.X), mm(at.Y), mm(markRadius)})
	}
	return g
}

// data writes a chain of edges as the data of a path. Y goes down on paper, so that
// an arc that runs counter-clockwise on the floor still does so to the eye, which
// SVG calls a sweep of zero. Arcs of more than a quarter turn are written in parts:
// the end points and the radius say little about an arc close to half a turn.
func (p page) data(edges []plane.Edge) string {
	var b strings.Builder
	for i, e := range edges {
		if i == 0 {
			from := p.at(e.A)
			fmt.Fprintf(&b, "M%s %s", mm(from.X), mm(from.Y))
		}
		_, radius, curved := e.Circle()
		if !curved {
			to := p.at(e.B)
			fmt.Fprintf(&b, "L%s %s", mm(to.X), mm(to.Y))
			continue
		}
		sweep := 0
		if e.Bulge < 0 {
			sweep = 1
		}
		r := mm(radius * p.toPaper)
		parts := math.Ceil(math.Abs(e.Sweep()) / (math.Pi / 2))
		for k := 1.0; k <= parts; k++ {
			to := p.at(e.At(k / parts))
			fmt.Fprintf(&b, "A%s %s 0 0 %d %s %s", r, r, sweep, mm(to.X), mm(to.Y))
		}
	}
	return b.String()
}
