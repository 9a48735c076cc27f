package crew

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// library holds 48 instances of PSPLIB j30, one of each parameter set, with
// their optima: R. Kolisch and A. Sprecher, PSPLIB - a project scheduling
// problem library, European Journal of Operational Research 96 (1997).
type library struct {
	Instances []struct {
		Name       string
		Capacities []int
		Jobs       []struct {
			ID, Duration int
			Resources    []int
			Successors   []int
		}
		Optimum int
	}
}

func readLibrary(t testing.TB) library {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", "psplib_j30_48.json"))
	if err != nil {
		t.Fatal(err)
	}
	var lib library
	if err := json.Unmarshal(raw, &lib); err != nil {
		t.Fatal(err)
	}
	return lib
}

func (l library) problem(i int) Problem {
	in := l.Instances[i]
	p := Problem{Capacity: in.Capacities, Jobs: make([]Job, len(in.Jobs))}
	for k, j := range in.Jobs {
		p.Jobs[k].Duration, p.Jobs[k].Uses = j.Duration, j.Resources
		for _, s := range j.Successors {
			p.Jobs[s-1].After = append(p.Jobs[s-1].After, j.ID-1)
		}
	}
	return p
}

// The bound of 2 % is well above what is reached, and far below the 10 % or so
// of a single rule of priority.
func TestPublishedInstancesComeNearTheirOptima(t *testing.T) {
	lib := readLibrary(t)
	if len(lib.Instances) != 48 {
		t.Fatalf("%d instances, want 48", len(lib.Instances))
	}
	sum, proved, worst := 0.0, 0, 0.0
	for i, in := range lib.Instances {
		p := lib.problem(i)
		plan, err := Solve(p)
		if err != nil {
			t.Fatalf("%s: %v", in.Name, err)
		}
		if fault := breaks(p, plan); fault != "" {
			t.Errorf("%s: %s", in.Name, fault)
		}
		end := plan.Makespan()
		if end < in.Optimum {
			t.Errorf("%s: %d is below the optimum %d", in.Name, end, in.Optimum)
		}
		over := float64(end-in.Optimum) / float64(in.Optimum)
		sum += over
		worst = max(worst, over)
		if end == in.Optimum {
			proved++
		}
	}
	mean := 100 * sum / float64(len(lib.Instances))
	t.Logf("mean %.2f %% above the optimum, worst %.2f %%, %d of 48 optimal", mean, 100*worst, proved)
	if mean > 2 {
		t.Errorf("mean %.2f %% above the optimum, want at most 2 %%", mean)
	}
}

func BenchmarkPublishedInstance(b *testing.B) {
	lib := readLibrary(b)
	p := lib.problem(12)
	for b.Loop() {
		if _, err := Solve(p); err != nil {
			b.Fatal(err)
		}
	}
}
