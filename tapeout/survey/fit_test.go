package survey

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func TestBestFitFindsTheMotionAndTheStretch(t *testing.T) {
	rng := rand.New(rand.NewPCG(17, 18))
	from := somewhere(rng, 12)
	m, scale := plane.Motion{Turn: 0.4, Shift: pt(3, -7)}, 1.003
	to := make([]plane.Point, len(from))
	for i, p := range from {
		to[i] = m.Apply(p.Times(scale))
	}
	f, err := BestFit(from, to, 0.01, true)
	if err != nil || math.Abs(f.Motion.Turn-0.4) > 1e-12 || math.Abs(f.Scale-scale) > 1e-12 ||
		f.Motion.Shift.To(m.Shift) > 1e-11 || f.RMS > 1e-12 || count(f.Moved) != 0 {
		t.Errorf("%+v, %v", f, err)
	}
}

func TestBestFitTellsAMovedPieceFromATurnedWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(19, 20))
	m, aside := plane.Motion{Turn: -0.02, Shift: pt(0.1, 0.2)}, pt(0.6, -0.25)
	for _, n := range []int{7, 30, 150} {
		from := somewhere(rng, n)
		to := make([]plane.Point, n)
		moved := n * 2 / 5
		for i, p := range from {
			to[i] = m.Apply(p).Add(pt(0.003*rng.NormFloat64(), 0.003*rng.NormFloat64()))
			if i < moved {
				to[i] = to[i].Add(aside)
			}
		}
		f, err := BestFit(from, to, 0.02, false)
		if err != nil {
			t.Fatal(err)
		}
		for i, yes := range f.Moved {
			if yes != (i < moved) {
				t.Errorf("%d places: number %d moved: %v, misses by %.3f m", n, i, yes, f.Residual[i])
			}
		}
		if math.Abs(f.Motion.Turn-m.Turn) > 0.003 || f.Scale != 1 || f.RMS > 0.01 {
			t.Errorf("%d places: %+v", n, f.Motion)
		}
	}
}

// No turn or shift near the fitted one has a smaller sum of squares.
func TestBestFitIsTheLeastOfItsSquares(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	from, to := somewhere(rng, 9), somewhere(rng, 9)
	f, err := BestFit(from, to, 1000, true)
	if err != nil {
		t.Fatal(err)
	}
	squares := func(f Fit) (sum float64) {
		for i, p := range from {
			sum += math.Pow(f.Apply(p).To(to[i]), 2)
		}
		return sum
	}
	least := squares(f)
	for _, h := range []float64{-1e-3, 1e-3} {
		for name, change := range map[string]func(*Fit){
			"turn":  func(g *Fit) { g.Motion.Turn += h },
			"scale": func(g *Fit) { g.Scale += h },
			"over":  func(g *Fit) { g.Motion.Shift.X += h },
			"up":    func(g *Fit) { g.Motion.Shift.Y += h },
		} {
			g := f
			change(&g)
			if squares(g) < least {
				t.Errorf("a changed %s is better", name)
			}
		}
	}
}

func TestBestFitSaysWhatIsMissing(t *testing.T) {
	two := []plane.Point{pt(0, 0), pt(1, 0)}
	for name, c := range map[string]struct {
		from, to []plane.Point
		says     string
	}{
		"one":          {two[:1], two[:1], "at least two"},
		"unequal":      {two, two[:1], "needs its partner"},
		"one place":    {[]plane.Point{pt(1, 1), pt(1, 1)}, two, "same place"},
		"not a number": {two, []plane.Point{pt(0, 0), pt(math.NaN(), 0)}, "number 2 has no position"},
	} {
		if _, err := BestFit(c.from, c.to, 0.01, false); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
