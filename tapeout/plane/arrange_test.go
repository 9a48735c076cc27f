package plane

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

func line(ax, ay, bx, by float64) Edge { return Edge{A: Point{ax, ay}, B: Point{bx, by}} }

func lines(edges ...Edge) []Edge { return edges }

func TestArrange(t *testing.T) {
	circle := Circle(Point{0, 0}, 1).Edges()
	tests := map[string]struct {
		edges        []Edge
		nodes, links int
		length       float64
	}{
		"nothing":        {nil, 0, 0, 0},
		"one line":       {lines(line(0, 0, 3, 4)), 2, 1, 5},
		"a cross":        {lines(line(-1, 0, 1, 0), line(0, -1, 0, 1)), 5, 4, 4},
		"a T":            {lines(line(-1, 0, 1, 0), line(0, 0, 0, 1)), 4, 3, 3},
		"a T just short": {lines(line(-1, 0, 1, 0), line(0, 0.005, 0, 1)), 4, 3, 2.995},
		"a T just over":  {lines(line(-1, 0, 1, 0), line(0, -0.005, 0, 1)), 4, 3, 3.005},
		"a shallow overshoot is one meeting": {
			lines(line(-1, 0, 1, 0), line(-1, 1, 0.2, -0.009)), 4, 3, 3.5678},
		"the same line there and back": {lines(line(0, 0, 2, 1), line(2, 1, 0, 0)), 2, 1, math.Sqrt(5)},
		"a chain of overlaps on a slope": {
			lines(line(0, 0, 2, 1), line(1, 0.5, 3, 1.5), line(2, 1, 6, 3), line(3, 1.5, 2, 1)), 5, 4, 3 * math.Sqrt(5)},
		"one line inside another": {lines(line(0, 0, 10, 0), line(4, 0, 6, 0)), 4, 3, 10},
		"two platforms side by side": {
			append(Rectangle(Point{0, 0}, Point{2, 1}).Edges(), Rectangle(Point{2, 0}, Point{4, 1}).Edges()...), 6, 7, 11},
		"lines through nearly one point": {
			lines(line(-1, 0, 1, 0), line(-1, -1, 1, 1), line(-1, 1.002, 1, -0.998)), 7, 6, 2 + 4*math.Sqrt2},
		"nearly parallel all along": {lines(line(0, 0, 5, 0), line(0, -0.004, 5, 0.004)), 2, 1, 5},
		"nearly parallel in part":   {lines(line(0, 0, 5, 0), line(2, 0.003, 8, -0.002)), 4, 3, 8},
		"two sides of a thin wall":  {lines(line(0, 0, 5, 0), line(0, 0.02, 5, 0.02)), 4, 2, 10},
		"a full circle":             {circle, 2, 2, 2 * math.Pi},
		"a full circle twice, from another seam": {
			slices.Concat(circle, ArcOf(Point{0, 0}, 1, 1, -2*math.Pi)), 4, 4, 2 * math.Pi},
		"circles round one centre": {slices.Concat(circle, Circle(Point{0, 0}, 1.5).Edges()), 4, 4, 5 * math.Pi},
		"circles that cross": {
			slices.Concat(circle, Circle(Point{1, 0}, 1).Edges()), 6, 8, 4 * math.Pi},
		"circles that touch from outside": {
			slices.Concat(ArcOf(Point{0, 0}, 1, 1, 2*math.Pi), ArcOf(Point{3, 0}, 2, 1, 2*math.Pi)), 5, 6, 6 * math.Pi},
		"circles that touch from inside": {
			slices.Concat(ArcOf(Point{0, 0}, 1, 1, 2*math.Pi), ArcOf(Point{-2, 0}, 3, 1, 2*math.Pi)), 5, 6, 8 * math.Pi},
		"a line that touches a circle": {
			slices.Concat(circle, lines(line(-2, 1, 2, 1))), 5, 5, 4 + 2*math.Pi},
		"a rounded corner": {
			slices.Concat(lines(line(0, -3, 0, 0), line(1, 1, 4, 1)), ArcOf(Point{1, 0}, 1, math.Pi, -math.Pi/2)),
			4, 3, 6 + math.Pi/2},
		"a line past the end of a tangent arc": {
			slices.Concat(lines(line(0, -3, 0, 3)), ArcOf(Point{1, 0}, 1, math.Pi, -math.Pi/2)), 4, 3, 6 + math.Pi/2},
		"arcs of one circle that overlap": {
			slices.Concat(ArcOf(Point{0, 0}, 2, 0, 1), ArcOf(Point{0, 0}, 2, 0.5, 1)), 4, 3, 3},
		"a chord and its arc":     {lines(line(0, 0, 2, 0), Edge{Point{0, 0}, Point{2, 0}, 1}), 2, 2, 2 + math.Pi},
		"an arc nearly its chord": {lines(line(0, 0, 2, 0), Edge{Point{0, 0}, Point{2, 0}, 0.005}), 2, 1, 2},
		"a circle in one edge":    {lines(Edge{Point{1, 0}, Point{1, 1e-4}, -4e4}), 1, 1, 2 * math.Pi},
		"a row of short lines": {
			lines(line(0, 0, 0.011, 0), line(0.011, 0, 0.022, 0), line(0.022, 0, 0.033, 0)), 4, 3, 0.033},
		"an arc so shallow that its centre is beyond counting": {
			lines(Edge{Point{0, 0}, Point{10, 0}, 1e-9}, line(5, -1, 5, 1)), 5, 4, 12},
		"a crescent": {
			lines(Edge{Point{0, 0}, Point{8, 0}, 0.5}, Edge{Point{0, 0}, Point{8, 0}, 0.45}), 2, 2,
			10*4*math.Atan(0.5)/2 + 4*math.Atan(0.45)*8*(1+0.45*0.45)/(4*0.45)},
		"no length":           {lines(line(1, 1, 1, 1)), 0, 0, 0},
		"not a number":        {lines(line(0, 0, math.NaN(), 1), Edge{Point{0, 0}, Point{1, 0}, math.Inf(1)}), 0, 0, 0},
		"not on any floor":    {lines(line(0, 0, 1e300, 1)), 0, 0, 0},
		"far from the origin": {lines(line(1e6, 1e6, 1e6+2, 1e6), line(1e6+1, 1e6-1, 1e6+1, 1e6+1)), 5, 4, 4},
	}
	const tol = 0.01
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			a := Arrange(test.edges, tol)
			if len(a.Nodes) != test.nodes || len(a.Links) != test.links {
				t.Errorf("%d nodes and %d links, want %d and %d", len(a.Nodes), len(a.Links), test.nodes, test.links)
			}
			if got := lengthOf(a.Links); math.Abs(got-test.length) > 2*tol*tol+1e-9 {
				t.Errorf("length %v, want %v", got, test.length)
			}
			if got := UnionLength(test.edges, tol); math.Abs(got-test.length) > 2*tol*tol+1e-9 {
				t.Errorf("union length %v, want %v", got, test.length)
			}
			for _, f := range faults(test.edges, a, tol, 3) {
				t.Error(f)
			}
		})
	}
}

func TestSpeck(t *testing.T) {
	speck := lines(line(0, 0, 0.001, 0))
	if a := Arrange(speck, 0.01); len(a.Nodes)+len(a.Links) > 0 {
		t.Errorf("an edge shorter than the tolerance left %v", a)
	}
	if got := UnionLength(speck, 0.01); got != 0.001 {
		t.Errorf("union length %v, want all of it", got)
	}
}

func TestArrangeNamesSources(t *testing.T) {
	a := Arrange(lines(line(0, 0, 2, 0), line(1, 0, 3, 0), line(3, 0, 0, 0)), 1e-3)
	var got [][]int
	for _, l := range a.Links {
		got = append(got, l.Sources)
	}
	if want := [][]int{{0, 2}, {0, 1, 2}, {1, 2}}; !reflect.DeepEqual(got, want) {
		t.Errorf("sources %v, want %v", got, want)
	}
}

func TestArrangeListsALoopTwice(t *testing.T) {
	a := Arrange(lines(Edge{Point{1, 0}, Point{1, 1e-4}, -4e4}), 0.01)
	if got := a.Nodes[0].Links; !reflect.DeepEqual(got, []int{0, 0}) {
		t.Errorf("links of the node %v, want the loop twice", got)
	}
}

// crowded returns edges that meet in every awkward way: on a grid, nearly on it,
// on each other, straight and round.
func crowded(r *rand.Rand, n int, size, step float64) []Edge {
	coordinate := func() float64 {
		v := r.Float64() * size
		switch r.IntN(4) {
		case 0:
			return math.Floor(v/step) * step
		case 1:
			return math.Floor(v/step)*step + (r.Float64()-0.5)*step*0.3
		}
		return v
	}
	var out []Edge
	for range n {
		e := Edge{A: Point{coordinate(), coordinate()}, B: Point{coordinate(), coordinate()}}
		switch r.IntN(4) {
		case 0:
			e.Bulge = r.NormFloat64()
		case 1:
			e.Bulge = 1
		}
		if len(out) > 0 {
			other := out[r.IntN(len(out))]
			switch r.IntN(6) {
			case 0:
				e.A = other.At(r.Float64())
			case 1:
				e = other.Part(r.Float64()/2, 0.5+r.Float64()/2)
			}
		}
		out = append(out, e)
	}
	return out
}

func TestArrangeCrowdedIsSound(t *testing.T) {
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 1))
		tol := []float64{1e-6, 1e-3, 0.01, 0.05}[seed%4]
		edges := crowded(r, 2+r.IntN(10), []float64{0.3, 1, 5}[r.IntN(3)], []float64{0.05, 0.25, 1}[r.IntN(3)])
		for _, f := range faults(edges, Arrange(edges, tol), tol, 3) {
			t.Errorf("seed %d, tolerance %g: %s", seed, tol, f)
		}
	}
}

func TestArrangeAgainChangesNothing(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 2))
		once := Arrange(crowded(r, 12, 5, 0.25), 0.001)
		var edges []Edge
		for _, l := range once.Links {
			edges = append(edges, l.Edge)
		}
		again := Arrange(edges, 0.001)
		if len(again.Nodes) != len(once.Nodes) || len(again.Links) != len(once.Links) {
			t.Errorf("seed %d: %d nodes, %d links; again %d, %d", seed,
				len(once.Nodes), len(once.Links), len(again.Nodes), len(again.Links))
		}
	}
}

func TestArrangeIgnoresOrder(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 3))
		edges := crowded(r, 15, 3, 0.25)
		shuffled := slices.Clone(edges)
		r.Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
		a, b := Arrange(edges, 0.01), Arrange(shuffled, 0.01)
		if got, want := shape(b), shape(a); got != want {
			t.Errorf("seed %d: shuffled gives\n%s\nnot\n%s", seed, got, want)
		}
		if got, want := UnionLength(shuffled, 0.01), UnionLength(edges, 0.01); !near(got, want, 1e-9) {
			t.Errorf("seed %d: union length %v shuffled, %v not", seed, got, want)
		}
	}
}

// shape describes an arrangement without its sources, to a nanometre.
func shape(a Arrangement) string {
	var out []string
	for _, l := range a.Links {
		out = append(out, fmt.Sprintf("%d–%d %.9f %.9f", l.From, l.To, l.At(0.5), l.Length()))
	}
	return fmt.Sprintf("%d nodes %q", len(a.Nodes), out)
}

func TestMotionChangesNoCountOrLength(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 4))
		edges := scattered(r, 30)
		far := []float64{1, 100, 1e6}[seed%3]
		m := Motion{Turn: r.Float64() * 7, Shift: Point{r.Float64() * far, r.Float64() * -far}}
		moved := make([]Edge, len(edges))
		for i, e := range edges {
			moved[i] = e.Moved(m)
		}
		a, b := Arrange(edges, 1e-6), Arrange(moved, 1e-6)
		if len(a.Nodes) != len(b.Nodes) || len(a.Links) != len(b.Links) {
			t.Errorf("seed %d: %d nodes, %d links; moved %d, %d", seed,
				len(a.Nodes), len(a.Links), len(b.Nodes), len(b.Links))
		}
		if x, y := UnionLength(edges, 1e-6), UnionLength(moved, 1e-6); !near(x, y, 1e-9*max(1, far/100)) {
			t.Errorf("seed %d: union length %v, moved %v", seed, x, y)
		}
	}
}

// scattered returns edges in general position, with overlaps and T-joints that are
// exact to rounding.
func scattered(r *rand.Rand, n int) []Edge {
	var out []Edge
	for range n {
		e := Edge{A: Point{r.Float64() * 10, r.Float64() * 10}, B: Point{r.Float64() * 10, r.Float64() * 10}}
		if r.IntN(2) == 0 {
			e.Bulge = r.Float64()*2 - 1
		}
		if len(out) > 0 {
			other := out[r.IntN(len(out))]
			switch r.IntN(5) {
			case 0:
				e.A = other.At(r.Float64())
			case 1:
				e = other.Part(r.Float64()/2, 0.5+r.Float64()/2)
			}
		}
		out = append(out, e)
	}
	return out
}
