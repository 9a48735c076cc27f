package prep

import (
	"slices"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func elementsNeeding(p *Production, scene plan.SceneID) []plan.ElementID {
	var out []plan.ElementID
	for _, n := range StandInNeeds(p, scene) {
		out = append(out, n.Element)
	}
	return out
}

func TestWhatNeedsAStandIn(t *testing.T) {
	door := element("door", plan.Door, plane.Open(pt(0, 0), pt(1, 0)))
	for name, c := range map[string]struct {
		change func(*Production)
		scene  plan.SceneID
		want   []plan.ElementID
	}{
		"furniture of the scene":      {func(*Production) {}, "one", []plan.ElementID{"chair"}},
		"more in another scene":       {func(*Production) {}, "two", []plan.ElementID{"chair", "lamp"}},
		"any scene":                   {func(*Production) {}, "", []plan.ElementID{"chair", "lamp"}},
		"a door":                      {func(p *Production) { p.Plan.Elements = append(p.Plan.Elements, door) }, "one", []plan.ElementID{"chair", "door"}},
		"what nobody uses":            {func(p *Production) { p.Plan.Elements[3].Use = plan.Seen; p.StandIns = nil }, "one", nil},
		"what nobody uses, on record": {func(p *Production) { p.Plan.Elements[3].Use = plan.Seen }, "one", []plan.ElementID{"chair"}},
		"object only": {func(p *Production) {
			p.Floors[0].Treatments[0] = floor.Treatment{Element: "wall", How: floor.ObjectOnly}
		}, "one", []plan.ElementID{"wall", "chair"}},
		"left out of the only room": {func(p *Production) {
			p.Floors[0].Treatments[0] = floor.Treatment{Element: "chair", How: floor.LeftOut}
			p.StandIns = nil
		}, "one", nil},
	} {
		t.Run(name, func(t *testing.T) {
			p := small()
			c.change(p)
			if got := elementsNeeding(p, c.scene); !slices.Equal(got, c.want) {
				t.Errorf("got %v, want %v", got, c.want)
			}
		})
	}
}

func TestTheSceneEntryGoesBeforeTheGeneralOne(t *testing.T) {
	p := small()
	p.StandIns = append(p.StandIns, StandIn{ID: "s3", Element: "chair", Scene: "two", State: Swapped})
	for scene, want := range map[plan.SceneID]string{"one": "s1", "two": "s3"} {
		if n := StandInNeeds(p, scene)[0]; n.StandIn.ID != want {
			t.Errorf("scene %s uses %s, want %s", scene, n.StandIn.ID, want)
		}
	}
}

func TestPullListCountsWhatIsUsedAtOnce(t *testing.T) {
	p := small()
	l := PullList(p)
	// One block for the chair in both scenes, one more for the lamp in the second.
	if len(l) != 1 || l[0].Number != 2 || l[0].Scene != "two" || l[0].Missing != 1 || l[0].State != Asked {
		t.Errorf("pull list %+v, want 2 blocks for scene two, 1 missing, asked for", l)
	}
	ps := StandInProblems(p)
	if len(ps) != 1 || ps[0].Rule != RuleObjects {
		t.Errorf("problems %+v, want too few blocks", ps)
	}
	if all, weighted := StandInCount(p); all != 2 || weighted != 2 {
		t.Errorf("%d objects of which %d are weighted, want both blocks", all, weighted)
	}
	p.StandIns[1].State = Swapped
	if l := PullList(p); l[0].Number != 1 || l[0].Missing != 0 {
		t.Errorf("pull list %+v, want 1 block once the lamp has come", l)
	}
}

func TestAMissingStandInIsNamedOnce(t *testing.T) {
	p := small()
	p.StandIns = nil
	ps := StandInProblems(p)
	if len(ps) != 2 || ps[0].ID != "chair" || ps[1].ID != "lamp" {
		t.Errorf("problems %+v, want the chair and the lamp, once each", ps)
	}
}
