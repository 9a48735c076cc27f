package prep

import (
	"math"
	"sort"
	"time"
)

// workTime counts the minutes in which the room is open and nobody is on a
// break, from a first day on. It turns minutes of work into times of day and
// back, so that the schedule itself knows neither nights nor breaks.
type workTime struct{ periods []period }

// period is a stretch of work without a break; from is the minutes of work
// before it.
type period struct {
	start, end time.Time
	from       int
}

func (p period) minutes() int { return int(p.end.Sub(p.start) / time.Minute) }

// maxDays bounds how far ahead work is laid out; what does not fit into a year
// is not prep week.
const maxDays = 366

// newWorkTime lays out the days from first until they hold so many minutes and
// reach the day of until.
func newWorkTime(r Rates, first, until time.Time, minutes int) workTime {
	var w workTime
	total := 0
	for day := 0; day < maxDays && (total < minutes || !dayOf(first, day).After(until)); day++ {
		for _, p := range shifts(r, dayOf(first, day)) {
			p.from = total
			total += p.minutes()
			w.periods = append(w.periods, p)
		}
	}
	return w
}

// dayOf returns midnight so many days after the day of t, in t's own zone.
func dayOf(t time.Time, days int) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d+days, 0, 0, 0, 0, t.Location())
}

// shifts returns the periods of work of one day. A break is due after so many
// hours of work, a quantum at least; the day never ends with one. Without a length
// of breaks, or without hours after which one is due, the day has none.
func shifts(r Rates, day time.Time) []period {
	from, to := hourMinutes(r.DayStart), hourMinutes(r.DayEnd)
	if to <= from {
		from, to = hourMinutes(DefaultRates.DayStart), hourMinutes(DefaultRates.DayEnd)
	}
	work, rest := to-from, hourMinutes(r.BreakLength)
	if r.BreakAfter > 0 && rest > 0 {
		work = max(quantum, hourMinutes(r.BreakAfter))
	}
	clock := func(minute int) time.Time {
		y, m, d := day.Date()
		return time.Date(y, m, d, 0, minute, 0, 0, day.Location())
	}
	var out []period
	for at := from; at < to; {
		end := min(at+work, to)
		out = append(out, period{start: clock(at), end: clock(end)})
		at = end + rest
	}
	return out
}

// hourMinutes turns hours into whole minutes of one day.
func hourMinutes(hours float64) int {
	if !(hours > 0) {
		return 0
	}
	return int(math.Round(min(hours, 24) * 60))
}

// before returns the minutes of work before t, rounded down.
func (w workTime) before(t time.Time) int {
	i := sort.Search(len(w.periods), func(i int) bool { return w.periods[i].end.After(t) })
	if i == len(w.periods) {
		return w.total()
	}
	p := w.periods[i]
	if !t.After(p.start) {
		return p.from
	}
	return p.from + int(t.Sub(p.start)/time.Minute)
}

func (w workTime) total() int {
	if len(w.periods) == 0 {
		return 0
	}
	last := w.periods[len(w.periods)-1]
	return last.from + last.minutes()
}

// segments returns the times of day between two counts of minutes, one for each
// stretch without a break; none for no minutes.
func (w workTime) segments(from, to int) []Segment {
	var out []Segment
	i := sort.Search(len(w.periods), func(i int) bool { return w.periods[i].from+w.periods[i].minutes() > from })
	for ; i < len(w.periods) && w.periods[i].from < to; i++ {
		p := w.periods[i]
		a, b := max(from, p.from)-p.from, min(to-p.from, p.minutes())
		out = append(out, Segment{
			Start: p.start.Add(time.Duration(a) * time.Minute),
			End:   p.start.Add(time.Duration(b) * time.Minute),
		})
	}
	return out
}

// start returns the time of day at which work can begin after so many minutes
// of work.
func (w workTime) start(minutes int) time.Time {
	for _, p := range w.periods {
		if minutes < p.from+p.minutes() {
			return p.start.Add(time.Duration(minutes-p.from) * time.Minute)
		}
	}
	if len(w.periods) == 0 {
		return time.Time{}
	}
	return w.periods[len(w.periods)-1].end
}

// nextHalfHour returns t, or the next half hour by the clock, also on a day on which
// the clocks are changed; zero stays zero.
func nextHalfHour(t time.Time) time.Time {
	past := time.Duration(t.Minute()%30)*time.Minute + time.Duration(t.Second())*time.Second + time.Duration(t.Nanosecond())
	if t.IsZero() || past == 0 {
		return t
	}
	return t.Add(30*time.Minute - past)
}
