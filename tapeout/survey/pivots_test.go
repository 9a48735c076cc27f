package survey

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func somewhere(rng *rand.Rand, n int) []plane.Point {
	points := make([]plane.Point, n)
	for i := range points {
		points[i] = pt(rng.Float64()*16-8, rng.Float64()*12)
	}
	return points
}

// everyPair is the choice made the long way, mark by mark through Read.
func everyPair(candidates, points []plane.Point, limits Limits) (best Choice) {
	best.OutOfReach = len(points) + 1
	for a := range candidates {
		for b := a + 1; b < len(candidates); b++ {
			pivots, c := TwoTape{candidates[a], candidates[b]}, Choice{A: a, B: b, Weakest: -1}
			for i, p := range points {
				r, ok := pivots.Read(p)
				e, sure := TwoTapeError(r, limits.Sigma)
				blocked := limits.Blocked != nil && (limits.Blocked(pivots.A, p) || limits.Blocked(pivots.B, p))
				if !ok || !sure || blocked || math.Max(r.A, r.B) > limits.Longest {
					c.OutOfReach++
				} else if e > c.Worst {
					c.Worst, c.Weakest = e, i
				}
			}
			if c.OutOfReach < best.OutOfReach || c.OutOfReach == best.OutOfReach && c.Worst < best.Worst {
				best = c
			}
		}
	}
	return best
}

func TestBestPairAgreesWithTryingEveryPair(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	column := pt(1, 5)
	behind := func(from, to plane.Point) bool {
		along := to.Sub(from)
		k := min(max(column.Sub(from).Dot(along)/along.Dot(along), 0), 1)
		return from.Towards(to, k).To(column) < 0.3
	}
	for range 60 {
		candidates, points := somewhere(rng, 7), somewhere(rng, 25)
		limits := Limits{Sigma: 0.003, Longest: 12, Blocked: behind}
		want := everyPair(candidates, points, limits)
		got, err := BestPair(candidates, points, limits)
		if err != nil {
			t.Fatal(err)
		}
		c := got[0]
		if c.A != want.A || c.B != want.B || c.Weakest != want.Weakest || c.OutOfReach != want.OutOfReach ||
			math.Abs(c.Worst-want.Worst) > 1e-9 {
			t.Errorf("got %+v, want %+v", c, want)
		}
		for i := 1; i < len(got); i++ {
			if got[i].OutOfReach < got[i-1].OutOfReach {
				t.Errorf("choice %d is better than the one before", i)
			}
		}
	}
}

func TestBestPairPrefersTapesThatCross(t *testing.T) {
	candidates := []plane.Point{pt(-4, 0), pt(-3.5, 0), pt(4, 0)}
	got, err := BestPair(candidates, []plane.Point{pt(0, 4), pt(1, 3.5)}, Limits{Sigma: 0.003, Least: LeastAngle, Keep: 1})
	if err != nil || len(got) != 1 || got[0].B != 2 || got[0].Flat != 0 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestBestPairLeavesOutWhatTheTapeDoesNotReach(t *testing.T) {
	got, err := BestPair([]plane.Point{pt(0, 0), pt(4, 0)}, []plane.Point{pt(2, 2), pt(2, 30), pt(2, 0), pt(4, 0)}, Limits{Sigma: 0.003, Longest: 10})
	if err != nil || got[0].OutOfReach != 2 || got[0].Weakest != 0 {
		t.Errorf("%+v, %v: want one mark too far, one on the line, one on a pivot reached", got, err)
	}
}

func TestBestPairSaysWhatIsMissing(t *testing.T) {
	two, one := []plane.Point{pt(0, 0), pt(4, 0)}, []plane.Point{pt(2, 2)}
	for name, c := range map[string]struct {
		candidates, points []plane.Point
		limits             Limits
		says               string
	}{
		"one candidate": {one, one, Limits{}, "at least two"},
		"no marks":      {two, nil, Limits{}, "no marks"},
		"one place":     {[]plane.Point{pt(1, 1), pt(1, 1)}, one, Limits{}, "same one"},
		"not a number":  {two, []plane.Point{pt(math.NaN(), 0)}, Limits{}, "number 3 has no position"},
		"short tape":    {two, one, Limits{Longest: 1}, "longer tape"},
	} {
		if _, err := BestPair(c.candidates, c.points, c.limits); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func BenchmarkBestPair(b *testing.B) {
	rng := rand.New(rand.NewPCG(11, 12))
	candidates, points := somewhere(rng, 40), somewhere(rng, 500)
	for b.Loop() {
		if _, err := BestPair(candidates, points, Limits{Sigma: 0.003, Longest: 30}); err != nil {
			b.Fatal(err)
		}
	}
}
