package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"groundrow/tapeout/plane"
)

func TestWeakBelowTheLeastAngleAndAboveItsSupplement(t *testing.T) {
	for degrees, want := range map[float64]bool{0: true, 29: true, 31: false, 90: false, 149: false, 151: true, 180: true} {
		if got := Weak(degrees*math.Pi/180, LeastAngle); got != want {
			t.Errorf("%v degrees: %v", degrees, got)
		}
	}
}

// The factor grows as 1/sin γ: any surveying text on distance intersection.
func TestTwoTapeErrorGrowsAsTheTapesFlatten(t *testing.T) {
	for degrees, factor := range map[float64]float64{90: 1, 30: 2, 150: 2} {
		got, ok := TwoTapeError(Reading{Side: Left, Angle: degrees * math.Pi / 180}, 0.003)
		if want := 0.003 * math.Sqrt2 * factor; !ok || math.Abs(got-want) > 1e-12 {
			t.Errorf("%v degrees: %v, want %v", degrees, got, want)
		}
	}
	if _, ok := TwoTapeError(Reading{Side: OnLine, Angle: math.Pi}, 0.003); ok {
		t.Error("an error on the line")
	}
}

func TestTwoTapeErrorIsTheRootOfTheCovariancesTrace(t *testing.T) {
	pivots := TwoTape{pt(-1, 0), pt(5, 2)}
	for _, p := range []plane.Point{pt(2, 6), pt(9, -3), pt(-4, 1)} {
		r, _ := pivots.Read(p)
		want, _ := TwoTapeError(r, 0.004)
		c, ok := pivots.Covariance(p, 0.004, 0.004)
		if !ok || math.Abs(c.Position()-want) > 1e-12 {
			t.Errorf("%v: %v, want %v", p, c.Position(), want)
		}
	}
}

func TestTheMarkIsSureAlongTheBetterTape(t *testing.T) {
	pivots := TwoTape{pt(0, 0), pt(4, 0)}
	p := pt(0, 3)
	c, _ := pivots.Covariance(p, 0.001, 0.01)
	if got := c.Along(math.Pi / 2); math.Abs(got-0.001) > 1e-12 {
		t.Errorf("along the first tape %v", got)
	}
	if got := c.Along(p.Sub(pivots.B).Angle()); math.Abs(got-0.01) > 1e-12 {
		t.Errorf("along the second tape %v", got)
	}
}

func TestCovarianceTurnsWithTheFloor(t *testing.T) {
	pivots, p := TwoTape{pt(0, 0), pt(4, 0)}, pt(5, 3)
	before, _ := pivots.Covariance(p, 0.002, 0.005)
	m := plane.Motion{Turn: 0.7, Shift: pt(10, -4)}
	moved := TwoTape{m.Apply(pivots.A), m.Apply(pivots.B)}
	got, _ := moved.Covariance(m.Apply(p), 0.002, 0.005)
	want := before.Moved(m)
	if math.Abs(got.XX-want.XX) > 1e-15 || math.Abs(got.XY-want.XY) > 1e-15 || math.Abs(got.YY-want.YY) > 1e-15 {
		t.Errorf("%+v, want %+v", got, want)
	}
	a, b := before.Ellipse95(), got.Ellipse95()
	if math.Abs(a.Major-b.Major) > 1e-12 || math.Abs(a.Minor-b.Minor) > 1e-12 ||
		math.Abs(math.Sin(b.Direction-a.Direction-m.Turn)) > 1e-9 {
		t.Errorf("ellipse %+v became %+v", a, b)
	}
}

func TestStandardEllipseOfKnownAxes(t *testing.T) {
	for name, c := range map[string]struct {
		c    Covariance2
		want Ellipse
	}{
		"nothing":       {Covariance2{}, Ellipse{}},
		"round":         {Round(3), Ellipse{3, 3, 0}},
		"along X":       {Covariance2{9, 0, 4}, Ellipse{3, 2, 0}},
		"along Y":       {Covariance2{4, 0, 9}, Ellipse{3, 2, math.Pi / 2}},
		"diagonal":      {Covariance2{5, 4, 5}, Ellipse{3, 1, math.Pi / 4}},
		"all one way":   {Covariance2{1, 1, 1}, Ellipse{math.Sqrt2, 0, math.Pi / 4}},
		"down diagonal": {Covariance2{5, -4, 5}, Ellipse{3, 1, -math.Pi / 4}},
	} {
		got := c.c.Standard()
		if math.Abs(got.Major-c.want.Major)+math.Abs(got.Minor-c.want.Minor)+math.Abs(got.Direction-c.want.Direction) > 1e-9 {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// Chi-square with two degrees of freedom: gonum stat/distuv, and the factor
// 2.4477 of the surveying texts.
func TestChi95IsTheQuantile(t *testing.T) {
	if want := (distuv.ChiSquared{K: 2}).Quantile(0.95); math.Abs(Chi95-want) > 1e-9 {
		t.Errorf("%v, want %v", Chi95, want)
	}
	if got := math.Sqrt(Chi95); math.Abs(got-2.4477) > 5e-5 {
		t.Errorf("factor %v", got)
	}
}

// inside tells whether a displacement lies in the ellipse.
func inside(e Ellipse, d plane.Point) bool {
	d = plane.Motion{Turn: -e.Direction}.Apply(d)
	return math.Pow(d.X/e.Major, 2)+math.Pow(d.Y/e.Minor, 2) <= 1
}

const (
	trials             = 20_000
	fewest, mostInside = 0.93 * trials, 0.97 * trials
)

func TestSimulatedTwoTapePlacingsFallInTheEllipse(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	pivots := TwoTape{pt(0, 0), pt(0, 9)}
	for name, c := range map[string]struct {
		p              plane.Point
		sigmaA, sigmaB float64
	}{
		"right angle":    {pt(4.5, 4.5), 0.003, 0.003},
		"flat":           {pt(1.2, 4), 0.003, 0.003},
		"unequal":        {pt(-6, 7), 0.002, 0.008},
		"far to a side":  {pt(14, 5), 0.005, 0.004},
		"beyond a pivot": {pt(3, 12), 0.003, 0.003},
	} {
		r, _ := pivots.Read(c.p)
		cov, _ := pivots.Covariance(c.p, c.sigmaA, c.sigmaB)
		e, hits := cov.Ellipse95(), 0.0
		for range trials {
			read := Reading{A: r.A + c.sigmaA*rng.NormFloat64(), B: r.B + c.sigmaB*rng.NormFloat64(), Side: r.Side}
			if got, err := pivots.Locate(read); err == nil && inside(e, got.Sub(c.p)) {
				hits++
			}
		}
		if hits < fewest || hits > mostInside {
			t.Errorf("%s: %.1f %% inside", name, 100*hits/trials)
		}
	}
}

func TestSimulatedUpAndOverPlacingsFallInTheEllipse(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	const sigma, angle = 0.004, 0.002
	for _, over := range []float64{0, 2.5, -7} {
		p := pt(over, 5)
		e, hits := UpOverError(over, sigma, angle).Ellipse95(), 0.0
		for range trials {
			foot := pt(0, p.Y+sigma*rng.NormFloat64())
			arm := pt(over+sigma*rng.NormFloat64(), 0)
			got := foot.Add(plane.Motion{Turn: angle * rng.NormFloat64()}.Apply(arm))
			if inside(e, got.Sub(p)) {
				hits++
			}
		}
		if hits < fewest || hits > mostInside {
			t.Errorf("%v m over: %.1f %% inside", over, 100*hits/trials)
		}
	}
}

func TestGuideLineIsWhereTheEllipsePassesTheAllowance(t *testing.T) {
	over, ok := GuideLine(0.003, 0.002, 0.02)
	if !ok {
		t.Fatal("no distance")
	}
	if got := UpOverError(over, 0.003, 0.002).Ellipse95().Major; math.Abs(got-0.02) > 1e-12 {
		t.Errorf("95 %% at %v m over is %v", over, got)
	}
	if _, ok := GuideLine(0.01, 0.002, 0.02); ok {
		t.Error("a reading error beyond the allowance needs no distance")
	}
	if over, ok := GuideLine(0.003, 0, 0.02); !ok || !math.IsInf(over, 1) {
		t.Errorf("a true right angle: %v, %v", over, ok)
	}
}
