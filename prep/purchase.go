package prep

import (
	"fmt"
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
)

// Purchase returns what must be bought of every stock for all floors together.
func Purchase(p *Production, works func(floor.ID) *FloorWork) []supplies.Run {
	return purchase(p, floorWorks(p, works))
}

// KitNeeds returns what must be bought of the kit. Everyone who can kneel and
// lay tape counts as placing; the floor with most marks sets the labels; two
// long tapes are in use at once.
func KitNeeds(p *Production, works func(floor.ID) *FloorWork) []supplies.Need {
	return kitNeeds(p, floorWorks(p, works))
}

func purchase(p *Production, floors []*FloorWork) []supplies.Run {
	var runs []supplies.FloorRuns
	for _, w := range floors {
		runs = append(runs, supplies.FloorRuns{Floor: w.Floor.ID, Runs: w.Tape, Needed: p.Needed()})
	}
	return supplies.Purchase(runs, p.Stocks, p.Orders)
}

// Needed is the day by which tape and kit must be there: when the first of the
// tasks that lay them can begin, as far as a day is set for it, and the first
// rehearsal otherwise.
func (p *Production) Needed() time.Time {
	var first time.Time
	for _, t := range p.Tasks {
		if t.Done || t.Count != ByMarks && t.Count != ByTape && t.Count != ByPatches {
			continue
		}
		if t.Pinned.IsZero() {
			first = earlier(first, t.Earliest)
		} else {
			first = earlier(first, t.Pinned)
		}
	}
	if first.IsZero() {
		return p.Settings.FirstRehearsal
	}
	return first
}

// longTapes is how many long tapes a pair of people uses at once.
const longTapes = 2

func kitNeeds(p *Production, floors []*FloorWork) []supplies.Need {
	c := supplies.Counts{Tapes: longTapes}
	c.StandIns, c.Ballast = StandInCount(p)
	for _, person := range p.People {
		if person.Hands {
			c.People++
		}
	}
	for _, w := range floors {
		c.Marks = max(c.Marks, len(w.Marks))
	}
	return supplies.Needs(p.Items, p.Orders, c, p.Needed())
}

// supplyName returns the name of a stock or an item.
func (p *Production) supplyName(id string) string {
	for _, s := range p.Stocks {
		if string(s.ID) == id {
			return s.Name
		}
	}
	for _, it := range p.Items {
		if it.ID == id {
			return it.Name
		}
	}
	return id
}

// supplyProblems names what is short, late or over budget for all floors together.
func (j *job) supplyProblems() []Problem {
	var out []Problem
	add := func(rule, where, id, got, limit string) {
		out = append(out, Problem{Rule: rule, Where: where, Place: PlaceSupplies, ID: id, Got: got, Limit: limit})
	}
	for _, r := range j.buy {
		s := j.p.Stock(r.Stock)
		if s == nil {
			if r.Total > 0 {
				out = append(out, Problem{Rule: RuleNoStock, Where: "the floors", Place: PlaceTape, Got: j.p.Style().Format(r.Total)})
			}
			continue
		}
		if !(s.Roll > 0) && r.Total > 0 {
			add(RuleRoll, s.Name, string(s.ID), "", "")
		}
		if r.Short() {
			add(RuleTape, s.Name, string(s.ID), Counted(r.Buy, "roll"), day(r.OrderBy))
		}
		if r.Late > 0 {
			add(RuleLateOrder, s.Name, string(s.ID), Counted(r.Late, "roll"), day(j.p.Needed()))
		}
	}
	for _, k := range kitByDay(j.needs) {
		add(RuleItem, k.name(), k.first.Item.ID, Counted(k.pieces, "piece"), day(k.first.OrderBy))
	}
	for _, n := range j.needs {
		if n.Late > 0 {
			add(RuleLateOrder, n.Item.Name, n.Item.ID, fmt.Sprint(n.Late), day(j.p.Needed()))
		}
	}
	if j.budget.Over > 0 {
		add(RuleBudget, "", "", j.p.Money(j.budget.Over), j.p.Money(j.budget.Limit))
	}
	return out
}
