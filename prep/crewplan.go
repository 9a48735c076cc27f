package prep

import (
	"time"

	"groundrow/tapeout/floor"
)

// Quantity is what one floor asks of the crew.
type Quantity struct {
	Marks   int     // marks to place
	Checks  int     // check measures
	Tape    float64 // metres to lay
	Patches int
	Awaits  []Delivery
}

// Delivery is tape without which a floor's counted work cannot begin.
type Delivery struct {
	Stock string // identifier
	Work  Count  // ByTape or ByPatches
	On    time.Time
}

// TaskQuantities are the quantities of the floors that tasks name.
type TaskQuantities map[floor.ID]Quantity

// CrewPlan says who does what when, what is late, and what makes it so.
type CrewPlan struct {
	Tasks      []Assignment // by start; tasks that are done are left out
	Cycles     [][]string   // tasks that wait for each other, by identifier
	Start, End time.Time    // of all work; zero without any
	Rehearsal  time.Time
	Spare      time.Duration // working time between End and the first rehearsal; below zero when it does not fit
	Limits     []Limit       // from the last task back: what makes the end so late
}

// Assignment is one task in its time.
type Assignment struct {
	Task     string // identifier
	Name     string
	Count    Count
	Quantity float64 // of Count: marks, measures, metres or patches; hours when typed
	People   []string
	Wanted   int // people the task asks for
	Start    time.Time
	End      time.Time
	Segments []Segment     // the stretches of work, broken by breaks and nights
	Work     time.Duration // without breaks
	Pinned   bool
	Clash    bool // pinned where its people are taken or earlier tasks have not ended
	Due      time.Time
	Late     time.Duration // working time after Due; zero when in time
}

// Short tells whether the task has fewer people than it asks for.
func (a Assignment) Short() bool { return len(a.People) < a.Wanted }

// Segment is a stretch of time without a break.
type Segment struct{ Start, End time.Time }

// Limit is one link of the chain that makes the end of work what it is.
type Limit struct {
	Task string // identifier
	Why  Cause
	By   string // the task, the person or the stock that it waits for
}

// Cause is why a task cannot begin earlier.
type Cause string

// Causes.
const (
	WaitsForTask   Cause = "waits for a task"
	WaitsForPerson Cause = "waits for a person"
	WaitsForDay    Cause = "not before a day"
	WaitsForStock  Cause = "waits for a delivery"
	IsPinned       Cause = "pinned"
	IsFirst        Cause = "begins at once"
)

// Call is when one person is wanted on one day.
type Call struct {
	Person     string // identifier
	Day        time.Time
	Start, End time.Time
	Tasks      []string // identifiers, in the order of work
	Segments   []Segment
}
