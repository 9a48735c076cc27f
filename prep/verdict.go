package prep

import (
	"math"
	"slices"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// Verdict is what the check measures that have been read say about a floor.
type Verdict struct {
	State     Acceptance
	Readings  []Judged // every reading of the floor, in order
	Faults    []Fault  // the worst first
	Unchecked []string // marks that no good reading joins
	OneWay    []string // marks whose misplacement by Blunder would not show in some direction
	Ask       []Ask    // measures that tell doubtful marks and readings apart
	Cross     []Ask    // measures that check the marks of OneWay in their other direction
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
	return c.v
}

// likeness is by how much, in units of the weighted sum of squares, the best
// explanation must beat another before the other is ruled out: a likelihood
// ratio of 150.
const likeness = 10

// mostFaults bounds how many faults of one floor are told apart.
const mostFaults = 12

// court is one verdict on its way.
type court struct {
	p       *Production
	w       *FloorWork
	names   []string // of the places: the pivots in use, then the marks
	places  []survey.Placed
	placeOf map[string]int
	active  []int          // of each reading weighed: its index in the verdict
	times   map[[2]int]int // how often the distance between two places has been read
	v       Verdict
	budget  survey.Budget
	weighed survey.Weighed
	any     bool // something has been weighed
}

func newCourt(p *Production, w *FloorWork) *court {
	c := &court{p: p, w: w, placeOf: map[string]int{}, times: map[[2]int]int{}, budget: ErrorBudget(p, w)}
	if pair, ok := Pivots(w.Floor); ok {
		set := survey.Round(c.budget.Pivot)
		c.add(FirstPivot, survey.Placed{At: pair.A, Covariance: set})
		c.add(SecondPivot, survey.Placed{At: pair.B, Covariance: set})
	}
	for _, m := range w.Marks {
		c.add(m.Label, survey.Placed{At: m.At, Covariance: placing(m)})
	}
	for i, r := range p.ReadingsOn(w.Floor.ID) {
		j := Judged{Reading: r, Grade: NoSuchMark}
		from, ok := c.placeOf[r.From]
		to, also := c.placeOf[r.To]
		if ok && also && c.places[from].At.To(c.places[to].At) >= survey.Near {
			j.Grade, j.Expected = GoodReading, c.places[from].At.To(c.places[to].At)
			j.Off = r.Metres - j.Expected
			c.active = append(c.active, i)
			c.times[pairOf(from, to)]++
		}
		c.v.Readings = append(c.v.Readings, j)
	}
	c.weigh()
	return c
}

// pairOf names the distance between two places, either way round.
func pairOf(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

func (c *court) add(name string, at survey.Placed) {
	c.placeOf[name] = len(c.places)
	c.names, c.places = append(c.names, name), append(c.places, at)
}

// weigh weighs the readings that count, if there are any.
func (c *court) weigh() {
	observed := make([]survey.Observed, len(c.active))
	for k, i := range c.active {
		r := c.v.Readings[i]
		observed[k] = survey.Observed{From: c.placeOf[r.From], To: c.placeOf[r.To], Distance: r.Metres, Sigma: c.budget.Measure(r.Expected)}
	}
	var err error
	c.weighed, err = survey.Weigh(c.places, observed)
	c.any = err == nil
}

// seekFaults finds one fault after the other, the worst first; each is taken out
// before the next is sought.
func (c *court) seekFaults() {
	for range mostFaults {
		if len(c.weighed.Suspicions) == 0 {
			return
		}
		best := slices.MaxFunc(c.weighed.Suspicions, func(a, b survey.Suspicion) int {
			return compareFloat(a.Beyond, b.Beyond)
		})
		if best.Beyond <= 0 {
			return
		}
		c.v.Faults = append(c.v.Faults, c.faultOf(best))
	}
}

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// faultOf gathers what explains the readings about as well as the best
// explanation, asks for what tells them apart, and takes the fault out.
func (c *court) faultOf(best survey.Suspicion) Fault {
	var f Fault
	var suspects []survey.Suspicion
	top := best.Fit
	for _, s := range c.weighed.Suspicions {
		top = max(top, s.Fit)
	}
	for _, s := range c.weighed.Suspicions {
		if s.Beyond <= 0 || s.Fit < top-likeness {
			continue
		}
		suspects = append(suspects, s)
		if s.Reading >= 0 {
			f.Readings = append(f.Readings, c.active[s.Reading])
		} else {
			f.Places = append(f.Places, c.names[s.Place])
		}
	}
	if f.Found() {
		best = suspects[0]
		f.Shift, f.Cause = best.Shift, c.causeOf(best)
		if best.Place >= 0 {
			f.Sure = c.sure(best)
		}
	} else {
		c.ask(suspects)
	}
	c.takeOut(suspects, best)
	return f
}

// sure returns how well the readings at a wrong place say where it lies: the longer
// half-axis of the 95 % ellipse of that place alone, adjusted with all others where
// they should be. The errors of placing the others count with the readings.
func (c *court) sure(s survey.Suspicion) float64 {
	at, fixed := make([]plane.Point, len(c.places)), make([]bool, len(c.places))
	for i, p := range c.places {
		at[i], fixed[i] = p.At, i != s.Place
	}
	at[s.Place] = at[s.Place].Add(s.Shift)
	others, sum, times := []int{}, map[int]float64{}, map[int]float64{}
	for _, k := range c.weighed.At(s.Place) {
		r := c.v.Readings[c.active[k]]
		other := c.placeOf[r.From] + c.placeOf[r.To] - s.Place
		if times[other] == 0 {
			others = append(others, other)
		}
		sum[other], times[other] = sum[other]+r.Metres, times[other]+1
	}
	var observed []survey.Observed
	for _, other := range others { // readings of one distance share the error of its other end
		way, mean := at[s.Place].Sub(at[other]), sum[other]/times[other]
		theirs := c.places[other].Covariance.Along(math.Atan2(way.Y, way.X))
		sigma := math.Hypot(c.budget.Measure(mean)/math.Sqrt(times[other]), theirs)
		observed = append(observed, survey.Observed{From: s.Place, To: other, Distance: mean, Sigma: sigma})
	}
	a, err := survey.Adjust(at, fixed, observed)
	if err != nil || len(observed) < 2 {
		return 0
	}
	if e := a.Covariance[s.Place].Ellipse95(); e.Minor > 0 && e.Major < s.Shift.Len() {
		return e.Major
	}
	return 0
}

// takeOut sets a fault aside: the reading, where it may be one, else all readings
// at the place.
func (c *court) takeOut(suspects []survey.Suspicion, best survey.Suspicion) {
	for _, s := range suspects {
		if s.Reading >= 0 {
			c.weighed = c.weighed.Aside(s.Reading)
			return
		}
	}
	if best.Place < 0 {
		best = suspects[0]
	}
	c.weighed = c.weighed.Aside(c.weighed.At(best.Place)...)
}

// grade says of each reading what the faults make of it.
func (c *court) grade() {
	allowed := c.p.CheckAllowed()
	for i := range c.v.Readings {
		j := &c.v.Readings[i]
		if j.Grade == NoSuchMark {
			continue
		}
		if math.Abs(j.Off) > allowed {
			j.Grade, j.Cause = EdgeReading, slipOf(j.Expected, j.Metres, allowed)
		}
	}
	for _, f := range c.v.Faults {
		for _, i := range f.Readings {
			c.v.Readings[i].Grade = DoubtfulReading
			if f.Found() {
				c.v.Readings[i].Grade = WrongReading
			}
		}
		if len(f.Readings) > 0 {
			continue
		}
		for i := range c.v.Readings {
			j := &c.v.Readings[i]
			if j.Grade != EdgeReading || !slices.Contains(f.Places, j.From) && !slices.Contains(f.Places, j.To) {
				continue
			}
			if j.Grade = DoubtfulReading; f.Found() {
				j.Grade = AtWrongMark
			}
		}
	}
}

// slipOf names the usual slip that makes the one length of the other.
func slipOf(expected, read, allowed float64) string {
	if ok, cause := survey.Compare(expected, read, allowed); !ok && survey.Slip(cause) {
		return cause
	}
	return ""
}

// coverage says which marks the good readings leave unchecked, or check in one
// direction only.
func (c *court) coverage() {
	for i, name := range c.names {
		if name == FirstPivot || name == SecondPivot || c.suspected(name) {
			continue
		}
		if !c.any || len(c.weighed.At(i)) == 0 {
			c.v.Unchecked = append(c.v.Unchecked, name)
			continue
		}
		if c.weighed.Blind[i] > Blunder {
			c.v.OneWay = append(c.v.OneWay, name)
		}
	}
	if c.any {
		c.cross()
	}
}

func (c *court) suspected(name string) bool {
	return slices.ContainsFunc(c.v.Faults, func(f Fault) bool { return slices.Contains(f.Places, name) })
}

func (c *court) conclude() {
	c.v.State = Accepted
	if len(c.v.Unchecked) > 0 || len(c.w.Marks) == 0 || len(c.v.Readings) == 0 {
		c.v.State = NotEnough
	}
	for _, f := range c.v.Faults {
		switch {
		case f.Found() && len(f.Places) == 1:
			c.v.State = WrongMarks
		case !f.Found() && c.v.State != WrongMarks:
			c.v.State = DoubtfulMarks
		}
	}
}

// unitsOfSlips are what is counted once too often when a mark is placed.
var unitsOfSlips = []struct {
	metres float64
	name   string
}{
	{length.Foot, "a whole foot"}, {0.1, "ten centimetres"}, {1, "a whole metre"}, {length.Foot / 12, "an inch"},
	{2 * length.Foot, "two whole feet"},
}

// nearSlip is how near in metres a mark must lie to where a slip would have put it.
const nearSlip = 0.02

// causeOf names the usual slip that explains a reading or the place of a mark.
func (c *court) causeOf(s survey.Suspicion) string {
	if s.Reading >= 0 {
		j := c.v.Readings[c.active[s.Reading]]
		return slipOf(j.Expected, j.Metres, c.p.CheckAllowed())
	}
	at := c.places[s.Place].At
	lies := at.Add(s.Shift)
	if s.Shift.Len() > 4*nearSlip {
		if lies.To(plane.Point{X: -at.X, Y: at.Y}) < 2*nearSlip {
			return "left taken for right"
		}
		if lies.To(plane.Point{X: math.Copysign(at.Y, at.X), Y: math.Abs(at.X)}) < 2*nearSlip {
			return "up and over exchanged"
		}
	}
	for _, u := range unitsOfSlips {
		switch {
		case math.Abs(math.Abs(s.Shift.X)-u.metres) < nearSlip && math.Abs(s.Shift.Y) < nearSlip && u.metres > nearSlip:
			return u.name + " too far " + sideOf(s.Shift.X)
		case math.Abs(math.Abs(s.Shift.Y)-u.metres) < nearSlip && math.Abs(s.Shift.X) < nearSlip && u.metres > nearSlip:
			return u.name + " too far " + depthOf(s.Shift.Y)
		}
	}
	return ""
}

func sideOf(x float64) string {
	if x < 0 {
		return "to stage right"
	}
	return "to stage left"
}

func depthOf(y float64) string {
	if y < 0 {
		return "downstage"
	}
	return "upstage"
}
