package demo

import (
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

func monday() time.Time { return time.Date(2027, 3, 1, 9, 0, 0, 0, time.UTC) }

func TestDemoIsRichEnoughToShowEverything(t *testing.T) {
	p := Production(monday())
	rooms, stages := 0, 0
	for _, f := range p.Floors {
		if err := floor.CheckOutline(f.Outline); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		if f.Kind == floor.Stage {
			stages++
		} else {
			rooms++
		}
	}
	if n := len(p.Plan.Elements); n < 60 {
		t.Errorf("%d elements, want at least 60", n)
	}
	if len(p.Plan.Scenes) < 6 || rooms < 2 || stages < 1 || len(p.People) != 4 {
		t.Errorf("%d scenes, %d rooms, %d stages, %d people", len(p.Plan.Scenes), rooms, stages, len(p.People))
	}
	kinds := map[plan.Kind]bool{}
	for _, e := range p.Plan.Elements {
		kinds[e.Kind] = true
	}
	for _, k := range plan.Kinds {
		if k != plan.Other && !kinds[k] {
			t.Errorf("no %s in the demo", k)
		}
	}
}

func TestDemoNamesAreUniqueAndReferencesHold(t *testing.T) {
	p := Production(monday())
	seen := map[plan.ElementID]bool{}
	for _, e := range p.Plan.Elements {
		if seen[e.ID] {
			t.Errorf("two elements called %q", e.Name)
		}
		seen[e.ID] = true
		if e.Stock != "" && p.Stock(e.Stock) == nil {
			t.Errorf("%s is laid in a stock that is not there", e.Name)
		}
	}
	for _, s := range p.StandIns {
		if !seen[s.Element] {
			t.Errorf("a stand-in for an element that is not there: %s", s.ID)
		}
	}
	for _, f := range p.Floors {
		for _, tr := range f.Treatments {
			if !seen[tr.Element] {
				t.Errorf("%s treats an element that is not there (%s)", f.Name, tr.Reason)
			}
		}
	}
	for _, n := range p.Notes {
		if n.Element != "" && !seen[n.Element] {
			t.Errorf("a note on an element that is not there: %s", n.Text)
		}
	}
}

func TestDemoFloorsHaveMarksAndTape(t *testing.T) {
	p := Production(monday())
	for _, f := range p.Floors {
		w := prep.Work(p, f.ID, "")
		run := 0.0
		for _, r := range w.Tape {
			run += r.Total
		}
		t.Logf("%s: %d lines, %d marks, %d overhangs, %.0f m of tape, %d problems",
			f.Name, len(w.Lines), len(w.Marks), len(w.Overhangs), run, len(w.Problems))
		if len(w.Marks) == 0 || run == 0 {
			t.Errorf("%s has %d marks and %v m of tape", f.Name, len(w.Marks), run)
		}
	}
}

func TestDemoIsTheSameOnTheSameDay(t *testing.T) {
	a, b := Production(monday()), Production(monday())
	if prep.Work(a, roomID, "").Marks[7].Label != prep.Work(b, roomID, "").Marks[7].Label {
		t.Error("two demos of one day differ")
	}
	if len(a.Items) != len(b.Items) || a.Items[3].ID != b.Items[3].ID {
		t.Error("the kit of two demos of one day differs")
	}
}

func TestTheHallIsAsItWasMeasured(t *testing.T) {
	p := Production(monday())
	f := p.Floor(roomID)
	m, ok := p.MeasuredRoom(f)
	if !ok || !m.InUse || m.Freedom != 1 || len(m.Verdict.Faults) > 0 {
		t.Errorf("measured %v, %q, in use %v, freedom %d, faults %v", ok, m.Why, m.InUse, m.Freedom, m.Verdict.Faults)
	}
	if got := p.ShowLength(f.Measured.Walls[1].ID, "length", f.Measured.Walls[1].Length); got != `30' 11 1/8"` {
		t.Errorf("a wall reads %q", got)
	}
}
