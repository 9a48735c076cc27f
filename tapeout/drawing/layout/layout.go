// Package layout sends the plan on its floor out again, for other programs and for
// instruments: as line work for a DXF file, as an SVG drawing true to scale, and as
// a list of points.
//
// # Frame and units
//
// A Layout is in metres, in the axes that were chosen: those of the datum, X over
// and Y up, or those in which the floor was measured. It is never mirrored.
package layout

import (
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Axes are those from which the coordinates of a layout are read.
type Axes string

// The axes.
const (
	FromDatum Axes = "from the datum" // X over, positive to stage left; Y up
	FromRoom  Axes = "as the room was measured"
)

// AllAxes in the order offered.
var AllAxes = []Axes{FromDatum, FromRoom}

// Source is what a layout is made of. Lines, Pieces and Marks are in datum axes, as
// their packages give them, and limited to the scenes wanted.
type Source struct {
	Title    string // of the production
	Revision string // of the plan
	Scene    string // in words; empty: all of them
	Floor    *floor.Floor
	Lines    []floor.Line
	Pieces   []floor.Piece
	Marks    []marks.Mark
	Stocks   []Stock // in the order of their layers
}

// Stock is a tape as far as a drawing shows it.
type Stock struct {
	ID     plan.StockID
	Name   string
	Colour linework.Colour
}

// Layout is a floor with what is laid on it.
type Layout struct {
	Title    string
	Revision string
	Scene    string
	Floor    string // its name
	Axes     Axes
	Layers   []Layer // in drawing order, each with something on it
	Control  []Point // the datum, then the pivots
	Marks    []Point // in the order of their labels
}

// Layer is what is drawn alike.
type Layer struct {
	Name   string
	Colour linework.Colour
	Use    Use
	Paths  []Path
	Texts  []Text
}

// Use tells layers apart by what they show.
type Use int

// Uses of a layer.
const (
	Room Use = iota
	Obstacles
	KeepClear
	Features // of one kind: doors with their swing, windows, seams, …; or steps
	Datum
	Tape     // what is laid in one stock
	CutShort // the sign where the room cuts a line short
	Spiked   // pieces that are set by hand
	Marks    // the marks' labels; the points themselves are in Layout.Marks
)

// Path is a chain of edges, each beginning where the one before ends.
type Path struct {
	Edges  []plane.Edge
	Broken bool // laid as a broken line
}

// Text is a word or two, read in direction X.
type Text struct {
	Text string
	At   plane.Point // the left end of its baseline
}

// Point is one point to be found on the floor.
type Point struct {
	Label string
	What  string
	At    plane.Point
}

// Of returns the layout of a floor in the given axes. Only layers on which
// something lies are in it.
func Of(s Source, axes Axes) *Layout {
	l := &Layout{Title: s.Title, Revision: s.Revision, Scene: s.Scene, Floor: s.Floor.Name, Axes: axes}
	b := builder{Source: s, fromRoom: s.Floor.FloorToDatum()}
	if axes == FromRoom {
		b.fromDatum, b.fromRoom = b.fromRoom.Inverse(), plane.Motion{}
	}
	for _, layer := range slices.Concat(b.room(), b.features(), []Layer{b.datum()}, b.tape()) {
		l.add(layer)
	}
	l.add(b.cuts())
	l.add(b.spiked())
	l.add(b.labels())
	l.Control, l.Marks = b.control(), b.marks()
	l.nameLayers()
	return l
}

func (l *Layout) add(layer Layer) {
	if len(layer.Paths)+len(layer.Texts) > 0 {
		l.Layers = append(l.Layers, layer)
	}
}

// Bounds returns the box around everything; ok is false when there is nothing.
func (l *Layout) Bounds() (box plane.Box, ok bool) {
	take := func(b plane.Box) {
		if ok {
			b = box.Union(b)
		}
		box, ok = b, true
	}
	for _, layer := range l.Layers {
		for _, p := range layer.Paths {
			for _, e := range p.Edges {
				take(e.Bounds())
			}
		}
	}
	for _, p := range slices.Concat(l.Control, l.Marks) {
		take(plane.Box{Min: p.At, Max: p.At})
	}
	return box, ok
}
