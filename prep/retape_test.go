package prep

import (
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// stepAll takes a step with marks of the room and computes the floor again.
func stepAll(t *testing.T, p *Production, s marks.Step, labels ...string) *FloorWork {
	t.Helper()
	if err := p.TakeStep("room", labels, s, floor.Decision{By: "Ada", On: monday}); err != nil {
		t.Fatal(err)
	}
	return Work(p, "room", "")
}

// endsOf returns the labels of the ends of the first straight line of an element.
func endsOf(t *testing.T, w *FloorWork, element string) (a, b string, length float64) {
	t.Helper()
	for _, l := range w.Lines {
		if string(l.Element) == element {
			return w.Marks[w.markAt(l.A)].Label, w.Marks[w.markAt(l.B)].Label, l.Length()
		}
	}
	t.Fatalf("no line of %s", element)
	return
}

func TestAWornEndIsTapedAgainForAFoot(t *testing.T) {
	p := small()
	a, b, length := endsOf(t, Work(p, "room", ""), "wall")
	stepAll(t, p, marks.Placed, a, b)
	w := stepAll(t, p, marks.Worn, a)
	r := RetapeOf(p, w)
	if len(r.Marks) != 1 || len(r.Strips) != 1 || r.Strips[0].Whole || math.Abs(r.Strips[0].Length()-RetapeEnd) > 1e-9 {
		t.Fatalf("one worn end: %+v", r)
	}
	// What crosses the wall in between still holds.
	r = RetapeOf(p, stepAll(t, p, marks.Worn, b))
	if len(r.Strips) != 2 || r.Strips[0].Whole || r.Strips[1].Whole {
		t.Fatalf("two worn ends and a sound mark between: %+v", r.Strips)
	}
	var between []string
	for _, m := range w.Marks {
		if m.Label != a && m.Label != b && slices.Contains(m.Elements, "wall") {
			between = append(between, m.Label)
		}
	}
	stepAll(t, p, marks.Placed, between...)
	r = RetapeOf(p, stepAll(t, p, marks.Worn, between...))
	if s := r.Strips[0]; s.Element != "wall" || !s.Whole || math.Abs(s.Length()-length) > 1e-9 {
		t.Errorf("all of its marks are worn: %+v", r.Strips)
	}
	if len(r.Tape) == 0 || r.Tape[0].Lines < length-1e-9 || r.Tape[0].Wear != 0 {
		t.Errorf("tape %+v", r.Tape)
	}
	if r = RetapeOf(p, stepAll(t, p, marks.Retaped, append(between, a, b)...)); len(r.Marks)+len(r.Strips)+len(r.Tape) != 0 {
		t.Errorf("still to be taped again: %+v", r)
	}
}

func TestStepsAreTakenTogetherOrNotAtAll(t *testing.T) {
	p := small()
	p.Progress = nil
	a, b, _ := endsOf(t, Work(p, "room", ""), "wall")
	stepAll(t, p, marks.Placed, a)
	who := floor.Decision{By: "Ben", On: monday}
	for says, labels := range map[string][]string{"not on the floor": {a, b}, "no mark": {a, "QQ"}} {
		if err := p.TakeStep("room", labels, marks.Worn, who); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: %v", labels, err)
		}
	}
	if len(p.Progress) != 1 || !p.Progress[0].Worn.Open() {
		t.Errorf("half of it is recorded: %+v", p.Progress)
	}
	if err := p.TakeStep("nowhere", nil, marks.Placed, who); err == nil {
		t.Error("a floor that is not there takes a step")
	}
}
