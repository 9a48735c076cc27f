package survey

import (
	"math"
	"testing"
)

func TestMeasureAddsItsCausesInSquares(t *testing.T) {
	b := Budget{Stretch: 0.0003, Reading: 0.004, Rounding: 0}
	if got := b.Measure(10); math.Abs(got-0.005) > 1e-15 { // 3-4-5
		t.Errorf("%v", got)
	}
	// A class II tape is within 2.3 mm at ten metres: published, see tape.go.
	if got, want := (Budget{Tape: ClassII}).Measure(10), 0.0023/math.Sqrt(3); math.Abs(got-want) > 1e-15 {
		t.Errorf("%v, want %v", got, want)
	}
	if got, want := (Budget{Rounding: 0.012}).Measure(10), 0.012/math.Sqrt(12); math.Abs(got-want) > 1e-15 {
		t.Errorf("%v, want %v", got, want)
	}
}
