package prep

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

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

// moment writes a time of day on a day.
func moment(t time.Time) string { return t.Format("Mon 2 Jan 15:04") }

// Counted writes a number of things, with an s unless it is one: "1 mark", "3 marks".
func Counted(n int, thing string) string { return fmt.Sprintf("%d %s", n, wordFor(n, thing)) }

// wordFor returns the word for so many of a thing.
func wordFor(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// Listed joins names with commas and an "and"; with semicolons where a name has a
// comma itself.
func Listed(names []string) string {
	comma, and := ", ", " and "
	if len(names) > 2 && slices.ContainsFunc(names, func(n string) bool { return strings.Contains(n, ",") }) {
		comma, and = "; ", "; and "
	}
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		out := names[0]
		for _, name := range names[1 : n-1] {
			out += comma + name
		}
		return out + and + names[n-1]
	}
}

// personName returns the name of a person of the team.
func (p *Production) personName(id string) string {
	for _, person := range p.People {
		if person.ID == id {
			return person.Name
		}
	}
	return id
}
