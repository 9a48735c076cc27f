package placement

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"syscall"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// reference is a case of testdata/placement with what an exhaustive search by
// another program found (FFT over all shifts at every half degree, refined with
// GEOS).
type reference struct {
	Seed      int
	Room      string
	Outline   [][2]float64
	Obstacles [][][2]float64
	Clears    [][][2]float64
	Elements  []struct {
		ID        string
		Essential bool
		Weight    float64
		Closed    bool
		Points    [][2]float64
	}
	Angles string
	Step   float64
	Fronts []int
	Area   float64
	Best   struct {
		Score float64
		Turn  float64 `json:"turn_rad"`
		X     float64 `json:"x_m"`
		Y     float64 `json:"y_m"`
	}
}

func (r reference) name() string {
	return fmt.Sprintf("%d %s, %d elements", r.Seed, r.Room, len(r.Elements))
}

func references(tb testing.TB) []reference {
	tb.Helper()
	b, err := os.ReadFile("../../../testdata/placement/cases.json")
	if err != nil {
		tb.Fatal(err)
	}
	var all struct{ Cases []reference }
	if err := json.Unmarshal(b, &all); err != nil {
		tb.Fatal(err)
	}
	return all.Cases
}

func closed(points [][2]float64) plane.Path {
	p := open(points)
	p.Closed = true
	return p
}

func open(points [][2]float64) plane.Path {
	var out []plane.Point
	for _, p := range points {
		out = append(out, plane.Point{X: p[0], Y: p[1]})
	}
	return plane.Open(out...)
}

// made is the plan and the floor of a case.
func (r reference) made() (*plan.Plan, *floor.Floor) {
	f := &floor.Floor{ID: "room", Kind: floor.Room, Outline: closed(r.Outline), Wishes: floor.Wishes{Area: r.Area}}
	switch r.Angles {
	case "parallel":
		f.Wishes.Angles = floor.ToWalls
	case "steps":
		f.Wishes.Angles, f.Wishes.Step = floor.InSteps, r.Step
	}
	for _, s := range Sides(f.Outline) {
		for _, w := range r.Fronts {
			if s.Walls[0] == w {
				f.Fronts = append(f.Fronts, floor.Front{ID: fmt.Sprint(w), Toward: s.Toward})
			}
		}
	}
	for i, o := range r.Obstacles {
		f.Obstacles = append(f.Obstacles, floor.Obstacle{ID: fmt.Sprint(i), Name: "Column", Shape: closed(o)})
	}
	for i, k := range r.Clears {
		f.KeepClears = append(f.KeepClears, floor.KeepClear{ID: fmt.Sprint(i), Name: "Exit", Shape: closed(k)})
	}
	pl := &plan.Plan{}
	for _, e := range r.Elements {
		el := plan.Element{ID: plan.ElementID(e.ID), Name: e.ID, Kind: plan.Wall, Use: plan.Useful, Weight: e.Weight}
		if e.Essential {
			el.Use = plan.Essential
		}
		path := open(e.Points)
		if e.Closed {
			el.Kind, path.Closed = plan.Platform, true
		}
		el.Paths = []plan.Path{{Role: plan.Outline, Path: path}}
		pl.Elements = append(pl.Elements, el)
	}
	return pl, f
}

func mustCase(tb testing.TB, pl *plan.Plan, f *floor.Floor) *Case {
	tb.Helper()
	c, err := New(pl, f)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

func TestSearchComesUpToTheExhaustiveOne(t *testing.T) {
	for _, r := range references(t) {
		t.Run(r.name(), func(t *testing.T) {
			pl, f := r.made()
			c := mustCase(t, pl, f)
			a := c.Search(context.Background(), Options{Proposals: 1})
			if len(a.Proposals) == 0 {
				t.Fatal("nothing proposed")
			}
			best := a.Proposals[0]
			t.Logf("score %.5f, bound %.5f, exhaustive %.5f, %d boxes, %d looks, proven %v", best.Score, a.Bound, r.Best.Score, a.Boxes, a.Looks, a.Proven)
			if best.Score < r.Best.Score-Gap {
				t.Errorf("score %.5f, the exhaustive search found %.5f", best.Score, r.Best.Score)
			}
			if a.Bound < r.Best.Score-1e-6 {
				t.Errorf("the bound %.5f is below a placement of score %.5f", a.Bound, r.Best.Score)
			}
		})
	}
}

// The exact score of what the other program found is what it says: GEOS clipped it.
func TestScoresAgreeWithGEOS(t *testing.T) {
	for _, r := range references(t) {
		pl, f := r.made()
		k := mustCase(t, pl, f).At(plane.Motion{Turn: r.Best.Turn, Shift: plane.Point{X: r.Best.X, Y: r.Best.Y}})
		if math.Abs(k.Score-r.Best.Score) > 1e-4 {
			t.Errorf("%s: %.7f, GEOS %.7f", r.name(), k.Score, r.Best.Score)
		}
	}
}

// On a machine that does other work too the seconds of processor tell more than those
// of the clock; a search keeps all cores busy.
func BenchmarkSearch(b *testing.B) {
	for _, r := range references(b) {
		b.Run(r.name(), func(b *testing.B) {
			pl, f := r.made()
			before := processor(b)
			var a Answer
			for b.Loop() {
				a = mustCase(b, pl, f).Search(context.Background(), Options{})
			}
			b.ReportMetric((processor(b)-before)/float64(b.N), "processor-s/op")
			b.ReportMetric(a.Bound-a.Proposals[0].Score, "gap")
		})
	}
}

// processor is how many seconds of processor the test has used.
func processor(tb testing.TB) float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		tb.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
