package floorpicture

import (
	"math"
	"slices"
	"testing"

	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// The ends of the half-axes of a 95 % ellipse are at a Mahalanobis distance d of the
// mark's covariance with d² = −2·ln 0.05, the quantile of χ² with two degrees of freedom
// (closed form; 5.991 in the usual tables), and conjugate to each other.
func TestTheSelectedMarksHaveTheEllipseOfTheirMethod(t *testing.T) {
	for _, axes := range []bool{false, true} {
		bare, w := pictureOfDemo(t, "", Options{FloorAxes: axes, Labels: true})
		if len(bare.Ellipses) > 0 {
			t.Fatalf("%d ellipses though no mark is selected", len(bare.Ellipses))
		}
		wanted := []string{w.Marks[0].Label, w.Marks[len(w.Marks)-1].Label}
		pic, _ := pictureOfDemo(t, "", Options{FloorAxes: axes, Labels: true, Sure: wanted})
		if len(pic.Ellipses) != len(wanted) || len(pic.Dots) != len(bare.Dots) || len(pic.Labels) != len(bare.Labels) {
			t.Fatalf("%d ellipses, want %d and nothing else", len(pic.Ellipses), len(wanted))
		}
		turn := plane.Motion{}
		if axes {
			turn = w.Floor.FloorToDatum().Inverse()
		}
		n := 0
		for _, m := range w.Marks {
			if !slices.Contains(wanted, m.Label) {
				continue
			}
			e := pic.Ellipses[n]
			n++
			if e.At.To(turn.Apply(m.At)) > 1e-9 || e.Text != "95 %" {
				t.Errorf("%s: the ellipse is at %v and says %q", m.Label, e.At, e.Text)
			}
			c := m.Way(m.Method).Covariance.Moved(turn)
			long, short := plane.Polar(e.Major, e.Direction), plane.Polar(e.Minor, e.Direction+math.Pi/2)
			for _, q := range [][2]plane.Point{{long, long}, {short, short}} {
				if got, want := inverse(c, q[0], q[1]), -2*math.Log(0.05); math.Abs(got/want-1) > 1e-3 {
					t.Errorf("%s: an axis is at d² = %.4f, want %.4f", m.Label, got, want)
				}
			}
			if got := inverse(c, long, short); math.Abs(got) > 1e-6 {
				t.Errorf("%s: its axes lie askew by %v", m.Label, got)
			}
		}
	}
}

// inverse returns pᵀ·C⁻¹·q.
func inverse(c survey.Covariance2, p, q plane.Point) float64 {
	det := c.XX*c.YY - c.XY*c.XY
	return (p.X*(c.YY*q.X-c.XY*q.Y) + p.Y*(c.XX*q.Y-c.XY*q.X)) / det
}
