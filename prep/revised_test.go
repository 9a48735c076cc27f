package prep

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
)

// printed is the small production with every label printed and placed. It has no
// revolve: the points along a curve shift when a wall crosses it elsewhere.
func printed() *Production {
	p := small()
	p.RemoveElement("revolve")
	p.Issued, p.Progress = nil, nil
	for _, f := range p.Floors {
		for _, m := range Work(p, f.ID, "").Marks {
			p.Issued = append(p.Issued, marks.Issued{Floor: f.ID, Label: m.Label, At: m.At})
			p.Progress = append(p.Progress, marks.Progress{Floor: f.ID, Label: m.Label, Placed: floor.Decision{By: "Ada", On: monday}})
		}
	}
	return p
}

// wallMoved is printed with the wall half a metre further upstage.
func wallMoved() *Production {
	p := printed()
	e := p.Plan.Element("wall")
	e.Paths[0].Path = e.Paths[0].Path.Moved(plane.Motion{Shift: pt(0, 0.5)})
	return p
}

func labels(ms []MeasuredMark) []string {
	var out []string
	for _, m := range ms {
		out = append(out, m.Label)
	}
	return out
}

func TestARevisionThatChangesNothingMeansNothing(t *testing.T) {
	for _, c := range RevisionOnFloors(printed(), printed()) {
		if c.Any() || c.Minutes != 0 {
			t.Errorf("%+v", c)
		}
		if got, want := c.Sentence(small()), c.Name+" stays as it is."; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestAMovedWallIsLiftedAndLaidUnderNewLabels(t *testing.T) {
	before, after := printed(), wallMoved()
	for _, c := range RevisionOnFloors(before, after) {
		t.Run(c.Name, func(t *testing.T) {
			if !c.Down || len(c.Lift) == 0 || len(c.Lay) == 0 {
				t.Fatalf("to lift %v, to lay %v", labels(c.Lift), labels(c.Lay))
			}
			for _, m := range c.Lay {
				if m.Frozen || slices.ContainsFunc(before.Issued, func(is marks.Issued) bool { return is.Floor == c.Floor && is.Label == m.Label }) {
					t.Errorf("%s was printed before for another place", m.Label)
				}
				if !m.HasTapes || !slices.Contains(m.Elements, "wall") {
					t.Errorf("%s is for %v, measured: %v", m.Label, m.Elements, m.HasTapes)
				}
			}
			var gone []string
			for _, is := range Work(after, c.Floor, "").Gone {
				gone = append(gone, is.Label)
			}
			got := labels(c.Lift)
			slices.Sort(got)
			slices.Sort(gone)
			if !slices.Equal(got, gone) {
				t.Errorf("to lift %v, but the labels %v are gone", got, gone)
			}
		})
	}
}

func TestTapeOfARevisionIsWhatItAddsAndTakes(t *testing.T) {
	before, after := printed(), printed()
	for _, p := range []*Production{before, after} {
		p.Floors = p.Floors[1:]
	}
	// The wall of 4 m is 1 m longer at stage left and begins 0.5 m later.
	after.Plan.Element("wall").Paths[0].Path = plane.Open(pt(-1.5, 3), pt(3, 3))
	cs := RevisionOnFloors(before, after)
	if len(cs) != 1 || len(cs[0].Tape) != 1 {
		t.Fatalf("%+v", cs)
	}
	// From 2 to 3 m only: the stair begins at 3.
	got := cs[0].Tape[0]
	if got.Stock != "red" || math.Abs(got.More-1) > 0.01 || math.Abs(got.Less-0.5) > 0.01 || math.Abs(got.Net()-0.5) > 0.02 {
		t.Errorf("%+v, want 1 m more and 0.5 m less of red", got)
	}
}

func TestMinutesFollowTheRates(t *testing.T) {
	before, after := printed(), wallMoved()
	usual := RevisionOnFloors(before, after)[1]
	after.Settings.Rates.MarksPerHour /= 4
	slow := RevisionOnFloors(before, after)[1]
	if !(usual.Minutes > 0 && slow.Minutes > usual.Minutes) {
		t.Errorf("%d minutes, and %d for a slower team", usual.Minutes, slow.Minutes)
	}
	// Nothing is lifted where nothing is down.
	before.Progress, before.Issued = nil, nil
	bare := RevisionOnFloors(before, wallMoved())[1]
	if bare.Down || len(bare.Lift) != 0 || bare.Minutes >= usual.Minutes {
		t.Errorf("%v, to lift %v, %d minutes", bare.Down, labels(bare.Lift), bare.Minutes)
	}
}

func TestSentenceOfAFloorChange(t *testing.T) {
	before, after := printed(), wallMoved()
	after.Settings.Unit, after.Settings.Step = "m", 0.005
	c := RevisionOnFloors(before, after)[1]
	got := c.Sentence(after)
	for _, want := range []string{"Stage: 2 marks to lift and 2 marks to lay, 4.000 m of tape to lay and 4.000 m to lift, about ", " for two people."} {
		if !strings.Contains(got, want) {
			t.Errorf("got %q, want %q in it", got, want)
		}
	}
}

func TestTakeRevisionClearsWhatIsGone(t *testing.T) {
	p := small()
	es := slices.Clone(p.Plan.Elements)
	es = slices.DeleteFunc(es, func(e plan.Element) bool { return e.ID == "stair" })
	cs := revision.Compare(p.Plan.Elements, es, revision.DefaultTolerance)
	var all []int
	for i := range cs {
		all = append(all, i)
	}
	if err := TakeRevision(p, cs, all, numbered()); err != nil {
		t.Fatal(err)
	}
	if p.Plan.Element("stair") != nil || slices.ContainsFunc(p.Floors[0].Treatments, func(tr floor.Treatment) bool { return tr.Element == "stair" }) {
		t.Error("the stair or its treatment is still there")
	}
	if err := TakeRevision(p, cs, all, numbered()); !errors.Is(err, revision.ErrStale) {
		t.Errorf("taken over twice: %v", err)
	}
}
