package floor

import "groundrow/tapeout/plane"

// Way is a way across the floor along which a person must get.
type Way struct {
	ID       string
	Name     string
	Kind     WayKind
	From, To Spot
	Width    float64 // metres that must be free, the user's own requirement; zero: only measured
}

// WayKind is what a way is for.
type WayKind string

// Kinds of way.
const (
	Crossover WayKind = "crossover" // from wing to wing behind the set
	WayOut    WayKind = "way out"
	OtherWay  WayKind = "other way"
)

// WayKinds in the order offered.
var WayKinds = []WayKind{Crossover, WayOut, OtherWay}

// Spot is where a way begins or ends.
type Spot struct {
	Thing string      // a door or an area that must stay free, by its identifier; empty: At
	At    plane.Point // floor axes
}
