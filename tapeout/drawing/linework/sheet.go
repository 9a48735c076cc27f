// Package linework is what a drawing file holds, whatever its format: lines, arcs
// and words, each with its layer. Every reader of drawings makes a Sheet.
//
// # Frame and units
//
// Coordinates are the file's own: X to the right and Y up the page, in drawing
// units, and never mirrored. Unit says how many metres one drawing unit is, where
// the file tells; Scaled turns a sheet into metres. The datum, and which way the
// audience is, are not known here: the person who imports the drawing says so.
//
// Curves are circular arcs where the drawing has circular arcs. Every other curve
// has been flattened by the reader, which documents its tolerance.
package linework

import "groundrow/tapeout/plane"

// Sheet is one drawing, or one page of one.
type Sheet struct {
	Format  string // of the file: DXF, PDF
	Version string // of the format, as a person would name it: R2010, 1.7

	Unit     Unit   // metres in one drawing unit; zero: the file does not say
	UnitHint Unit   // the likely unit where Unit is zero; zero: no hint either
	UnitWhy  string // a sentence on how Unit is known, or on why it is not

	Items    []Item    // in drawing order
	Texts    []Text    // in drawing order
	Measures []Measure // dimensions that the drawing states, in drawing order
	Layers   []Layer   // in the order of the file
	Left     []LeftAside

	Box plane.Box // around the items that are not hidden; zero when there are none
}

// Item is one thing drawn: a line, an arc, the whole of a polyline. A block or a
// dimension that stands in the drawing is taken apart into the items of its
// picture, which share a Group.
type Item struct {
	Edges  []plane.Edge // joined end to end in one or more chains; at least one
	Layer  string
	Kind   string    // what the format calls it: LINE, ARC, HATCH; DIMENSION for all of a dimension's picture
	Block  string    // the innermost block that it is a part of; empty: none
	Group  int       // 1, 2 … for each block or dimension placed in the drawing; 0: drawn by itself
	Colour Colour    // of the pen
	Width  float64   // of the pen, metres on paper; zero: not said, or as thin as can be
	Dash   []float64 // drawn, gap, drawn, gap … in drawing units, a dot being zero; nil: solid
	Hidden bool      // not seen in the drawing: its layer is off or frozen, or it is invisible itself
}

// Text is one line or paragraph of words.
type Text struct {
	Text   string      // plain, without formatting; lines are parted by \n
	At     plane.Point // where it is anchored: a corner, the middle of its line
	Height float64     // of capitals, drawing units
	Turn   float64     // direction of reading, radians counter-clockwise from X
	Layer  string
	Kind   string // as for Item
	Block  string // as for Item
	Group  int    // as for Item
	Hidden bool   // as for Item
}

// Measure is a dimension that the drawing states: what it says, and what lies
// between the points that it measures. The two tell whether a drawing is at the
// scale that it claims.
type Measure struct {
	Says     string  // what is written; empty: just the measured value
	Measured float64 // as the file records it, drawing units
	From, To plane.Point
	Angular  bool // Measured is in radians, and From and To are not given
	Layer    string
	Group    int // that of the dimension's picture, as for Item
	Hidden   bool
}

// Layer is one of the drawing's layers.
type Layer struct {
	Name   string
	Colour Colour
	Off    bool // not seen
	Frozen bool // not seen, nor is anything in blocks that stand on it
}

// Colour is red, green and blue as 0xRRGGBB. The drawing's foreground, white on a
// dark screen and black on paper, is black.
type Colour struct {
	RGB   uint32
	Known bool // false: the file does not say
}

// RGB returns the known colour.
func RGB(rgb uint32) Colour { return Colour{rgb & 0xFFFFFF, true} }

// Shown tells whether the item is seen in the drawing.
func (i *Item) Shown() bool { return !i.Hidden }

// Length returns the length of all edges, in drawing units.
func (i *Item) Length() float64 {
	total := 0.0
	for _, e := range i.Edges {
		total += e.Length()
	}
	return total
}
