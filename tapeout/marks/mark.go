// Package marks turns the line work that a floor lays into labelled floor
// points: corners, ends and crossings, points along curves, spikes and the
// dance line.
package marks

import (
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Kind is why a mark is needed.
type Kind string

// Kinds of mark.
const (
	End      Kind = "end"
	Corner   Kind = "corner"
	Crossing Kind = "crossing"
	Change   Kind = "change of tape" // another tape, or broken for solid, in a straight line
	Curve    Kind = "on a curve"
	Centre   Kind = "centre to swing from"
	Spike    Kind = "spike"
	CutEnd   Kind = "cut short here" // where the room ends; the scenery goes on
	Stop     Kind = "stop of what moves"
	OwnDatum Kind = "datum moved aside" // of what is laid beside its true place
)

// Mark is a floor point that must be found.
type Mark struct {
	Label    string
	Kind     Kind
	At       plane.Point // datum axes of its floor: X over, Y up
	What     string      // "Kitchen wall, Stove wall": what meets here
	Elements []plan.ElementID
	Stocks   []plan.StockID
	Scenes   []plan.SceneID // empty: all
	Frozen   bool           // its label has been printed

	Cut     bool          // something that meets here goes on beyond the room
	Aside   plane.Point   // datum axes; how far it lies from its true place
	Leg     string        // of a spike: "upstage right leg"
	Arms    []plane.Point // unit vectors along the tape of a spike or a stop: two an L, one a tick
	Station *plan.Station // of a stop, in datum axes
}

// Up and Over in metres; Over is positive to stage left.
func (m Mark) Up() float64   { return m.At.Y }
func (m Mark) Over() float64 { return m.At.X }

// Issued is a label that has been printed. It stays where it is for good: a
// revision retires it or keeps it, and never moves it.
type Issued struct {
	Floor   floor.ID
	Label   string
	At      plane.Point // datum axes
	Retired bool
	On      time.Time
}

// Rules are the choices that labels and curve points depend on.
type Rules struct {
	Weld        float64 // metres; points closer together are one mark
	Row         float64 // metres up; marks within it share a row
	Chord       float64 // metres; how far a chord may depart from its curve
	SkipIO      bool    // no labels with the letters I and O
	CentreSwing bool    // a curve whose centre lies on the floor is swung from it
}

// DefaultRules are common practice, no source.
var DefaultRules = Rules{Weld: 0.006, Row: 0.1524, Chord: 0.0254, CentreSwing: true}

// DanceLine is a row of numbers across the stage at equal distances from centre.
type DanceLine struct {
	ID    string
	Floor floor.ID
	Name  string
	Up    float64 // metres; the line is straight across at this distance
	Step  float64 // metres between numbers: two feet, or half a metre
	Unit  float64 // metres that count as one: a foot, or a metre
	Reach float64 // metres to either side of centre: to the proscenium or the wings
	Habit Habit
}

// Habit is how numbers run from centre.
type Habit string

// Habits of numbering.
const (
	Numbers  Habit = "numbers from centre"
	Quarters Habit = "quarters and eighths"
)
