package marks

import (
	"math"
	"testing"

	"groundrow/tapeout/plane"
)

const foot = 0.3048

// Dance-line numbers are even feet from centre to the proscenium, measured
// straight and not along a curve: common practice, no source.
func TestDanceLineCountsEvenFeetFromCentre(t *testing.T) {
	d := DanceLine{Up: -1, Step: 2 * foot, Unit: foot, Reach: 7 * foot, Habit: Numbers}
	got := d.Figures(plane.Path{})
	want := []string{"6", "4", "2", "0", "2", "4", "6"}
	if len(got) != len(want) {
		t.Fatalf("%d figures, want %d", len(got), len(want))
	}
	for i, n := range got {
		over := float64(i-3) * 2 * foot
		if n.Text != want[i] || math.Abs(n.At.X-over) > 1e-12 || n.At.Y != -1 || n.OnEdge {
			t.Errorf("figure %d is %+v, want %s at %v m over", i, n, want[i], over)
		}
	}
}

func TestReachOfWholeStepsKeepsItsLastFigure(t *testing.T) {
	d := DanceLine{Step: 2 * foot, Unit: foot, Reach: 18 * foot}
	if got := d.Figures(plane.Path{}); len(got) != 19 || got[18].Text != "18" {
		t.Errorf("%d figures, last %q; want 19 and 18", len(got), got[len(got)-1].Text)
	}
	metric := DanceLine{Step: 0.5, Unit: 1, Reach: 1.5}
	if got := metric.Figures(plane.Path{}); got[0].Text != "1.5" || got[1].Text != "1" || got[2].Text != "0.5" {
		t.Errorf("figures %+v, want 1.5, 1, 0.5", got)
	}
}

func TestQuartersAndEighths(t *testing.T) {
	d := DanceLine{Reach: 8, Habit: Quarters}
	for _, n := range d.Figures(plane.Path{}) {
		want := map[string][]float64{"C": {0}, "1/4": {-4, 4}, "1/8": {-6, -2, 2, 6}, "end": {-8, 8}}[n.Text]
		ok := false
		for _, x := range want {
			ok = ok || x == n.At.X
		}
		if !ok {
			t.Errorf("%s at %v", n.Text, n.At.X)
		}
	}
}

// On a circular apron of radius R that bows downstage, the edge at distance x
// from centre lies R − √(R² − x²) upstage of its front, and somebody who measures
// x along it ends at R·sin(x/R): plane trigonometry.
func TestCurvedApronGivesUpAndSlipByTrigonometry(t *testing.T) {
	front, half := plane.Point{Y: -1.5}, 5.0
	arc, _ := plane.Through(plane.Point{X: -half}, front, plane.Point{X: half})
	edge := plane.Path{Vertices: []plane.Vertex{
		{Point: plane.Point{X: -half, Y: 1}}, {Point: arc.A, Bulge: arc.Bulge}, {Point: arc.B}, {Point: plane.Point{X: half, Y: 1}},
	}}
	_, r, _ := arc.Circle()
	d := DanceLine{Up: 0, Step: 1, Unit: 1, Reach: 4.5}
	for _, n := range d.Figures(edge) {
		x := math.Abs(n.At.X)
		if !n.OnEdge || math.Abs(n.Edge-(front.Y+r-math.Sqrt(r*r-x*x))) > 1e-9 {
			t.Errorf("edge at %v over is %v up, want %v", n.At.X, n.Edge, front.Y+r-math.Sqrt(r*r-x*x))
		}
		if want := x - r*math.Sin(x/r); math.Abs(n.Slip-want) > 1e-9 {
			t.Errorf("slip at %v over is %v, want %v", n.At.X, n.Slip, want)
		}
	}
}

func TestDanceLineWithoutStepIsOnlyItsCentre(t *testing.T) {
	for _, d := range []DanceLine{{}, {Reach: 4}, {Reach: math.NaN(), Step: 1, Unit: 1}, {Reach: 4, Step: -1, Unit: 1}} {
		if got := d.Figures(plane.Path{}); len(got) != 1 || got[0].At.X != 0 {
			t.Errorf("%+v gives %+v, want centre alone", d, got)
		}
	}
	endless := DanceLine{Reach: 1e9, Step: 1e-9, Unit: 1}
	if got := endless.Figures(plane.Path{}); len(got) > 2*mostFigures+1 {
		t.Errorf("%d figures", len(got))
	}
}
