package marks

import (
	"math"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// hall is ten metres by eight with the plan's datum in its middle, two metres in.
func hall() *floor.Floor {
	return &floor.Floor{
		Kind: floor.Room, Outline: plane.Rectangle(p(0, 0), p(10, 8)), Placement: plane.Motion{Shift: p(5, 2)},
	}
}

func only(t *testing.T, ms []Mark, k Kind) []Mark {
	t.Helper()
	var out []Mark
	for _, m := range ms {
		if m.Kind == k {
			out = append(out, m)
		}
	}
	return out
}

func TestCutShortIsNoEndOfTheWall(t *testing.T) {
	f := hall()
	f.Treatments = []floor.Treatment{{Element: "long", How: floor.CutShort}}
	pl := &plan.Plan{Elements: []plan.Element{
		element("long", plane.Open(p(0, 4), p(0, 9))), element("short", plane.Open(p(2, 4), p(2, 5))),
	}}
	ms := Of(pl, f, nil, DefaultRules, 0)
	cut := only(t, ms, CutEnd)
	if len(cut) != 1 || !cut[0].Cut || cut[0].At.To(p(0, 6)) > 1e-9 {
		t.Fatalf("cut marks %+v, want one at the wall six metres up", cut)
	}
	if n := count(ms, End); n != 3 {
		t.Errorf("%d ends, want the three that are ends of scenery", n)
	}
}

// Where another wall stands at the cut the mark is a crossing, and still says that
// something goes on.
func TestCutThatMeetsSomethingElseStillSaysSo(t *testing.T) {
	f := hall()
	f.Treatments = []floor.Treatment{{Element: "long", How: floor.CutShort}}
	pl := &plan.Plan{Elements: []plan.Element{
		element("long", plane.Open(p(0, 4), p(0, 9))), element("along", plane.Open(p(-2, 6), p(2, 6))),
	}}
	there := 0
	for _, m := range Of(pl, f, nil, DefaultRules, 0) {
		if m.At.To(p(0, 6)) > 1e-6 {
			continue
		}
		there++
		if m.Kind != Crossing || !m.Cut {
			t.Errorf("mark %+v, want a crossing at which a line is cut short", m)
		}
	}
	if there != 1 {
		t.Errorf("%d marks where the line is cut short, want one", there)
	}
}

func TestMovedAsideReadsAsInItsTruePlaceFromItsOwnDatum(t *testing.T) {
	f := hall()
	f.OwnDatum, f.Datum = true, plane.Motion{Turn: 0.2, Shift: p(4, 1)}
	pl := &plan.Plan{Elements: []plan.Element{element("loft", plane.Open(p(-1, 3), p(1, 3)))}}
	there := Of(pl, f, nil, DefaultRules, 0)
	f.Treatments = []floor.Treatment{{Element: "loft", How: floor.MovedAside, Over: 1.5, Up: -0.5}}
	here := Of(pl, f, nil, DefaultRules, 0)
	own := only(t, here, OwnDatum)
	if len(own) != 1 || math.Abs(own[0].At.Len()-math.Hypot(1.5, 0.5)) > 1e-9 {
		t.Fatalf("own datums %+v, want one as far off as the move", own)
	}
	for i, m := range only(t, here, End) {
		if m.TrueAt().To(there[i].At) > 1e-9 {
			t.Errorf("mark %d reads %v from its own datum, want %v", i, m.TrueAt(), there[i].At)
		}
		if m.At.Sub(own[0].At).To(there[i].At) > 1e-9 {
			t.Errorf("mark %d lies %v from the own datum, want %v", i, m.At.Sub(own[0].At), there[i].At)
		}
	}
}

func TestOwnDatumOutsideTheRoomIsNotMarkedButTheOffsetHasAPlace(t *testing.T) {
	f := hall()
	f.Treatments = []floor.Treatment{{Element: "loft", How: floor.MovedAside, Over: 3, Up: -4}}
	pl := &plan.Plan{Elements: []plan.Element{element("loft", plane.Open(p(-1, 3), p(1, 3)))}}
	if n := count(Of(pl, f, nil, DefaultRules, 0), OwnDatum); n != 0 {
		t.Errorf("%d datums are marked beyond the wall", n)
	}
	a := f.Asides(pl)
	if len(a) != 1 || a[0].OnFloor || a[0].Sign.To(p(2, -1)) > 1e-9 {
		t.Errorf("asides %+v, want the offset written at the nearer end of the wall", a)
	}
}

func TestStopsOfATrackAndARevolve(t *testing.T) {
	way := plan.Element{ID: "way", Name: "way", Kind: plan.Track, Paths: []plan.Path{{Role: plan.Way, Path: plane.Open(p(-3, 5), p(3, 5))}}}
	ring := plan.Element{ID: "ring", Name: "ring", Kind: plan.Revolve, Paths: []plan.Path{{Role: plan.Outline, Path: plane.Circle(p(0, 2), 1.5)}}}
	pl := &plan.Plan{
		Scenes: []plan.Scene{{ID: "one"}, {ID: "two"}}, Elements: []plan.Element{way, ring},
		Carries: []plan.Carry{{Carrier: "way", Scene: "one", Travel: 2}, {Carrier: "ring", Scene: "two", Travel: 90}},
	}
	stops := only(t, Of(pl, hall(), nil, DefaultRules, 0), Stop)
	if len(stops) != 5 {
		t.Fatalf("%d stops, want start, scene one and end of the track, and two of the revolve", len(stops))
	}
	for _, s := range stops {
		if s.Form() != "tick" || s.Station == nil {
			t.Errorf("stop %+v is no tick", s)
		}
		if !s.Station.Turns && s.Station.Travel == 2 && (len(s.Scenes) != 1 || s.At.To(p(-1, 5)) > 1e-9) {
			t.Errorf("stop %+v, want scene one two metres along", s)
		}
	}
	// A start on the end of the track's own line is one mark and not two.
	all := Of(pl, hall(), nil, DefaultRules, 0)
	for i := range all {
		for k := range all[:i] {
			if all[i].At.To(all[k].At) <= DefaultRules.Weld && all[i].Kind == Stop {
				t.Errorf("marks %s and %s lie on one spot", all[i].Label, all[k].Label)
			}
		}
	}
}

func TestSpikesAreLsOrTicksThatNameTheirLeg(t *testing.T) {
	piece := func(path plane.Path) []Mark {
		e := element("piece", path)
		e.Kind = plan.Furniture
		return Of(&plan.Plan{Elements: []plan.Element{e}}, &floor.Floor{}, nil, DefaultRules, 0)
	}
	table := piece(plane.Rectangle(p(1, 1), p(3, 2)))
	if len(table) != 2 || table[0].Leg != "upstage right leg" || table[1].Leg != "upstage left leg" {
		t.Fatalf("spikes %+v, want the two upstage legs", table)
	}
	for _, m := range table {
		if m.Form() != "L" || math.Abs(m.Arms[0].Dot(m.Arms[1])) > 1e-9 {
			t.Errorf("spike %+v is no L", m)
		}
		for _, e := range m.Tape(0.15) {
			if e.A.To(m.At) > 1e-9 || math.Abs(e.Length()-0.15) > 1e-9 || e.B.Y > 2+1e-9 || e.B.X < 1-1e-9 || e.B.X > 3+1e-9 {
				t.Errorf("arm %+v leaves the outline of the table", e)
			}
		}
	}
	for name, path := range map[string]plane.Path{
		"round table": plane.Circle(p(0, 0), 0.4),
		"thin shelf":  plane.Rectangle(p(0, 0), p(2, 0.1)),
		"a line":      plane.Open(p(0, 0), p(2, 0)),
	} {
		for _, m := range piece(path) {
			if m.Form() != "tick" || m.Leg == "" {
				t.Errorf("%s: spike %+v is no tick with a leg", name, m)
			}
			if tape := m.Tape(0.15); len(tape) != 1 || tape[0].At(0.5).To(m.At) > 1e-9 {
				t.Errorf("%s: the tick %+v does not lie across its mark", name, tape)
			}
		}
	}
	// A piece on its corner has one upstage leg and one at the side.
	turned := piece(plane.Rectangle(p(-1, -1), p(1, 1)).Moved(plane.Motion{Turn: math.Pi/4 + 0.01}))
	if turned[0].Leg != "left leg" || turned[1].Leg != "upstage leg" {
		t.Errorf("legs %q and %q", turned[0].Leg, turned[1].Leg)
	}
}
