package sheets

import (
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// drawing is a floor seen from above, in datum axes, with the audience at the
// foot of the page.
type drawing struct {
	Walls    plane.Path // of the room
	Areas    []area
	Strokes  []stroke
	Entries  []entry // the key, one for each sign in use
	Points   []spot  // marks
	Pivots   []spot  // where tapes are hooked
	Numbers  []spot  // of dance lines
	Names    []spot  // of elements, shown where there is room
	Baseline string  // what the across axis lies on
	Unit     length.Unit
	Empty    string // said when there is nothing to draw
}

// stroke is one unbroken line drawn with one pen.
type stroke struct {
	Edges []plane.Edge
	Pen   pen
}

// entry explains one sign of the drawing in words.
type entry struct {
	Sign entrySign
	Pen  pen      // of a line
	Spot spotKind // of a spot
	Text string
}

// entrySign is which sort of sign an entry explains.
type entrySign int

const (
	lineSign entrySign = iota
	spotSign
	solidSign
	clearSign
)

// spot is a point with its text.
type spot struct {
	At   plane.Point
	Text string
	Kind spotKind
	Half float64 // metres; of a name: half of the breadth of what it names
}

// spotKind is how a spot is drawn.
type spotKind int

const (
	dot      spotKind = iota
	ring              // a spike
	weak              // a mark that the tapes find badly
	pivot             // a triangle
	number            // a tick across a dance line
	naming            // text alone
	broken            // where the room cuts a line short
	stopping          // where a revolve or a wagon comes to rest
	target            // the datum of what is moved aside
	written           // text that is written on the floor
	breadth           // how wide the narrowest place of a way is
)

// area is a part of the room that is not free.
type area struct {
	Shape plane.Path
	Name  string
	Solid bool // an obstacle; else an area to keep clear
}

// bounds returns what the drawing covers in metres; ok is false when that is
// nothing. Places that are no numbers, or absurdly far off, are left out, so
// that one slip in a figure does not shrink the whole plan to a dot.
func (d drawing) bounds() (b plane.Box, ok bool) {
	add := func(points ...plane.Point) {
		for _, p := range points {
			if !drawable(p) {
				continue
			}
			if !ok {
				b, ok = plane.Box{Min: p, Max: p}, true
			}
			b = b.Union(plane.Box{Min: p, Max: p})
		}
	}
	addEdges := func(edges []plane.Edge) {
		for _, e := range edges {
			if drawableEdge(e) {
				box := e.Bounds()
				add(box.Min, box.Max)
			}
		}
	}
	addEdges(d.Walls.Edges())
	for _, a := range d.Areas {
		addEdges(a.Shape.Edges())
	}
	for _, s := range d.Strokes {
		addEdges(s.Edges)
	}
	for _, spots := range [][]spot{d.Points, d.Pivots, d.Numbers} {
		for _, s := range spots {
			add(s.At)
		}
	}
	if ok {
		add(plane.Point{X: 0, Y: b.Min.Y}, plane.Point{X: b.Min.X, Y: 0}) // the datum is on every plan
	}
	return b, ok
}

// farthest is how far from the datum a place may lie and still be drawn, in
// metres.
const farthest = 2000

func drawable(p plane.Point) bool {
	return p.Finite() && p.Len() < farthest
}

func drawableEdge(e plane.Edge) bool {
	if !drawable(e.A) || !drawable(e.B) || math.IsNaN(e.Bulge-e.Bulge) {
		return false
	}
	b := e.Bounds()
	return drawable(b.Min) && drawable(b.Max)
}
