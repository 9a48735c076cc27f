package fields

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"
)

const (
	dayForm  = "Mon 2 Jan 2006"
	timeForm = "15:04"
)

// What is read after commas, ordinals and runs of spaces have been taken out. Figures alone are read only in the order
// year, month, day: any other order means one thing here and another there.
var (
	fullForms  = []string{"2006-01-02", "2 Jan 2006", "2 January 2006", "Jan 2 2006", "January 2 2006"}
	shortForms = []string{"2 Jan", "2 January", "Jan 2", "January 2"}
	hourForms  = []string{"15:04", "15.04", "3:04pm", "3:04 pm", "3pm", "3 pm"}
	weekdays   = regexp.MustCompile(`(?i)^(mon|tue|wed|thu|fri|sat|sun)[a-z]*\.? +`)
	ordinals   = regexp.MustCompile(`(?i)\b(\d{1,2})(st|nd|rd|th)\b`)
)

// FormatDay writes a day, such as Mon 30 Nov 2026; the zero time is empty.
func FormatDay(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return day.Format(dayForm)
}

// FormatMoment writes a day and the time of day, such as Mon 30 Nov 2026 18:30; the zero time is empty.
func FormatMoment(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return at.Format(dayForm + " " + timeForm)
}

// ParseDay reads a day: 2026-11-30, 30 Nov, Nov 30, Mon 30 November 2026. Without a year it is the one nearest to
// near; a day of the week that disagrees is refused. The result is midnight in near's location; empty text is the zero time.
func ParseDay(text string, near time.Time) (time.Time, error) {
	s := tidy(text)
	if s == "" {
		return time.Time{}, nil
	}
	weekday := strings.ToLower(strings.TrimSpace(weekdays.FindString(s)))
	s = weekdays.ReplaceAllString(s, "")
	for _, form := range fullForms {
		if day, err := time.ParseInLocation(form, s, near.Location()); err == nil {
			return onWeekday(day, weekday)
		}
	}
	for _, form := range shortForms {
		if day, err := time.Parse(form, s); err == nil {
			return onWeekday(nearest(day, near), weekday)
		}
	}
	return time.Time{}, fmt.Errorf("“%s” is not a day; type it as 30 Nov or %s", text, near.Format(time.DateOnly))
}

// ParseMoment reads a day and a time of day after it: 30 Nov 18:30, 2026-11-30 6pm. Empty text is the zero time.
func ParseMoment(text string, near time.Time) (time.Time, error) {
	s := strings.ToLower(tidy(text))
	if s == "" {
		return time.Time{}, nil
	}
	for i := range s {
		if s[i] != ' ' && s[i] != 't' {
			continue
		}
		clock, ok := hour(s[i+1:])
		if !ok {
			continue
		}
		day, err := ParseDay(s[:i], near)
		if err == nil && !day.IsZero() {
			y, m, d := day.Date()
			return time.Date(y, m, d, clock.Hour(), clock.Minute(), 0, 0, day.Location()), nil
		}
	}
	if day, err := ParseDay(s, near); err == nil && !day.IsZero() {
		return time.Time{}, errors.New("add the time of day, such as 18:30")
	}
	return time.Time{}, fmt.Errorf("“%s” is not a day and a time; type it as 30 Nov 18:30 or %s 18:30", text, near.Format(time.DateOnly))
}

func tidy(text string) string {
	s := strings.Join(strings.Fields(strings.ReplaceAll(text, ",", " ")), " ")
	return ordinals.ReplaceAllString(s, "$1")
}

func hour(s string) (time.Time, bool) {
	s = strings.TrimSpace(strings.ToLower(s))
	for _, form := range hourForms {
		if t, err := time.Parse(form, s); err == nil {
			return t, true
		}
	}
	return time.Time{}, false
}

// onWeekday holds a day against the day of the week that was written with it: a disagreement is a slip in one of them.
func onWeekday(day time.Time, weekday string) (time.Time, error) {
	if weekday == "" || suits(day, weekday) {
		return day, nil
	}
	return time.Time{}, fmt.Errorf("%s is a %s", day.Format("2 Jan 2006"), day.Weekday())
}

func suits(day time.Time, weekday string) bool {
	return strings.HasPrefix(weekday, strings.ToLower(day.Weekday().String()[:3]))
}

// nearest gives a day without a year the year in which it lies nearest to near, among those in which it exists: eight
// years to either side always hold a 29 February.
func nearest(day, near time.Time) time.Time {
	var best time.Time
	for year := near.Year() - 8; year <= near.Year()+8; year++ {
		d := time.Date(year, day.Month(), day.Day(), 0, 0, 0, 0, near.Location())
		if d.Day() == day.Day() && (best.IsZero() || d.Sub(near).Abs() < best.Sub(near).Abs()) {
			best = d
		}
	}
	return best
}
