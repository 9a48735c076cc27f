package prep

import (
	"context"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// narrow is a room of four metres by three with a wall of six, and a stair.
func narrow(use plan.Use) *Production {
	line := func(a, b plane.Point) []plan.Path { return []plan.Path{{Role: plan.Outline, Path: plane.Open(a, b)}} }
	p := &Production{Settings: DefaultSettings()}
	p.Plan.Elements = []plan.Element{
		{ID: "wall", Name: "Long wall", Kind: plan.Wall, Use: use, Paths: line(plane.Point{X: -3}, plane.Point{X: 3})},
		{ID: "stair", Name: "Stair", Kind: plan.Stair, Use: plan.Essential, Paths: line(plane.Point{Y: 1}, plane.Point{X: 1, Y: 1})},
	}
	p.Floors = []floor.Floor{{ID: "f", Name: "Room", Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 4, Y: 3}), Placement: plane.Motion{Shift: plane.Point{X: 2, Y: 1}}}}
	return p
}

func TestProposalsSayWhatTheyKeepAndLose(t *testing.T) {
	p := narrow(plan.Useful)
	got, err := ProposePlacements(context.Background(), p, &p.Floors[0], nil)
	if err != nil || len(got.Proposals) == 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	best := got.Proposals[0] // along the diagonal of five metres the wall loses one
	if lost := LostWords(p, best, 3); !strings.HasPrefix(lost, "Long wall: ") || !strings.Contains(lost, "beyond the walls") {
		t.Errorf("lost %q", lost)
	}
	if kept := KeptWords(best); !strings.Contains(kept, "of the lines") {
		t.Errorf("kept %q", kept)
	}
	hand, ok := PlacementScore(p, &p.Floors[0])
	if !ok || hand.Score > best.Score {
		t.Errorf("by hand %v, found %v", hand.Score, best.Score)
	}
	if w := got.GuaranteeWords(); !strings.Contains(w, "No placement keeps more than") {
		t.Errorf("said %q", w)
	}
}

func TestProposalsAreInFiguresThatATapeHas(t *testing.T) {
	p := narrow(plan.Useful)
	p.Settings.Step = 0.01
	got, err := ProposePlacements(context.Background(), p, &p.Floors[0], nil)
	if err != nil || len(got.Proposals) == 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	for _, k := range got.Proposals {
		for _, v := range []float64{k.Placement.Shift.X * 100, k.Placement.Shift.Y * 100} {
			if math.Abs(v-math.Round(v)) > 1e-6 {
				t.Errorf("the datum lies at %v, want whole centimetres", k.Placement.Shift)
			}
		}
	}
}

func TestWhatCannotBePlacedNamesWhatMustGive(t *testing.T) {
	p := narrow(plan.Essential)
	got, err := ProposePlacements(context.Background(), p, &p.Floors[0], nil)
	if err != nil || len(got.Proposals) > 0 {
		t.Fatalf("%+v, %v", got, err)
	}
	if said := got.NoneWords(p); !strings.Contains(said, "Long wall is essential and must be whole") || strings.Contains(said, "Stair") {
		t.Errorf("said %q", said)
	}
}

func TestOfManyElementsThatAreNotWholeAFewAreNamed(t *testing.T) {
	p := &Production{Settings: DefaultSettings()}
	var k placement.Kept
	for _, name := range []string{"Door", "Stair", "Stove", "Trap", "Wall"} {
		p.Plan.Elements = append(p.Plan.Elements, plan.Element{ID: plan.ElementID(name), Name: name})
		k.Breaches = append(k.Breaches, placement.Breach{Need: placement.Whole, Element: plan.ElementID(name)})
		want := map[string]string{
			"Door":  "Door must be whole and is not",
			"Stair": "Door and Stair must be whole and are not",
			"Trap":  "Door, Stair, Stove and Trap must be whole and are not",
			"Wall":  "Door, Stair, Stove and 2 more must be whole and are not",
		}[name]
		if got := BreachWords(p, k); want != "" && got != want {
			t.Errorf("said %q, want %q", got, want)
		}
	}
	if got := BreachList(p, k); len(got) != 5 || got[4] != "Wall must be whole and is not" {
		t.Errorf("listed %q", got)
	}
}
