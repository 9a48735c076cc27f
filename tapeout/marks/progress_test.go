package marks

import (
	"errors"
	"testing"
	"time"

	"groundrow/tapeout/floor"
)

func by(who string, hour int) floor.Decision {
	return floor.Decision{By: who, On: time.Date(2031, 3, 10, hour, 0, 0, 0, time.UTC)}
}

func TestTheLifeOfAMark(t *testing.T) {
	g := Progress{Label: "A"}
	ada, ben, cy := by("Ada", 10), by("Ben", 11), by("Cy", 12)
	for _, c := range []struct {
		step                          Step
		by                            floor.Decision
		placed, checked, worn, lifted floor.Decision
	}{
		{Checked, ada, ada, ada, floor.Decision{}, floor.Decision{}},
		{Placed, ben, ada, ada, floor.Decision{}, floor.Decision{}},
		{Worn, ben, ada, ada, ben, floor.Decision{}},
		{Worn, cy, ada, ada, ben, floor.Decision{}},
		{Retaped, cy, cy, floor.Decision{}, floor.Decision{}, floor.Decision{}},
		{Lifted, ben, floor.Decision{}, floor.Decision{}, floor.Decision{}, ben},
		{Placed, ada, ada, floor.Decision{}, floor.Decision{}, floor.Decision{}},
	} {
		if err := g.Take(c.step, c.by); err != nil {
			t.Fatal(err)
		}
		if g.Placed != c.placed || g.Checked != c.checked || g.Worn != c.worn || g.Lifted != c.lifted {
			t.Errorf("after %s by %s: %+v", c.step, c.by.By, g)
		}
	}
	g.TakeBack(Placed)
	if !g.Blank() {
		t.Errorf("taken back: %+v", g)
	}
}

func TestStepsThatCannotBeTaken(t *testing.T) {
	for _, s := range []Step{Worn, Lifted, Retaped, "painted"} {
		g := Progress{Label: "A"}
		var refused *StepError
		if err := g.Take(s, by("Ada", 10)); !errors.As(err, &refused) || refused.Step != s || !g.Blank() {
			t.Errorf("%s: %v, %+v", s, err, g)
		}
	}
}
