package prep

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func savingNamed(t *testing.T, p *Production, name string) (Saving, bool) {
	t.Helper()
	all := Savings(p)
	i := slices.IndexFunc(all, func(s Saving) bool { return s.Name == name })
	if i < 0 {
		return Saving{}, false
	}
	return all[i], true
}

func TestLeavingOutWhatNobodyUsesSavesItsTape(t *testing.T) {
	p := small()
	p.Settings.Allowances = supplies.Allowances{Waste: 0.1}
	back := element("back", plan.Wall, plane.Open(pt(-2, 5), pt(2, 5)))
	back.Use = plan.Seen
	p.Plan.Elements = append(p.Plan.Elements, back)
	s, ok := savingNamed(t, p, "Leave out what no actor uses")
	// 4 m of line and a tenth of waste; nothing else has a length here.
	if !ok || math.Abs(s.Metres-4.4) > 1e-6 || s.Loses != 1 {
		t.Errorf("%+v, %v; want 4.4 m and one element", s, ok)
	}
}

func TestASavingThatSavesNoWholeRollSavesNoMoney(t *testing.T) {
	p := small()
	p.Stocks[0].Roll = 1e6
	s, ok := savingNamed(t, p, "Repair the floor for one week less")
	if !ok || s.Metres <= 0 || s.Cents != 0 {
		t.Errorf("%+v, %v; want tape and no money saved", s, ok)
	}
	p.Stocks[0].Roll = 0.1
	if s, _ := savingNamed(t, p, "Repair the floor for one week less"); s.Cents <= 0 {
		t.Errorf("%+v, want money saved once rolls are short", s)
	}
}

func TestDecisionsOnRecordStay(t *testing.T) {
	p := small()
	wall := &p.Plan.Elements[0]
	wall.Use = plan.Seen
	if _, ok := savingNamed(t, p, "Leave out what no actor uses"); ok {
		t.Error("a wall that the director had moved aside was given up")
	}
}

func TestWeighingSavingsChangesNothing(t *testing.T) {
	p := small()
	p.Plan.Elements[1].Use = plan.Seen
	p.Floors[0].Treatments = append(p.Floors[0].Treatments, floor.Treatment{Element: "revolve", How: floor.AsDrawn})
	want := small()
	want.Plan.Elements[1].Use = plan.Seen
	want.Floors[0].Treatments = append(want.Floors[0].Treatments, floor.Treatment{Element: "revolve", How: floor.AsDrawn})
	Savings(p)
	if !reflect.DeepEqual(p, want) {
		t.Error("the production was changed")
	}
}

func TestGivingUpTheDanceLineLeavesTheStagesOwn(t *testing.T) {
	p := small()
	p.DanceLines = append(p.DanceLines, marks.DanceLine{ID: "real", Floor: "stage", Step: 0.6096, Unit: 0.3048, Reach: 3})
	if !GiveUp(p, "Do not tape the dance line") {
		t.Fatal("there is no such saving")
	}
	if len(p.DanceLines) != 1 || p.DanceLines[0].ID != "real" {
		t.Errorf("dance lines %+v, want the stage's alone", p.DanceLines)
	}
	if slices.ContainsFunc(p.Typed, func(t Typed) bool { return t.Row == "dance" }) {
		t.Error("what was typed for the room's line is still kept")
	}
}

func TestSavingsCostMostFirst(t *testing.T) {
	p := small()
	p.Stocks[0].Roll = 1
	all := Savings(p)
	if !slices.IsSortedFunc(all, func(a, b Saving) int { return b.Cents - a.Cents }) || len(all) == 0 {
		t.Errorf("%+v", all)
	}
}

func TestGivingUpSavesWhatWasWeighed(t *testing.T) {
	p := small()
	p.Settings.Allowances = supplies.Allowances{Waste: 0.1}
	back := element("back", plan.Wall, plane.Open(pt(-2, 5), pt(2, 5)))
	back.Use = plan.Seen
	p.Plan.Elements = append(p.Plan.Elements, back)
	for _, s := range Savings(p) {
		q := draft(p)
		if !GiveUp(&q, s.Name) {
			t.Fatalf("%q cannot be given up", s.Name)
		}
		if got := spend(p).metres - spend(&q).metres; math.Abs(got-s.Metres) > 1e-9 {
			t.Errorf("%q saves %v m, but %v m were weighed", s.Name, got, s.Metres)
		}
	}
	if GiveUp(p, "something else") {
		t.Error("something unknown could be given up")
	}
}
