package crew

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

// breaks names the first limit that a plan breaks, counting use unit by unit of
// time: slow, and unlike the profile that built the plan.
func breaks(p Problem, plan Plan) string {
	used := map[[2]int]int{}
	for i, j := range p.Jobs {
		at := plan[i]
		if at.End-at.Start != j.Duration || at.Start < j.Earliest && !j.Pinned {
			return fmt.Sprintf("job %d lies at %d to %d", i, at.Start, at.End)
		}
		for _, a := range j.After {
			if at.Start < plan[a].End && !at.Clash {
				return fmt.Sprintf("job %d begins before job %d ends", i, a)
			}
		}
		if len(at.Picked) != max(0, j.Pick.N) {
			return fmt.Sprintf("job %d picked %v, want %d", i, at.Picked, j.Pick.N)
		}
		for t := at.Start; t < at.End; t++ {
			for r, n := range j.Uses {
				used[[2]int{t, r}] += n
			}
			for _, r := range at.Picked {
				used[[2]int{t, r}]++
			}
		}
	}
	for k, n := range used {
		if n > p.Capacity[k[1]] {
			return fmt.Sprintf("resource %d is overbooked at %d", k[1], k[0])
		}
	}
	return ""
}

func TestSolve(t *testing.T) {
	one := []int{1}
	anyOf := func(n int, of ...int) Pick { return Pick{Of: of, N: n} }
	for name, c := range map[string]struct {
		p   Problem
		end int
	}{
		"no jobs":             {Problem{}, 0},
		"one":                 {Problem{Jobs: []Job{{Duration: 5}}}, 5},
		"a chain":             {Problem{Jobs: []Job{{Duration: 5}, {Duration: 2, After: []int{0}}}}, 7},
		"side by side":        {Problem{Jobs: []Job{{Duration: 5}, {Duration: 2}}}, 5},
		"one person for two":  {Problem{one, []Job{{Duration: 5, Uses: one}, {Duration: 2, Uses: one}}}, 7},
		"two people for two":  {Problem{[]int{1, 1}, []Job{{Duration: 5, Pick: anyOf(1, 0, 1)}, {Duration: 2, Pick: anyOf(1, 0, 1)}}}, 5},
		"two of three, twice": {Problem{[]int{1, 1, 1}, []Job{{Duration: 5, Pick: anyOf(2, 0, 1, 2)}, {Duration: 2, Pick: anyOf(2, 0, 1, 2)}}}, 7},
		"the one who is named is left free": {Problem{[]int{1, 1},
			[]Job{{Duration: 4, Pick: anyOf(1, 0, 1)}, {Duration: 4, Uses: []int{1, 0}}}}, 4},
		"not before":          {Problem{Jobs: []Job{{Duration: 1, Earliest: 9}}}, 10},
		"round a pinned job":  {Problem{one, []Job{{Duration: 2, Uses: one}, {Duration: 3, Uses: one, Pinned: true, Start: 1}}}, 6},
		"before a pinned job": {Problem{one, []Job{{Duration: 2, Uses: one}, {Duration: 3, Uses: one, Pinned: true, Start: 2}}}, 5},
		"a milestone":         {Problem{one, []Job{{Duration: 3, Uses: one}, {Uses: one, After: []int{0}}}}, 3},
	} {
		t.Run(name, func(t *testing.T) {
			plan, err := Solve(c.p)
			if err != nil {
				t.Fatal(err)
			}
			if fault := breaks(c.p, plan); fault != "" {
				t.Error(fault)
			}
			if plan.Makespan() != c.end {
				t.Errorf("ends at %d, want %d: %+v", plan.Makespan(), c.end, plan)
			}
		})
	}
}

func TestDueJobsGoFirst(t *testing.T) {
	p := Problem{[]int{1}, []Job{{Duration: 5, Uses: []int{1}}, {Duration: 2, Uses: []int{1}, Due: 2}}}
	plan, err := Solve(p)
	if err != nil || plan[1].End != 2 {
		t.Errorf("%+v, %v: the due job should end at 2", plan, err)
	}
}

func TestPinnedJobsThatClashSaySo(t *testing.T) {
	p := Problem{[]int{1}, []Job{
		{Duration: 5, Uses: []int{1}, Pinned: true}, {Duration: 5, Uses: []int{1}, Pinned: true, Start: 3},
		{Duration: 1, After: []int{1}, Pinned: true, Start: 2},
	}}
	plan, err := Solve(p)
	if err != nil || plan[0].Clash || !plan[1].Clash || !plan[2].Clash {
		t.Errorf("%+v, %v: the second and the third should clash", plan, err)
	}
}

func TestSenselessProblemsAreRefused(t *testing.T) {
	for want, p := range map[string]Problem{
		"wait for each other": {Jobs: []Job{{After: []int{1}}, {After: []int{0}}}},
		"below zero":          {Jobs: []Job{{Duration: -1}}},
		"which there is not":  {Jobs: []Job{{After: []int{7}}}},
		"which has 1":         {Capacity: []int{1}, Jobs: []Job{{Uses: []int{2}}}},
		"uses 2 resources":    {Capacity: []int{1}, Jobs: []Job{{Uses: []int{0, 0}}}},
		"picks 2 of 1":        {Capacity: []int{1}, Jobs: []Job{{Pick: Pick{Of: []int{0}, N: 2}}}},
		"wrongly":             {Capacity: []int{1}, Jobs: []Job{{Pick: Pick{Of: []int{0, 0}, N: 2}}}},
	} {
		if _, err := Solve(p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one with %q", err, want)
		}
	}
}

func TestCycles(t *testing.T) {
	for name, c := range map[string]struct {
		after [][]int
		want  [][]int
	}{
		"none":      {[][]int{nil, {0}, {0, 1}}, nil},
		"two":       {[][]int{{1}, {0}}, [][]int{{0, 1}}},
		"itself":    {[][]int{{0}, nil}, [][]int{{0}}},
		"two rings": {[][]int{{2}, {3}, {0}, {4}, {1}, {0, 1}}, [][]int{{0, 2}, {1, 3, 4}}},
		"outside":   {[][]int{{9}, {-1}}, nil},
	} {
		if got := Cycles(c.after); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: got %v, want %v", name, got, c.want)
		}
	}
}

func TestRandomProblemsKeepEveryLimitAndRepeat(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 20 {
		p := Problem{Capacity: []int{1, 1, 1, 2}}
		for i := range 12 {
			j := Job{Duration: rng.IntN(9), Earliest: rng.IntN(5), Uses: []int{0, 0, 0, rng.IntN(3)}}
			j.Pick = Pick{Of: []int{0, 1, 2}, N: rng.IntN(4)}
			for a := range i {
				if rng.IntN(5) == 0 {
					j.After = append(j.After, a)
				}
			}
			p.Jobs = append(p.Jobs, j)
		}
		plan, err := Solve(p)
		if err != nil {
			t.Fatal(err)
		}
		if fault := breaks(p, plan); fault != "" {
			t.Fatalf("%s in %+v", fault, p)
		}
		if again, _ := Solve(p); !reflect.DeepEqual(plan, again) {
			t.Fatal("the same problem gave two schedules")
		}
	}
}
