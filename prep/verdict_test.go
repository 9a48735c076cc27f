package prep

import (
	"strings"
	"testing"

	"groundrow/tapeout/length"
)

// readAll reads every check of the room and each mark from both pivots, true but
// for what off adds.
func readAll(p *Production, off func(from, to string) float64) (*FloorWork, Verdict) {
	p.Readings = nil
	w := Work(p, "room", "")
	pair, _ := Pivots(w.Floor)
	add := func(from, to string, d float64) {
		p.Readings = append(p.Readings, Reading{ID: from + to, Floor: "room", From: from, To: to, Metres: d + off(from, to)})
	}
	for _, c := range ChecksOf(p, w) {
		add(w.Marks[c.From].Label, w.Marks[c.To].Label, c.Expected)
	}
	for _, m := range w.Marks {
		add(m.Label, FirstPivot, m.At.To(pair.A))
		add(m.Label, SecondPivot, m.At.To(pair.B))
	}
	return w, VerdictOf(p, w)
}

func TestAFloorWithoutReadingsIsNotChecked(t *testing.T) {
	p := small()
	p.Readings = nil
	v := VerdictOf(p, Work(p, "room", ""))
	if v.State != NotEnough || !strings.Contains(v.Sentence(p), "no check measure") || v.Next(p) == "" {
		t.Errorf("%v: %s %s", v.State, v.Sentence(p), v.Next(p))
	}
}

func TestTrueReadingsAreAccepted(t *testing.T) {
	p := small()
	if _, v := readAll(p, func(string, string) float64 { return 0 }); v.State != Accepted || len(v.Faults) != 0 {
		t.Errorf("%v: %s", v.State, v.Sentence(p))
	}
}

func TestAWrongReadingIsNamedWithItsSlip(t *testing.T) {
	p := small()
	label := Work(p, "room", "").Marks[0].Label
	_, v := readAll(p, func(from, to string) float64 {
		if from == label && to == FirstPivot {
			return length.Foot
		}
		return 0
	})
	if len(v.Faults) != 1 {
		t.Fatalf("%v: %s", v.State, v.Sentence(p))
	}
	said := v.Sentence(p)
	for _, want := range []string{"whole foot too long", label + "–" + FirstPivot} {
		if v.Faults[0].Found() && !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	if !v.Faults[0].Found() && len(v.Ask) == 0 {
		t.Error("it neither names the reading nor asks for one more")
	}
}

func TestReadingsOfMarksThatAreGoneDoNotCount(t *testing.T) {
	p := small()
	p.Readings = []Reading{{ID: "x", Floor: "room", From: "QQ", To: "A", Metres: 3}}
	v := VerdictOf(p, Work(p, "room", ""))
	if v.Readings[0].Grade != NoSuchMark || v.State != NotEnough {
		t.Errorf("%+v", v)
	}
}

func TestADoubtfulMarkIsAProblem(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	c := ChecksOf(p, w)[0]
	p.Readings = []Reading{{ID: "r", Floor: "room", From: w.Marks[c.From].Label, To: w.Marks[c.To].Label, Metres: c.Expected + length.Foot}}
	for _, pr := range Problems(p, worker(p), monday) {
		if pr.Rule == RuleDoubtful {
			if said := pr.Sentence(); !strings.Contains(said, "Measure also") || pr.Place != PlaceMarks {
				t.Errorf("%+v says %q", pr, said)
			}
			return
		}
	}
	t.Error("no problem is named")
}

func TestReadingsThatCannotFormATriangleAreNamed(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	a, b := w.Marks[0].Label, w.Marks[5].Label
	triangle := func(long float64) Verdict {
		p.Readings = []Reading{
			{ID: "1", Floor: "room", From: a, To: b, Metres: long},
			{ID: "2", Floor: "room", From: FirstPivot, To: a, Metres: 3},
			{ID: "3", Floor: "room", From: b, To: FirstPivot, Metres: 2},
		}
		return VerdictOf(p, w)
	}
	if v := triangle(5.3); len(v.Flat) != 1 || !strings.Contains(v.Sentence(p), "cannot form a triangle") || v.Flat[0].Long != 0 {
		t.Errorf("%+v: %s", v.Flat, v.Sentence(p))
	}
	if v := triangle(4.9); len(v.Flat) != 0 {
		t.Errorf("a triangle that can be: %+v", v.Flat)
	}
}

// The same distance read twice, both times wrong and never alike: what the one reading
// is found to be must not clear the marks that the other leaves in doubt.
func TestMarksInDoubtAreNotSaidToBeInOrder(t *testing.T) {
	p := small()
	w := Work(p, "room", "")
	c := ChecksOf(p, w)[0]
	from, to := w.Marks[c.From].Label, w.Marks[c.To].Label
	p.Readings = []Reading{
		{ID: "long", Floor: "room", From: from, To: to, Metres: c.Expected + length.Foot},
		{ID: "short", Floor: "room", From: from, To: to, Metres: c.Expected - 10*length.Inch},
	}
	v := VerdictOf(p, w)
	said := v.Sentence(p)
	if v.State != DoubtfulMarks || !strings.Contains(said, "is wrong") || !strings.Contains(said, "do not tell which") {
		t.Fatalf("%s: %s", v.State, said)
	}
	if strings.Contains(said, "in order") {
		t.Errorf("it says %q", said)
	}
}
