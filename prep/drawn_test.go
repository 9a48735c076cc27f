package prep

import (
	"strconv"
	"testing"

	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// numbered makes identifiers 1, 2 …
func numbered() func() string {
	n := 0
	return func() string {
		n++
		return strconv.Itoa(n)
	}
}

func TestElementsFromADrawing(t *testing.T) {
	id := numbered()
	p := &Production{Plan: plan.Plan{
		Levels:   []plan.Level{{ID: "up", Name: "Upper floor"}},
		Elements: []plan.Element{{ID: "old", Name: "Door 1"}},
	}}
	line := []plan.Path{{Role: plan.Outline, Path: plane.Open(plane.Point{}, plane.Point{X: 1})}}
	var in []plan.Element
	for _, c := range []sense.Candidate{
		{Name: "door 1", Kind: plan.Door, Level: "UPPER FLOOR", Paths: line},
		{Name: "Leg", Kind: plan.Masking, Level: "Fly floor", Paths: line},
		{Name: "Leg", Kind: plan.Masking, Level: "fly floor", Paths: line},
		{Name: "Wall", Kind: plan.Wall, Paths: line},
		{Name: "Proscenium", Kind: plan.Proscenium, Paths: line},
	} {
		in = append(in, ElementOf(c, p.Plan.Levels, id))
	}
	in[3].Stock = "a tape that is gone"
	p.AddElements(in, id)
	got := p.Plan.Elements
	if len(got) != 6 || len(p.Plan.Levels) != 2 {
		t.Fatalf("%d elements on %d levels, want 6 on 2", len(got), len(p.Plan.Levels))
	}
	fly := p.Plan.Levels[1].ID
	for i, want := range []plan.Element{
		{Name: "Door 1"},
		{Name: "door 1 (2)", Level: "up", Use: plan.Essential},
		{Name: "Leg", Level: fly, Use: plan.Seen},
		{Name: "Leg (2)", Level: fly, Use: plan.Seen},
		{Name: "Wall", Use: plan.Essential},
		{Name: "Proscenium", Use: plan.Useful},
	} {
		e := got[i]
		if e.Name != want.Name || e.Level != want.Level || e.Use != want.Use || e.Stock != "" {
			t.Errorf("element %d is %q on %q, %s, in %q; want %+v", i, e.Name, e.Level, e.Use, e.Stock, want)
		}
	}
	if p.Plan.Levels[1].Name != "Fly floor" || line[0].ID != "" {
		t.Error("the new level has another name, or the drawing's own lines were changed")
	}
}

func TestALevelThatIsGoneIsTheStageFloor(t *testing.T) {
	p := &Production{}
	if got := p.SettleLevel("gone", numbered()); got != "" {
		t.Errorf("it is %q", got)
	}
}

func TestTheDrawingLaidLastLiesUnderThePlan(t *testing.T) {
	p := &Production{Drawings: []Drawing{{ID: "a"}, {ID: "b"}}}
	if _, _, ok := p.UnderPlan(); ok {
		t.Error("something lies under the plan before anything was laid")
	}
	p.LayDrawing("a", []KnownPoint{{ID: "1"}, {ID: "2"}})
	p.LayDrawing("b", []KnownPoint{{ID: "3"}, {ID: "4"}})
	p.LayDrawing("a", []KnownPoint{{ID: "5"}, {ID: "6"}})
	if d, points, ok := p.UnderPlan(); !ok || d.ID != "a" || len(points) != 2 || points[0].ID != "5" {
		t.Errorf("%v lies there by %v", d, points)
	}
	p.RemoveDrawing("a")
	if d, _, ok := p.UnderPlan(); !ok || d.ID != "b" || len(p.Drawings) != 1 {
		t.Errorf("once that is removed %v lies there", d)
	}
	p.LayDrawing("b", nil)
	if _, _, ok := p.UnderPlan(); ok || len(p.KnownPoints) != 0 {
		t.Error("what was taken away is still there")
	}
}

func TestTheFormatTellsThePageThatIsTraced(t *testing.T) {
	for format, want := range map[string]int{"PDF": 0, "PNG": 0, FormatOfPage("PDF", 12): 12} {
		if got := (Drawing{Format: format}).Page(); got != want {
			t.Errorf("%s: page %d, want %d", format, got, want)
		}
	}
}
