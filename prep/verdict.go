package prep

import (
	"groundrow/tapeout/plane"
)

// Verdict is what the check measures that have been read say about a floor.
type Verdict struct {
	State     Acceptance
	Readings  []Judged     // every reading of the floor, in order
	Faults    []Fault      // the worst first
	Unchecked []string     // marks that no good reading joins
	OneWay    []string     // marks whose misplacement by Blunder would not show in some direction
	Ask       []Ask        // measures that tell doubtful marks and readings apart
	Flat      []NoTriangle // readings that cannot form a triangle
	Cross     []Ask        // measures that check the marks of OneWay in their other direction
}

// Acceptance is the verdict on a floor in one word.
type Acceptance string

// Verdicts.
const (
	Accepted      Acceptance = "accepted"
	WrongMarks    Acceptance = "wrong marks"
	DoubtfulMarks Acceptance = "doubtful marks"
	NotEnough     Acceptance = "not enough checked"
)

// Blunder is the misplacement in metres, three inches, that every mark of a
// floor checked both ways shows in whatever direction (common practice, no
// source: what an actor notices).
const Blunder = 0.0762

// Judged is one reading as the verdict has it.
type Judged struct {
	Reading
	Expected float64 // metres
	Off      float64 // metres, read minus expected
	Grade    Grade
	Cause    string // the likely slip; empty: none of the usual ones
}

// Grade is how one reading sits with the plan and with all the others.
type Grade string

// Grades. A reading at the edge is beyond what the sheet allows and no more than
// placing and reading explain.
const (
	GoodReading     Grade = "good"
	EdgeReading     Grade = "at the edge"
	DoubtfulReading Grade = "doubtful"
	WrongReading    Grade = "wrong reading"
	AtWrongMark     Grade = "wrong mark"
	NoSuchMark      Grade = "no such mark"
)

// Fault is one thing that is wrong, with everything that explains it as well.
type Fault struct {
	Readings []int       // indices into Verdict.Readings that may be the wrong one
	Places   []string    // marks or pivots that may lie wrong
	Shift    plane.Point // datum axes; how far the one place lies from where it should
	Sure     float64     // metres; the 95 % error of Shift, zero where the readings do not fix it
	Cause    string      // the likely slip; empty: none of the usual ones
}

// Found tells whether the fault has been traced to one reading or one place.
func (f Fault) Found() bool { return len(f.Readings)+len(f.Places) == 1 }

// Ask is one more distance to measure.
type Ask struct {
	From, To string
	Expected float64 // metres
	Why      string
}

// VerdictOf judges the readings of the floor of w, which must be its work over
// all scenes.
func VerdictOf(p *Production, w *FloorWork) Verdict {
	c := newCourt(p, w)
	c.seekFaults()
	c.grade()
	c.coverage()
	c.conclude()
	c.v.Flat = noTriangles(&c.v, p.CheckAllowed())
	return c.v
}
