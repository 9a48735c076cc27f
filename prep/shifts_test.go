package prep

import (
	"testing"
	"time"
)

func TestShiftsAreTheHoursOfTheRoomWithoutBreaks(t *testing.T) {
	r := Rates{DayStart: 10, DayEnd: 16, BreakAfter: 2.5, BreakLength: 0.5}
	got := r.Shifts(clock(0, 23, 0))
	want := [][4]int{{10, 0, 12, 30}, {13, 0, 15, 30}}
	if len(got) != len(want) {
		t.Fatalf("%d shifts %v, want %d", len(got), got, len(want))
	}
	for i, w := range want {
		if !got[i].Start.Equal(clock(0, w[0], w[1])) || !got[i].End.Equal(clock(0, w[2], w[3])) {
			t.Errorf("shift %d is %v", i, got[i])
		}
	}
	if all := (Rates{DayStart: 10, DayEnd: 16}).Shifts(clock(0, 0, 0)); len(all) != 1 || all[0].End.Sub(all[0].Start) != 6*time.Hour {
		t.Errorf("without breaks %v", all)
	}
}
