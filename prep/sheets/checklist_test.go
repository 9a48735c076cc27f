package sheets

import (
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
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
