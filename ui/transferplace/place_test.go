package transferplace

import (
	"slices"
	"strings"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// open shows the place with the demo on its desk.
func open(t *testing.T) (*place, *desk.Desk) {
	return desktest.Open(t, demo.Production(time.Now()), func(d *desk.Desk) *place { return New(d).(*place) })
}

func transferOf(p *place) prep.Transfer {
	return prep.TransferBetween(p.view.P, p.view.Work(p.view.Floor), p.view.Work(p.to))
}

func TestTheNextFloorIsTheFirstStageUnlessPicked(t *testing.T) {
	p, d := open(t)
	if f := d.View().P.Floor(p.to); f == nil || f.Kind != floor.Stage {
		t.Fatalf("handed on to %q", p.to)
	}
	if err := p.pick.OnCommit("Loft Studio"); err != nil {
		t.Fatal(err)
	}
	if got := nameOf(d.View().P, p.to); got != "Loft Studio" {
		t.Errorf("handed on to %s", got)
	}
	d.ChooseFloor(p.to)
	if p.to == d.View().Floor || p.to == "" {
		t.Errorf("a floor is handed on to itself: %q", p.to)
	}
}

func TestTheSameElementIsSelectedOnBothFloors(t *testing.T) {
	p, _ := open(t)
	id := transferOf(p).Rows[0].Element
	want := floorpicture.ID(desk.Element, string(id))
	p.going.OnSelect([]string{string(id)})
	for _, s := range []*side{p.here, p.there} {
		if got := s.canvas.Selected(); !slices.Equal(got, []string{want}) {
			t.Errorf("%s: %v", s.title, got)
		}
	}
	p.there.canvas.OnSelect([]string{want}, false)
	if got := p.going.Selected(); !slices.Equal(got, []string{string(id)}) {
		t.Errorf("the list has %v", got)
	}
	p.here.canvas.OnSelect([]string{floorpicture.ID(desk.Mark, "C")}, false)
	if p.view.Selected.Kind != desk.Element {
		t.Errorf("a mark selects %v", p.view.Selected)
	}
}

// Where the arch changes to the wall beside it there is a mark, so it has a place.
func TestEverythingThatGoesHasAPlaceThere(t *testing.T) {
	p, _ := open(t)
	for _, r := range transferOf(p).Rows {
		if r.Goes && len(r.Marks) == 0 {
			t.Errorf("%s has no mark there", r.Name)
		}
	}
}

func TestRowsFollowTheScene(t *testing.T) {
	p, d := open(t)
	all := len(p.going.Shown())
	d.ChooseScene(d.View().P.Plan.Scenes[0].ID)
	if n := len(p.going.Shown()); n == 0 || n >= all {
		t.Errorf("%d of %d rows in one scene", n, all)
	}
}

func TestWhatDoesNotGoSaysWhy(t *testing.T) {
	p, d := open(t)
	id := p.view.P.Plan.Elements[0].ID
	for _, r := range transferOf(p).Rows {
		if r.Goes && r.Here.How == floor.AsDrawn {
			id = r.Element
			break
		}
	}
	d.Edit("Leave it out", func(pr *prep.Production) error {
		f := pr.Floor(p.to)
		f.Treatments = append(f.Treatments, floor.Treatment{Element: id, How: floor.LeftOut, Reason: "it was cut in rehearsal"})
		return nil
	})
	rows := goingRows(d.View(), transferOf(p))
	i := slices.IndexFunc(rows, func(r grid.Row) bool { return r.ID == string(id) })
	if i < 0 || rows[i].Cells[colThere] != "does not go" || !strings.Contains(rows[i].Cells[colChanged], "it was cut in rehearsal") {
		t.Errorf("got %v", rows[max(i, 0)])
	}
}

func TestNotesAreWrittenAnsweredAndDeleted(t *testing.T) {
	p, d := open(t)
	about := transferOf(p).Rows[0]
	p.going.OnSelect([]string{string(about.Element)})
	before := len(d.View().P.Notes)
	p.Add()
	notes := d.View().P.Notes
	if len(notes) != before+1 || notes[before].Element != about.Element || !notes[before].Open {
		t.Fatalf("notes: %+v", notes)
	}
	id := notes[before].ID
	for column, text := range map[int]string{ntText: "Is it real there?", ntOwner: "Ines Marlowe", ntOn: "30 Nov 2026", ntState: stateDone, ntAbout: wholeFloor} {
		if err := p.notes.OnEdit(id, column, text); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
	got := d.View().P.Notes[before]
	if got.Open || got.Element != "" || got.Text != "Is it real there?" || got.Owner != "Ines Marlowe" || got.On.Day() != 30 {
		t.Errorf("got %+v", got)
	}
	if err := p.notes.OnEdit(id, ntAbout, "nothing of that name"); err == nil {
		t.Error("a note about nothing is taken")
	}
	if err := p.notes.OnEdit(id, ntOn, "soon"); err == nil {
		t.Error("a word is taken for a day")
	}
	p.notes.OnDelete([]string{id})
	if len(d.View().P.Notes) != before {
		t.Error("the note is still there")
	}
	d.Undo()
	if len(d.View().P.Notes) != before+1 {
		t.Error("Undo does not bring the note back")
	}
}

func TestAnOpenNoteIsMissingAndLedTo(t *testing.T) {
	p, d := open(t)
	p.addNote("")
	id, _ := d.View().Selected.Of(desk.Note)
	tr := transferOf(p)
	if ready, text := handOver(tr); ready || !strings.Contains(text, "open") {
		t.Errorf("%v, %s", ready, text)
	}
	i := slices.IndexFunc(tr.Problems, func(pr prep.Problem) bool { return pr.ID == id })
	if i < 0 {
		t.Fatal("the open note is not missed")
	}
	d.Select(desk.Selection{})
	p.tabs.SelectIndex(tabFront)
	p.mend(p.missing.Shown()[i])
	if got, _ := d.View().Selected.Of(desk.Note); got != id || p.tabs.SelectedIndex() != tabNotes {
		t.Errorf("led to %v on tab %d", d.View().Selected, p.tabs.SelectedIndex())
	}
}

func TestWithoutAnotherFloorThePlaceSaysWhatBelongsThere(t *testing.T) {
	p, d := open(t)
	d.Edit("Delete the others", func(pr *prep.Production) error {
		for len(pr.Floors) > 1 {
			pr.RemoveFloor(pr.Floors[1].ID)
		}
		return nil
	})
	if p.body.Objects[0] != p.empty {
		t.Error("one floor is handed on to nothing")
	}
	d.Undo()
	if p.body.Objects[0] != p.whole {
		t.Error("the floors are back, but not shown")
	}
}
