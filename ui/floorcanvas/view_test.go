package floorcanvas

import (
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/plane"
)

func TestPixelsComeBackAsTheirPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		v := View{plane.Point{X: r.NormFloat64() * 10, Y: r.NormFloat64() * 10}, math.Exp(r.NormFloat64() - 4), r.Float64() * 7}
		l := newLens(v, port{46, 20, 900, 600}, 1.25)
		p := plane.Point{X: r.NormFloat64() * 20, Y: r.NormFloat64() * 20}
		if q := l.point(l.px(p)); q.To(p) > 1e-9 {
			t.Fatalf("%v came back as %v in %+v", p, q, v)
		}
	}
}

func TestZoomKeepsThePointUnderThePointer(t *testing.T) {
	for _, turn := range []float64{0, 0.7, math.Pi} {
		l := newLens(View{Scale: 0.02, Turn: turn}, port{46, 20, 900, 600}, 1)
		before := l.point(300, 500)
		z := newLens(l.zoomed(3, 300, 500), port{46, 20, 900, 600}, 1)
		if after := z.point(300, 500); after.To(before) > 1e-9 {
			t.Errorf("turn %v: %v became %v", turn, before, after)
		}
		if math.Abs(z.view.Scale-0.02/3) > 1e-12 {
			t.Errorf("scale %v", z.view.Scale)
		}
	}
}

func TestUpIsUpOnTheScreenAndStageLeftIsRight(t *testing.T) {
	l := newLens(View{Scale: 0.01}, port{0, 0, 100, 100}, 1)
	x0, y0 := l.px(plane.Point{})
	x1, y1 := l.px(plane.Point{X: 0.1, Y: 0.2})
	if math.Abs(x1-x0-10) > 1e-9 || math.Abs(y1-y0+20) > 1e-9 {
		t.Errorf("0.1 m over and 0.2 m up is %.1f, %.1f pixels away", x1-x0, y1-y0)
	}
}

func TestAFittedPictureIsSeenWhole(t *testing.T) {
	s := prepare(specimen())
	for _, turn := range []float64{0, 0.5, math.Pi / 2, math.Pi, 4} {
		p := port{46, 20, 800, 500}
		l := newLens(s.fit(turn, p.w, p.h), p, 1)
		for _, c := range s.areas {
			for _, e := range c.edges {
				x, y := l.px(e.A)
				if x < p.x || x > p.x+p.w || y < p.y || y > p.y+p.h {
					t.Errorf("turn %v: a corner is at %.0f, %.0f", turn, x, y)
				}
			}
		}
	}
}

func TestAViewIsMadeSound(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, v := range map[string]View{
		"no numbers": {plane.Point{X: nan, Y: nan}, nan, nan},
		"infinite":   {plane.Point{X: inf, Y: -inf}, inf, inf},
		"negative":   {Scale: -1},
		"far away":   {plane.Point{X: 1e300, Y: -1e300}, 1, 0},
	} {
		t.Run(name, func(t *testing.T) {
			s := v.sound()
			if !(s.Scale >= finest && s.Scale <= coarsest) || !s.Centre.Finite() || math.IsNaN(s.Turn-s.Turn) {
				t.Errorf("%+v", s)
			}
		})
	}
}

func TestDivisionsOfAFootAreWholePartsOfTheNext(t *testing.T) {
	for name, steps := range map[string][]float64{"feet": feetSteps, "metres": metreSteps} {
		for i := 1; i < len(steps); i++ {
			if steps[i] <= steps[i-1] {
				t.Errorf("%s: %v is not after %v", name, steps[i], steps[i-1])
			}
		}
	}
}

func TestFiguresOfTheRulers(t *testing.T) {
	feet, metres := prepare(specimen()), prepare(Picture{})
	millimetres := prepare(Picture{})
	millimetres.Style.Unit = "mm"
	const foot, inch = 0.3048, 0.0254
	for _, c := range []struct {
		s    *scene
		m    float64
		want string
	}{
		{feet, 0, "0′"}, {feet, 12 * foot, "12′"}, {feet, 12*foot + 6.5*inch, "12′ 6½″"},
		{feet, 3 * inch, "3″"}, {feet, inch / 16, "¹⁄₁₆″"}, {feet, 2*foot + inch/2, "2′ ½″"},
		{metres, 12, "12"}, {metres, 0.25, "0.25"}, {metres, 0.1 + 0.2, "0.3"},
		{millimetres, 1.25, "1250"},
	} {
		if got := c.s.figureOf(c.m); got != c.want {
			t.Errorf("%v m reads %q, want %q", c.m, got, c.want)
		}
	}
}
