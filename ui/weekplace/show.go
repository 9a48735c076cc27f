package weekplace

import (
	"fmt"
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/ui/desk"
)

// page is everything that the place shows, in words and without a toolkit.
type page struct {
	title    string
	figure   string // days left
	headline string
	when     string
	dated    bool
	dangers  []lineTo
	days     []dayColumn
	opens    float64 // hours after midnight between which the bars of a day run
	closes   float64
	parts    []partLine
	today    string
	people   []personLine
}

// lineTo is a line that leads to its cure.
type lineTo struct {
	text string
	link string
	goes target
}

// target is a place and what to select there. The place Week stands for its own dates.
type target struct {
	place desk.Name
	what  desk.Selection
}

// dayColumn is one day of prep week.
type dayColumn struct {
	weekday, date string
	today, past   bool
	rehearsal     string // its time; empty on other days
	calls         []callBar
	deadlines     []deadline
}

// bare tells whether nothing is to be said of the day.
func (d dayColumn) bare() bool {
	return !d.today && d.rehearsal == "" && len(d.calls)+len(d.deadlines) == 0
}

// callBar is one person's call, in hours after midnight.
type callBar struct {
	name       string
	times      string
	start, end float64
}

type deadline struct {
	what string
	done bool
	late bool // its day has gone by
	goes target
}

// partLine is one part of the job.
type partLine struct {
	place    desk.Name
	state    prep.State
	figure   string
	sentence string
	link     string
	goes     target
}

// personLine is what one person does today.
type personLine struct {
	name, role string
	times      string
	tasks      []string
	called     bool
}

// pageOf turns a view into the page of one day.
func pageOf(v *desk.View, now time.Time) page {
	week := prep.WeekOf(v.P, v.Work, now)
	rates := v.P.Settings.Rates
	p := page{
		title: v.P.Settings.Title, dated: week.Dated,
		opens: rates.DayStart, closes: rates.DayEnd,
		today: "Today, " + now.Format("Monday 2 January"),
	}
	if !(p.closes > p.opens) {
		p.opens, p.closes = prep.DefaultRates.DayStart, prep.DefaultRates.DayEnd
	}
	p.figure, p.headline = countdown(week)
	if first := v.P.Settings.FirstRehearsal; week.Dated {
		p.when = first.Format("Monday 2 January 2006, 15:04")
	}
	for _, d := range week.Dangers {
		p.dangers = append(p.dangers, lineTo{d.Sentence(), linkTo(desk.Name(d.Place)), targetOf(v.P, d.Place, d.ID)})
	}
	names := shortNames(v.P.People)
	for _, d := range week.Days {
		p.days = append(p.days, columnOf(v.P, d, names, now))
	}
	troubles := firstProblems(v)
	for _, part := range week.Parts {
		p.parts = append(p.parts, partOf(v.P, part, troubles[part.Place]))
	}
	for _, d := range week.Today {
		p.people = append(p.people, personOf(d))
	}
	return p
}

// countdown is the large figure and the words after it.
func countdown(w prep.Week) (figure, words string) {
	switch n := w.DaysLeft; {
	case !w.Dated:
		return "?", "No date for the first rehearsal yet"
	case n == 0:
		return "0", "The first rehearsal is today"
	case n == 1:
		return "1", "day to the first rehearsal"
	case n > 1:
		return fmt.Sprint(n), "days to the first rehearsal"
	case n == -1:
		return "1", "day since the first rehearsal"
	default:
		return fmt.Sprint(-n), "days since the first rehearsal"
	}
}

func columnOf(p *prep.Production, d prep.Day, names map[string]string, now time.Time) dayColumn {
	c := dayColumn{
		weekday: d.Date.Format("Mon"), date: d.Date.Format("2 Jan"), today: d.Today,
		past: !d.Today && d.Date.Before(now),
	}
	if d.Rehearsal {
		c.rehearsal = p.Settings.FirstRehearsal.Format("15:04")
	}
	for _, call := range d.Calls {
		c.calls = append(c.calls, callBar{
			name: names[call.Person], times: span(call), start: hourOf(call.Start, d.Date), end: hourOf(call.End, d.Date),
		})
	}
	for _, l := range d.Deadlines {
		c.deadlines = append(c.deadlines, deadline{l.What, l.Done, c.past && !l.Done, targetOf(p, l.Place, l.ID)})
	}
	return c
}

func hourOf(t, day time.Time) float64 { return t.Sub(day).Hours() }

func span(c prep.Call) string { return c.Start.Format("15:04") + "–" + c.End.Format("15:04") }

// shortNames gives every person the first word of their name, or the whole of it where two share one.
func shortNames(people []prep.Person) map[string]string {
	first := func(p prep.Person) string {
		word, _, _ := strings.Cut(strings.TrimSpace(p.Name), " ")
		return word
	}
	times := map[string]int{}
	for _, p := range people {
		times[first(p)]++
	}
	out := map[string]string{}
	for _, p := range people {
		out[p.ID] = first(p)
		if times[first(p)] > 1 {
			out[p.ID] = p.Name
		}
	}
	return out
}

func personOf(d prep.PersonDay) personLine {
	l := personLine{name: d.Person.Name, role: d.Person.Role, times: "not called", tasks: d.Tasks}
	if d.Call != nil {
		l.called, l.times = true, span(*d.Call)
	}
	return l
}

// partOf is one line of the page. A part that needs somebody leads to its first trouble, when that has a row.
func partOf(p *prep.Production, part prep.Part, trouble string) partLine {
	l := partLine{
		place: desk.Name(part.Place), state: part.State, figure: part.Figure, sentence: part.Sentence,
		link: linkTo(desk.Name(part.Place)), goes: target{place: desk.Name(part.Place)},
	}
	switch part.State {
	case prep.Nothing:
		l.link, l.goes.place = firstStep(p, l.place)
	case prep.NeedsYou:
		l.goes = targetOf(p, part.Place, trouble)
	}
	return l
}

// firstProblems returns, by place, the identifier of the first thing that is wrong there and has a row.
func firstProblems(v *desk.View) map[string]string {
	var all []prep.Problem
	for _, f := range v.P.Floors {
		if w := v.Work(f.ID); w != nil {
			all = append(all, w.Problems...)
		}
	}
	all = append(all, prep.StandInProblems(v.P)...)
	first := map[string]string{}
	for _, problem := range all {
		if problem.ID != "" && first[problem.Place] == "" {
			first[problem.Place] = problem.ID
		}
	}
	return first
}
