package prep

import (
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestCompareTellsWhatDiffersAndNothingElse(t *testing.T) {
	p := doubtful()
	f := p.Floor("room")
	f.Treatments = []floor.Treatment{
		{Element: "cut", How: floor.CutShort}, {Element: "loft", How: floor.MovedAside, Over: 4}, {Element: "escape", How: floor.LeftOut},
	}
	s := p.Floor("stage")
	s.Outline = plane.Rectangle(pt(-20, -5), pt(20, 20))
	s.OwnDatum, s.Datum = true, plane.Motion{Shift: pt(0, -1.5)} // a metre and a half downstage
	c := Compare(p, Work(p, "room", ""), Work(p, "stage", ""))
	row := func(id plan.ElementID) Compared {
		i := slices.IndexFunc(c.Rows, func(r Compared) bool { return r.Element == id })
		if i < 0 {
			t.Fatalf("no row for %s", id)
		}
		return c.Rows[i]
	}
	cut := row("cut")
	if math.Abs(cut.A.Cut-2) > 1e-9 || math.Abs(cut.A.Laid-2) > 1e-9 || cut.B.Cut != 0 || math.Abs(cut.B.Laid-4) > 1e-9 {
		t.Errorf("the wall is %+v and %+v, want two of four metres cut away on the first", cut.A, cut.B)
	}
	said := strings.Join(cut.Differs, "; ")
	for _, want := range []string{"cut short here, as drawn there", "2.000 m cut away here, 0.000 m there", "2.000 m of lines here, 4.000 m there"} {
		if !strings.Contains(said, want) {
			t.Errorf("differences %q lack %q", said, want)
		}
	}
	if c.Datum != "all of it reads 1.500 m upstage there" {
		t.Errorf("of the datum it says %q", c.Datum)
	}
	if kept := row("kept"); len(kept.Differs) != 0 || math.Abs(kept.B.At.Y-kept.A.At.Y-1.5) > 1e-9 {
		t.Errorf("laid alike, measured from another datum: %+v", kept)
	}
	if loft := row("loft"); !slices.Contains(loft.Differs, "lies 4.000 m to stage right there") {
		t.Errorf("differences of the loft %q", loft.Differs)
	}
	if escape := row("escape"); escape.A.Placed || len(escape.Differs) != 1 {
		t.Errorf("left out on one floor: %+v", escape)
	}
	same := Compare(p, Work(p, "room", ""), Work(p, "room", ""))
	if same.Different() != 0 {
		t.Errorf("a floor differs from itself: %+v", same.Rows)
	}
	for i, r := range same.Tape {
		if r.A != r.B || r.A <= 0 {
			t.Errorf("tape %d of a floor differs from its own: %+v", i, r)
		}
	}
}

func TestScenesTellWhatIsDownAllTheTime(t *testing.T) {
	p := small()
	w := Work(p, "stage", "")
	uses := map[plan.ElementID]SceneUse{}
	for _, u := range SceneUses(p, w) {
		uses[u.Element] = u
	}
	for id, want := range map[plan.ElementID]struct {
		always bool
		words  string
	}{
		"wall":  {true, "all the time"},
		"chair": {false, "in every scene, in 2 places"}, // the revolve carries it
		"lamp":  {false, "1.2"},
	} {
		if u := uses[id]; u.Always != want.always || UseWords(p, u) != want.words {
			t.Errorf("%s: %v, %q, want %v, %q", id, u.Always, UseWords(p, u), want.always, want.words)
		}
	}
	tapes := SceneTapes(p, w)
	if len(tapes) != 2 {
		t.Fatalf("tapes %+v, want one for each scene", tapes)
	}
	for i, tape := range tapes {
		sum := 0.0
		for _, l := range w.In(p.Plan.Scenes[i].ID).Lines {
			sum += l.Length()
		}
		if math.Abs(tape.Laid-sum) > 1e-9 || tape.Only > tape.Laid {
			t.Errorf("scene %d: %+v, want %g m", i, tape, sum)
		}
	}
	if tapes[1].Spikes <= tapes[0].Spikes {
		t.Errorf("spikes %d and %d: the lamp is only in the second scene", tapes[0].Spikes, tapes[1].Spikes)
	}
}

func TestSparesAreWhatNoActorNeeds(t *testing.T) {
	p := doubtful()
	behind := element("behind", plan.Wall, plane.Open(pt(-2, 5.7), pt(2, 5.7)))
	behind.Use = plan.Useful
	p.Plan.Elements = append(p.Plan.Elements, behind)
	p.Plan.Element("cut").Paths[0].Path = plane.Open(pt(0, 4), pt(0, 5.3)) // nothing needed reaches farther up
	p.Stocks = small().Stocks
	each, all := Spares(p, "room", worker(p))
	got := map[plan.ElementID]Spare{}
	for _, s := range each {
		got[s.Element] = s
		if s.Reason == "" {
			t.Errorf("%+v has no reason", s)
		}
	}
	for id, want := range map[plan.ElementID]string{
		"seen": "no actor uses it", "escape": "escape stair", "gone": "no scene", "behind": "behind",
	} {
		if !strings.Contains(got[id].Reason, want) {
			t.Errorf("%s: %q, want %q", id, got[id].Reason, want)
		}
	}
	if len(got) != 4 {
		t.Errorf("%d things can be spared: %+v", len(got), each)
	}
	if got["gone"].Metres != 0 || got["behind"].Metres < 4 {
		t.Errorf("saved %g m without what is not laid, %g m without four metres of wall", got["gone"].Metres, got["behind"].Metres)
	}
	// What the figures promise is what taking them brings.
	before := spend(p)
	TakeSpares(p, "room", each)
	after := spend(p)
	if math.Abs(before.metres-after.metres-all.Metres) > 1e-9 || before.cents-after.cents != all.Cents {
		t.Errorf("saved %g m and %d cents, want %g and %d", before.metres-after.metres, before.cents-after.cents, all.Metres, all.Cents)
	}
	if x := p.Floor("room").Decide(p.Plan.Element("behind")); x.How != floor.LeftOut || !x.Decided.Open() || x.Reason == "" {
		t.Errorf("treatment %+v, want a proposal that waits for a decision", x)
	}
}
