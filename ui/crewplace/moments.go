package crewplace

import (
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/ui/fields"
)

// momentForm is how a table writes a day and a time: short enough for a column, and read back by the same parser.
const momentForm = "Mon 2 Jan 15:04"

func shownMoment(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(momentForm)
}

// edge is the time of day that a day alone stands for.
type edge int

const (
	opening edge = iota
	closing
)

// readMoment reads a day with or without a time of day; a day alone is when the room opens or closes. Empty text is no
// time.
func readMoment(text string, p *prep.Production, e edge) (time.Time, error) {
	near := p.Settings.FirstRehearsal
	if near.IsZero() {
		near = time.Now()
	}
	at, err := fields.ParseMoment(text, near)
	if err == nil {
		return at, nil
	}
	day, dayErr := fields.ParseDay(text, near)
	if dayErr != nil {
		return time.Time{}, err
	}
	shifts := p.Settings.Rates.Shifts(day)
	switch {
	case len(shifts) == 0:
		return day, nil
	case e == opening:
		return shifts[0].Start, nil
	default:
		return shifts[len(shifts)-1].End, nil
	}
}

// worked writes a length of work: "6 h 40".
func worked(d time.Duration) string {
	minutes := int(d.Round(time.Minute) / time.Minute)
	var b strings.Builder
	b.WriteString(itoa(minutes / 60))
	b.WriteString(" h")
	if minutes%60 != 0 {
		b.WriteString(" ")
		if minutes%60 < 10 {
			b.WriteString("0")
		}
		b.WriteString(itoa(minutes % 60))
	}
	return b.String()
}
