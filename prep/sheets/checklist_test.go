package sheets

import (
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
)

func TestTheCheckListShowsWhatHasBeenRead(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Floors = []floor.Floor{{ID: "room", Pivots: []floor.Pivot{{ID: "a"}, {ID: "b", At: plane.Point{X: 6.096}}}}}
	w := prep.Work(p, "room", "")
	if read, good := alreadyRead(p, w, prep.FirstPivot, prep.SecondPivot); read != "" || good != "" {
		t.Errorf("nothing was read, and the sheet has %q, %q", read, good)
	}
	p.Readings = []prep.Reading{{ID: "1", Floor: "room", From: prep.FirstPivot, To: prep.SecondPivot, Metres: 6.096, Text: "20'"}}
	if read, good := alreadyRead(p, w, prep.FirstPivot, prep.SecondPivot); read != "20'" || good != ticked {
		t.Errorf("got %q, %q", read, good)
	}
	p.Readings = append(p.Readings, prep.Reading{ID: "2", Floor: "room", From: prep.SecondPivot, To: prep.FirstPivot, Metres: 5.7912, Text: "19'"})
	if read, good := alreadyRead(p, w, prep.FirstPivot, prep.SecondPivot); read != "20'; 19'" || good != "" {
		t.Errorf("got %q, %q", read, good)
	}
}

func TestTheRetapeListHasWhatIsWornAndWhatHasMoved(t *testing.T) {
	j := richJob(A4)
	w := prep.Work(j.P, "room", "")
	a := w.Marks[0].Label
	by := floor.Decision{By: "Kit", On: printed}
	for _, s := range []marks.Step{marks.Placed, marks.Worn} {
		if err := j.P.TakeStep("room", []string{a}, s, by); err != nil {
			t.Fatal(err)
		}
	}
	e := j.P.Plan.Elements[0]
	j.P.Moves = []prep.Move{{ID: "m", Floor: "room", Element: e.ID, Up: 0.3048, Reason: "more depth", By: "Robin", On: printed}}
	text := textOf(t, pdf(t, Retape, j))
	for _, want := range []string{"Bring ", a, "Kit", e.Name, "more depth", "Robin", "not yet"} {
		if !strings.Contains(text, want) {
			t.Errorf("the list lacks %q: %s", want, text)
		}
	}
	j.P.Moves, j.P.Progress = nil, nil
	if text := textOf(t, pdf(t, Retape, j)); !strings.Contains(text, "No strip is said to be worn") || strings.Contains(text, "Bring ") {
		t.Errorf("with nothing worn: %s", text)
	}
}
