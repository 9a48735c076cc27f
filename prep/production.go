// Package prep is a production and its prep week: everything that one production
// file holds, and what follows from it across floors, supplies, people and days.
package prep

import (
	"slices"
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Production is one show: a plain value, taken whole by every computation.
type Production struct {
	Settings Settings
	Plan     plan.Plan
	Floors   []floor.Floor

	DanceLines    []marks.DanceLine
	Issued        []marks.Issued
	Progress      []marks.Progress
	MethodChoices []MethodChoice
	Readings      []Reading

	Stocks []supplies.Stock
	Items  []supplies.Item
	Orders []supplies.Order

	People      []Person
	Tasks       []Task
	Objects     []Object
	StandIns    []StandIn
	Notes       []Note
	Moves       []Move
	Answers     []Answer
	Typed       []Typed
	Drawings    []Drawing
	KnownPoints []KnownPoint // lay scanned drawings under the plan

	Printings []Printing
}

// Settings are the choices that hold for the whole production.
type Settings struct {
	Title          string
	Company        string
	Contact        string // who to ask, printed at the foot of every sheet
	FirstRehearsal time.Time
	PrepStart      time.Time

	Unit        string  // "ft", "m", "cm" or "mm"; see package length
	Step        float64 // metres; the rounding step of what is shown
	Paper       string  // "Letter" or "A4"
	Currency    string  // "$"
	BudgetCents int     // for tape and kit together; zero: none set

	Rules      marks.Rules
	Allowances supplies.Allowances
	Rates      Rates
	Errors     Errors // of placing marks

	WeakAngle  float64 // degrees; two-tape marks whose tapes meet flatter are flagged
	TapeSigma  float64 // metres; the standard error of one tape reading
	TapeLength float64 // metres; the longest tape owned
	ReadEdge   string  // the edge of the tape measure that is read: "left edge"
}

// Rates are how fast this team works. All are settings.
type Rates struct {
	MarksPerHour   float64 // marks placed per pair of people
	TapePerHour    float64 // metres laid per person
	PatchesPerHour float64 // per person
	ChecksPerHour  float64 // check measures per pair
	DayStart       float64 // hours after midnight when the room opens
	DayEnd         float64 // hours after midnight when the room closes
	BreakAfter     float64 // hours of work after which a break is due
	BreakLength    float64 // hours
}

// DefaultRates are common practice, no source.
var DefaultRates = Rates{
	MarksPerHour: 40, TapePerHour: 60, PatchesPerHour: 60, ChecksPerHour: 40,
	DayStart: 10, DayEnd: 18, BreakAfter: 2.5, BreakLength: 0.25,
}

// Person is one of the team.
type Person struct {
	ID    string
	Name  string
	Role  string // "assistant stage manager"
	Phone string
	Note  string
	Hands bool // can kneel, measure and lay tape
}

// Task is one piece of work of prep week.
type Task struct {
	ID       string
	Name     string
	Count    Count     // the quantity that its duration follows from
	Floor    floor.ID  // for Count
	Hours    float64   // typed duration, when Count is ByHours
	Hands    int       // people at once
	Earliest time.Time // zero: from the start of prep week
	Due      time.Time // zero: the first rehearsal
	Pinned   time.Time // zero: not pinned; else it starts then
	Done     bool
	After    []string // tasks that must end first
	People   []string // who is asked for; empty: anyone
	Note     string
}

// Count is what a task's duration is computed from.
type Count string

// Counts.
const (
	ByHours   Count = "typed hours"
	ByMarks   Count = "marks to place"
	ByChecks  Count = "check measures"
	ByTape    Count = "tape to lay"
	ByPatches Count = "patches to lay"
)

// Counts in the order offered.
var Counts = []Count{ByHours, ByMarks, ByChecks, ByTape, ByPatches}

// Object is something in the rehearsal stock that can stand in for scenery.
type Object struct {
	ID      string
	Name    string
	Kind    string  // "music stand", "flat on a rack", "table", "chair", "block"
	Width   float64 // metres; zero: does not matter
	Depth   float64
	Height  float64
	Count   int
	Source  string // "rehearsal stock", "shop", "venue"
	Ballast bool   // must be weighted before anyone leans on it
	Note    string
}

// StandIn says what stands for an element in one scene.
type StandIn struct {
	ID      string
	Element plan.ElementID
	Scene   plan.SceneID // empty: in every scene
	Object  string       // an Object's identifier; empty: wanted, none found yet
	Number  int          // how many of the object
	State   StandInState
	Note    string
}

// StandInState is how far a stand-in has got.
type StandInState string

// States of a stand-in.
const (
	Wanted    StandInState = "wanted"
	Asked     StandInState = "asked for"
	Confirmed StandInState = "confirmed"
	InRoom    StandInState = "in the room"
	Swapped   StandInState = "real one has come"
)

// StandInStates in the order offered.
var StandInStates = []StandInState{Wanted, Asked, Confirmed, InRoom, Swapped}

// Note is something that the team at the next floor must know.
type Note struct {
	ID      string
	Element plan.ElementID // empty: about the whole floor
	Text    string
	Owner   string
	Open    bool
	On      time.Time
}

// Typed keeps what a person typed into a length field, so that it comes back as
// typed. It counts only while it still reads as the value that is stored.
type Typed struct {
	Row    string // the identifier of the row
	Column string
	Text   string
}

// Drawing is an imported file; its bytes stay in the production file.
type Drawing struct {
	ID     string
	Name   string
	Format string
	Bytes  int
	On     time.Time
	By     string
}

// KnownPoint is a point of a scanned drawing whose place on the plan is known. Two of
// them, in the order in which they were shown, scale and turn the scan; four take
// out perspective as well.
type KnownPoint struct {
	ID      string
	Drawing string
	Pixel   plane.Point // dots from the upper left corner of the scan, Y downwards
	Floor   plane.Point // plan axes, metres
}

// Printing records that a sheet was printed and from which state.
type Printing struct {
	Sheet string
	Floor floor.ID
	On    time.Time
	State string // fingerprint of what the sheet showed
}

// Floor returns the floor with the identifier; nil when there is none.
func (p *Production) Floor(id floor.ID) *floor.Floor {
	i := slices.IndexFunc(p.Floors, func(f floor.Floor) bool { return f.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Floors[i]
}

// Stock returns the stock with the identifier; nil when there is none.
func (p *Production) Stock(id plan.StockID) *supplies.Stock {
	i := slices.IndexFunc(p.Stocks, func(s supplies.Stock) bool { return s.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Stocks[i]
}
