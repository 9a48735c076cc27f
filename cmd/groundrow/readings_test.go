package main

import (
	"strings"
	"testing"
)

func TestAReadingIsKeptAndJudged(t *testing.T) {
	path := small(t)
	marks := decode[[]mark](t, must(t, "marks", path, "--json"))
	a, b := marks[0].Label, marks[1].Label
	got := decode[judged](t, must(t, "read", path, a, b, "99 m", "--who", "Wren", "--json"))
	if len(got.Readings) != 1 || got.Readings[0].Read != 99 || got.Readings[0].By != "Wren" || got.Verdict != "doubtful marks" {
		t.Errorf("got %+v", got)
	}
	if len(got.Ask) == 0 {
		t.Error("nothing more is asked for")
	}
	if said := must(t, "readings", path); !strings.Contains(said, "99 m") || !strings.Contains(said, "Measure also") {
		t.Errorf("the list says %s", said)
	}
	must(t, "undo", path, "--who", "Wren")
	if got := decode[judged](t, must(t, "readings", path, "--json")); len(got.Readings) != 0 || got.Verdict != "not enough checked" {
		t.Errorf("after undo: %+v", got)
	}
}

func TestReadingsThatAreRefused(t *testing.T) {
	path := small(t)
	for _, args := range [][]string{{"A", "QQ", "3 m"}, {"A", "A", "3 m"}, {"A", "B", "long"}} {
		if r := command(t, append([]string{"read", path}, args...)...); r.status != failed || r.messages == "" {
			t.Errorf("%v: status %d, %q", args, r.status, r.messages)
		}
	}
}
