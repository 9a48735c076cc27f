package marksplace

import (
	"strings"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// open shows the place with the demo on its desk.
func open(t *testing.T) (*place, *desk.Desk) {
	return desktest.Open(t, demo.Production(time.Now()), func(d *desk.Desk) *place { return New(d).(*place) })
}

func floorNamed(t *testing.T, d *desk.Desk, name string) *floor.Floor {
	t.Helper()
	for i := range d.View().P.Floors {
		if f := &d.View().P.Floors[i]; f.Name == name {
			return f
		}
	}
	t.Fatalf("no floor %q", name)
	return nil
}

func TestTickingFreezesTheLabelsAndSaysWho(t *testing.T) {
	p, d := open(t)
	v := d.View()
	if n := frozen(v); n != 0 {
		t.Fatalf("%d labels are kept before anything is placed", n)
	}
	if err := p.table.OnEdit("A", colChecked, grid.On); err != nil {
		t.Fatal(err)
	}
	w := v.Work(v.Floor)
	if n := frozen(v); n != len(w.Marks) {
		t.Errorf("%d of %d labels are kept", n, len(w.Marks))
	}
	for _, m := range w.Marks {
		if m.Label == "A" && (m.Progress.Placed.By != "A tester" || m.Progress.Checked.On.IsZero()) {
			t.Errorf("progress of A: %+v", m.Progress)
		}
	}
	if err := p.table.OnEdit("A", colPlaced, grid.Off); err != nil {
		t.Fatal(err)
	}
	for _, m := range v.Work(v.Floor).Marks {
		if m.Label == "A" && (!m.Progress.Placed.Open() || !m.Progress.Checked.Open()) {
			t.Error("a mark that was lifted is still checked")
		}
	}
	d.Undo()
	d.Undo()
	if n := frozen(v); n != 0 {
		t.Errorf("%d labels are kept after Undo", n)
	}
}

func frozen(v *desk.View) int {
	n := 0
	for _, is := range v.P.Issued {
		if is.Floor == v.Floor {
			n++
		}
	}
	return n
}

func TestSelectingInOneSelectsInTheOther(t *testing.T) {
	p, d := open(t)
	p.canvas.OnSelect([]string{floorpicture.ID(desk.Mark, "C")}, false)
	if got := p.table.Selected(); len(got) != 1 || got[0] != "C" {
		t.Errorf("the table has %v", got)
	}
	p.table.OnSelect([]string{"D"})
	if got := p.canvas.Selected(); len(got) != 1 || got[0] != floorpicture.ID(desk.Mark, "D") {
		t.Errorf("the canvas has %v", got)
	}
	e := d.View().Here().Marks[0].Elements[0]
	d.Select(desk.Select(desk.Element, string(e)))
	if got := p.table.Selected(); len(got) == 0 {
		t.Error("an element selects none of its marks")
	}
}

func TestDraggingAPivotChangesTheColumnsAndIsOneEdit(t *testing.T) {
	p, d := open(t)
	f := *floorNamed(t, d, "Tannery Hall")
	was := f.Pivots[0].At
	id := floorpicture.ID(desk.Pivot, f.Pivots[0].ID)
	before := tape1(t, p, "A")
	at := f.FloorToDatum().Apply(was).Add(plane.Point{X: 1})
	p.dragged(id, at, false)
	during := tape1(t, p, "A")
	if during == before {
		t.Error("the columns do not follow the drag")
	}
	if d.View().P.Floor(f.ID).Pivots[0].At != was {
		t.Error("the drag has changed the production before it ended")
	}
	p.dragged(id, at, true)
	if got := tape1(t, p, "A"); got != during {
		t.Errorf("tape 1 reads %s after the drag, %s during it", got, during)
	}
	d.Undo()
	if got := tape1(t, p, "A"); got != before {
		t.Errorf("tape 1 reads %s after Undo, want %s", got, before)
	}
}

// tape1 copies the row of a mark as a spreadsheet gets it and returns its first
// tape.
func tape1(t *testing.T, p *place, label string) string {
	t.Helper()
	p.table.Select(label)
	lines := grid.Cells(p.Copy())
	row := lines[len(lines)-1]
	if row[colLabel] != label {
		t.Fatalf("copied %v", lines)
	}
	return row[colTapeA]
}

func TestAReadingIsJudgedWithItsLikelyCause(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabChecks)
	p.checks.table.Select(p.checks.list[1].Key())
	c, ok := p.checks.chosen()
	if !ok {
		t.Fatal("no check is chosen")
	}
	good, text := d.View().P.Belongs(c, c.Expected+0.3048)
	if good || !strings.Contains(text, "a whole foot too long") {
		t.Errorf("a foot too long: %v, %s", good, text)
	}
	if good, text := d.View().P.Belongs(c, c.Expected+0.001); !good {
		t.Errorf("a millimetre off: %s", text)
	}
}

func TestTwoTapesSayWhereAMarkReallyIs(t *testing.T) {
	_, d := open(t)
	v := d.View()
	w := v.Here()
	m := w.Marks[3]
	good, text := located(v.P, w, m.Tapes)
	if !good || !strings.Contains(text, "The nearest mark is "+m.Label+", ") {
		t.Errorf("%v, %s", good, text)
	}
	short := m.Tapes
	short.A, short.B = 0.1, 0.1
	if good, text := located(v.P, w, short); good || !strings.Contains(text, "cannot meet") {
		t.Errorf("%v, %s", good, text)
	}
}

func TestDanceLinesAreAddedEditedAndDeleted(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabDance)
	before := len(d.View().P.DanceLines)
	p.dance.add()
	lines := d.View().P.DanceLines
	if len(lines) != before+1 {
		t.Fatalf("%d lines", len(lines))
	}
	id := lines[len(lines)-1].ID
	for column, text := range map[int]string{dlName: "Front line", dlUp: "3' DS", dlUnit: inMetres, dlStep: "50 cm", dlReach: "6 m", dlHabit: "quarters and eighths"} {
		if err := p.dance.lines.OnEdit(id, column, text); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
	if rows := danceRows(d.View()); rows[len(rows)-1].Cells[dlUp] != "3' DS" {
		t.Errorf("typed 3' DS, shown %q", rows[len(rows)-1].Cells[dlUp])
	}
	if err := p.dance.lines.OnEdit(id, dlStep, "0"); err == nil {
		t.Error("a step of nothing is taken")
	}
	got := d.View().P.DanceLines[before]
	if got.Name != "Front line" || got.Unit != 1 || got.Step != 0.5 || got.Up > -0.9 || got.Habit != "quarters and eighths" {
		t.Errorf("got %+v", got)
	}
	p.dance.remove([]string{id})
	if len(d.View().P.DanceLines) != before {
		t.Error("the line is still there")
	}
}

func TestLabelsThatNothingNeedsAreRetired(t *testing.T) {
	p, d := open(t)
	id := d.View().Floor
	if err := p.table.OnEdit("A", colPlaced, grid.On); err != nil {
		t.Fatal(err)
	}
	e := d.View().Here().Marks[0].Elements[0]
	d.Edit("Delete an element", func(pr *prep.Production) error { pr.RemoveElement(e); return nil })
	_, gone := labelWords(d.View().Work(id))
	if len(gone) == 0 {
		t.Fatal("no label is gone")
	}
	d.Edit("Retire", func(pr *prep.Production) error { retire(pr, id, gone); return nil })
	if _, left := labelWords(d.View().Work(id)); len(left) != 0 {
		t.Errorf("still to be retired: %v", left)
	}
}

func TestEveryFloorAndTabIsShown(t *testing.T) {
	p, d := open(t)
	for _, f := range d.View().P.Floors {
		d.ChooseFloor(f.ID)
		for tab := tabMarks; tab <= tabBack; tab++ {
			p.tabs.SelectIndex(tab)
			if p.body.Objects[0] != p.whole {
				t.Fatalf("%s, tab %d: nothing to be seen", f.Name, tab)
			}
		}
	}
	d.Edit("Delete all floors", func(pr *prep.Production) error {
		for len(pr.Floors) > 0 {
			pr.RemoveFloor(pr.Floors[0].ID)
		}
		return nil
	})
	if p.body.Objects[0] != p.empty {
		t.Error("without a floor the place does not say what belongs there")
	}
}

func TestAMethodIsChosenForAMarkOrForTheFloor(t *testing.T) {
	p, d := open(t)
	methodsOf := func(label string) (mine, others string) {
		for _, m := range d.View().Here().Marks {
			switch {
			case m.Label == label:
				mine = methodCell(m)
			case m.Label == "B":
				others = methodCell(m)
			}
		}
		return mine, others
	}
	if err := p.table.OnEdit("A", colMethod, "two tapes"); err != nil {
		t.Fatal(err)
	}
	if mine, others := methodsOf("A"); mine != "two tapes ×" || others != "up and over" {
		t.Errorf("A by %s, B by %s", mine, others)
	}
	if err := p.methods.whole.OnCommit("guide lines"); err != nil {
		t.Fatal(err)
	}
	if mine, others := methodsOf("A"); mine != "two tapes ×" || others != "guide lines ×" {
		t.Errorf("with the floor by guide lines: A by %s, B by %s", mine, others)
	}
	if _, lines := d.View().Here().GuideLines(); len(lines) != 3 {
		t.Errorf("%d guide lines", len(lines))
	}
	if err := p.table.OnEdit("A", colMethod, asAdvised); err != nil {
		t.Fatal(err)
	}
	if err := p.methods.whole.OnCommit(asAdvised); err != nil {
		t.Fatal(err)
	}
	if mine, others := methodsOf("A"); mine != "up and over" || others != "up and over" || len(d.View().P.MethodChoices) != 0 {
		t.Errorf("as recommended: A by %s, B by %s, %d choices", mine, others, len(d.View().P.MethodChoices))
	}
	p.table.OnSelect([]string{"A"})
	for _, want := range []string{"A, datum of Upper storey. 95 times in 100", "two tapes from pivots 1 and 2", "Recommended: up and over, the least work that keeps within 1\""} {
		if !strings.Contains(p.methods.words.Text, want) {
			t.Errorf("it says %q, not %q", p.methods.words.Text, want)
		}
	}
}

func TestASecondPairIsAddedForTheRest(t *testing.T) {
	p, d := open(t)
	d.Edit("Crowd the pivots", func(pr *prep.Production) error {
		f := pr.Floor(d.View().Floor)
		f.Pivots[1].At = f.Pivots[0].At.Add(plane.Point{X: 0.5})
		return nil
	})
	p.tabs.SelectIndex(tabPivots)
	before := len(unserved(d.View().P, d.View().Here()).Marks)
	p.pivots.find(true)
	p.pivots.take("0")
	after := len(unserved(d.View().P, d.View().Here()).Marks)
	if n := len(d.View().P.Floor(d.View().Floor).Pivots); n != 4 || after >= before || before == 0 {
		t.Errorf("%d pivots; %d marks not served before, %d after", n, before, after)
	}
	if !strings.Contains(p.pivots.words.Text, "From pivots") {
		t.Errorf("it says %q", p.pivots.words.Text)
	}
}

func TestOnlyTheSelectedMarkHasItsEllipse(t *testing.T) {
	p, d := open(t)
	about := func() (at []plane.Point) {
		for _, e := range picture(d.View(), d.View().Here()).Ellipses {
			at = append(at, e.At)
		}
		return at
	}
	if got := about(); len(got) > 0 {
		t.Errorf("nothing is selected, ellipses at %v", got)
	}
	p.canvas.OnSelect([]string{floorpicture.ID(desk.Mark, "C")}, false)
	for _, m := range d.View().Here().Marks {
		if m.Label != "C" {
			continue
		}
		if got := about(); len(got) != 1 || got[0].To(m.At) > 1e-9 {
			t.Errorf("C lies at %v, ellipses at %v", m.At, got)
		}
	}
}
