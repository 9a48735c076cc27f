// Package floor is a surface on which the plan is laid: a rehearsal room, a
// floor cloth, the theatre's stage.
//
// Three frames meet here, all in metres, none mirrored:
//
//   - plan axes, as in package plan;
//   - floor axes, in which the room was measured: any origin, any direction;
//   - datum axes, from which this floor's up and over are read. Unless the floor
//     has its own datum they are the plan axes as placed.
package floor

import (
	"time"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// ID identifies a floor for good.
type ID string

// Floor is one surface and how the plan lies on it.
type Floor struct {
	ID      ID
	Name    string
	Kind    Kind
	Surface string // "sprung timber, vinyl on top"
	Rule    Rule   // what the owner allows on it
	Note    string

	Measured   Measured   // what a tape found of it
	Outline    plane.Path // closed, floor axes; no vertices: not measured yet
	Steps      []Step
	Obstacles  []Obstacle
	KeepClears []KeepClear
	Features   []Feature
	Ways       []Way

	BoardDirection float64 // degrees from the floor's X axis; which way boards or tiles run
	BoardModule    float64 // metres across one board or tile; zero: no boards

	Placement plane.Motion // plan axes to floor axes
	OwnDatum  bool         // Datum is set apart from the placement
	Datum     plane.Motion // datum axes to floor axes, when OwnDatum

	Pivots     []Pivot // of the two-tape method, in the order of their use
	Treatments []Treatment

	Side Side // on which side of the true line the tape lies

	Wishes Wishes
	Fronts []Front // the sides that may be the front; none: any
}

// Kind is what sort of surface a floor is.
type Kind string

// Kinds of floor.
const (
	Room  Kind = "rehearsal room"
	Cloth Kind = "floor cloth"
	Stage Kind = "stage"
)

// Kinds in the order offered.
var Kinds = []Kind{Room, Cloth, Stage}

// Rule is what the owner of a floor allows on it.
type Rule string

// Rules of a floor's owner.
const (
	AskFirst   Rule = "not asked yet"
	AnyTape    Rule = "any tape"
	SomeTapes  Rule = "only tapes agreed with the owner"
	NightClear Rule = "nothing left down overnight"
	NoTape     Rule = "no tape at all"
)

// Rules in the order offered.
var Rules = []Rule{AskFirst, AnyTape, SomeTapes, NightClear, NoTape}

// Side is on which side of the true line the tape lies.
type Side string

// Sides of the line.
const (
	Outside Side = "outside the line"
	Centred Side = "centred on the line"
	Inside  Side = "inside the line"
)

// Sides in the order offered.
var Sides = []Side{Outside, Centred, Inside}

// Obstacle is something in the room that nothing can stand on and no tape
// measure can pass.
type Obstacle struct {
	ID    string
	Name  string
	Kind  string     // one of ObstacleKinds
	Shape plane.Path // closed, floor axes
}

// ObstacleKinds in the order offered.
var ObstacleKinds = []string{"column", "piano", "radiator", "mirror", "seating", "other"}

// KeepClear is an area that must stay free.
type KeepClear struct {
	ID    string
	Name  string
	Kind  string     // one of KeepClearKinds
	Shape plane.Path // closed, floor axes
}

// KeepClearKinds in the order offered.
var KeepClearKinds = []string{"exit", "door swing", "front table", "music", "prop table", "crossover", "other"}

// Pivot is a fixed point from which tapes are pulled.
type Pivot struct {
	ID   string
	Name string      // what to look for in the room: "north-east column, base"
	At   plane.Point // floor axes
}

// UnnamedPivot is what a new pivot is called until somebody says what to look for.
// It bears no number: sheets number the pivots by their order of use, and a name
// that says another number would send a tape to the wrong point.
const UnnamedPivot = "a place to be named"

// How is what a floor does with an element.
type How string

// The treatments.
const (
	AsDrawn     How = "as drawn"
	OutlineOnly How = "outline only" // a stair without its treads
	CutShort    How = "cut short"    // what lies outside the floor is not laid
	MovedAside  How = "moved aside"  // laid elsewhere, the offset written on the floor
	ObjectOnly  How = "object only"  // a stand-in on its spikes, no outline
	LeftOut     How = "left out"
)

// Hows in the order offered.
var Hows = []How{AsDrawn, OutlineOnly, CutShort, MovedAside, ObjectOnly, LeftOut}

// Treatment is the decision on one element. An element without one is laid as
// drawn.
type Treatment struct {
	Element  plan.ElementID
	How      How
	Over, Up float64 // metres in plan axes, for MovedAside
	Reason   string
	Decided  Decision
}

// Decision says who settled a question and when; the zero value is an open one.
type Decision struct {
	By string
	On time.Time
}

// Open tells whether nobody has decided yet.
func (d Decision) Open() bool { return d.By == "" }

// PlanToDatum returns the motion from plan axes to the axes from which up and
// over are read on this floor.
func (f *Floor) PlanToDatum() plane.Motion {
	if !f.OwnDatum {
		return plane.Motion{}
	}
	return f.Placement.Then(f.Datum.Inverse())
}

// FloorToDatum returns the motion from floor axes to datum axes.
func (f *Floor) FloorToDatum() plane.Motion {
	if f.OwnDatum {
		return f.Datum.Inverse()
	}
	return f.Placement.Inverse()
}
