package revision_test

import (
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
)

// decided is a plan on which the team has decided something about everything.
func decided() *plan.Plan {
	p := &plan.Plan{Elements: set(), Scenes: []plan.Scene{{ID: "one"}}, Carries: []plan.Carry{{Carrier: "id of Revolve", Scene: "one", Travel: 90}}}
	for i := range p.Elements {
		e := &p.Elements[i]
		e.Stock, e.Use, e.Note = "red", plan.Essential, "keep"
		e.Stands = []plan.Stand{{Scene: "one", Over: 0.5}}
	}
	p.Element("id of Sofa").Rides = "id of Revolve"
	return p
}

// drawn is the next drawing: its identifiers are its own.
func drawn() []plan.Element {
	es := set()
	es[3] = moved(es[3], plane.Motion{Shift: pt(0.5, 0)})
	es[1].Paths = es[1].Paths[:6]
	es = slices.Delete(es, 2, 3)
	es = append(es, element("Lamp", plan.Furniture, plane.Circle(pt(5, 5), 0.2)))
	for i := range es {
		es[i].ID = "new " + es[i].ID
		es[i].Paths = slices.Clone(es[i].Paths)
		for k := range es[i].Paths {
			es[i].Paths[k].ID = "new " + es[i].Paths[k].ID
		}
	}
	return es
}

func all(cs revision.Changes) []int {
	var out []int
	for i := range cs {
		out = append(out, i)
	}
	return out
}

func TestAcceptedChangesKeepWhatTheTeamDecided(t *testing.T) {
	p := decided()
	cs := revision.Compare(p.Elements, drawn(), revision.DefaultTolerance)
	if err := revision.Apply(p, cs, all(cs)); err != nil {
		t.Fatal(err)
	}
	sofa, was := p.Element("id of Sofa"), decided().Element("id of Sofa")
	if sofa == nil || sofa.Stock != "red" || sofa.Note != "keep" || len(sofa.Stands) != 1 || sofa.Rides != "" {
		t.Errorf("the sofa is %+v", sofa)
	}
	want := was.Paths[0].Path.Moved(plane.Motion{Shift: pt(0.5, 0)})
	if sofa.Paths[0].ID != was.Paths[0].ID || cmp.Diff(want, sofa.Paths[0].Path) != "" {
		t.Errorf("its outline is %+v", sofa.Paths[0])
	}
	if stair := p.Element("id of Stair"); len(stair.Paths) != 6 || stair.Paths[5].ID != was6(t) {
		t.Errorf("the stair has %d paths, the last is %s", len(stair.Paths), stair.Paths[5].ID)
	}
	if p.Element("id of Revolve") != nil || len(p.Carries) != 0 {
		t.Error("the revolve is still there, or carries")
	}
	if last := p.Elements[len(p.Elements)-1]; last.ID != "new id of Lamp" {
		t.Errorf("the last element is %s", last.ID)
	}
}

func was6(t *testing.T) plan.PathID {
	t.Helper()
	return decided().Element("id of Stair").Paths[5].ID
}

func TestOnlyWhatIsAcceptedChanges(t *testing.T) {
	p := decided()
	cs := revision.Compare(p.Elements, drawn(), revision.DefaultTolerance)
	i := slices.IndexFunc(cs, func(c revision.Change) bool { return c.Name() == "Stair" })
	if err := revision.Apply(p, cs, []int{i, i}); err != nil {
		t.Fatal(err)
	}
	want := decided()
	want.Element("id of Stair").Paths = want.Element("id of Stair").Paths[:6]
	if diff := cmp.Diff(want, p); diff != "" {
		t.Error(diff)
	}
}

func TestTheRevisionLeavesNoTraceInTheDrawing(t *testing.T) {
	p, es := decided(), drawn()
	cs := revision.Compare(p.Elements, es, revision.DefaultTolerance)
	if err := revision.Apply(p, cs, all(cs)); err != nil {
		t.Fatal(err)
	}
	for i := range p.Elements {
		for k := range p.Elements[i].Paths {
			p.Elements[i].Paths[k].Vertices[0].X += 100
		}
	}
	if diff := cmp.Diff(drawn(), es); diff != "" {
		t.Errorf("the drawing shares its lines with the plan: %s", diff)
	}
}

func TestRefusedRevisionsLeaveThePlan(t *testing.T) {
	lamp := element("Lamp", plan.Furniture, plane.Circle(pt(5, 5), 0.2))
	bare := lamp
	bare.ID = ""
	for _, c := range []struct {
		name    string
		changes revision.Changes
		accept  []int
		stale   bool
	}{
		{"a number too high", nil, []int{0}, false},
		{"a number below zero", nil, []int{-1}, false},
		{"an element that has left", revision.Changes{{Outcome: revision.Gone, Before: lamp}}, []int{0}, true},
		{"a new one without identifier", revision.Changes{{Outcome: revision.New, After: bare}}, []int{0}, false},
		{"a new one twice", revision.Changes{{Outcome: revision.New, After: lamp}, {Outcome: revision.New, After: lamp}}, []int{0, 1}, true},
		{"a good one before a bad one", revision.Changes{{Outcome: revision.New, After: lamp}}, []int{0, 1}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := decided()
			err := revision.Apply(p, c.changes, c.accept)
			if err == nil || errors.Is(err, revision.ErrStale) != c.stale {
				t.Errorf("got %v, stale: %v", err, c.stale)
			}
			if diff := cmp.Diff(decided(), p); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestAcceptingEverythingLeavesNothingToCompare(t *testing.T) {
	p := decided()
	cs := revision.Compare(p.Elements, drawn(), revision.DefaultTolerance)
	if err := revision.Apply(p, cs, all(cs)); err != nil {
		t.Fatal(err)
	}
	again := revision.Compare(p.Elements, drawn(), revision.DefaultTolerance)
	if n := again.Count(revision.Unchanged); n != len(again) {
		t.Errorf("%d of %d unchanged", n, len(again))
	}
}
