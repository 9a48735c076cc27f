package prep

import (
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
	"unicode"

	ics "github.com/arran4/golang-ical"
)

// WriteCalendar writes the calls of a crew plan and the first rehearsal as an
// iCalendar file (RFC 5545), one event for each call, for one person or, with an
// empty identifier, for the whole team. Times are in UTC, so that every calendar
// shows them in its own zone. An event keeps its identifier from one writing to
// the next, so that reading the file again moves it and does not double it; that
// of the rehearsal follows from the production's title.
// stamp is the time of writing.
func WriteCalendar(w io.Writer, p *Production, c CrewPlan, person string, stamp time.Time) error {
	cal := ics.NewCalendarFor("Groundrow")
	cal.SetName(plain(p.Settings.Title))
	names := map[string]string{}
	for _, t := range p.Tasks {
		names[t.ID] = t.Name
	}
	for _, call := range c.Calls() {
		if person != "" && call.Person != person {
			continue
		}
		e := cal.AddEvent(fmt.Sprintf("call-%s-%s@groundrow", call.Person, call.Day.Format("20060102")))
		e.SetDtStampTime(stamp)
		e.SetStartAt(call.Start)
		e.SetEndAt(call.End)
		e.SetSummary(plain(fmt.Sprintf("%s: call for %s", p.Settings.Title, p.personName(call.Person))))
		e.SetDescription(plain(callText(call, names)))
		if where := p.callFloors(call); where != "" {
			e.SetLocation(plain(where))
		}
	}
	if first := p.Settings.FirstRehearsal; !first.IsZero() {
		title := sha256.Sum256([]byte(p.Settings.Title))
		e := cal.AddEvent(fmt.Sprintf("first-rehearsal-%x@groundrow", title[:8]))
		e.SetDtStampTime(stamp)
		e.SetStartAt(first)
		e.SetSummary(plain(p.Settings.Title + ": first rehearsal"))
	}
	if err := cal.SerializeTo(w, ics.WithNewLineWindows); err != nil {
		return fmt.Errorf("write calendar: %w", err)
	}
	return nil
}

// callText lists what is done on a call and when its breaks are.
func callText(c Call, names map[string]string) string {
	var lines []string
	for _, t := range c.Tasks {
		lines = append(lines, names[t])
	}
	for i := 1; i < len(c.Segments); i++ {
		if from, to := c.Segments[i-1].End, c.Segments[i].Start; to.After(from) {
			lines = append(lines, fmt.Sprintf("Free %s to %s", from.Format("15:04"), to.Format("15:04")))
		}
	}
	return strings.Join(lines, "\n")
}

// callFloors names the floors that a call's tasks are counted on.
func (p *Production) callFloors(c Call) string {
	var out []string
	for _, t := range p.Tasks {
		f := p.Floor(t.Floor)
		if f == nil || !slices.Contains(c.Tasks, t.ID) || slices.Contains(out, f.Name) {
			continue
		}
		out = append(out, f.Name)
	}
	return Listed(out)
}

// plain drops what a calendar text cannot hold: control characters but the line
// break, and broken encoding.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && unicode.IsControl(r) || r == unicode.ReplacementChar {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}
