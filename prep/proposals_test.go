package prep

import (
	"context"
	"errors"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// doubtful is a room of ten by eight metres, the datum two metres from its front,
// and one thing for every rule.
func doubtful() *Production {
	p := &Production{Settings: DefaultSettings()}
	p.Settings.Unit, p.Settings.Step = "m", 0.001
	used := func(id plan.ElementID, kind plan.Kind, use plan.Use, path plane.Path) plan.Element {
		e := element(id, kind, path)
		e.Use = use
		return e
	}
	treads := used("stair", plan.Stair, plan.Essential, plane.Rectangle(pt(-1, 0), pt(0, 2)))
	treads.Paths = append(treads.Paths, plan.Path{ID: "tread", Role: plan.Inner, Path: plane.Open(pt(-1, 1), pt(0, 1))})
	danced := treads
	danced.ID, danced.Use = "danced", plan.Danced
	loft := used("loft", plan.Platform, plan.Essential, plane.Rectangle(pt(-3, 3), pt(-1, 5)))
	loft.Level = "up"
	gone := used("gone", plan.Wall, plan.Essential, plane.Open(pt(0, 1), pt(1, 1)))
	gone.Stands = []plan.Stand{{Scene: "no such scene"}}
	p.Plan = plan.Plan{
		Scenes: []plan.Scene{{ID: "one"}},
		Levels: []plan.Level{{ID: "up", Name: "Loft", Height: 2.5}},
		Elements: []plan.Element{
			used("kept", plan.Wall, plan.Essential, plane.Open(pt(-3.5, 2.5), pt(-0.5, 2.5))),
			used("seen", plan.Masking, plan.Seen, plane.Open(pt(-2, 5.5), pt(2, 5.5))),
			used("escape", plan.EscapeStair, plan.Useful, plane.Rectangle(pt(2, 4), pt(3, 5))),
			used("cut", plan.Wall, plan.Essential, plane.Open(pt(0, 4), pt(0, 8))),
			used("mostly out", plan.Wall, plan.Useful, plane.Open(pt(4, 4), pt(8, 4))),
			used("far out", plan.Wall, plan.Useful, plane.Open(pt(8, 4), pt(9, 4))),
			used("needed far out", plan.Platform, plan.Essential, plane.Rectangle(pt(5.5, -0.5), pt(6.5, 0.5))),
			used("sofa", plan.Furniture, plan.Essential, plane.Rectangle(pt(4.5, 2), pt(5.5, 3))),
			used("on the way", plan.Wall, plan.Useful, plane.Open(pt(3, -1.5), pt(4, -1.5))),
			treads, danced, loft, gone,
			used("below", plan.Platform, plan.Essential, plane.Rectangle(pt(-3.2, 3.2), pt(-1.2, 4.8))),
		},
	}
	p.Floors = []floor.Floor{{
		ID: "room", Name: "Room", Kind: floor.Room, Rule: floor.AnyTape,
		Outline: plane.Rectangle(pt(0, 0), pt(10, 8)), Placement: plane.Motion{Shift: pt(5, 2)},
		KeepClears: []floor.KeepClear{{ID: "exit", Name: "The yard door", Shape: plane.Rectangle(pt(8, 0), pt(10, 1))}},
	}, {ID: "stage", Name: "Stage", Kind: floor.Stage}}
	return p
}

func TestWhatStandsInTheSwingOfADoorIsProposedToGo(t *testing.T) {
	p := doubtful()
	screen := element("screen", plan.Wall, plane.Open(pt(4.2, 0.2), pt(4.6, 0.2)))
	screen.Use = plan.Useful
	p.Plan.Elements = append(p.Plan.Elements, screen)
	proposed := func() string {
		for _, x := range proposed(t, p, &p.Floors[0]) {
			if x.Element == "screen" {
				return string(x.How) + ": " + x.Reason
			}
		}
		return ""
	}
	if got := proposed(); got != "" {
		t.Fatalf("without a door it is %s", got)
	}
	p.Floors[0].Features = []floor.Feature{{ID: "d", Name: "The east door", Kind: floor.RoomDoor, Opens: floor.OpensIn, Shape: plane.Open(pt(10, 2), pt(10, 3))}}
	if got := proposed(); !strings.Contains(got, string(floor.LeftOut)) || !strings.Contains(got, "the swing of The east door") {
		t.Errorf("in the door's swing it is %q", got)
	}
}

func proposed(t *testing.T, p *Production, f *floor.Floor) []floor.Treatment {
	t.Helper()
	out, err := Propose(context.Background(), p, f)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Called off in the midst of its work it proposes nothing, and has not sought on.
func TestProposingEndsWhenItIsCalledOff(t *testing.T) {
	p := doubtful()
	ctx, callOff := context.WithCancel(context.Background())
	pr := proposing{ctx: ctx, p: p, f: &p.Floors[0], made: map[plan.ElementID]floor.Treatment{}}
	asked := 0
	pr.each(&p.Floors[0], func(*plan.Element) (floor.Treatment, bool) {
		asked++
		callOff()
		return floor.Treatment{}, false
	})
	if asked != 1 {
		t.Errorf("%d elements were looked at", asked)
	}
	if got, err := Propose(ctx, p, &p.Floors[0]); !errors.Is(err, context.Canceled) || got != nil {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestProposalsFollowFromKindUseAndPlace(t *testing.T) {
	p := doubtful()
	got := map[plan.ElementID]floor.Treatment{}
	for _, x := range proposed(t, p, &p.Floors[0]) {
		got[x.Element] = x
		if x.Reason == "" || !x.Decided.Open() {
			t.Errorf("%s: %+v, want a reason and no decision", x.Element, x)
		}
	}
	for id, want := range map[plan.ElementID]struct {
		how floor.How
		why string
	}{
		"kept": {}, "danced": {}, "below": {},
		"seen":           {floor.LeftOut, "no actor uses it"},
		"escape":         {floor.LeftOut, "escape stair"},
		"cut":            {floor.CutShort, "2.000 m of 4.000 m lie outside"},
		"mostly out":     {floor.LeftOut, "3.000 m of 4.000 m"},
		"far out":        {floor.LeftOut, "all of it lies outside"},
		"needed far out": {floor.MovedAside, "nearest free place"},
		"sofa":           {floor.MovedAside, "set by hand"},
		"on the way":     {floor.LeftOut, "The yard door"},
		"stair":          {floor.OutlineOnly, "treads"},
		"loft":           {floor.MovedAside, "lies over"},
		"gone":           {floor.LeftOut, "no scene"},
	} {
		if x := got[id]; x.How != want.how || !strings.Contains(x.Reason, want.why) {
			t.Errorf("%s: %s, %q; want %s, %q", id, x.How, x.Reason, want.how, want.why)
		}
	}
	if x := proposed(t, p, &p.Floors[1]); x != nil {
		t.Errorf("on the stage %+v is proposed, where all of it stands", x)
	}
}

// What is moved as proposed lies inside, on nothing else.
func TestProposedMovesBringThingsInside(t *testing.T) {
	p := doubtful()
	TakeProposals(p, "room", proposed(t, p, &p.Floors[0]))
	f := p.Floor("room")
	for _, o := range f.Overhangs(&p.Plan) {
		if how := f.Decide(p.Plan.Element(o.Element)).How; how == floor.MovedAside {
			t.Errorf("%s is moved aside and still sticks out by %g m", o.Element, o.Length)
		}
	}
	laid := func(e *plan.Element) (plane.Path, floor.How) {
		x := f.Decide(e)
		return e.Paths[0].Path.Moved(plane.Motion{Shift: pt(x.Over, x.Up)}), x.How
	}
	moved := 0
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		path, how := laid(e)
		if how != floor.MovedAside {
			continue
		}
		moved++
		for k := range p.Plan.Elements {
			other := &p.Plan.Elements[k]
			if beneath, how := laid(other); other.ID != e.ID && how != floor.LeftOut && plane.Overlap(path, beneath) > 1e-6 {
				t.Errorf("%s is moved onto %s", e.ID, other.ID)
			}
		}
	}
	if moved != 3 {
		t.Errorf("%d things are moved aside, want the loft, the sofa and the platform that is far out", moved)
	}
}

func TestADecisionOutweighsAProposal(t *testing.T) {
	p := doubtful()
	f := p.Floor("room")
	f.Treatments = []floor.Treatment{{Element: "cut", How: floor.AsDrawn, Decided: floor.Decision{By: "The director"}}}
	proposals := proposed(t, p, f)
	for _, x := range proposals {
		if x.Element == "cut" {
			t.Error("what the director has decided is proposed again")
		}
	}
	n := TakeProposals(p, "room", append(proposals, floor.Treatment{Element: "cut", How: floor.LeftOut}))
	if n != len(proposals) || f.Decide(p.Plan.Element("cut")).How != floor.AsDrawn {
		t.Errorf("%d taken of %d, and the wall is %s", n, len(proposals), f.Decide(p.Plan.Element("cut")).How)
	}
	for _, x := range f.Treatments {
		if x.Element != "cut" && !x.Decided.Open() {
			t.Errorf("%+v: taking a proposal is no decision", x)
		}
	}
}

func TestQuestionsAreAnsweredOnRecord(t *testing.T) {
	p := doubtful()
	p.Notes = []Note{{ID: "n", Element: "kept", Text: "Is it real?", Owner: "Ada", Open: true}}
	ask := func() map[string]Question {
		out := map[string]Question{}
		for _, q := range Questions(p, Work(p, "room", ""), proposed(t, p, p.Floor("room"))) {
			out[q.ID] = q
		}
		return out
	}
	open := ask()
	cut := open["cut"]
	if !strings.Contains(cut.Text, "2.000 m of its 4.000 m") || !strings.HasPrefix(cut.Proposed, "cut short") {
		t.Errorf("question %+v, want what sticks out and the proposal to cut it", cut)
	}
	if _, asked := open["kept"]; asked {
		t.Error("what fits as drawn is asked about")
	}
	if err := p.Settle(cut, Answer{ID: "a1", Floor: "room", Text: "Cut it", By: "The director", On: monday}, cut.Proposal); err != nil {
		t.Fatal(err)
	}
	if err := p.Settle(open["n"], Answer{ID: "a2", Floor: "room", Text: "No", By: "The director", On: clock(1, 9, 0)}, floor.Treatment{}); err != nil {
		t.Fatal(err)
	}
	if err := p.Settle(cut, Answer{ID: "a3", Floor: "room", Text: "Cut it"}, cut.Proposal); err == nil {
		t.Error("an answer that nobody gave is on record")
	}
	left := ask()
	if _, asked := left["cut"]; asked || len(left) != len(open)-2 {
		t.Errorf("%d questions are left of %d", len(left), len(open))
	}
	x := p.Floor("room").Decide(p.Plan.Element("cut"))
	if x.How != floor.CutShort || x.Decided.By != "The director" || !x.Decided.On.Equal(monday) {
		t.Errorf("treatment %+v", x)
	}
	answers := p.AnswersOn("room")
	if len(answers) != 2 || answers[0].ID != "a2" || answers[1].Question != cut.Text || answers[1].About != "the cut" {
		t.Errorf("answers %+v, want both, the latest first", answers)
	}
	p.RemoveElement("cut")
	if answers := p.AnswersOn("room"); len(answers) != 2 || answers[1].Element != "" || answers[1].About != "the cut" {
		t.Errorf("answers %+v, want the record to outlive the element", answers)
	}
}
