package picture_test

import (
	"math"
	"testing"

	"groundrow/tapeout/drawing/picture"
	"groundrow/tapeout/plane"
)

func TestTwoPointsGiveScaleAndTurn(t *testing.T) {
	for _, c := range []struct {
		name        string
		a, b        plane.Point
		realA, real plane.Point
		scale, turn float64 // metres a pixel, degrees
	}{
		{"upright", plane.Point{X: 100, Y: 500}, plane.Point{X: 700, Y: 500}, plane.Point{}, plane.Point{X: 6}, 0.01, 0},
		{"up the picture is up", plane.Point{X: 100, Y: 500}, plane.Point{X: 100, Y: 300}, plane.Point{X: 1, Y: 1}, plane.Point{X: 1, Y: 5}, 0.02, 0},
		{"scanned on its side", plane.Point{X: 0, Y: 0}, plane.Point{X: 0, Y: 400}, plane.Point{}, plane.Point{X: 4}, 0.01, 90},
		{"upside down", plane.Point{X: 0, Y: 0}, plane.Point{X: -250, Y: 0}, plane.Point{X: 3}, plane.Point{X: 8}, 0.02, 180},
	} {
		s, err := picture.TwoPoints(c.a, c.b, c.realA, c.real)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if turn := s.Turn * 180 / math.Pi; math.Abs(s.Scale-c.scale) > 1e-12 || math.Abs(math.Remainder(turn-c.turn, 360)) > 1e-9 {
			t.Errorf("%s: %g m a pixel turned by %g°, want %g and %g°", c.name, s.Scale, turn, c.scale, c.turn)
		}
		if got := s.Apply(c.b); got.To(c.real) > 1e-9 {
			t.Errorf("%s: the second point goes to %v, want %v", c.name, got, c.real)
		}
		for _, p := range []plane.Point{c.a, c.b, {X: 17, Y: -30}} {
			if back := s.Pixel(s.Apply(p)); back.To(p) > 1e-9 {
				t.Errorf("%s: %v comes back as %v", c.name, p, back)
			}
			if same, ok := s.Homography().Apply(p); !ok || same.To(s.Apply(p)) > 1e-9 {
				t.Errorf("%s: as a perspective transform it takes %v to %v, want %v", c.name, p, same, s.Apply(p))
			}
		}
	}
}

func TestTwoPointsThatAreOneAreRefused(t *testing.T) {
	p, q := plane.Point{X: 3, Y: 4}, plane.Point{X: 5, Y: 6}
	nowhere := plane.Point{X: math.NaN()}
	for _, c := range [][4]plane.Point{{p, p, p, q}, {p, q, p, p}, {nowhere, q, p, q}, {p, q, p, {Y: math.Inf(-1)}}} {
		if s, err := picture.TwoPoints(c[0], c[1], c[2], c[3]); err == nil {
			t.Errorf("%v give %v", c, s)
		}
	}
}
