// Package reckoning words tape, rolls, days and money, the same in every place
// that shows them.
package reckoning

import (
	"fmt"
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
)

// Unit is what a run of tape is given in: feet or metres, in decimals, so that a
// calculator can follow.
func Unit(p *prep.Production) string {
	if p.Unit().Metric() {
		return "m"
	}
	return "ft"
}

// Figure writes a run of tape in that unit with so many decimals and no unit.
func Figure(p *prep.Production, metres float64, places int) string {
	if !p.Unit().Metric() {
		metres /= length.Foot
	}
	return fmt.Sprintf("%.*f", places, metres)
}

// Tape writes a run of tape with its unit.
func Tape(p *prep.Production, metres float64) string {
	return Figure(p, metres, 1) + " " + Unit(p)
}

// Rolls writes a number of rolls, part rolls with two decimals at most.
func Rolls(n float64) string {
	s := strings.TrimRight(fmt.Sprintf("%.2f", n), "0")
	return strings.TrimRight(s, ".")
}

// Day writes a day; none is empty.
func Day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format("Mon 2 Jan")
}

// OrderBy writes the last day for an order of so many: nothing when none is to be
// ordered, and other words when the day is past or not known.
func OrderBy(n int, t, now time.Time) string {
	switch {
	case n == 0:
		return ""
	case t.IsZero():
		return "day not set"
	case t.Before(midnight(now)):
		return "was " + Day(t)
	}
	return Day(t)
}

func midnight(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
}

// Count writes a number of things.
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Standing is how the money stands.
type Standing int

// The standings.
const (
	NoBudget Standing = iota
	Within
	Over
)

// Budget says in words what tape and kit cost and how that stands against the
// budget.
func Budget(p *prep.Production, b supplies.Budget) (Standing, string) {
	sum := fmt.Sprintf("ordered %s + tape to buy %s + kit to buy %s = %s.", p.Money(b.Placed), p.Money(b.Tape), p.Money(b.Kit), p.Money(b.Total))
	switch {
	case b.Limit <= 0:
		return NoBudget, "No budget is set: " + sum
	case b.Over > 0:
		return Over, fmt.Sprintf("%s over the budget of %s: %s", p.Money(b.Over), p.Money(b.Limit), sum)
	}
	return Within, fmt.Sprintf("%s left of the budget of %s: %s", p.Money(b.Limit-b.Total), p.Money(b.Limit), sum)
}
