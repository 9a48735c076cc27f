package prep

import (
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// FloorChange is what a revision of the plan means on one floor.
type FloorChange struct {
	Floor floor.ID
	Name  string

	// Down tells whether anything of the plan before is on the floor: whether a
	// mark has been placed.
	Down bool

	Lift []MeasuredMark // marks before that nothing needs any more and that have been printed or placed
	Lay  []MeasuredMark // marks that are needed now and were not before, with their measurements
	Tape []TapeChange   // by stock, as the production lists them; those without a change are left out

	// Minutes is how long two people work at it, by the team's rates.
	Minutes int
}

// TapeChange is the tape of one stock that a revision asks for, in metres of
// line: stretches that stay where they are count on neither side.
type TapeChange struct {
	Stock plan.StockID // empty: undecided
	More  float64      // to lay
	Less  float64      // not needed any more, to lift where it is down
}

// Net is how much more tape the stock must give; below zero for less.
func (t TapeChange) Net() float64 { return t.More - t.Less }

// Any tells whether the revision means anything on the floor.
func (c *FloorChange) Any() bool { return len(c.Lift)+len(c.Lay)+len(c.Tape) > 0 }

// liftFaster is how many times faster tape and tabs come off a floor than they
// go down (common practice, no source).
const liftFaster = 3

// RevisionOnFloors returns what turns each floor from the plan before into the
// plan after, in the order of the floors after; floors that only one of the two
// productions has are left out. A printed label is never moved: where its place
// is not needed any more it is lifted, and what is new has a new label.
func RevisionOnFloors(before, after *Production) []FloorChange {
	var out []FloorChange
	for i := range after.Floors {
		id := after.Floors[i].ID
		was, is := Work(before, id, ""), Work(after, id, "")
		if was != nil && is != nil {
			out = append(out, floorChange(after, was, is))
		}
	}
	return out
}

func floorChange(p *Production, was, is *FloorWork) FloorChange {
	c := FloorChange{Floor: is.Floor.ID, Name: is.Floor.Name}
	weld := p.Settings.Rules.Weld
	had, has := newPlaces(was.Marks, weld), newPlaces(is.Marks, weld)
	for _, m := range was.Marks {
		placed := !m.Progress.Placed.Open()
		c.Down = c.Down || placed
		if (placed || m.Frozen) && !has.holds(m) {
			c.Lift = append(c.Lift, m)
		}
	}
	for _, m := range is.Marks {
		if !had.holds(m) {
			c.Lay = append(c.Lay, m)
		}
	}
	c.Tape = tapeChange(p, was.Lines, is.Lines)
	c.Minutes = c.minutes(p.Settings.Rates)
	return c
}

// places finds marks by their printed label, or by where they are.
type places struct {
	labels map[string]bool
	cells  map[[2]int64][]plane.Point
	reach  float64 // metres within which two marks are one
}

func newPlaces(ms []MeasuredMark, reach float64) places {
	p := places{labels: map[string]bool{}, cells: map[[2]int64][]plane.Point{}, reach: max(reach, 1e-6)}
	for _, m := range ms {
		if m.Frozen {
			p.labels[m.Label] = true
		}
		k := p.cell(m.At)
		p.cells[k] = append(p.cells[k], m.At)
	}
	return p
}

func (p places) cell(at plane.Point) [2]int64 {
	return [2]int64{int64(math.Floor(at.X / p.reach)), int64(math.Floor(at.Y / p.reach))}
}

func (p places) holds(m MeasuredMark) bool {
	if m.Frozen && p.labels[m.Label] {
		return true
	}
	k := p.cell(m.At)
	for n := range int64(9) {
		for _, at := range p.cells[[2]int64{k[0] + n%3 - 1, k[1] + n/3 - 1}] {
			if at.To(m.At) <= p.reach {
				return true
			}
		}
	}
	return false
}

// tapeChange compares the lines of each stock. What both together cover beyond
// the ones is what the others have more.
func tapeChange(p *Production, was, is []floor.Line) []TapeChange {
	old, young := edgesByStock(was), edgesByStock(is)
	order := []plan.StockID{""}
	for _, s := range p.Stocks {
		order = append(order, s.ID)
	}
	tol := p.Settings.Rules.Weld
	var out []TapeChange
	for _, stock := range order {
		a, b := old[stock], young[stock]
		both := plane.UnionLength(slices.Concat(a, b), tol)
		t := TapeChange{Stock: stock, More: both - plane.UnionLength(a, tol), Less: both - plane.UnionLength(b, tol)}
		// Less than the tolerance is what rounding leaves.
		t.More, t.Less = above(t.More, tol), above(t.Less, tol)
		if t.More > 0 || t.Less > 0 {
			out = append(out, t)
		}
	}
	return out
}

func above(length, least float64) float64 {
	if length > least {
		return length
	}
	return 0
}

func edgesByStock(lines []floor.Line) map[plan.StockID][]plane.Edge {
	out := map[plan.StockID][]plane.Edge{}
	for _, l := range lines {
		out[l.Stock] = append(out[l.Stock], l.Edge)
	}
	return out
}

// minutes counts marks, their check measures, patches and tape for two people.
func (c *FloorChange) minutes(r Rates) int {
	corners := 0
	for _, m := range c.Lay {
		if m.Kind == marks.Corner {
			corners++
		}
	}
	more, less := 0.0, 0.0
	for _, t := range c.Tape {
		more, less = more+t.More, less+t.Less
	}
	lifted := float64(len(c.Lift)) / liftFaster
	if !c.Down {
		less, lifted = 0, 0
	}
	laid := float64(len(c.Lay))
	hours := (laid+lifted)/rate(r.MarksPerHour, DefaultRates.MarksPerHour) +
		laid*checksPerMark/rate(r.ChecksPerHour, DefaultRates.ChecksPerHour) +
		float64(corners)/(2*rate(r.PatchesPerHour, DefaultRates.PatchesPerHour)) +
		(more+less/liftFaster)/(2*rate(r.TapePerHour, DefaultRates.TapePerHour))
	return int(math.Ceil(hours*60 - 1e-9))
}

// Sentence says in one sentence what is to be done on the floor.
func (c *FloorChange) Sentence(p *Production) string {
	if !c.Any() {
		return c.Name + " stays as it is."
	}
	more, less := 0.0, 0.0
	for _, t := range c.Tape {
		more, less = more+t.More, less+t.Less
	}
	style := p.Style()
	s := fmt.Sprintf("%s: %s to lift and %s to lay, %s of tape to lay", c.Name, Counted(len(c.Lift), "mark"), Counted(len(c.Lay), "mark"), style.Format(more))
	if c.Down {
		s += fmt.Sprintf(" and %s to lift", style.Format(less))
	} else if less > 0 {
		s += fmt.Sprintf(" and %s not needed any more", style.Format(less))
	}
	return s + fmt.Sprintf(", about %s for two people.", Counted(c.Minutes, "minute"))
}
