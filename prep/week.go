package prep

import (
	"fmt"
	"slices"
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
)

// Week is the picture that is pinned to the wall: how long there is left, what
// every part of the job has come to, and what endangers the first rehearsal.
type Week struct {
	DaysLeft int  // whole days from today to the first rehearsal; below zero after it
	Dated    bool // a first rehearsal is set; without it DaysLeft means nothing
	Days     []Day
	Parts    []Part
	Dangers  []Problem // at most three, the worst first
	Today    []PersonDay
	Crew     CrewPlan
}

// Day is one day of prep week.
type Day struct {
	Date      time.Time // midnight
	Today     bool
	Rehearsal bool
	Calls     []Call
	Deadlines []Deadline
}

// Deadline is something that must be done on a day.
type Deadline struct {
	What  string
	Place string
	ID    string // the row to select there
	Done  bool
}

// Part is one line of the week: a sentence on one part of the job.
type Part struct {
	Place    string // where it is done and cured
	Sentence string
	Figure   string // the figure that matters; empty when there is none yet
	State    State
}

// PersonDay is what one person does today.
type PersonDay struct {
	Person Person
	Call   *Call // nil: not called
	Tasks  []string
}

// mostDangers is how many dangers are shown: more would not be read.
const mostDangers = 3

// WeekOf returns the week as it stands on the day of today. works returns what
// was computed for a floor over all scenes.
func WeekOf(p *Production, works func(floor.ID) *FloorWork, today time.Time) Week {
	j := newJob(p, works, today)
	w := Week{Crew: j.crew, Parts: j.parts(), Dangers: j.dangers()}
	if first := p.Settings.FirstRehearsal; !first.IsZero() {
		w.Dated, w.DaysLeft = true, daysBetween(today, first)
	}
	w.Days = j.days()
	w.Today = j.today()
	return w
}

// PlaceStates returns the state of every place of the window by its name. Week
// itself stands for the whole job: it needs you when any part does.
func PlaceStates(p *Production, works func(floor.ID) *FloorWork) map[string]State {
	states := map[string]State{}
	j := newJob(p, works, time.Time{})
	parts := j.parts()
	ready := true
	for _, part := range parts {
		states[part.Place] = part.State
		ready = ready && part.State == Ready
	}
	states[PlaceWeek] = UnderWay
	anyPart := func(s State) bool {
		return slices.ContainsFunc(parts, func(p Part) bool { return p.State == s })
	}
	switch {
	case p.Settings.FirstRehearsal.IsZero() || anyPart(NeedsYou):
		states[PlaceWeek] = NeedsYou
	case ready:
		states[PlaceWeek] = Ready
	}
	return states
}

// daysBetween counts calendar days, by the calendar of the second.
func daysBetween(a, b time.Time) int {
	ya, ma, da := a.In(b.Location()).Date()
	yb, mb, db := b.Date()
	from := time.Date(ya, ma, da, 0, 0, 0, 0, time.UTC)
	to := time.Date(yb, mb, db, 0, 0, 0, 0, time.UTC)
	return int(to.Sub(from).Hours() / 24)
}

// days lays out prep week from its start, or from today when that is earlier, to
// the first rehearsal or the end of work, whichever is later.
func (j *job) days() []Day {
	s := j.p.Settings
	first, last := s.PrepStart, s.FirstRehearsal
	if first.IsZero() || !j.now.IsZero() && j.now.Before(first) {
		first = j.now
	}
	if j.crew.End.After(last) {
		last = j.crew.End
	}
	if first.IsZero() || last.IsZero() {
		return nil
	}
	calls := j.crew.Calls()
	deadlines := j.deadlines()
	var out []Day
	for i := range maxWeekDays {
		d := Day{Date: dayOf(first, i)}
		if daysBetween(d.Date, last) < 0 {
			break
		}
		d.Today = !j.now.IsZero() && daysBetween(j.now, d.Date) == 0
		d.Rehearsal = !s.FirstRehearsal.IsZero() && daysBetween(d.Date, s.FirstRehearsal) == 0
		for _, c := range calls {
			if daysBetween(c.Day, d.Date) == 0 {
				d.Calls = append(d.Calls, c)
			}
		}
		for _, l := range deadlines {
			if daysBetween(l.on, d.Date) == 0 {
				d.Deadlines = append(d.Deadlines, l.Deadline)
			}
		}
		out = append(out, d)
	}
	return out
}

// maxWeekDays bounds what is shown when the dates are far apart.
const maxWeekDays = 60

type datedDeadline struct {
	Deadline
	on time.Time
}

// deadlines gathers what is due on which day: tasks, and orders by the day they
// must be placed or are expected.
func (j *job) deadlines() []datedDeadline {
	var out []datedDeadline
	add := func(on time.Time, what, place, id string, done bool) {
		if !on.IsZero() {
			out = append(out, datedDeadline{Deadline{what, place, id, done}, on})
		}
	}
	for _, t := range j.p.Tasks {
		if !t.Due.Equal(j.p.Settings.FirstRehearsal) { // all else is due then anyway
			add(t.Due, t.Name+" due", PlaceCrew, t.ID, t.Done)
		}
	}
	for _, r := range j.buy {
		if s := j.p.Stock(r.Stock); s != nil && r.Short() {
			add(r.OrderBy, "Order "+s.Name, PlaceSupplies, string(s.ID), false)
		}
	}
	for _, k := range kitByDay(j.needs) {
		add(k.first.OrderBy, "Order "+k.name(), PlaceSupplies, k.first.Item.ID, false)
	}
	for _, o := range j.p.Orders {
		if o.State == supplies.Ordered {
			add(o.Expected, j.p.supplyName(o.For)+" expected", PlaceSupplies, o.For, false)
		}
	}
	return out
}

// kitOfDay is what of the kit must be ordered by one day: more items follow the
// first; pieces are those of all.
type kitOfDay struct {
	first  supplies.Need
	more   int
	pieces int
}

func (k kitOfDay) name() string {
	if k.more == 0 {
		return k.first.Item.Name
	}
	return fmt.Sprintf("%s and %d more of the kit", k.first.Item.Name, k.more)
}

// kitByDay gathers what is short by the day by which it must be ordered.
func kitByDay(needs []supplies.Need) []kitOfDay {
	var out []kitOfDay
	for _, n := range needs {
		if !n.Short {
			continue
		}
		i := slices.IndexFunc(out, func(k kitOfDay) bool { return k.first.OrderBy.Equal(n.OrderBy) })
		if i < 0 {
			out = append(out, kitOfDay{first: n, pieces: n.Buy})
			continue
		}
		out[i].more++
		out[i].pieces += n.Buy
	}
	return out
}

// today says what everyone in the team does today.
func (j *job) today() []PersonDay {
	calls := j.crew.Calls()
	names := map[string]string{}
	for _, t := range j.p.Tasks {
		names[t.ID] = t.Name
	}
	var out []PersonDay
	for _, person := range j.p.People {
		d := PersonDay{Person: person}
		for i, c := range calls {
			if c.Person != person.ID || daysBetween(c.Day, j.now) != 0 {
				continue
			}
			d.Call = &calls[i]
			for _, t := range c.Tasks {
				d.Tasks = append(d.Tasks, names[t])
			}
		}
		out = append(out, d)
	}
	return out
}
