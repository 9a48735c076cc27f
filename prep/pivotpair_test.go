package prep

import (
	"fmt"
	"testing"

	"groundrow/tapeout/floor"
)

// The distances are measured here from the pivots that the figures name.
func TestTapeFiguresNameTheirPivots(t *testing.T) {
	p := small()
	f := &p.Floors[0]
	f.Pivots = append(f.Pivots, floor.Pivot{ID: "far", At: pt(0, 7.5)})
	w, others := Work(p, "room", ""), 0
	write := func(m float64) string { return fmt.Sprintf("%.6f", m) }
	for _, m := range w.Marks {
		a, b := m.TapeFigures(write)
		if !m.HasTapes {
			if a != "" || b != "" {
				t.Errorf("%s: %q and %q without pivots", m.Label, a, b)
			}
			continue
		}
		from := func(pivot int) string {
			at := write(f.FloorToDatum().Apply(f.Pivots[pivot].At).To(m.At))
			if m.Pair.A == 0 && m.Pair.B == 1 {
				return at
			}
			others++
			return fmt.Sprintf("%s (pivot %d)", at, pivot+1)
		}
		if a != from(m.Pair.A) || b != from(m.Pair.B) {
			t.Errorf("%s from pivots %s: %q and %q", m.Label, m.Pair.Words(), a, b)
		}
	}
	if others == 0 {
		t.Error("no mark is measured from the third pivot")
	}
}
