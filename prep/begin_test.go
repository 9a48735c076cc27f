package prep

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

func counter() func() string {
	n := 0
	return func() string { n++; return fmt.Sprintf("id-%d", n) }
}

func TestNewStartsPrepWeekSixDaysBefore(t *testing.T) {
	first := time.Date(2031, 3, 10, 0, 0, 0, 0, time.UTC)
	p := New("The Salt Road", length.Metres, first.Add(15*time.Hour), counter())
	if got, want := p.Settings.PrepStart, first.AddDate(0, 0, -6); !got.Equal(want) {
		t.Errorf("prep week starts %v, want %v", got, want)
	}
	if p.Settings.FirstRehearsal.Sub(first) != 10*time.Hour {
		t.Errorf("the first rehearsal is at %v, want ten in the morning", p.Settings.FirstRehearsal)
	}
	for _, s := range p.Stocks {
		if strings.Contains(s.Name, " in ") {
			t.Errorf("%q is a tape by inches in a production by metres", s.Name)
		}
	}
	if p.Settings.Paper != "A4" || p.Plan.Scale != 25 {
		t.Errorf("paper %q at 1:%v, want A4 at 1:25 for metres", p.Settings.Paper, p.Plan.Scale)
	}
}

func TestNewHasARoomAStageAndTapes(t *testing.T) {
	p := New("The Salt Road", length.FeetInches, time.Time{}, counter())
	if len(p.Floors) != 2 || p.Floors[0].Kind != floor.Room || p.Floors[1].Kind != floor.Stage {
		t.Errorf("floors are %v, want a room and a stage", p.Floors)
	}
	if len(p.Stocks) == 0 || len(p.Items) == 0 {
		t.Error("a new production has no tapes or no kit")
	}
	if !p.Settings.FirstRehearsal.IsZero() {
		t.Error("a first rehearsal is set though none was given")
	}
}

func TestAMetricProductionBeginsWithMetricTolerances(t *testing.T) {
	for unit, want := range map[length.Unit]string{length.Metres: "0.15 0.025", length.FeetInches: `0' 6" 0' 1"`} {
		p := New("", unit, time.Time{}, idsFrom("id"))
		if got := p.Style().Bare(p.Settings.Rules.Row) + " " + p.Style().Bare(p.Settings.Rules.Chord); got != want {
			t.Errorf("in %s a row and a chord are %q, want %q", unit.Name(), got, want)
		}
	}
}
