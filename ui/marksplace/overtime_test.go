package marksplace

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

func TestWornMarksAreListedUntilTheyAreTapedAgain(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabWear)
	list := d.View().Here().Marks
	p.wear.which.Set(strings.ToLower(list[1].Label) + ", " + list[2].Label)
	p.wear.take(marks.Placed)
	d.Select(desk.Select(desk.Mark, list[1].Label, list[2].Label))
	p.wear.take(marks.Worn)
	if n := len(prep.RetapeOf(d.View().P, d.View().Here()).Marks); n != 2 {
		t.Fatalf("%d marks are worn", n)
	}
	if said := p.wear.tape.Words(); !strings.Contains(said, "2 marks are worn") || !strings.Contains(said, " of ") {
		t.Errorf("said %q", said)
	}
	rows := p.wear.table.Shown()
	if len(rows) < 3 {
		t.Errorf("rows %v", rows)
	}
	p.wear.take(marks.Retaped)
	if p.wear.tape.Words() != "" || len(p.wear.table.Shown()) != 0 {
		t.Error("what was taped again is still listed")
	}
	d.Select(desk.Selection{})
	said := ""
	d.Told = func(text string) { said = text }
	p.wear.take(marks.Worn)
	if !strings.Contains(said, "labels") {
		t.Errorf("without labels it says %q", said)
	}
}

// moveBack types the places of a piece's marks as if it stood elsewhere.
func moveBack(t *testing.T, p *place, d *desk.Desk, e plan.ElementID, by plane.Motion) {
	t.Helper()
	style := d.View().P.Style()
	for _, m := range d.View().Here().MarksOfPiece(e, d.View().Scene)[:3] {
		at := by.Apply(m.At)
		for column, text := range []string{style.FormatUp(at.Y), style.FormatOver(at.X)} {
			if err := p.back.points.OnEdit(m.Label, backFirst+column, text); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// movable returns a piece of the demo with three marks of its own and one place.
func movable(t *testing.T, d *desk.Desk) *plan.Element {
	t.Helper()
	v := d.View()
	all, _ := pieces(v)
	for name, id := range all {
		e := v.P.Plan.Element(id)
		if len(v.P.Plan.Standings(e)) == 1 && len(v.Here().MarksOfPiece(id, "")) > 2 && v.Here().Floor.Decide(e).How == floor.AsDrawn && name != "" {
			return e
		}
	}
	t.Fatal("the demo has no such piece")
	return nil
}

func TestEveryPieceOfOneNameCanBeChosen(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabBack)
	one := movable(t, d)
	d.Edit("Put in its like", func(to *prep.Production) error {
		like := *to.Plan.Element(one.ID)
		like.ID = "like"
		like.Paths = slices.Clone(like.Paths)
		for i := range like.Paths {
			like.Paths[i].ID = plan.PathID(fmt.Sprint("like ", i))
			like.Paths[i].Path = like.Paths[i].Path.Moved(plane.Motion{Shift: plane.Point{X: 0.3, Y: 0.3}})
		}
		to.Plan.Elements = append(to.Plan.Elements, like)
		return nil
	})
	all, names := pieces(d.View())
	if all[one.Name] != one.ID || all[one.Name+" (2)"] != "like" || len(names) != len(all) {
		t.Fatalf("to choose from are %q", names)
	}
	if err := p.back.piece.OnCommit(one.Name + " (2)"); err != nil || p.back.chosen != "like" {
		t.Errorf("chosen is %q, %v", p.back.chosen, err)
	}
}

func TestAPieceIsMeasuredBackAndTakenIntoThePlan(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabBack)
	e := movable(t, d)
	name, id := e.Name, e.ID
	if err := p.back.piece.OnCommit(name); err != nil {
		t.Fatal(err)
	}
	moveBack(t, p, d, id, plane.Motion{Shift: plane.Point{X: 0.6096, Y: 0.3048}})
	if said := p.back.said.Words(); !strings.Contains(said, name+" has moved as one piece: 1' 0\" upstage and 2' 0\" to stage left") {
		t.Fatalf("said %q", said)
	}
	p.back.keep(true)
	if len(d.View().P.Moves) != 0 {
		t.Error("a move without a reason is kept")
	}
	p.back.reason.Set("the door did not clear")
	p.back.keep(false)
	moves := d.View().P.Moves
	if len(moves) != 1 || moves[0].Taken || moves[0].By != "A tester" || moves[0].Reason != "the door did not clear" {
		t.Fatalf("noted %+v", moves)
	}
	if err := p.back.moves.OnEdit(moves[0].ID, 5, grid.On); err != nil {
		t.Fatal(err)
	}
	if m := d.View().P.Moves[0]; !m.Taken {
		t.Error("the move is not taken")
	}
	if err := p.back.moves.OnEdit(moves[0].ID, 5, grid.Off); err == nil {
		t.Error("a tick takes a piece back without a word")
	}
	p.back.moves.Select(moves[0].ID)
	p.Remove()
	if len(d.View().P.Moves) != 0 {
		t.Error("the record is still there")
	}
}

func TestTapesThatCannotMeetAreRefusedWhileAPieceIsMeasured(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabBack)
	e := movable(t, d)
	p.back.how.Set(byTapesLeft)
	p.back.begin(e.ID)
	label := d.View().Here().MarksOfPiece(e.ID, "")[0].Label
	if err := p.back.points.OnEdit(label, backFirst, "1'"); err != nil {
		t.Fatal(err)
	}
	if err := p.back.points.OnEdit(label, backFirst+1, "1'"); err == nil || !strings.Contains(err.Error(), "cannot meet") {
		t.Errorf("got %v", err)
	}
	if !strings.Contains(p.back.said.Words(), "at least two marks") {
		t.Errorf("said %q of nothing", p.back.said.Words())
	}
}

func TestWhatWasReadOnOneFloorIsNotThatOfAnother(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabBack)
	e := movable(t, d)
	p.back.begin(e.ID)
	label := d.View().Here().MarksOfPiece(e.ID, "")[0].Label
	for column, text := range []string{"1'", "2' SL"} {
		if err := p.back.points.OnEdit(label, backFirst+column, text); err != nil {
			t.Fatal(err)
		}
	}
	here := d.View().Floor
	if len(p.back.typed) != 1 {
		t.Fatalf("what was typed is not there: %v", p.back.typed)
	}
	d.ChooseFloor(other(t, d))
	if len(p.back.typed) != 0 || len(p.back.back.Points) != 0 {
		t.Errorf("on another floor there stands %v", p.back.typed)
	}
	d.ChooseFloor(here)
	if len(p.back.typed) != 0 {
		t.Errorf("back on the floor there stands %v", p.back.typed)
	}
}

// other is a floor that is not looked at.
func other(t *testing.T, d *desk.Desk) floor.ID {
	t.Helper()
	for _, f := range d.View().P.Floors {
		if f.ID != d.View().Floor {
			return f.ID
		}
	}
	t.Fatal("there is but one floor")
	return ""
}

// Where the sheet measures a mark from a third pivot, what is read from pivots 1 and 2
// is compared with what is due from these.
func TestAPieceIsMeasuredBackFromTheFirstTwoPivots(t *testing.T) {
	_, d := open(t)
	if !d.Edit("Set the second pivot beside the first", func(pr *prep.Production) error {
		f := pr.Floor(d.View().Floor)
		first := f.Pivots[0].At
		f.Pivots = append(f.Pivots, f.Pivots[1])
		f.Pivots[2].ID = "a third"
		f.Pivots[1].At = first.Towards(f.Pivots[1].At, 0.1)
		return nil
	}) {
		t.Fatal("the pivots cannot be set")
	}
	e := movable(t, d)
	w, others := d.View().Here(), 0
	m := w.Floor.FloorToDatum()
	list := w.MarksOfPiece(e.ID, "")
	for n, row := range backRows(d.View(), list, nil, byTapesLeft, nil) {
		if list[n].Pair.B == 2 {
			others++
		}
		for i := range 2 {
			want := d.View().Style().Format(m.Apply(w.Floor.Pivots[i].At).To(list[n].At))
			if got := row.Cells[2+i]; got != want {
				t.Errorf("mark %s: %s is due from pivot %d, want %s", row.ID, got, i+1, want)
			}
		}
	}
	if others == 0 {
		t.Error("no mark of the piece is measured from the third pivot")
	}
}
