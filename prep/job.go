package prep

import (
	"fmt"
	"slices"
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
)

const ordered = supplies.Ordered

// job is a production with what follows from it over all its floors: the purse,
// the crew plan and the stand-ins.
type job struct {
	p      *Production
	now    time.Time
	floors []*FloorWork // in the floors' order
	buy    []supplies.Run
	needs  []supplies.Need
	budget supplies.Budget
	crew   CrewPlan
}

func newJob(p *Production, works func(floor.ID) *FloorWork, now time.Time) *job {
	j := &job{p: p, now: now}
	for i := range p.Floors {
		if w := works(p.Floors[i].ID); w != nil {
			j.floors = append(j.floors, w)
		}
	}
	j.buy = purchase(p, j.floors)
	j.needs = kitNeeds(p, j.floors)
	j.budget = supplies.BudgetOf(j.buy, j.needs, p.Stocks, p.Orders, p.Settings.BudgetCents)
	j.crew = Schedule(p, QuantitiesOf(p, works), now)
	return j
}

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

func floorWorks(p *Production, works func(floor.ID) *FloorWork) []*FloorWork {
	var out []*FloorWork
	for i := range p.Floors {
		if w := works(p.Floors[i].ID); w != nil {
			out = append(out, w)
		}
	}
	return out
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
	c := supplies.Counts{Tapes: longTapes, StandIns: StandInCount(p)}
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

// Money writes an amount in hundredths in the production's currency.
func (p *Production) Money(cents int) string {
	sign := ""
	if cents < 0 {
		sign, cents = "−", -cents
	}
	return fmt.Sprintf("%s%s%d.%02d", sign, p.Settings.Currency, cents/100, cents%100)
}

// day writes a day as the team says it: "Monday 10 March".
func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format("Monday 2 January")
}

// SupplyProblems names what is short, late or over budget for all floors
// together. now decides which day to order by has passed; zero: none.
func SupplyProblems(p *Production, works func(floor.ID) *FloorWork) []Problem {
	j := &job{p: p, floors: floorWorks(p, works)}
	j.buy = purchase(p, j.floors)
	j.needs = kitNeeds(p, j.floors)
	j.budget = supplies.BudgetOf(j.buy, j.needs, p.Stocks, p.Orders, p.Settings.BudgetCents)
	return j.supplyProblems()
}

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
			add(RuleTape, s.Name, string(s.ID), count(r.Buy, "roll"), day(r.OrderBy))
		}
		if r.Late > 0 {
			add(RuleLateOrder, s.Name, string(s.ID), count(r.Late, "roll"), day(j.p.Needed()))
		}
	}
	for _, n := range j.needs {
		if n.Short {
			add(RuleItem, n.Item.Name, n.Item.ID, fmt.Sprint(n.Buy), day(n.OrderBy))
		}
		if n.Late > 0 {
			add(RuleLateOrder, n.Item.Name, n.Item.ID, fmt.Sprint(n.Late), day(j.p.Needed()))
		}
	}
	if j.budget.Over > 0 {
		add(RuleBudget, "", "", j.p.Money(j.budget.Over), j.p.Money(j.budget.Limit))
	}
	return out
}

// Problems names what is wrong with the plan: tasks that wait for each other,
// are late, lack people, or are pinned where they cannot be.
func (c CrewPlan) Problems(p *Production) []Problem {
	names := map[string]string{}
	for _, t := range p.Tasks {
		names[t.ID] = t.Name
	}
	var out []Problem
	add := func(rule, where, id, got, limit string) {
		out = append(out, Problem{Rule: rule, Where: where, Place: PlaceCrew, ID: id, Got: got, Limit: limit})
	}
	for _, group := range c.Cycles {
		var ns []string
		for _, id := range group {
			ns = append(ns, names[id])
		}
		add(RuleCycle, ns[0], group[0], listed(ns), "")
	}
	if len(p.People) == 0 && len(c.Tasks) > 0 {
		add(RuleNoPeople, "", "", "", "")
	}
	for _, a := range c.Tasks {
		if a.Late > 0 {
			add(RuleLate, a.Name, a.Task, moment(a.End), moment(a.Due))
		}
		if a.Short() && len(p.People) > 0 {
			add(RuleHands, a.Name, a.Task, fmt.Sprint(len(a.People)), fmt.Sprint(a.Wanted))
		}
		if a.Clash {
			add(RuleClash, a.Name, a.Task, "", "")
		}
	}
	return out
}

// moment writes a time of day on a day.
func moment(t time.Time) string { return t.Format("Mon 2 Jan 15:04") }

// count writes a number of things, with an s when there is not one.
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// listed joins names with commas and an "and".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		out := names[0]
		for _, name := range names[1 : n-1] {
			out += ", " + name
		}
		return out + " and " + names[n-1]
	}
}

// worst orders rules by how much they endanger the first rehearsal.
var worst = []string{
	RuleNoPlan, RuleNoRehearsal, RuleOwner, RuleNotMeasured, RuleLate, RuleCycle, RuleNoPeople, RuleLateOrder,
	RuleKeepClear, RuleTape, RuleHands, RuleClash, RuleOutside, RuleOpen, RuleNoStock, RuleObjects,
	RuleItem, RulePivots, RuleStandIn, RuleBudget,
}

// dangers returns the worst problem of each of the gravest rules.
func (j *job) dangers() []Problem {
	all := j.problems()
	var out []Problem
	for _, rule := range worst {
		if len(out) == mostDangers {
			break
		}
		if i := slices.IndexFunc(all, func(p Problem) bool { return p.Rule == rule }); i >= 0 {
			out = append(out, all[i])
		}
	}
	return out
}

// problems gathers the problems of every part of the job. Those of a stage do
// not endanger the first rehearsal and are left to the transfer.
func (j *job) problems() []Problem {
	var out []Problem
	if j.p.Settings.FirstRehearsal.IsZero() {
		out = append(out, Problem{Rule: RuleNoRehearsal, Place: PlaceWeek})
	}
	if len(j.p.Plan.Elements) == 0 {
		out = append(out, Problem{Rule: RuleNoPlan, Place: PlacePlan})
	}
	for _, w := range j.floors {
		if w.Floor.Kind != floor.Stage {
			out = append(out, w.Problems...)
		}
	}
	out = append(out, j.supplyProblems()...)
	out = append(out, j.crew.Problems(j.p)...)
	return append(out, StandInProblems(j.p)...)
}
