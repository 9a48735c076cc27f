package prep

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

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
			return cmp.Compare(a.Beyond, b.Beyond)
		})
		if best.Beyond <= 0 {
			return
		}
		c.v.Faults = append(c.v.Faults, c.faultOf(best))
	}
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
