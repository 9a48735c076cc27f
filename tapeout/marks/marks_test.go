package marks

import (
	"fmt"
	"math"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func p(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func element(id string, paths ...plane.Path) plan.Element {
	e := plan.Element{ID: plan.ElementID(id), Name: id, Kind: plan.Wall, Stock: "red"}
	for i, path := range paths {
		e.Paths = append(e.Paths, plan.Path{ID: plan.PathID(fmt.Sprint(id, i)), Role: plan.Outline, Path: path})
	}
	return e
}

func find(t *testing.T, elements ...plan.Element) []Mark {
	t.Helper()
	return Of(&plan.Plan{Elements: elements}, &floor.Floor{}, nil, DefaultRules, 0)
}

func count(ms []Mark, k Kind) int {
	n := 0
	for _, m := range ms {
		if m.Kind == k {
			n++
		}
	}
	return n
}

// Points are corners, ends and crossings, not the middle of a straight line:
// common practice, no source.
func TestMarksAreEndsCornersAndCrossings(t *testing.T) {
	for _, c := range []struct {
		name                   string
		elements               []plan.Element
		end, corner, cross, on int
	}{
		{"a straight wall in two pieces", []plan.Element{
			element("a", plane.Open(p(0, 0), p(2, 0))), element("b", plane.Open(p(2, 0), p(5, 0)))}, 2, 0, 0, 0},
		{"a rectangle", []plan.Element{element("a", plane.Rectangle(p(0, 0), p(2, 1)))}, 0, 4, 0, 0},
		{"a crossing", []plan.Element{
			element("a", plane.Open(p(-1, 0), p(1, 0))), element("b", plane.Open(p(0, -1), p(0, 1)))}, 4, 0, 1, 0},
		{"a wall that meets another", []plan.Element{
			element("a", plane.Open(p(-1, 0), p(1, 0))), element("b", plane.Open(p(0, 0), p(0, 1)))}, 3, 0, 1, 0},
		{"the same wall twice", []plan.Element{
			element("a", plane.Open(p(0, 0), p(2, 0))), element("b", plane.Open(p(2, 0), p(0, 0)))}, 2, 0, 0, 0},
		{"ends that nearly meet", []plan.Element{
			element("a", plane.Open(p(0, 0), p(2, 0))), element("b", plane.Open(p(2.004, 0), p(2.004, 3)))}, 2, 1, 0, 0},
		{"a bend of less than half a degree that tape would miss by an inch", []plan.Element{
			element("a", plane.Open(p(0, 0), p(6, 0))), element("b", plane.Open(p(6, 0), p(12, 0.05)))}, 2, 1, 0, 0},
		{"an empty plan", nil, 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			ms := find(t, c.elements...)
			got := []int{count(ms, End), count(ms, Corner), count(ms, Crossing), count(ms, Curve)}
			want := []int{c.end, c.corner, c.cross, c.on}
			for i := range want {
				if got[i] != want[i] {
					t.Errorf("ends, corners, crossings, on a curve: %v, want %v", got, want)
					break
				}
			}
			if len(ms) != c.end+c.corner+c.cross+c.on {
				t.Errorf("%d marks in all", len(ms))
			}
		})
	}
}

func TestCurvePointsKeepTheChordTolerance(t *testing.T) {
	arc, _ := plane.Through(p(-5, 0), p(0, -1.5), p(5, 0))
	e := element("apron", plane.Path{Vertices: []plane.Vertex{{Point: arc.A, Bulge: arc.Bulge}, {Point: arc.B}}})
	rules := DefaultRules
	rules.CentreSwing = false
	ms := Of(&plan.Plan{Elements: []plan.Element{e}}, &floor.Floor{}, nil, rules, 0)
	centre, radius, _ := arc.Circle()
	for _, m := range ms {
		if d := math.Abs(m.At.To(centre) - radius); d > 1e-9 {
			t.Errorf("%s lies %v m off the curve", m.Label, d)
		}
	}
	// The departure of n equal chords over a sweep is R·(1 − cos(sweep/2n)).
	departure := func(chords int) float64 {
		return radius * (1 - math.Cos(math.Abs(arc.Sweep())/(2*float64(chords))))
	}
	chords := len(ms) - 1
	if departure(chords) > DefaultRules.Chord || departure(chords-1) <= DefaultRules.Chord {
		t.Errorf("%d chords depart by %v m, one fewer by %v m, tolerance %v m",
			chords, departure(chords), departure(chords-1), DefaultRules.Chord)
	}
}

func TestSwungCurveHasItsCentreInsteadOfPoints(t *testing.T) {
	rules := DefaultRules
	rules.CentreSwing = true
	pl := &plan.Plan{Elements: []plan.Element{element("ring", plane.Circle(p(1, 4), 2))}}
	f := &floor.Floor{Outline: plane.Rectangle(p(-6, -6), p(6, 9))}
	ms := Of(pl, f, nil, rules, 0)
	if count(ms, Centre) != 1 || count(ms, Curve) != 2 {
		t.Fatalf("marks %+v, want one centre and the two ends of the halves", ms)
	}
	f.Outline = plane.Rectangle(p(-6, -6), p(6, 3)) // the centre is beyond the wall
	if ms := Of(pl, f, nil, rules, 0); count(ms, Centre) != 0 {
		t.Error("swung from a centre that is not on the floor")
	}
}

// Labels run downstage to upstage and stage right to stage left: common
// practice, no source.
func TestLabelsRunFromDownstageRightInRows(t *testing.T) {
	ms := find(t,
		element("up", plane.Open(p(-2, 5), p(2, 5.1))),
		element("down", plane.Open(p(3, 1), p(-3, 1.1))),
	)
	want := map[string]plane.Point{"A": p(-3, 1.1), "B": p(3, 1), "C": p(-2, 5), "D": p(2, 5.1)}
	for _, m := range ms {
		if m.At.To(want[m.Label]) > 1e-9 {
			t.Errorf("%s is at %v, want %v", m.Label, m.At, want[m.Label])
		}
	}
}

func TestLabelSequence(t *testing.T) {
	for _, c := range []struct {
		n      int
		skipIO bool
		want   string
	}{
		{0, false, "A"}, {25, false, "Z"}, {26, false, "AA"}, {27, false, "AB"}, {51, false, "AZ"}, {52, false, "BA"}, {701, false, "ZZ"}, {702, false, "AAA"},
		{7, true, "H"}, {8, true, "J"}, {13, true, "P"}, {23, true, "Z"}, {24, true, "AA"},
	} {
		if got := Label(c.n, c.skipIO); got != c.want {
			t.Errorf("label %d is %q, want %q", c.n, got, c.want)
		}
	}
	for n := range 20_000 {
		for _, skip := range []bool{false, true} {
			if back, ok := number(Label(n, skip), skip); !ok || back != n {
				t.Fatalf("label %q reads as %d, want %d", Label(n, skip), back, n)
			}
		}
	}
}

func TestPrintedLabelsNeverMove(t *testing.T) {
	before := []plan.Element{element("a", plane.Open(p(0, 1), p(4, 1)))}
	ms := find(t, before...)
	var issued []Issued
	for _, m := range ms {
		issued = append(issued, Issued{Label: m.Label, At: m.At})
	}
	// The revision puts a wall further downstage and shortens the first one.
	after := &plan.Plan{Elements: []plan.Element{
		element("a", plane.Open(p(0, 1), p(3, 1))), element("new", plane.Open(p(0, 0), p(4, 0))),
	}}
	got := map[string]plane.Point{}
	ms = Of(after, &floor.Floor{}, issued, DefaultRules, 0)
	for _, m := range ms {
		got[m.Label] = m.At
	}
	if len(got) != 4 {
		t.Fatalf("labels %v, want four different ones", got)
	}
	if got["A"].To(p(0, 1)) > 1e-9 {
		t.Errorf("A moved to %v", got["A"])
	}
	if _, moved := got["B"]; moved {
		t.Error("the label of the end that is gone was given to another place")
	}
	gone := Gone(ms, issued)
	if len(gone) != 1 || gone[0].Label != "B" {
		t.Errorf("gone %+v, want B", gone)
	}
}

func TestTwoMarksOnOneSpotKeepTheirPrintedLabels(t *testing.T) {
	chair := element("chair", plane.Rectangle(p(0, 0), p(1, 1)))
	chair.Kind = plan.Furniture
	pl := &plan.Plan{Elements: []plan.Element{element("wall", plane.Open(p(0, 1), p(4, 1))), chair}}
	before := Of(pl, &floor.Floor{}, nil, DefaultRules, 0)
	if before[0].At != before[1].At || before[0].Kind == before[1].Kind {
		t.Fatalf("marks %+v, want an end and a spike on one spot first", before)
	}
	var issued []Issued
	for _, m := range before {
		issued = append(issued, Issued{Label: m.Label, At: m.At})
	}
	for i, m := range Of(pl, &floor.Floor{}, issued, DefaultRules, 0) {
		if m.Label != before[i].Label {
			t.Errorf("the %s was printed as %s and is now %s", m.Kind, before[i].Label, m.Label)
		}
	}
}

func TestMarksKnowTheirScenes(t *testing.T) {
	pl := &plan.Plan{
		Scenes: []plan.Scene{{ID: "one"}, {ID: "two"}},
		Elements: []plan.Element{
			element("always", plane.Open(p(0, 0), p(4, 0))),
			element("once", plane.Open(p(0, 2), p(4, 2))),
			element("rests on it", plane.Open(p(4, 0), p(4, 1))),
		},
	}
	pl.Elements[1].Stands = []plan.Stand{{Scene: "two"}}
	pl.Elements[2].Stands = []plan.Stand{{Scene: "two"}}
	in := map[bool]int{}
	for _, m := range Of(pl, &floor.Floor{}, nil, DefaultRules, 0) {
		in[m.In("one")]++
		if m.At.To(p(4, 0)) < 1e-6 && !m.In("one") {
			t.Error("a corner of what stands always is missing from a scene")
		}
	}
	if in[true] != 2 || in[false] != 3 {
		t.Errorf("in the first scene %d, not in it %d; want 2 and 3", in[true], in[false])
	}
}

func TestFurnitureIsSpikedAtItsUpstageCorners(t *testing.T) {
	e := element("table", plane.Rectangle(p(-1, 2), p(1, 3)))
	e.Kind = plan.Furniture
	round := element("stool", plane.Circle(p(4, 4), 0.3))
	round.Kind = plan.Furniture
	ms := find(t, e, round)
	if count(ms, Spike) != 3 || len(ms) != 3 {
		t.Fatalf("marks %+v, want two spikes and one", ms)
	}
	for _, m := range ms {
		if m.Elements[0] == "table" && math.Abs(m.Up()-3) > 1e-9 {
			t.Errorf("spike of the table at %v up, want its upstage edge", m.Up())
		}
	}
}
