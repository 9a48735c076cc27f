package floorsplace

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

func (p *place) treated(id string) floor.Treatment {
	return p.here().Decide(p.view.P.Plan.Element(plan.ElementID(id)))
}

func TestTheDirectorsAnswerIsPutOnRecord(t *testing.T) {
	p := openPlace(t)
	p.under.tabs.SelectIndex(tabQuestions)
	q := p.under.questions
	id := elementID(t, p, "Boat track")
	asked, ok := q.find(id)
	if !ok || !slices.Contains(q.list.Shown(), id) {
		t.Fatalf("the boat track, which nobody has decided on, is not asked about: %+v", q.open)
	}
	before := len(q.open)
	q.list.OnSelect([]string{id})
	if got, _ := p.view.Selected.Of(desk.Element); got != id {
		t.Errorf("the question does not show what it is about: %q is selected", got)
	}
	on := time.Date(2027, 3, 2, 9, 30, 0, 0, time.UTC)
	if err := q.settle(asked, answer{text: "Leave it.", how: string(floor.LeftOut), on: on}); err == nil {
		t.Error("an answer that nobody gave is taken")
	}
	if err := q.settle(asked, answer{text: "Leave it.", by: "The director", how: string(floor.LeftOut), on: on}); err != nil {
		t.Fatal(err)
	}
	if x := p.treated(id); x.How != floor.LeftOut || x.Decided.By != "The director" || !x.Decided.On.Equal(on) {
		t.Errorf("treatment %+v", x)
	}
	if len(q.open) != before-1 || len(q.record.Shown()) != 1 {
		t.Errorf("%d of %d questions are left, %d answers on record", len(q.open), before, len(q.record.Shown()))
	}
	p.desk.Undo()
	if len(q.open) != before || len(q.record.Shown()) != 0 {
		t.Errorf("after undo %d questions and %d answers", len(q.open), len(q.record.Shown()))
	}
}

func TestTheFormForAnAnswerOpensAndCloses(t *testing.T) {
	p := openPlace(t)
	p.under.tabs.SelectIndex(tabQuestions)
	p.under.questions.list.OnActivate(elementID(t, p, "Boat track"))
	if p.desk.Window().Canvas().Overlays().Top() == nil {
		t.Error("no form opens for the answer")
	}
	p.under.questions.ask("no such question")
}

func TestProposalsAreLaidAndWaitForADecision(t *testing.T) {
	p := openPlace(t)
	id := elementID(t, p, "Porch steps")
	if got := p.under.proposed.of[plan.ElementID(id)]; got.How != floor.OutlineOnly {
		t.Fatalf("for steps that nobody dances on %+v is proposed", got)
	}
	p.takeProposals([]string{id})
	if x := p.treated(id); x.How != floor.OutlineOnly || !x.Decided.Open() || x.Reason == "" {
		t.Errorf("treatment %+v", x)
	}
	if x := p.treated(elementID(t, p, "Parlour corner")); x.How != floor.AsDrawn {
		t.Errorf("what was not named is %s", x.How)
	}
	p.takeProposals(nil)
	if x := p.treated(elementID(t, p, "Parlour corner")); x.How != floor.CutShort {
		t.Errorf("after taking all the corner that sticks out is %s", x.How)
	}
	p.desk.Undo()
	p.desk.Undo()
	if x := p.treated(id); x.How != floor.AsDrawn {
		t.Errorf("after undo it is %s", x.How)
	}
}

func TestTapeThatNobodyNeedsIsLeftOutWhereItWasFound(t *testing.T) {
	p := openPlace(t)
	drawRail(t, p)
	var finish func()
	p.under.spare.quietly = func(work func(context.Context), done func()) func() {
		finish = func() { work(context.Background()); done() }
		return func() {}
	}
	p.under.tabs.SelectIndex(tabSpare)
	finish()
	s := p.under.spare
	if len(s.spares) == 0 {
		t.Fatal("nothing is offered")
	}
	for _, f := range p.view.P.Floors {
		if f.ID != p.view.Floor && f.Kind != floor.Stage {
			p.desk.ChooseFloor(f.ID)
			break
		}
	}
	before := len(p.here().Treatments)
	s.take(nil) // what the other floor offers has not been worked out yet
	if len(p.here().Treatments) != before || len(s.list.Shown()) != 0 {
		t.Error("what was found on one floor is left out on another")
	}
}

func TestScenesAreSteppedThrough(t *testing.T) {
	p := openPlace(t)
	p.under.tabs.SelectIndex(tabScenes)
	all := len(p.under.scenes.uses.Shown())
	scene := p.view.P.Plan.Scenes[1]
	p.under.scenes.scenes.OnSelect([]string{string(scene.ID)})
	if p.view.Scene != scene.ID {
		t.Fatalf("%q is looked at, want %q", p.view.Scene, scene.ID)
	}
	if in := len(p.under.scenes.uses.Shown()); in == 0 || in >= all {
		t.Errorf("%d elements in %s, %d in all", in, scene.Name, all)
	}
	if !strings.HasPrefix(p.said.Text, scene.Name) {
		t.Errorf("it says %q", p.said.Text)
	}
	p.under.scenes.scenes.OnSelect([]string{allScenes})
	if p.view.Scene != "" {
		t.Errorf("%q is looked at, want all", p.view.Scene)
	}
}

// drawRail draws a rail that no actor uses, and returns its identifier.
func drawRail(t *testing.T, p *place) string {
	t.Helper()
	id := "rail behind the house"
	if !p.desk.Edit("Draw a rail", func(pr *prep.Production) error {
		pr.Plan.Elements = append(pr.Plan.Elements, plan.Element{
			ID: plan.ElementID(id), Name: "Rail", Kind: plan.Wall, Use: plan.Seen, Stock: pr.Stocks[0].ID,
			Paths: []plan.Path{{ID: "rail", Role: plan.Outline, Path: plane.Open(plane.Point{X: -1, Y: 5}, plane.Point{X: 3, Y: 5})}},
		})
		return nil
	}) {
		t.Fatal("the rail was not drawn")
	}
	return id
}

func TestTapeThatNobodyNeedsIsLeftOutInOneStep(t *testing.T) {
	p := openPlace(t)
	id := drawRail(t, p)
	p.under.tabs.SelectIndex(tabSpare)
	s := p.under.spare
	if !slices.Contains(s.list.Shown(), id) || s.spares[0].Metres < 4 {
		t.Fatalf("offered %+v, want the four metres of rail that no actor uses", s.spares)
	}
	s.take([]string{"something else"})
	if x := p.treated(id); x.How != floor.AsDrawn {
		t.Errorf("what was not named is %s", x.How)
	}
	s.take(nil)
	if x := p.treated(id); x.How != floor.LeftOut || !x.Decided.Open() {
		t.Errorf("treatment %+v, want it left out and undecided", x)
	}
	if slices.Contains(s.list.Shown(), id) {
		t.Error("what is left out is still offered")
	}
	p.desk.Undo()
	if x := p.treated(id); x.How != floor.AsDrawn {
		t.Errorf("after undo it is %s", x.How)
	}
}

func TestProposalsAreWorkedOutInTheBackground(t *testing.T) {
	p := openPlace(t)
	var finish func()
	calledOff := 0
	p.under.proposed.quietly = func(work func(context.Context), done func()) func() {
		finish = func() { work(context.Background()); done() }
		return func() { calledOff++ }
	}
	for _, f := range p.view.P.Floors {
		if f.ID != p.view.Floor && f.Kind != floor.Stage {
			p.desk.ChooseFloor(f.ID)
			break
		}
	}
	said := func() []string {
		var out []string
		for _, row := range treatmentRows(p.view, p.view.Here(), p.under.proposed) {
			out = append(out, row.Cells[colProposed])
		}
		return out
	}
	if !slices.Contains(said(), underWay) {
		t.Errorf("nothing says that proposals are being worked out: %q", said())
	}
	for _, e := range p.view.P.Plan.Elements {
		if p.here().Decide(&e).Decided.Open() {
			p.desk.Select(desk.Select(desk.Element, string(e.ID)))
			break
		}
	}
	if !strings.Contains(p.element.would.Text, underWay) || p.element.take.Visible() {
		t.Errorf("the form says %q, and can be asked to lay it: %v", p.element.would.Text, p.element.take.Visible())
	}
	p.under.tabs.SelectIndex(tabQuestions)
	if n := len(p.under.questions.list.Shown()); n != 0 {
		t.Errorf("%d questions stand there before it is known what to propose", n)
	}
	before := len(p.here().Treatments)
	p.takeProposals(nil)
	if len(p.here().Treatments) != before {
		t.Error("what was proposed for another floor is laid")
	}
	finish()
	if len(p.under.questions.list.Shown()) == 0 {
		t.Error("the questions do not come")
	}
	if slices.Contains(said(), underWay) {
		t.Errorf("what is known is still said to be worked out: %q", said())
	}
	p.desk.Edit("Name the floor", onFloor(p.view.Floor, func(f *floor.Floor) error { f.Note = "swept"; return nil }))
	p.desk.Edit("Name the floor", onFloor(p.view.Floor, func(f *floor.Floor) error { f.Note = "dry"; return nil }))
	if calledOff == 0 {
		t.Error("what a later edit has made useless is worked out all the same")
	}
}

// Two files that began alike have the same identifiers and have changed as often.
func TestAnotherFileHasItsOwnProposals(t *testing.T) {
	p := openPlace(t)
	id := plan.ElementID(elementID(t, p, "Porch steps"))
	if got := p.under.proposed.of[id]; got.How != floor.OutlineOnly {
		t.Fatalf("for steps that nobody dances on %+v is proposed", got)
	}
	other := demo.Production(desktest.Wednesday)
	other.Plan.Element(id).Use = plan.Danced
	file, err := store.Create(context.Background(), filepath.Join(t.TempDir(), "other.groundrow"), "A tester", other)
	if err != nil {
		t.Fatal(err)
	}
	before := p.view.Seq
	if err := p.desk.Take(file); err != nil {
		t.Fatal(err)
	}
	if p.view.Seq != before {
		t.Errorf("the files have changed %d and %d times", before, p.view.Seq)
	}
	if got, has := p.under.proposed.of[id]; has {
		t.Errorf("for steps that are danced on %+v is proposed, as in the file before", got)
	}
}
