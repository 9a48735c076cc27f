package route

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"groundrow/tapeout/plane"
)

func scattered(n int, seed uint64) []plane.Point {
	rng := rand.New(rand.NewPCG(seed, 1))
	points := make([]plane.Point, n)
	for i := range points {
		points[i] = plane.Point{X: rng.Float64()*20 - 10, Y: rng.Float64() * 12}
	}
	return points
}

func isPermutation(order []int, n int) bool {
	sorted := slices.Clone(order)
	slices.Sort(sorted)
	return slices.Equal(sorted, inputOrder(n))
}

func TestOrderVisitsEveryPointOnceAndNeverWalksFurther(t *testing.T) {
	for n := range 40 {
		points, start := scattered(n, uint64(n)), plane.Point{X: -3}
		order := Order(start, points)
		if !isPermutation(order, n) {
			t.Fatalf("%d points: %v", n, order)
		}
		if got, given := Walk(start, points, order), Walk(start, points, inputOrder(n)); got > given {
			t.Errorf("%d points: %v m, as given %v m", n, got, given)
		}
		if tour := tour(points); !isPermutation(tour, n) || n > 0 && tour[0] != 0 {
			t.Fatalf("tour of %d points: %v", n, tour)
		}
	}
}

func TestOrderKeepsAnOrderThatCannotBeBetter(t *testing.T) {
	points := make([]plane.Point, 30)
	for i := range points {
		points[i] = plane.Point{X: float64(i + 1)}
	}
	if got := Order(plane.Point{}, points); !slices.Equal(got, inputOrder(30)) {
		t.Errorf("a straight row is walked %v", got)
	}
}

func TestOrderIsTheSameEveryTime(t *testing.T) {
	points := scattered(120, 9)
	first := Order(plane.Point{}, points)
	for range 3 {
		if got := Order(plane.Point{}, points); !slices.Equal(got, first) {
			t.Fatal("another order for the same points")
		}
	}
}

func TestOrderOfAwkwardPoints(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, points := range map[string][]plane.Point{
		"one place":    make([]plane.Point, 25),
		"not a number": {{X: nan}, {Y: 1}, {X: 2}, {X: nan, Y: nan}, {X: 4}, {X: 1}, {X: 9}, {X: 3}, {Y: 7}},
		"infinite":     {{X: inf}, {Y: 1}, {X: -inf}, {X: 5}, {X: 4}, {X: 1}, {X: 9}, {X: 3}, {Y: 7}},
		"huge":         {{X: 1e300}, {Y: 1}, {X: -1e300}, {X: 5}, {X: 4}, {X: 1}, {X: 9}, {X: 3}, {Y: 7}},
	} {
		if got := Order(plane.Point{}, points); !isPermutation(got, len(points)) {
			t.Errorf("%s: %v", name, got)
		}
		if got := tour(points); !isPermutation(got, len(points)) {
			t.Errorf("%s: tour %v", name, got)
		}
	}
}

// shortest tries every order.
func shortest(start plane.Point, points []plane.Point) float64 {
	best := math.Inf(1)
	used := make([]bool, len(points))
	var from func(at plane.Point, walked float64, left int)
	from = func(at plane.Point, walked float64, left int) {
		if walked >= best {
			return
		}
		if left == 0 {
			best = walked
			return
		}
		for i, p := range points {
			if !used[i] {
				used[i] = true
				from(p, walked+at.To(p), left-1)
				used[i] = false
			}
		}
	}
	from(start, 0, len(points))
	return best
}

func TestOrderBesideEveryOrderOfEightPoints(t *testing.T) {
	sum := 0.0
	for seed := range uint64(40) {
		points, start := scattered(8, seed+100), plane.Point{X: 1}
		got, best := Walk(start, points, Order(start, points)), shortest(start, points)
		if got > best*1.05 {
			t.Errorf("seed %d: %v m, shortest %v m", seed, got, best)
		}
		sum += got / best
	}
	if mean := sum / 40; mean > 1.005 {
		t.Errorf("on average %.4f of the shortest", mean)
	}
}

type published struct {
	Tsplib []struct {
		Name   string
		Coords [][2]float64
		Key    struct {
			Optimum float64 `json:"closed_tour_optimum_rounded_distances"`
		}
	}
	Small []struct {
		Name   string
		Coords [][2]float64
		Key    struct {
			Closed struct{ Length float64 }
			Open   struct{ Length float64 } `json:"open_from_point0"`
		}
	} `json:"small_exact_true_euclid"`
}

func readPublished(t *testing.T) (p published) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/tsplib_route.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

func asPoints(coords [][2]float64) []plane.Point {
	points := make([]plane.Point, len(coords))
	for i, c := range coords {
		points[i] = plane.Point{X: c[0], Y: c[1]}
	}
	return points
}

// Twelve instances of G. Reinelt, TSPLIB – A Traveling Salesman Problem Library,
// ORSA Journal on Computing 3 (1991), with their published optima; distances
// rounded to whole numbers as TSPLIB has it. The optima of rat99 and kroB100 are
// from memory.
func TestToursBesidePublishedOptima(t *testing.T) {
	sum := 0.0
	all := readPublished(t).Tsplib
	for _, c := range all {
		points := asPoints(c.Coords)
		tour, length := tour(points), 0.0
		for i, stop := range tour {
			length += math.Round(points[stop].To(points[tour[(i+1)%len(tour)]]))
		}
		excess := length/c.Key.Optimum - 1
		t.Logf("%-8s %3d points: %.2f %% above the optimum", c.Name, len(points), 100*excess)
		if excess < 0 || excess > 0.03 {
			t.Errorf("%s: %v, published optimum %v", c.Name, length, c.Key.Optimum)
		}
		sum += excess
	}
	mean := sum / float64(len(all))
	t.Logf("mean of %d: %.2f %% above the optimum", len(all), 100*mean)
	if len(all) < 12 || mean > 0.015 {
		t.Errorf("mean %.4f over %d instances", mean, len(all))
	}
}

// Small TSPLIB instances with exact walks by dynamic programming, kept with the
// published tours.
func TestWalksBesideExactOnes(t *testing.T) {
	all := readPublished(t).Small
	if len(all) == 0 {
		t.Fatal("no instances")
	}
	for _, c := range all {
		points := asPoints(c.Coords)
		if c.Key.Open.Length > 0 {
			got := Walk(points[0], points, Order(points[0], points))
			if got < c.Key.Open.Length-1e-9 || got > c.Key.Open.Length*1.03 {
				t.Errorf("%s: open %v, exact %v", c.Name, got, c.Key.Open.Length)
			}
		}
		if c.Key.Closed.Length > 0 {
			got := closedWalk(points, tour(points))
			if got < c.Key.Closed.Length-1e-9 || got > c.Key.Closed.Length*1.03 {
				t.Errorf("%s: closed %v, exact %v", c.Name, got, c.Key.Closed.Length)
			}
		}
	}
}

func TestByRowsGoesToAndFro(t *testing.T) {
	points := []plane.Point{{X: 2, Y: 3}, {X: -2, Y: 0.1}, {X: 2, Y: 0}, {X: 0, Y: 0.05}, {X: -2, Y: 3.1}, {X: 0, Y: 6}}
	if got, want := ByRows(plane.Point{X: -5}, points, 0.15), []int{1, 3, 2, 0, 4, 5}; !slices.Equal(got, want) {
		t.Errorf("from stage right %v, want %v", got, want)
	}
	if got, want := ByRows(plane.Point{X: 5}, points, 0.15), []int{2, 3, 1, 4, 0, 5}; !slices.Equal(got, want) {
		t.Errorf("from stage left %v, want %v", got, want)
	}
	if got := ByRows(plane.Point{}, nil, 0.15); len(got) != 0 {
		t.Errorf("no points: %v", got)
	}
}

func BenchmarkOrder(b *testing.B) {
	for _, n := range []int{30, 100, 300, 1000} {
		points := scattered(n, 7)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Order(plane.Point{}, points)
			}
		})
	}
}

// tour is Order for a walk that comes back to its beginning, which is points[0].
func tour(points []plane.Point) []int {
	n := len(points)
	if n < 4 {
		return inputOrder(n)
	}
	order := newSearch(points, nil).run()
	if !(closedWalk(points, order) <= closedWalk(points, inputOrder(n))) {
		return inputOrder(n)
	}
	return order
}

func closedWalk(points []plane.Point, order []int) float64 {
	return Walk(points[order[len(order)-1]], points, order)
}
