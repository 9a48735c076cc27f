package prep

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestAReadingIsKeptAsTyped(t *testing.T) {
	p := small()
	p.Readings = nil
	w := Work(p, "room", "")
	label := w.Marks[0].Label
	if err := p.KeepReading(w, Reading{ID: "r", From: strings.ToLower(label), To: " Pivot  1", Text: `12' 6 1/2"`, By: "Ada", On: monday}); err != nil {
		t.Fatal(err)
	}
	r := p.ReadingsOn("room")[0]
	if r.From != label || r.To != FirstPivot || math.Abs(r.Metres-150.5*0.0254) > 1e-12 || p.ShowReading(r) != `12' 6 1/2"` {
		t.Errorf("kept %+v", r)
	}
	if !r.Joins(FirstPivot, label) || r.Joins(FirstPivot, SecondPivot) {
		t.Error("the reading does not know its ends")
	}
	if err := p.CorrectReading("r", "3.81 m", "Ben", monday); err != nil {
		t.Fatal(err)
	}
	if r := p.Readings[0]; r.Metres != 3.81 || r.By != "Ben" || p.ShowReading(r) != "3.81 m" {
		t.Errorf("corrected to %+v", r)
	}
	p.RemoveReading("r")
	if len(p.Readings) != 0 {
		t.Error("the deleted reading is still there")
	}
}

func TestReadingsThatCannotBeKept(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	label := w.Marks[0].Label
	for name, c := range map[string]struct{ from, to, text, says string }{
		"no length":         {label, FirstPivot, "long", "not a length"},
		"nothing":           {label, FirstPivot, "0", "longer than nothing"},
		"shorter":           {label, FirstPivot, "-3", ""},
		"a street":          {label, FirstPivot, "3000 m", "longer than any tape"},
		"no such mark":      {"QQ", FirstPivot, "3 m", "no mark"},
		"no second place":   {label, "", "3 m", "no mark"},
		"two marks at once": {label + ", " + w.Marks[1].Label, FirstPivot, "3 m", "names 2 marks"},
		"to itself":         {label, strings.ToLower(label), "3 m", "to itself"},
	} {
		before := len(p.Readings)
		err := p.KeepReading(w, Reading{From: c.from, To: c.to, Text: c.text})
		if err == nil || !strings.Contains(err.Error(), c.says) || len(p.Readings) != before {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := p.CorrectReading("nowhere", "3 m", "Ada", monday); err == nil {
		t.Error("a reading that is not there was corrected")
	}
}

// The plan changes after a reading was kept: the label that was read stays with its
// place, and one whose place is gone says so.
func TestAReadingKeepsItsMarksWhenThePlanChanges(t *testing.T) {
	p := small()
	p.Readings, p.Issued, p.Progress = nil, nil, nil
	w := Work(p, "room", "")
	a, b, _ := endsOf(t, w, "wall")
	if err := p.KeepReading(w, Reading{ID: "r", From: a, To: b, Text: "4 m", By: "Ada", On: monday}); err != nil {
		t.Fatal(err)
	}
	at, _ := w.place(a)
	p.Plan.Elements = append(p.Plan.Elements, element("new", plan.Wall, plane.Open(pt(-5, -1), pt(5, -1))))
	w = Work(p, "room", "")
	if now, ok := w.place(a); !ok || now.To(at) > 1e-9 {
		t.Errorf("%s was at %v and is now at %v", a, at, now)
	}
	p.RemoveElement("wall")
	w = Work(p, "room", "")
	if v := VerdictOf(p, w); v.Readings[0].Grade != NoSuchMark {
		t.Errorf("a reading of a mark that is gone is %s", v.Readings[0].Grade)
	}
	if err := p.KeepReading(w, Reading{From: a, To: FirstPivot, Text: "3 m"}); err == nil || !strings.Contains(err.Error(), "nothing needs it any more") {
		t.Errorf("a reading to a mark that is gone: %v", err)
	}
}

func TestTheExpectedDistanceIsThatOfTheEnds(t *testing.T) {
	w := Work(small(), "room", "")
	a, b := w.Marks[0], w.Marks[1]
	if d, ok := w.Distance(b.Label, a.Label); !ok || math.Abs(d-a.At.To(b.At)) > 1e-12 {
		t.Errorf("got %v, %v", d, ok)
	}
	if d, ok := w.Distance(FirstPivot, SecondPivot); !ok || math.Abs(d-10) > 1e-9 {
		t.Errorf("the pivots are %v apart, %v", d, ok)
	}
	if _, ok := w.Distance(a.Label, "QQ"); ok {
		t.Error("a mark that is not there has a distance")
	}
}
