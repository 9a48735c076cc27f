// Package floorcanvas shows a floor or a plan from above and lets it be worked
// on: pan, zoom, select, drag, draw and measure.
//
// What is shown is a Picture, a plain value in any one frame of metres (plan,
// floor or datum axes). The canvas never changes a picture: it tells its owner
// what a person did, and is set to the next picture.
package floorcanvas

import (
	"image/color"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// Picture is everything that can be seen. Points that are not finite, or beyond
// ten thousand kilometres, are left out.
type Picture struct {
	Areas   []Area
	Shapes  []Shape
	Dots    []Dot
	Labels  []Label
	Handles []Handle

	// Ellipses are about points that may come to lie elsewhere.
	Ellipses []Ellipse

	// Backdrop is a scan under everything; nil: none.
	Backdrop *Backdrop

	// Datum takes datum axes to the picture's; up and over are read from it.
	Datum     plane.Motion
	HideDatum bool
	Baseline  string // what the across axis lies on: "plaster line"

	// Unscaled is for a picture of which nobody knows yet how large it is and where
	// the audience is: without grid, rulers' figures and audience.
	Unscaled bool

	// Audience is the direction towards the audience in the picture's axes. The
	// zero value is down the datum's own up axis.
	Audience plane.Point

	// Bounds is what Fit shows; the zero box stands for everything there is.
	Bounds plane.Box

	// Style is how lengths read, and in which unit rulers and grid run.
	Style length.Style
}

// Shape is one thing made of lines.
type Shape struct {
	ID     string // empty: cannot be selected
	Edges  []plane.Edge
	Ink    theme.Ink
	Colour color.Color // tape colour, over the ink; nil: the ink
	Width  float64     // toolkit pixels; 0 is 1.5
	Metres float64     // width on the floor, drawn where it is more than Width
	Dash   Dash
	Z      int // higher is drawn later
}

// Dash is how a line is broken.
type Dash uint8

// The dashes.
const (
	Solid Dash = iota
	Dashed
	DashDot
	Dotted
)

// Area is a closed region.
type Area struct {
	ID      string
	Path    plane.Path // treated as closed
	Fill    Fill
	Ink     theme.Ink
	Colour  color.Color // over the ink; nil: the ink
	Outline float64     // toolkit pixels; 0: none
	Dash    Dash        // of the outline
	Label   string      // written in it, or beside it when there is no room
	Z       int
}

// Fill is what covers an area. Rising and falling hatch can be told apart
// without colour.
type Fill uint8

// The fills.
const (
	NoFill  Fill = iota
	Tint         // a light wash of the ink
	Full         // the ink itself
	Rising       // hatch from lower left to upper right
	Falling      // hatch from upper left to lower right
	Crossed      // both
)

// Dot is a mark of constant size.
type Dot struct {
	ID     string
	At     plane.Point
	Sign   Sign
	Ink    theme.Ink
	Colour color.Color // over the ink; nil: the ink
	Size   float64     // toolkit pixels across; 0 is 9
}

// Sign is the form of a dot.
type Sign uint8

// The signs.
const (
	Cross Sign = iota
	Ring
	Square
	Triangle
	Disc
	Break  // two slanted strokes: something goes on beyond
	Target // a ring with a cross through it: a datum
)

// Label is a word at a point. It is never turned, is moved aside or left out
// where it would cover another one, and has a line to its point when moved.
type Label struct {
	ID       string
	At       plane.Point
	Text     string
	Size     float64 // toolkit pixels; 0 is 12, and less than 11 is 11
	Bold     bool
	Ink      theme.Ink // the zero Ink counts as theme.Label
	Anchor   Anchor
	Offset   float64 // toolkit pixels between point and word; 0 is 6
	Priority int     // the higher ones get their place first
	Fixed    bool    // neither moved nor left out
	Room     float64 // metres; left out while the word is wider on the screen; 0: no limit
}

// Anchor is where a label stands beside its point.
type Anchor uint8

// The anchors.
const (
	AtRight Anchor = iota
	AtLeft
	Above
	Below
	AboveRight
	AboveLeft
	BelowRight
	BelowLeft
	Centred
	anchorCount
)

// Handle is a point that can be dragged.
type Handle struct {
	ID   string
	At   plane.Point
	Kind HandleKind
	Name string // shown while the pointer is on it
}

// HandleKind is what a handle does, told by its form.
type HandleKind uint8

// The handles.
const (
	Corner HandleKind = iota // a square
	Pivot                    // a ringed cross
	Turn                     // a ring with an arrow head
	Shift                    // four arrow heads
)

const (
	defaultWidth = 1.5
	defaultDot   = 9
	defaultText  = 12
	leastText    = 11
	defaultGap   = 6
)
