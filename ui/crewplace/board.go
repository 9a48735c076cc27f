package crewplace

import (
	"fmt"
	"slices"
	"time"

	"groundrow/prep"
)

// board is who does what when, over one or more days: people down the side, time across.
type board struct {
	days  []boardDay
	lanes []lane
}

// boardDay is one day across the board.
type boardDay struct {
	title    string
	today    bool
	from, to time.Time      // what the board shows of the day
	work     []prep.Segment // the room is open and nobody is on a break
}

// lane is one person's work.
type lane struct {
	person string // empty: work that nobody is there for
	name   string
	note   string
	bars   []bar
	depth  int // how many bars lie above each other where they clash
}

// bar is one stretch of a task on one day.
type bar struct {
	task     string
	name     string
	detail   string
	day      int
	from, to time.Time
	work     []prep.Segment // without the breaks between from and to
	level    int            // zero is the uppermost
	pinned   bool
	trouble  bool
}

// margin is what is shown of the closed room before and after its hours.
const margin = 30 * time.Minute

// boardOf lays the plan out over the days.
func boardOf(p *prep.Production, plan prep.CrewPlan, days []time.Time, now time.Time) board {
	b := board{}
	for _, day := range days {
		b.days = append(b.days, dayOf(p, day, now, len(days) == 1))
	}
	for _, x := range p.People {
		l := lane{person: x.ID, name: x.Name, note: x.Role}
		b.fill(&l, p, plan, func(a prep.Assignment) bool { return slices.Contains(a.People, x.ID) })
		b.lanes = append(b.lanes, l)
	}
	nobody := lane{name: "Nobody yet", note: "no one in the team can"}
	b.fill(&nobody, p, plan, func(a prep.Assignment) bool { return len(a.People) == 0 })
	if len(nobody.bars) > 0 {
		b.lanes = append(b.lanes, nobody)
	}
	return b
}

func dayOf(p *prep.Production, day, now time.Time, alone bool) boardDay {
	d := boardDay{title: day.Format("Mon 2 Jan"), today: sameDay(day, now), work: p.Settings.Rates.Shifts(day)}
	if alone {
		d.title = day.Format("Monday 2 January")
	}
	if n := len(d.work); n > 0 {
		d.from, d.to = d.work[0].Start, d.work[n-1].End
	} else {
		d.from, d.to = day.Add(10*time.Hour), day.Add(18*time.Hour)
	}
	d.from, d.to = d.from.Add(-margin), d.to.Add(margin)
	return d
}

// fill puts a lane's tasks on it, one bar for each day, and moves those that clash below each other.
func (b *board) fill(l *lane, p *prep.Production, plan prep.CrewPlan, mine func(prep.Assignment) bool) {
	for _, a := range plan.Tasks {
		if !mine(a) {
			continue
		}
		for i, d := range b.days {
			work := within(a.Segments, d)
			if len(work) == 0 {
				continue
			}
			l.bars = append(l.bars, bar{
				task: a.Task, name: a.Name, detail: detailOf(p, a), day: i,
				from: work[0].Start, to: work[len(work)-1].End, work: work,
				pinned: a.Pinned, trouble: a.Late > 0 || a.Clash || a.Short(),
			})
		}
	}
	l.stack()
}

// within returns the segments that run on a day, in their order.
func within(segments []prep.Segment, d boardDay) []prep.Segment {
	var out []prep.Segment
	for _, s := range segments {
		if s.Start.Before(d.to) && s.End.After(d.from) {
			out = append(out, s)
		}
	}
	return out
}

// stack gives every bar the uppermost level that is free when it begins.
func (l *lane) stack() {
	var free []time.Time
	l.depth = 1
	for i := range l.bars {
		at := slices.IndexFunc(free, func(t time.Time) bool { return !t.After(l.bars[i].from) })
		if at < 0 {
			at = len(free)
			free = append(free, time.Time{})
		}
		free[at] = l.bars[i].to
		l.bars[i].level = at
		l.depth = max(l.depth, len(free))
	}
}

// detailOf says how much there is of a task and what is wrong with it.
func detailOf(p *prep.Production, a prep.Assignment) string {
	text := amount(p, a)
	if text == "" {
		text = worked(a.Work)
	}
	if a.Late > 0 {
		text = "LATE by " + worked(a.Late) + " · " + text
	}
	if a.Clash {
		text = "CLASH · " + text
	}
	if a.Short() {
		text += fmt.Sprintf(" · %d of %d people", len(a.People), a.Wanted)
	}
	if a.Pinned {
		text += " · pinned"
	}
	return text
}

func sameDay(a, b time.Time) bool {
	ya, ma, da := a.Date()
	yb, mb, db := b.In(a.Location()).Date()
	return ya == yb && ma == mb && da == db
}

func midnight(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, t.Location())
}

// mostDays bounds how many days the whole of the work is shown over.
const mostDays = 14

// daysOf returns every day from the first to the last work.
func daysOf(plan prep.CrewPlan) []time.Time {
	if plan.Start.IsZero() {
		return nil
	}
	var out []time.Time
	for day := midnight(plan.Start); !day.After(plan.End) && len(out) < 400; day = day.AddDate(0, 0, 1) {
		out = append(out, day)
	}
	return out
}
