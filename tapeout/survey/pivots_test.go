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

// everyPair is the choice among fixed places made the long way, mark by mark
// through the budget.
func everyPair(candidates, points []plane.Point, limits Limits) (best Choice) {
	best.OutOfReach = 2*len(points) + 1
	for a := range candidates {
		for b := a + 1; b < len(candidates); b++ {
			c := judgedPlainly(TwoTape{candidates[a], candidates[b]}, points, limits)
			if c.Compare(best) < 0 {
				best = c
			}
		}
	}
	return best
}

func judgedPlainly(pivots TwoTape, points []plane.Point, limits Limits) Choice {
	c := Choice{A: Stand{At: pivots.A}, B: Stand{At: pivots.B}, Weakest: -1}
	for i, p := range points {
		r, ok := pivots.Read(p)
		cov, sure := limits.Budget.TwoTape(pivots, p)
		blocked := limits.Blocked != nil && (limits.Blocked(pivots.A, p) || limits.Blocked(pivots.B, p))
		if !ok || !sure || blocked || limits.Longest > 0 && math.Max(r.A, r.B) > limits.Longest {
			c.OutOfReach++
			continue
		}
		e := cov.Ellipse95().Major
		if limits.Allowed > 0 && e > limits.Allowed {
			c.Poor++
		}
		if e > c.Worst {
			c.Worst, c.Weakest = e, i
		}
	}
	return c
}

func column(at plane.Point, radius float64) func(from, to plane.Point) bool {
	return func(from, to plane.Point) bool {
		along := to.Sub(from)
		k := min(max(at.Sub(from).Dot(along)/along.Dot(along), 0), 1)
		return from.Towards(to, k).To(at) < radius
	}
}

func spots(places []plane.Point) []Site {
	out := make([]Site, len(places))
	for i, p := range places {
		out[i] = Spot(p)
	}
	return out
}

func TestTheBestPairOfFixedPlacesIsThatOfTryingEveryPair(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range 60 {
		candidates, points := somewhere(rng, 7), somewhere(rng, 25)
		limits := Limits{Budget: steelBudget, Longest: 12, Blocked: column(pt(1, 5), 0.3), Allowed: 0.0254}
		want := everyPair(candidates, points, limits)
		got, err := BestPairs(spots(candidates), points, limits)
		if err != nil {
			t.Fatal(err)
		}
		c := got[0]
		if c.A.At != want.A.At || c.B.At != want.B.At || c.Weakest != want.Weakest || c.Unserved() != want.Unserved() ||
			math.Abs(c.Worst-want.Worst) > 1e-9 {
			t.Errorf("got %+v, want %+v", c, want)
		}
		for i := 1; i < len(got); i++ {
			if got[i].Compare(got[i-1]) < 0 {
				t.Errorf("choice %d is better than the one before", i)
			}
		}
	}
}

// Along walls, centre line and baseline the search is held against every pair of
// places 100 mm apart.
func TestTheBestPairIsWithinTwoPerCentOfEveryPairOfAGrid(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	for n := range 4 {
		w, d := 6+4*rng.Float64(), 5+3*rng.Float64()
		walls := plane.Closed(pt(-w/2, -1), pt(w/2, -1+0.4*rng.Float64()), pt(w/2+0.3, d), pt(-w/2, d-0.5))
		var sites []Site
		for _, e := range walls.Edges() {
			sites = append(sites, Site{e})
		}
		sites = append(sites, Site{plane.Edge{A: pt(0, 0), B: pt(0, d-0.6)}}, Site{plane.Edge{A: pt(-w/2+0.2, 0), B: pt(w/2-0.2, 0)}})
		var points []plane.Point
		for range 15 {
			points = append(points, pt((rng.Float64()-0.5)*(w-1), rng.Float64()*(d-1.5)))
		}
		limits := Limits{Budget: steelBudget, Longest: []float64{0, 0.95 * d}[n%2], Blocked: column(pt(1, 2), 0.2), Allowed: 0.0254}
		var grid []plane.Point
		for _, s := range sites {
			for along := 0.0; along < s.Length(); along += 0.1 {
				grid = append(grid, s.At(along/s.Length()))
			}
		}
		want := everyPair(grid, points, limits)
		got, err := BestPairs(sites, points, limits)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("room %d: worst mark %.2f mm, of the grid %.2f mm; %d and %d not served", n, 1000*got[0].Worst, 1000*want.Worst, got[0].Unserved(), want.Unserved())
		if got[0].Unserved() > want.Unserved() || got[0].Unserved() == want.Unserved() && got[0].Worst > 1.02*want.Worst {
			t.Errorf("room %d: %+v is worse than %+v", n, got[0], want)
		}
	}
}

func TestBestPairsPreferTapesThatCross(t *testing.T) {
	candidates := []plane.Point{pt(-4, 0), pt(-3.5, 0), pt(4, 0)}
	got, err := BestPairs(spots(candidates), []plane.Point{pt(0, 4), pt(1, 3.5)}, Limits{Budget: steelBudget, Keep: 1})
	if err != nil || len(got) != 1 || got[0].B.At != candidates[2] {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestJudgePairLeavesOutWhatTheTapeDoesNotReach(t *testing.T) {
	got := JudgePair(TwoTape{pt(0, 0), pt(4, 0)}, []plane.Point{pt(2, 2), pt(2, 30), pt(2, 0), pt(4, 0)}, Limits{Budget: steelBudget, Longest: 10})
	if got.OutOfReach != 2 || got.Weakest != 0 {
		t.Errorf("%+v: want one mark too far, one on the line, one on a pivot reached", got)
	}
}

func TestBestPairsSayWhatIsMissing(t *testing.T) {
	two, one := spots([]plane.Point{pt(0, 0), pt(4, 0)}), []plane.Point{pt(2, 2)}
	for name, c := range map[string]struct {
		sites  []Site
		points []plane.Point
		limits Limits
		says   string
	}{
		"one candidate":   {two[:1], one, Limits{}, "at least two"},
		"no marks":        {two, nil, Limits{}, "no marks"},
		"one place":       {spots([]plane.Point{pt(1, 1), pt(1, 1)}), one, Limits{}, "same one"},
		"not a number":    {two, []plane.Point{pt(math.NaN(), 0)}, Limits{}, "mark number 1 has no position"},
		"place not known": {[]Site{two[0], Spot(pt(math.Inf(1), 0))}, one, Limits{}, "place number 2 has no position"},
		"short tape":      {two, one, Limits{Longest: 1}, "longer tape"},
		"all in one line": {two, []plane.Point{pt(1, 0), pt(9, 0)}, Limits{}, "no two of the places"},
	} {
		_, err := BestPairs(c.sites, c.points, c.limits)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func BenchmarkBestPairs(b *testing.B) {
	rng := rand.New(rand.NewPCG(11, 12))
	var sites []Site
	for _, e := range plane.Rectangle(pt(-9, -1), pt(9, 13)).Edges() {
		sites = append(sites, Site{e})
	}
	points := somewhere(rng, 300)
	for b.Loop() {
		if _, err := BestPairs(sites, points, Limits{Budget: steelBudget, Longest: 30}); err != nil {
			b.Fatal(err)
		}
	}
}
