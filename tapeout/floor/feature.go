package floor

import (
	"math"

	"groundrow/tapeout/plane"
)

// Feature is a thing of the room that takes no floor by itself: a door, a window, a
// mirror on the wall, a socket, a seam, or an area of another floor.
type Feature struct {
	ID   string
	Name string
	Kind FeatureKind

	// Shape is in floor axes: of a door two points, its hinge and the other jamb; of a
	// window, a mirror or a seam a line; of a power outlet one point; of an area of the
	// floor its closed outline.
	Shape plane.Path

	Opens Opens // of a door
}

// FeatureKind is what a feature is.
type FeatureKind string

// Kinds of feature.
const (
	RoomDoor    FeatureKind = "door"
	RoomWindow  FeatureKind = "window"
	WallMirror  FeatureKind = "mirror"
	PowerOutlet FeatureKind = "power outlet"
	Seam        FeatureKind = "seam"
	SprungFloor FeatureKind = "sprung floor"
	DanceFloor  FeatureKind = "dance floor"
)

// FeatureKinds in the order offered.
var FeatureKinds = []FeatureKind{RoomDoor, RoomWindow, WallMirror, PowerOutlet, Seam, SprungFloor, DanceFloor}

// Corners returns how many points a feature of the kind has at least, and whether it
// is an area.
func (k FeatureKind) Corners() (least int, area bool) {
	switch k {
	case PowerOutlet:
		return 1, false
	case SprungFloor, DanceFloor:
		return 3, true
	}
	return 2, false
}

// Opens is how a door of the room opens.
type Opens string

// Ways in which a door opens.
const (
	OpensIn   Opens = "into the room"
	OpensOut  Opens = "out of the room"
	OpensBoth Opens = "both ways"
	Slides    Opens = "slides"
)

// OpensWays in the order offered.
var OpensWays = []Opens{OpensIn, OpensOut, OpensBoth, Slides}

// Leaf returns the door's closed leaf from its hinge to the other jamb, in floor
// axes; ok is false for what is no door or has no width.
func (t *Feature) Leaf() (leaf plane.Edge, ok bool) {
	if t.Kind != RoomDoor || len(t.Shape.Vertices) < 2 {
		return plane.Edge{}, false
	}
	leaf = plane.Edge{A: t.Shape.Vertices[0].Point, B: t.Shape.Vertices[1].Point}
	return leaf, leaf.Chord() > tight
}

// OpenLeaf is a leaf of a door as it stands open at a right angle, or pushed aside, and
// the way that its edge takes; a leaf that slides takes none.
type OpenLeaf struct{ Open, Way plane.Edge }

// Leaves returns how the leaf of a door opens, in floor axes: one that opens both ways
// twice, into the room first; none for what is no door.
func (f *Floor) Leaves(t *Feature) []OpenLeaf {
	leaf, ok := t.Leaf()
	if !ok {
		return nil
	}
	in := f.Inward(leaf)
	turned := func(way plane.Point) OpenLeaf {
		open := leaf.A.Add(way.Times(leaf.Chord()))
		bulge := math.Tan(math.Pi / 8) // a quarter turn
		if leaf.B.Sub(leaf.A).Cross(way) < 0 {
			bulge = -bulge
		}
		return OpenLeaf{plane.Edge{A: leaf.A, B: open}, plane.Edge{A: leaf.B, B: open, Bulge: bulge}}
	}
	switch t.Opens {
	case OpensOut:
		return []OpenLeaf{turned(in.Times(-1))}
	case OpensBoth:
		return []OpenLeaf{turned(in), turned(in.Times(-1))}
	case Slides:
		aside := leaf.A.Sub(leaf.B).Add(in.Times(leafBeside))
		return []OpenLeaf{{Open: leaf.Moved(plane.Motion{Shift: aside})}}
	}
	return []OpenLeaf{turned(in)}
}

// leafBeside is how far beside the wall a leaf that slides is drawn, in metres.
const leafBeside = 0.06

// Swing returns the quarter circle that the leaf of a door sweeps in the room,
// closed, from the hinge; ok is false where it sweeps none.
func (f *Floor) Swing(t *Feature) (area plane.Path, ok bool) {
	leaves := f.Leaves(t)
	if len(leaves) == 0 || t.Opens == OpensOut || t.Opens == Slides {
		return plane.Path{}, false
	}
	way := leaves[0].Way
	return plane.Path{Closed: true, Vertices: []plane.Vertex{
		{Point: leaves[0].Open.A}, {Point: way.A, Bulge: way.Bulge}, {Point: way.B},
	}}, true
}

// Before returns the place before the middle of a door, half its leaf's width into the
// room, where a person as wide as the door stands who has just come through; ok is
// false for what is no door.
func (f *Floor) Before(t *Feature) (at plane.Point, ok bool) {
	leaf, ok := t.Leaf()
	if !ok {
		return plane.Point{}, false
	}
	return leaf.At(0.5).Add(f.Inward(leaf).Times(leaf.Chord() / 2)), true
}

// Inward returns the unit normal of a line at a wall that points into the room; to
// the left of the line where neither side, or both, are in it.
func (f *Floor) Inward(line plane.Edge) plane.Point {
	u, _ := line.B.Sub(line.A).Unit()
	left := u.Left()
	middle := line.At(0.5)
	if !f.Outline.Contains(middle.Add(left.Times(besideWall)), 0) && f.Outline.Contains(middle.Sub(left.Times(besideWall)), 0) {
		return left.Times(-1)
	}
	return left
}

// besideWall is how far beside a line at a wall it is asked which side the room is
// on, in metres: more than a door that was drawn beside its wall is off it.
const besideWall = 0.3

// Clears returns all that must stay free: the areas that were named, and what the
// doors of the room sweep. A door's area bears the door's identifier.
func (f *Floor) Clears() []KeepClear {
	out := append([]KeepClear(nil), f.KeepClears...)
	for i := range f.Features {
		t := &f.Features[i]
		if swing, ok := f.Swing(t); ok {
			out = append(out, KeepClear{ID: t.ID, Name: "the swing of " + t.Name, Kind: "door swing", Shape: swing})
		}
	}
	return out
}
