package match

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// near is the tolerance of sums of costs.
const near = 1e-6

// weigh returns the cost of a pairing and how many rows have a column; ok is
// false when two rows share one.
func weigh(cost [][]float64, cols []int) (sum float64, pairs int, ok bool) {
	taken := map[int]bool{}
	for i, j := range cols {
		if j == None {
			continue
		}
		if taken[j] {
			return 0, 0, false
		}
		taken[j] = true
		sum += cost[i][j]
		pairs++
	}
	return sum, pairs, true
}

func TestLeast(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for name, c := range map[string]struct {
		cost [][]float64
		want []int
	}{
		"nothing":           {nil, nil},
		"no columns":        {[][]float64{{}, {}}, []int{None, None}},
		"one":               {[][]float64{{7}}, []int{0}},
		"swapped":           {[][]float64{{5, 1}, {1, 5}}, []int{1, 0}},
		"the greedy loses":  {[][]float64{{1, 2}, {2, 100}}, []int{1, 0}},
		"more columns":      {[][]float64{{5, 9, 1}}, []int{2}},
		"more rows":         {[][]float64{{5}, {1}, {9}}, []int{None, 0, None}},
		"one is forbidden":  {[][]float64{{inf, 2}, {1, 1}}, []int{1, 0}},
		"all are forbidden": {[][]float64{{inf, nan}}, []int{None}},
		"nothing is left":   {[][]float64{{1, inf}, {2, inf}}, []int{0, None}},
		"below zero":        {[][]float64{{-5, -1}, {-4, -3}}, []int{0, 1}},
	} {
		if got := Least(c.cost); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// reference.json is made by the script beside it.
func TestLeastAgreesWithTheReference(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("testdata", "reference.json"))
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Cases []struct {
			Cost  [][]float64
			Least float64
			Pairs int
		}
	}
	if err := json.Unmarshal(raw, &ref); err != nil || len(ref.Cases) == 0 {
		t.Fatalf("%d cases, %v", len(ref.Cases), err)
	}
	for i, c := range ref.Cases {
		sum, pairs, ok := weigh(c.Cost, Least(c.Cost))
		if !ok || pairs != c.Pairs || math.Abs(sum-c.Least) > near {
			t.Errorf("case %d: %.6f for %d pairs, want %.6f for %d", i, sum, pairs, c.Least, c.Pairs)
		}
	}
}

// naive tries every pairing, most pairs first and then the least cost.
func naive(cost [][]float64, row int, taken []bool) (sum float64, pairs int) {
	if row == len(cost) {
		return 0, 0
	}
	sum, pairs = naive(cost, row+1, taken)
	for j, c := range cost[row] {
		if taken[j] || forbidden(c) {
			continue
		}
		taken[j] = true
		s, n := naive(cost, row+1, taken)
		taken[j] = false
		if s, n = s+c, n+1; n > pairs || n == pairs && s < sum {
			sum, pairs = s, n
		}
	}
	return sum, pairs
}

func TestLeastAgreesWithTryingEverything(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		rows, cols := 1+rng.IntN(5), 1+rng.IntN(5)
		cost := make([][]float64, rows)
		for i := range cost {
			cost[i] = make([]float64, cols)
			for j := range cost[i] {
				cost[i][j] = math.Round(rng.Float64()*40) - 10
				if rng.IntN(4) == 0 {
					cost[i][j] = math.Inf(1)
				}
			}
		}
		wantSum, wantPairs := naive(cost, 0, make([]bool, cols))
		sum, pairs, ok := weigh(cost, Least(cost))
		if !ok || pairs != wantPairs || math.Abs(sum-wantSum) > near {
			t.Fatalf("%v: %g for %d pairs, want %g for %d", cost, sum, pairs, wantSum, wantPairs)
		}
	}
}
