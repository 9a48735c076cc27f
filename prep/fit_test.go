package prep

import (
	"math"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestFitMeasuresAlongTheThingItself(t *testing.T) {
	turned := plane.Rectangle(pt(0, 0), pt(2, 1)).Moved(plane.About(pt(3, 3), 0.7))
	e := element("table", plan.Furniture, turned)
	for name, c := range map[string]struct {
		object Object
		off    float64
	}{
		"the same size":      {Object{Width: 2, Depth: 1}, 0},
		"turned":             {Object{Width: 1, Depth: 2}, 0},
		"too small":          {Object{Width: 1.5, Depth: 0.9}, 0.6},
		"any depth":          {Object{Width: 1.75}, 0.25},
		"any size":           {Object{}, 0},
		"shorter, but wider": {Object{Width: 1.8, Depth: 1.1}, 0.3},
	} {
		if got := fit(&e, c.object).Off; math.Abs(got-c.off) > 1e-9 {
			t.Errorf("%s: off by %.4f, want %.4f", name, got, c.off)
		}
	}
}

func TestWhatIsAlikeFitsBetter(t *testing.T) {
	p := small()
	p.Objects = []Object{{ID: "box", Kind: "block", Width: 0.5, Depth: 0.5, Count: 1}, {ID: "seat", Kind: "chair", Width: 0.6, Depth: 0.6, Count: 1}}
	p.Plan.Elements[3].Name = "Kitchen chair"
	if f := Fits(p, "chair"); len(f) != 2 || f[0].Object != "seat" || !f[0].Alike {
		t.Errorf("fits %+v, want the chair first", f)
	}
	p.Plan.Elements[3].Name = "Armchair"
	if f := Fits(p, "chair"); f[0].Object != "box" {
		t.Errorf("fits %+v, want the block of the right size", f)
	}
	if f := Fits(p, "nothing"); f != nil {
		t.Errorf("fits %+v for no element", f)
	}
}

func TestProposalsAreBestTogetherAndUseNothingTwice(t *testing.T) {
	p := small()
	p.StandIns = nil
	// The chair is 0.5 m square, the lamp 0.3 m. Each would take the middle one.
	p.Objects = []Object{{ID: "middle", Width: 0.4, Depth: 0.4, Count: 1}, {ID: "large", Width: 0.65, Depth: 0.65, Count: 1}}
	got := ProposeStandIns(p, "two")
	if len(got) != 2 || got[0].Object != "large" || got[1].Object != "middle" {
		t.Errorf("proposals %+v, want the large one for the chair and the middle one for the lamp", got)
	}
	p.Objects = p.Objects[:1]
	if got := ProposeStandIns(p, "two"); len(got) != 1 {
		t.Errorf("proposals %+v, want one, since there is one object", got)
	}
	p.StandIns = []StandIn{{ID: "s", Element: "chair", Object: "middle", Number: 1}}
	if got := ProposeStandIns(p, "two"); len(got) != 0 {
		t.Errorf("proposals %+v, want none: the object is used", got)
	}
	if got := ProposeStandIns(&Production{}, ""); got != nil {
		t.Errorf("proposals %+v for nothing", got)
	}
}
