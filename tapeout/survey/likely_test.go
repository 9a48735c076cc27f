package survey

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"groundrow/tapeout/plane"
)

func TestWeakBelowTheLeastAngleAndAboveItsSupplement(t *testing.T) {
	for degrees, want := range map[float64]bool{0: true, 29: true, 31: false, 90: false, 149: false, 151: true, 180: true} {
		if got := Weak(degrees*math.Pi/180, math.Pi/6); got != want {
			t.Errorf("%v degrees: %v", degrees, got)
		}
	}
}

// The position error of two equal readings is σ·√2/sin γ: any surveying text on
// distance-distance intersection.
func TestThePositionErrorGrowsAsTheTapesFlatten(t *testing.T) {
	pivots := TwoTape{pt(-1, 0), pt(5, 2)}
	for _, p := range []plane.Point{pt(2, 6), pt(9, -3), pt(-4, 1), pt(2, 1.2)} {
		r, _ := pivots.Read(p)
		c, ok := pivots.Covariance(p, 0.004, 0.004)
		if want := 0.004 * math.Sqrt2 / math.Sin(r.Angle); !ok || math.Abs(c.Position()-want) > 1e-12*want {
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
