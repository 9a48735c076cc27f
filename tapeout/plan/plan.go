// Package plan is the designer's ground plan: its datum, elements, levels and
// scenes.
//
// Everything is in plan axes: origin where the centre line meets the baseline,
// over positive to stage left, up positive away from the audience, in metres.
package plan

import "groundrow/tapeout/plane"

// Identifiers are globally unique and never reused, so that a change made on one
// machine means the same on another.
type (
	ElementID string
	PathID    string
	LevelID   string
	SceneID   string
	StockID   string // the tape stock that an element is laid in; see package supplies
)

// Plan is one ground plan.
type Plan struct {
	Title    string
	Revision string  // number or date in the designer's own words
	Scale    float64 // what one length on paper stands for on the floor: 48 for 1/4" to the foot
	Baseline Baseline
	Levels   []Level
	Scenes   []Scene
	Elements []Element
	Carries  []Carry
}

// Baseline names what the across axis of the datum lies on.
type Baseline string

// The usual baselines.
const (
	PlasterLine Baseline = "plaster line"
	SettingLine Baseline = "setting line"
	StageEdge   Baseline = "stage edge"
)

// Baselines in the order offered.
var Baselines = []Baseline{PlasterLine, SettingLine, StageEdge}

// Level is a storey of the set.
type Level struct {
	ID     LevelID
	Name   string
	Height float64 // metres above the stage floor
}

// Scene is a state of the set.
type Scene struct {
	ID   SceneID
	Name string // as the team says it: "1.2 The kitchen"
}

// Element is one scenic thing on the plan.
type Element struct {
	ID    ElementID
	Name  string
	Kind  Kind
	Level LevelID // empty: stage floor
	Stock StockID // empty: undecided
	Use   Use
	Note  string

	// Weight is what a metre or square metre of it counts when the plan is set in
	// a room; zero: what its use says.
	Weight float64

	// Rides names the revolve or track that carries the element; empty: none.
	Rides ElementID

	// Paths are the lines as drawn.
	Paths []Path

	// Stands place the element scene by scene. An element without any stands as
	// drawn in every scene; one with some is in those scenes only.
	Stands []Stand
}

// Worth is what a metre or square metre of the element counts when the plan is
// set in a room. The figures by use are common practice, no source.
func (e *Element) Worth() float64 {
	if e.Weight > 0 && e.Weight < 1e6 {
		return e.Weight
	}
	return e.Use.worth()
}

// MustBeWhole tells whether the actors need all of the element.
func (u Use) MustBeWhole() bool { return u == Essential || u == Danced }

func (u Use) worth() float64 {
	switch u {
	case Essential, Danced:
		return 4
	case Useful:
		return 2
	}
	return 1
}

// Use says how much the actors need an element, which decides what goes first
// when room or tape is short.
type Use string

// Uses from most to least needed.
const (
	Essential Use = "essential"  // played on or through; must be on the floor whole
	Danced    Use = "danced on"  // essential, and inner lines such as treads count
	Useful    Use = "useful"     // helps the actors to know where they are
	Seen      Use = "never used" // seen by the audience, never used by an actor
)

// Uses in the order offered.
var Uses = []Use{Essential, Danced, Useful, Seen}

// Role says what a path of an element shows.
type Role string

// Roles of a path.
const (
	Outline Role = "outline" // the edge of the thing
	Inner   Role = "inner"   // treads, folds, joints: left off when only the outline is laid
	Swing   Role = "swing"   // where a door leaf travels; dashed, not a wall
	Hidden  Role = "above"   // overhead or beneath, dashed on the plan
	Way     Role = "way"     // the line along which a track carries
)

// Roles in the order offered.
var Roles = []Role{Outline, Inner, Swing, Hidden, Way}

// Dashed tells whether the trade draws and lays this role as a broken line.
func (r Role) Dashed() bool { return r == Swing || r == Hidden || r == Way }

// Path is one chain of line work of an element.
type Path struct {
	ID   PathID
	Role Role
	plane.Path
}

// Stand is where an element stands in one scene, relative to where it is drawn:
// turned by Turn degrees counter-clockwise about its anchor, then shifted.
type Stand struct {
	Scene    SceneID
	Over, Up float64 // metres
	Turn     float64 // degrees
}

// Carry is the position of a revolve or a track in one scene: degrees
// counter-clockwise as seen from above for a revolve, metres from the start of
// its way for a track.
type Carry struct {
	Carrier ElementID
	Scene   SceneID
	Travel  float64
}
