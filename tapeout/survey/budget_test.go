package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/plane"
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

// Every cause is drawn and the crew's steps are followed: pivots set wrongly,
// tapes misread, the printed measure rounded, the tab put down beside.
func TestSimulatedCrewFallsInTheEllipseOfTheBudget(t *testing.T) {
	b := Budget{Tape: ClassIII, Stretch: 0.0002, Reading: 0.002, Placing: 0.003, Pivot: 0.004, Rounding: 0.006}
	rng := rand.New(rand.NewPCG(15, 16))
	wrong := func(sigma float64) plane.Point { return pt(sigma*rng.NormFloat64(), sigma*rng.NormFloat64()) }
	even := func(limit float64) float64 { return limit * (2*rng.Float64() - 1) }
	tape := func(l float64) float64 {
		return l + even(b.Tape.Error(l)) + l*b.Stretch*rng.NormFloat64() + b.Reading*rng.NormFloat64() + even(b.Rounding/2)
	}
	pivots, p := TwoTape{pt(-3, 0), pt(5, 1)}, pt(2, 6)
	cov, ok := b.TwoTape(pivots, p)
	if !ok {
		t.Fatal("no covariance")
	}
	r, _ := pivots.Read(p)
	e, hits := cov.Ellipse95(), 0.0
	for range trials {
		set := TwoTape{pivots.A.Add(wrong(b.Pivot)), pivots.B.Add(wrong(b.Pivot))}
		got, err := set.Locate(Reading{A: tape(r.A), B: tape(r.B), Side: r.Side})
		if err == nil && inside(e, got.Add(wrong(b.Placing)).Sub(p)) {
			hits++
		}
	}
	if hits < fewest || hits > mostInside {
		t.Errorf("%.1f %% inside", 100*hits/trials)
	}
}

func TestAdviseTurnsFromUpAndOverWhenTheAngleTells(t *testing.T) {
	b := DefaultBudget
	wide, centre := TwoTape{pt(-6, -1), pt(6, -1)}, TwoTape{pt(0, 0), pt(0, 0.5)}
	for name, c := range map[string]struct {
		pivots  TwoTape
		p       plane.Point
		allowed float64
		want    Method
		good    bool
	}{
		"near the centre line":     {wide, pt(1, 4), 0.015, UpAndOver, true},
		"far over":                 {wide, pt(9, 5), 0.025, TwoTapes, true},
		"far over, poor pivots":    {centre, pt(9, 5), 0.025, WithGuideLines, true},
		"nothing is good enough":   {wide, pt(9, 5), 0.001, WithGuideLines, false},
		"far over, on their line":  {wide, pt(9, -1), 0.025, WithGuideLines, true},
		"allowed to be far enough": {centre, pt(9, 5), 0.2, UpAndOver, true},
	} {
		got := b.Advise(c.pivots, c.p, c.allowed)
		if got.Method != c.want || got.Good != c.good {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
