package reckoning

import (
	"strings"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
)

func inFeet() *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Settings.Unit, p.Settings.Currency = "ft", "$"
	return p
}

func TestTapeReadsInDecimals(t *testing.T) {
	p := inFeet()
	if got := Tape(p, 3.048); got != "10.0 ft" {
		t.Errorf("%q", got)
	}
	p.Settings.Unit = "mm"
	if got := Tape(p, 3.048); got != "3.0 m" {
		t.Errorf("%q", got)
	}
}

func TestRolls(t *testing.T) {
	for n, want := range map[float64]string{0: "0", 1: "1", 0.5: "0.5", 1.675: "1.68", 10: "10"} {
		if got := Rolls(n); got != want {
			t.Errorf("%v rolls read %q, want %q", n, got, want)
		}
	}
}

func TestOrderBy(t *testing.T) {
	now := time.Date(2027, 3, 3, 15, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		name string
		n    int
		by   time.Time
		want string
	}{
		{"nothing to order", 0, now, ""},
		{"no day", 2, time.Time{}, "day not set"},
		{"earlier today", 2, now.Add(-5 * time.Hour), "Wed 3 Mar"},
		{"yesterday", 2, now.AddDate(0, 0, -1), "was Tue 2 Mar"},
		{"next week", 2, now.AddDate(0, 0, 7), "Wed 10 Mar"},
	} {
		if got := OrderBy(c.n, c.by, now); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestBudgetInWords(t *testing.T) {
	p := inFeet()
	for _, c := range []struct {
		name string
		b    supplies.Budget
		want Standing
		says string
	}{
		{"none set", supplies.Budget{Total: 500}, NoBudget, "No budget is set"},
		{"within", supplies.Budget{Total: 500, Limit: 800}, Within, "$3.00 left of"},
		{"just reached", supplies.Budget{Total: 800, Limit: 800}, Within, "$0.00 left of"},
		{"over", supplies.Budget{Total: 900, Limit: 800, Over: 100}, Over, "$1.00 over"},
	} {
		got, text := Budget(p, c.b)
		if got != c.want || !strings.Contains(text, c.says) {
			t.Errorf("%s: %v %q", c.name, got, text)
		}
	}
}
