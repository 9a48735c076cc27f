package prep

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// roomOfPieces is a room with a datum of its own in which a table rides a wagon
// and the wagon is moved aside.
func roomOfPieces() *Production {
	p := &Production{Settings: DefaultSettings()}
	p.Plan = plan.Plan{
		Scenes: []plan.Scene{{ID: "one", Name: "1.1"}, {ID: "two", Name: "1.2"}},
		Elements: []plan.Element{
			element("revolve", plan.Revolve, plane.Circle(pt(0, 3), 2.5)),
			element("deck", plan.Platform, plane.Rectangle(pt(-1, 2), pt(1, 4))),
			element("wall", plan.Wall, plane.Open(pt(-4, 6), pt(0, 6.5), pt(4, 6))),
		},
		Carries: []plan.Carry{{Carrier: "revolve", Scene: "two", Travel: 35}},
	}
	e := p.Plan.Elements
	e[1].Rides, e[1].Use, e[2].Use = "revolve", plan.Essential, plan.Essential
	e[1].Stands = []plan.Stand{{Scene: "one"}, {Scene: "two", Over: 0.4, Turn: 10}}
	p.Floors = []floor.Floor{{ID: "room", Name: "Room", Kind: floor.Room, Rule: floor.AnyTape, Outline: plane.Rectangle(pt(-9, -3), pt(9, 12)),
		OwnDatum: true, Datum: plane.Motion{Turn: 0.3, Shift: pt(1, -1)}, Placement: plane.Motion{Turn: -0.2, Shift: pt(0.5, 0.5)},
		Pivots:     []floor.Pivot{{ID: "a", At: pt(-7, -2)}, {ID: "b", At: pt(7, -2)}},
		Treatments: []floor.Treatment{{Element: "deck", How: floor.MovedAside, Over: 2.5, Up: 1, Reason: "column", Decided: floor.Decision{By: "Ada"}}}}}
	return p
}

// deckAfter returns the points of the deck in scene two as a motion in datum axes has
// taken them.
func deckAfter(w *FloorWork, by plane.Motion, scale float64) []BackPoint {
	var out []BackPoint
	for _, m := range w.MarksOfPiece("deck", "two") {
		out = append(out, BackPoint{Label: m.Label, At: by.Apply(m.At.Times(scale))})
	}
	return out
}

func TestAMovedPieceIsTakenIntoThePlan(t *testing.T) {
	p := roomOfPieces()
	w := Work(p, "room", "")
	by := plane.Motion{Turn: 0.21, Shift: pt(0.4, -0.7)}
	found := deckAfter(w, by, 1)
	if len(found) != 4 {
		t.Fatalf("the deck has %d marks", len(found))
	}
	b, err := MeasureBack(p, w, "deck", "two", found)
	if err != nil || b.Finding != HasMoved || !b.Takeable() || math.Abs(b.Move.Turn-0.21*180/math.Pi) > 1e-6 {
		t.Fatalf("%+v, %v", b, err)
	}
	m := b.Move
	m.ID, m.Reason, m.By, m.On, m.Taken = "m", "the door did not clear", "Ada", monday, true
	before := w.MarksOfPiece("deck", "one")
	if err := p.KeepMove(m); err != nil {
		t.Fatal(err)
	}
	after := Work(p, "room", "")
	for _, f := range found {
		near := math.Inf(1)
		for _, m := range after.MarksOfPiece("deck", "two") {
			near = min(near, m.At.To(f.At))
		}
		if near > 1e-6 {
			t.Errorf("the plan has no mark of the deck where %s was measured; the nearest is %v away", f.Label, near)
		}
	}
	still := after.MarksOfPiece("deck", "one")
	for i := range before {
		if len(still) != 4 || !slices.ContainsFunc(still, func(m MeasuredMark) bool { return m.At.To(before[i].At) < 1e-9 }) {
			t.Errorf("%s of the other scene has moved too", before[i].Label)
		}
	}
	if said := p.MoveSentence(p.Moves[0]); !strings.Contains(said, "in 1.2") || !strings.Contains(said, "turned 12.0° counter-clockwise") ||
		!strings.Contains(said, "the door did not clear, Ada") || !strings.Contains(said, "The plan has it") {
		t.Errorf("said %q", said)
	}
}

func TestAMoveThatIsOnlyNotedIsAProblemUntilItIsTaken(t *testing.T) {
	p := roomOfPieces()
	p.Floors = append(p.Floors, floor.Floor{ID: "stage", Name: "Stage", Kind: floor.Stage})
	if err := p.KeepMove(Move{ID: "m", Floor: "room", Element: "wall", Up: 0.3048, Reason: "more depth", By: "Ada", On: monday}); err != nil {
		t.Fatal(err)
	}
	told := func() (row, problem bool) {
		tr, err := TransferRows(p, "room", "stage")
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range tr.Rows {
			for _, s := range r.Changes {
				row = row || r.Element == "wall" && strings.Contains(s, "1' 0\" upstage (more depth, Ada")
			}
		}
		for _, pr := range tr.Problems {
			problem = problem || pr.Rule == RuleMoved && strings.Contains(pr.Sentence(), "old place")
		}
		return row, problem
	}
	if row, problem := told(); !row || !problem {
		t.Errorf("the transfer tells of it: %v; names it a problem: %v", row, problem)
	}
	if err := p.TakeMove("m"); err != nil {
		t.Fatal(err)
	}
	if len(p.Plan.Elements[2].Stands) != 2 || math.Abs(p.Plan.Elements[2].Stands[1].Up-0.3048) > 1e-12 {
		t.Errorf("stands %+v", p.Plan.Elements[2].Stands)
	}
	if row, problem := told(); !row || problem {
		t.Errorf("after it was taken the transfer tells of it: %v; names it a problem: %v", row, problem)
	}
	if err := p.TakeMove("m"); err == nil {
		t.Error("it is taken twice")
	}
}

func TestWithoutScenesWhatIsDrawnMoves(t *testing.T) {
	p := roomOfPieces()
	p.Plan.Scenes, p.Plan.Carries, p.Plan.Elements[1].Stands = nil, nil, nil
	was := p.Plan.Elements[2].Paths[0].Vertices[0].Point
	if err := p.KeepMove(Move{ID: "m", Floor: "room", Element: "wall", Over: 1, Taken: true}); err != nil {
		t.Fatal(err)
	}
	if got := p.Plan.Elements[2].Paths[0].Vertices[0].Point; got.To(was.Add(pt(1, 0))) > 1e-12 {
		t.Errorf("drawn at %v, was at %v", got, was)
	}
}

func TestWhatMeasuresOfAPieceSay(t *testing.T) {
	p := roomOfPieces()
	w := Work(p, "room", "")
	one := func(by plane.Point) []BackPoint {
		f := deckAfter(w, plane.Motion{}, 1)
		f[1].At = f[1].At.Add(by)
		return f
	}
	moved := plane.Motion{Turn: -0.4, Shift: pt(1, 1)}
	for name, c := range map[string]struct {
		found []BackPoint
		is    Finding
		says  string
	}{
		"where it should be":    {one(pt(0.01, 0)), Stayed, "is where it should be"},
		"moved":                 {deckAfter(w, moved, 1), HasMoved, "has moved as one piece"},
		"moved, two points":     {deckAfter(w, moved, 1)[:2], HasMoved, "clockwise"},
		"a foot too far up":     {one(pt(0, length.Foot)), WrongPoint, "a whole foot too"},
		"no usual slip":         {one(pt(0.0288, 0.17)), WrongPoint, "does not belong; the others"},
		"three inches":          {one(pt(0.0539, 0.0539)), WrongPoint, "the others are where they should be"},
		"stretched":             {deckAfter(w, plane.Motion{}, 1.03), Stretched, "3.0 % too large"},
		"stretched and turned":  {deckAfter(w, moved, 0.96), Stretched, "4.0 % too small"},
		"two that do not agree": {one(pt(0.3, 0.2))[:2], NoPiece, "do not make the deck"},
	} {
		b, err := MeasureBack(p, w, "deck", "two", c.found)
		if err != nil || b.Finding != c.is || !strings.Contains(b.Sentence(p), c.says) || b.Next() == "" {
			t.Errorf("%s: %v, %v: %s", name, err, b.Finding, b.Sentence(p))
		}
		if b.Takeable() != (b.Finding == HasMoved) {
			t.Errorf("%s: takeable %v", name, b.Takeable())
		}
	}
}

// Pieces that were moved, wrongly read or stretched at random, each mark measured
// to a few millimetres.
func TestFindingsOfRandomPieces(t *testing.T) {
	p := roomOfPieces()
	w := Work(p, "room", "")
	rng := rand.New(rand.NewPCG(5, 8))
	const each = 300
	right := map[Finding]int{}
	for range each {
		by := plane.Motion{Turn: rng.Float64()*2 - 1, Shift: pt(rng.Float64()*2-1, rng.Float64()*2-1)}
		noisy := func(scale float64) []BackPoint {
			f := deckAfter(w, by, scale)
			for i := range f {
				f[i].At = f[i].At.Add(pt(0.004*rng.NormFloat64(), 0.004*rng.NormFloat64()))
			}
			return f
		}
		wrong := noisy(1)
		i := rng.IntN(len(wrong))
		s, k := math.Sincos(rng.Float64() * 2 * math.Pi)
		wrong[i].At = wrong[i].At.Add(pt(0.3048*k, 0.3048*s))
		for want, found := range map[Finding][]BackPoint{HasMoved: noisy(1), WrongPoint: wrong, Stretched: noisy(1.05)} {
			b, err := MeasureBack(p, w, "deck", "two", found)
			if err == nil && b.Finding == want && (want != WrongPoint || b.Wrong == wrong[i].Label) {
				right[want]++
			}
		}
	}
	for want, least := range map[Finding]int{HasMoved: each * 99 / 100, WrongPoint: each * 97 / 100, Stretched: each * 97 / 100} {
		t.Logf("%s: %d of %d", want, right[want], each)
		if right[want] < least {
			t.Errorf("%s: %d of %d", want, right[want], each)
		}
	}
}

func TestPointsThatSayNothing(t *testing.T) {
	p := roomOfPieces()
	w := Work(p, "room", "")
	f := deckAfter(w, plane.Motion{}, 1)
	for says, found := range map[string][]BackPoint{
		"at least two": f[:1], "twice": {f[0], f[0]}, "no mark of this piece": {f[0], {Label: "QQ"}},
	} {
		if _, err := MeasureBack(p, w, "deck", "two", found); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", says, err)
		}
	}
}

func TestAPointIsReadBackByEitherMethod(t *testing.T) {
	p := roomOfPieces()
	w := Work(p, "room", "")
	m := w.MarksOfPiece("deck", "two")[0]
	style := length.Style{Unit: length.Metres, Step: 0.001}
	at, err := w.ReadBack(p, style.FormatUp(m.Up()), style.FormatOver(m.Over()), "")
	if err != nil || at.To(m.At) > 0.002 {
		t.Errorf("%v, %v, want %v", at, err, m.At)
	}
	at, err = w.ReadBack(p, style.Format(m.Tapes.A), style.Format(m.Tapes.B), m.Tapes.Side)
	if err != nil || at.To(m.At) > 0.01 {
		t.Errorf("%v, %v, want %v", at, err, m.At)
	}
	var cannot *survey.LocateError
	if _, err := w.ReadBack(p, "1 m", "1 m", survey.Left); !errors.As(err, &cannot) || cannot.Fault != survey.TapesTooShort {
		t.Errorf("tapes that cannot meet: %v", err)
	}
	for _, bad := range [][2]string{{"-3 m", "2 m"}, {"", "1 m"}, {"9000 m", "1 m"}, {"x", "1 m"}} {
		if _, err := w.ReadBack(p, bad[0], bad[1], survey.Left); err == nil {
			t.Errorf("%v is read", bad)
		}
	}
	if _, err := w.ReadBack(p, "9000 m", "1 m SL", ""); err == nil {
		t.Error("nine kilometres up are read")
	}
	w.Floor.Pivots = nil
	if _, err := w.ReadBack(p, "3 m", "3 m", survey.Left); err == nil || !strings.Contains(err.Error(), "pivots") {
		t.Errorf("without pivots: %v", err)
	}
}

func TestAPieceThatStandsInTwoPlacesNeedsItsScene(t *testing.T) {
	p := roomOfPieces()
	_, err := MeasureBack(p, Work(p, "room", ""), "deck", "", nil)
	if err == nil || !strings.Contains(err.Error(), "stands in 2 places: choose the scene") {
		t.Errorf("without a scene: %v", err)
	}
}

func TestHowFarAMarkMayBeOffDecidesWhatHasMoved(t *testing.T) {
	p := roomOfPieces()
	found := deckAfter(Work(p, "room", ""), plane.Motion{Shift: pt(0.04, 0)}, 1)
	for allowed, want := range map[float64]Finding{0.03: HasMoved, 0.05: Stayed} {
		p.Settings.Errors = DefaultErrors
		p.Settings.Errors.Allowed = allowed
		b, err := MeasureBack(p, Work(p, "room", ""), "deck", "two", found)
		if err != nil || b.Finding != want {
			t.Errorf("4 cm off where %.0f cm are allowed: %s, %v", 100*allowed, b.Finding, err)
		}
		if said := b.Sentence(p); want == Stayed && !strings.Contains(said, p.Style().FormatSmall(allowed)) {
			t.Errorf("the tolerance is not in %q", said)
		}
	}
}

func TestANoteOfAMoveGivesWayToTheNextMeasureOfThePiece(t *testing.T) {
	p := roomOfPieces()
	for _, m := range []Move{
		{ID: "first", Floor: "room", Element: "deck", Scene: "two", Up: 0.3},
		{ID: "other", Floor: "room", Element: "deck", Scene: "one", Up: 0.2},
		{ID: "taken", Floor: "room", Element: "deck", Scene: "two", Up: 0.3, Taken: true},
		{ID: "later", Floor: "room", Element: "deck", Scene: "two", Up: 0.1},
	} {
		if err := p.KeepMove(m); err != nil {
			t.Fatal(err)
		}
	}
	var kept []string
	for _, m := range p.Moves {
		kept = append(kept, m.ID)
	}
	if want := []string{"other", "taken", "later"}; !slices.Equal(kept, want) {
		t.Errorf("kept %v, want %v", kept, want)
	}
}
