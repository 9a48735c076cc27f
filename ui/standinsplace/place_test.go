package standinsplace

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/grid"
)

var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// shown returns the place with a production in a window of the size that it has beside the rail.
func shown(t testing.TB, production *prep.Production) (*place, *desk.Desk) {
	return desktest.Open(t, production, newPlace)
}

func elementNamed(t testing.TB, p *prep.Production, name string) string {
	t.Helper()
	for i := range p.Plan.Elements {
		if p.Plan.Elements[i].Name == name {
			return string(p.Plan.Elements[i].ID)
		}
	}
	t.Fatalf("there is no element %q", name)
	return ""
}

func sceneNamed(t testing.TB, p *prep.Production, part string) plan.SceneID {
	t.Helper()
	for _, s := range p.Plan.Scenes {
		if strings.Contains(s.Name, part) {
			return s.ID
		}
	}
	t.Fatalf("there is no scene %q", part)
	return ""
}

// needIn returns what is said of the element in the scene.
func needIn(t testing.TB, p *prep.Production, name string, scene plan.SceneID) prep.StandInNeed {
	t.Helper()
	for _, n := range prep.StandInNeeds(p, scene) {
		if n.Name == name {
			return n
		}
	}
	t.Fatalf("%s needs nothing in %s", name, scene)
	return prep.StandInNeed{}
}

func TestAnObjectIsChosenInTheTable(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	parlour := sceneNamed(t, d.View().P, "parlour")
	d.ChooseScene(parlour)
	armchair := elementNamed(t, d.View().P, "Armchair")
	for _, c := range []struct {
		column    int
		text, bad string
		good      func(prep.StandInNeed) bool
	}{
		{colObject, "Stacking chair", "Throne", func(n prep.StandInNeed) bool { return n.Object != nil && n.Object.Name == "Stacking chair" }},
		{colNumber, "2", "0", func(n prep.StandInNeed) bool { return n.Number == 2 }},
		{colState, "confirmed", "perhaps", func(n prep.StandInNeed) bool { return n.State == prep.Confirmed }},
		{colObject, "Bench", "", func(n prep.StandInNeed) bool { return n.Object.Name == "Bench" && n.State == prep.Wanted }},
		{colObject, nothing, "", func(n prep.StandInNeed) bool { return n.Object == nil && n.State == prep.Wanted }},
		{colState, "asked for", "in the room", func(n prep.StandInNeed) bool { return n.State == prep.Asked }},
	} {
		if err := p.pairs.OnEdit(armchair, c.column, c.text); err != nil {
			t.Errorf("%q: %v", c.text, err)
		}
		if n := needIn(t, d.View().P, "Armchair", parlour); !c.good(n) {
			t.Errorf("%q gives %+v", c.text, n)
		}
		if c.bad != "" && p.pairs.OnEdit(armchair, c.column, c.bad) == nil {
			t.Errorf("%q is taken", c.bad)
		}
	}
}

func TestTheStockBesideIsUsedForTheSelectedElement(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	scene := sceneNamed(t, d.View().P, "parlour")
	d.ChooseScene(scene)
	p.pairs.OnSelect([]string{elementNamed(t, d.View().P, "Piano stool")})
	best := p.offers.Shown()[0]
	p.offers.Select(best)
	test.Tap(p.use)
	n := needIn(t, d.View().P, "Piano stool", scene)
	if n.Object == nil || n.Object.ID != best || n.Object.Name != "Rehearsal block" && n.Object.Name != "Stacking chair" && n.Object.Name != "Music stand" {
		t.Errorf("the stool has %+v", n.Object)
	}
	if p.form.object.Value() != n.Object.Name {
		t.Errorf("the form shows %q", p.form.object.Value())
	}
}

func TestAProposalIsOneChange(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	scene := sceneNamed(t, d.View().P, "parlour")
	d.ChooseScene(scene)
	open := func() (n int) {
		for _, need := range prep.StandInNeeds(d.View().P, scene) {
			if !need.Met() {
				n++
			}
		}
		return n
	}
	before := open()
	test.Tap(p.proposed)
	if before == 0 || open() != 0 {
		t.Errorf("%d open before, %d after", before, open())
	}
	d.Undo()
	if open() != before {
		t.Errorf("%d open after one undo, want %d", open(), before)
	}
}

func TestTooManyOfAnObjectAreSaidAtTheRow(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	market := sceneNamed(t, d.View().P, "Market")
	d.ChooseScene(market)
	stall := elementNamed(t, d.View().P, "Fish stall")
	if err := p.pairs.OnEdit(stall, colNumber, "4"); err != nil {
		t.Fatal(err)
	}
	for _, r := range pairRows(d.View()) {
		if said := r.CellProblems[colObject] != ""; said != (r.Cells[colObject] == "Folding table") {
			t.Errorf("%s with %s: %q", r.Cells[colElement], r.Cells[colObject], r.CellProblems[colObject])
		}
	}
	d.ChooseScene("")
	if clashes(d.View().P, "")[d.View().P.Objects[0].ID] == "" {
		t.Error("looking at all scenes, the clash is not said")
	}
}

func TestADifferentOneInOneScene(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	kitchen, storm := sceneNamed(t, d.View().P, "kitchen"), sceneNamed(t, d.View().P, "storm")
	d.ChooseScene(storm)
	d.Select(desk.Select(desk.Element, elementNamed(t, d.View().P, "Kitchen table")))
	test.Tap(p.form.another)
	if err := p.form.object.OnCommit("Bench"); err != nil {
		t.Fatal(err)
	}
	if got := needIn(t, d.View().P, "Kitchen table", storm); got.Object == nil || got.Object.Name != "Bench" {
		t.Errorf("in the storm %+v", got.Object)
	}
	if got := needIn(t, d.View().P, "Kitchen table", kitchen); got.Object == nil || got.Object.Name != "Folding table" {
		t.Errorf("in the kitchen %+v", got.Object)
	}
	if err := p.form.scope.OnCommit(everyScene); err == nil {
		t.Error("two stand-ins hold in every scene")
	}
	test.Tap(p.form.away)
	if got := needIn(t, d.View().P, "Kitchen table", storm); got.Object == nil || got.Object.Name != "Folding table" {
		t.Errorf("after deleting it the storm has %+v", got.Object)
	}
}

func TestCellsOfAnObject(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabStock)
	p.Add()
	id, ok := d.View().Selected.Of(desk.Object)
	if !ok || !p.stock.Editing() {
		t.Fatal("no new object is open")
	}
	for _, c := range []struct {
		column    int
		text, bad string
		good      func(*prep.Object) bool
	}{
		{colName, "Tea chest", " ", func(o *prep.Object) bool { return o.Name == "Tea chest" }},
		{colKind, "chest", "", func(o *prep.Object) bool { return o.Kind == "chest" }},
		{colWidth, `1' 6"`, "wide", func(o *prep.Object) bool { return o.Width > 0.457 && o.Width < 0.4573 }},
		{colDepth, "", "-1", func(o *prep.Object) bool { return o.Depth == 0 }},
		{colHeight, "50 cm", "?", func(o *prep.Object) bool { return o.Height == 0.5 }},
		{colCount, "3", "1.5", func(o *prep.Object) bool { return o.Count == 3 }},
		{colSource, "shop", "", func(o *prep.Object) bool { return o.Source == "shop" }},
		{colBallast, "yes", "", func(o *prep.Object) bool { return o.Ballast }},
		{colNote, "no lid", "", func(o *prep.Object) bool { return o.Note == "no lid" }},
	} {
		if err := p.stock.OnEdit(id, c.column, c.text); err != nil {
			t.Errorf("%q: %v", c.text, err)
		}
		if o := d.View().P.Object(id); !c.good(o) {
			t.Errorf("%q gives %+v", c.text, *o)
		}
		if c.bad != "" && p.stock.OnEdit(id, c.column, c.bad) == nil {
			t.Errorf("column %d takes %q", c.column, c.bad)
		}
	}
	rows := stockRows(d.View().P)
	if got := rows[len(rows)-1].Cells[colHeight]; got != "50 cm" {
		t.Errorf("the height comes back as %q", got)
	}
	p.Remove()
	if d.View().P.Object(id) != nil {
		t.Error("the new object is still there")
	}
}

func TestAnObjectInUseIsAskedAbout(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabStock)
	n := len(d.View().P.Objects)
	p.stock.OnDelete([]string{d.View().P.Objects[0].ID})
	if len(d.View().P.Objects) != n || d.Window().Canvas().Overlays().Top() == nil {
		t.Error("an object in use is deleted without a question")
	}
}

func TestAnyElementCanBeStoodInFor(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	names, ids := others(d.View().P, "")
	if len(names) == 0 {
		t.Fatal("nothing can be added")
	}
	before := len(p.pairs.Shown())
	at := pair{ids[0], ""}
	if !d.Edit("Ask for a stand-in", onPair(at, func(*prep.Production, *prep.StandIn) error { return nil })) {
		t.Fatal("refused")
	}
	if got := len(p.pairs.Shown()); got != before+1 {
		t.Errorf("%d rows after adding one to %d", got, before)
	}
	p.askElement()
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("nothing is asked")
	}
}

func TestTheFloorMarksWhatAnObjectStandsFor(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	d.ChooseScene(sceneNamed(t, d.View().P, "kitchen"))
	chair := objectNamed(d.View().P, "Stacking chair")
	d.Select(desk.Select(desk.Object, chair.ID))
	if n := len(p.canvas.Selected()); n != 4 {
		t.Errorf("%d places are marked, want the four kitchen chairs", n)
	}
	door := elementNamed(t, d.View().P, "Kitchen door")
	d.Select(desk.Select(desk.StandIn, door)) // as a problem in a list names it
	if got := p.canvas.Selected(); len(got) != 1 || p.form.title.Text != "Kitchen door" {
		t.Errorf("%v is marked and the form shows %q", got, p.form.title.Text)
	}
}

func TestThePullListNamesWhatIsWeighted(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabPull)
	if len(p.pull.Shown()) != len(prep.PullList(d.View().P)) {
		t.Fatal("lines of the pull list are missing")
	}
	for _, r := range pullRows(d.View().P) {
		if o := d.View().P.Object(r.ID); (r.Cells[7] != "") != o.Ballast {
			t.Errorf("%s: weight %q", o.Name, r.Cells[7])
		}
	}
	if got := grid.Cells(p.Copy()); len(got) != len(prep.PullList(d.View().P))+1 || got[0][0] != "Object" {
		t.Errorf("copied %v", got)
	}
}

func TestEverythingCanBeEmpty(t *testing.T) {
	p, _ := shown(t, &prep.Production{Settings: prep.DefaultSettings()})
	for i := range p.tabs.Items {
		p.tabs.SelectIndex(i)
	}
	p.tabs.SelectIndex(tabPairs)
	test.Tap(p.proposed)
	p.Remove()
}

func BenchmarkShow(b *testing.B) {
	p, d := shown(b, demo.Production(wednesday))
	for b.Loop() {
		p.Show(d.View())
	}
}
