package plane

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

// blob returns a closed path round a centre, counter-clockwise, with straight and
// circular edges too shallow to cross one another.
func blob(r *rand.Rand, centre Point, reach float64) Path {
	n := 4 + r.IntN(6)
	p := Path{Closed: true}
	for i := range n {
		v := Vertex{Point: centre.Add(Polar(reach*(0.5+0.5*r.Float64()), (float64(i)+0.6*r.Float64())*2*math.Pi/float64(n)))}
		if r.IntN(2) == 0 {
			v.Bulge = (r.Float64() - 0.3) * 0.3
		}
		p.Vertices = append(p.Vertices, v)
	}
	return p
}

func TestAreasOfKnownShapes(t *testing.T) {
	// A D of radius 2, and the same with its bow hollow in a square.
	half := Path{Closed: true, Vertices: []Vertex{{Point{0, -2}, 1}, {Point{0, 2}, 0}}}
	hollow := Path{Closed: true, Vertices: []Vertex{{Point{0, 0}, 0}, {Point{4, 0}, -1}, {Point{4, 4}, 0}, {Point{0, 4}, 0}}}
	tests := map[string]struct {
		path     Path
		area     float64
		centroid Point
	}{
		"rectangle": {Rectangle(Point{1, 2}, Point{4, 4}), 6, Point{2.5, 3}},
		"circle":    {Circle(Point{-3, 5}, 2), 4 * math.Pi, Point{-3, 5}},
		// Centroid of a half disc: 4r/3π from its centre (any table of sections).
		"half disc": {half, 2 * math.Pi, Point{8 / (3 * math.Pi), 0}},
		"square less half disc": {hollow, 16 - 2*math.Pi,
			Point{(16*2 - 2*math.Pi*(4-8/(3*math.Pi))) / (16 - 2*math.Pi), 2}},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			if got := test.path.SignedArea(); !near(got, test.area, 1e-12) {
				t.Errorf("signed area %v, want %v", got, test.area)
			}
			back := test.path.Reversed()
			if got := back.SignedArea(); !near(got, -test.area, 1e-12) {
				t.Errorf("signed area reversed %v, want %v", got, -test.area)
			}
			for _, p := range []Path{test.path, back} {
				if got, ok := p.Centroid(); !ok || got.To(test.centroid) > 1e-12 {
					t.Errorf("centroid %v, want %v", got, test.centroid)
				}
			}
		})
	}
	for name, p := range map[string]Path{"nothing": {}, "open": Open(Point{0, 0}, Point{1, 0}, Point{1, 1}), "flat": Closed(Point{0, 0}, Point{1, 0})} {
		if _, ok := p.Centroid(); ok || p.Area() != 0 {
			t.Errorf("%s has a centroid or an area %v", name, p.Area())
		}
	}
}

func TestAreaLikeFlattened(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 21))
		p := blob(r, Point{r.NormFloat64() * 50, r.NormFloat64() * 50}, 4)
		flat := Closed(p.Flatten(1e-7)...)
		if !near(flat.SignedArea(), p.SignedArea(), 1e-6) {
			t.Errorf("seed %d: area %v, flattened %v", seed, p.SignedArea(), flat.SignedArea())
		}
		c, _ := p.Centroid()
		if d, _ := flat.Centroid(); c.To(d) > 1e-6 {
			t.Errorf("seed %d: centroid %v, flattened %v", seed, c, d)
		}
	}
}

// The formulas of shallow and of other segments have to agree where they part.
func TestSegmentsAreSmooth(t *testing.T) {
	of := func(half float64) (float64, float64) {
		return Edge{Point{0, 0}, Point{1, 0}, math.Tan(half / 2)}.segment()
	}
	a1, l1 := of(0.02 - 1e-9)
	a2, l2 := of(0.02 + 1e-9)
	if math.Abs(a1-a2) > 1e-9 || math.Abs(l1-l2) > 1e-10 {
		t.Errorf("area %v and %v, lever %v and %v", a1, a2, l1, l2)
	}
}

func TestContains(t *testing.T) {
	hall := Path{Closed: true, Vertices: []Vertex{
		{Point{0, 0}, 0}, {Point{10, 0}, 0.5}, {Point{10, 6}, 0}, {Point{0, 6}, 0.3}}}
	tests := []struct {
		name string
		q    Point
		want bool
	}{
		{"middle", Point{5, 3}, true},
		{"in the bow", Point{11, 3}, true},
		{"on the bow's chord", Point{10, 3}, true},
		{"beyond the bow", Point{11.6, 3}, false},
		{"on a corner", Point{0, 0}, true},
		{"on the wall", Point{5, 0}, true},
		{"a little outside the wall", Point{5, -0.0005}, true},
		{"outside the wall", Point{5, -0.002}, false},
		{"level with a corner", Point{-3, 6}, false},
		{"in the other bow", Point{-0.5, 3}, true},
		{"level with both walls' ends", Point{20, 0}, false},
	}
	for _, test := range tests {
		for _, p := range []Path{hall, hall.Reversed()} {
			if got := p.Contains(test.q, 0.001); got != test.want {
				t.Errorf("%s: %v inside is %v", test.name, test.q, got)
			}
		}
	}
	if open := (Path{Vertices: hall.Vertices}); open.Contains(Point{5, 3}, 0.001) || !open.Contains(Point{5, 0}, 0.001) {
		t.Error("an open path has an inside, or no edge")
	}
}

func TestContainsLikeFlattened(t *testing.T) {
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 22))
		p := blob(r, Point{0, 0}, 4)
		flat := Closed(p.Flatten(1e-5)...)
		for range 50 {
			q := Point{math.Round(r.NormFloat64()*8) / 2, r.NormFloat64() * 3}
			if r.IntN(4) == 0 {
				q.Y = p.Vertices[r.IntN(len(p.Vertices))].Y
			}
			onEdge := slices.ContainsFunc(p.Edges(), func(e Edge) bool { return e.Distance(q) < 1e-4 })
			if got, want := p.Contains(q, 0), flat.Contains(q, 0); got != want && !onEdge {
				t.Errorf("seed %d: %v inside is %v, flattened %v", seed, q, got, want)
			}
		}
	}
}

func TestOverlap(t *testing.T) {
	square := Rectangle(Point{0, 0}, Point{2, 2})
	disc := Circle(Point{0, 0}, 1)
	tests := map[string]struct {
		a, b Path
		want float64
	}{
		// Two unit discs one apart: 2π/3 − √3/2 (circle-circle lens).
		"a lens":                {disc, Circle(Point{1, 0}, 1), 2*math.Pi/3 - math.Sqrt(3)/2},
		"a quarter disc":        {disc, square, math.Pi / 4},
		"the same":              {square, square, 4},
		"the same disc, turned": {disc, disc.Moved(Motion{Turn: 1}), math.Pi},
		"one inside":            {square, Rectangle(Point{0.5, 0.5}, Point{1, 1}), 0.25},
		"inside, sharing walls": {square, Rectangle(Point{0, 0}, Point{1, 2}), 2},
		"side by side":          {square, Rectangle(Point{2, 0}, Point{3, 2}), 0},
		"only a corner":         {square, Rectangle(Point{2, 2}, Point{3, 3}), 0},
		"apart":                 {square, Rectangle(Point{5, 5}, Point{6, 6}), 0},
		"open":                  {square, Open(Point{0, 0}, Point{2, 2}, Point{2, 0}), 0},
		"nothing":               {square, Path{}, 0},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			for _, a := range []Path{test.a, test.a.Reversed()} {
				for _, got := range []float64{Overlap(a, test.b), Overlap(test.b, a)} {
					if math.Abs(got-test.want) > 1e-6 {
						t.Errorf("overlap %v, want %v", got, test.want)
					}
				}
			}
		})
	}
}

func TestOverlapAddsUp(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 23))
		a := blob(r, Point{0, 0}, 3)
		x := r.Float64()*4 - 2
		left := Rectangle(Point{-9, -9}, Point{x, 9})
		right := Rectangle(Point{x, -9}, Point{9, 9})
		if got := Overlap(a, left) + Overlap(a, right); math.Abs(got-a.Area()) > 1e-5 {
			t.Errorf("seed %d: the halves are %v, the whole %v", seed, got, a.Area())
		}
		b := blob(r, Point{r.Float64() * 4, r.Float64() * 4}, 3)
		m := Motion{r.Float64() * 7, Point{r.NormFloat64() * 30, r.NormFloat64() * 30}}
		if got, want := Overlap(a.Moved(m), b.Moved(m)), Overlap(a, b); math.Abs(got-want) > 1e-5 {
			t.Errorf("seed %d: overlap %v, moved %v", seed, want, got)
		}
	}
}

func TestDistanceBetween(t *testing.T) {
	disc := Circle(Point{0, 0}, 1)
	tests := map[string]struct {
		a, b Path
		want float64
	}{
		"discs":               {disc, Circle(Point{5, 0}, 2), 2},
		"disc and wall":       {disc, Open(Point{-9, 3}, Point{9, 3}), 2},
		"disc and corner":     {disc, Rectangle(Point{3, 4}, Point{9, 9}), 4},
		"crossing":            {disc, Open(Point{-9, 0}, Point{9, 0}), 0},
		"inside":              {Circle(Point{0, 0}, 5), disc, 0},
		"inside an open ring": {Path{Vertices: append(Circle(Point{0, 0}, 5).Vertices, Vertex{Point: Point{5, 0}})}, disc, 4},
		"a point":             {Open(Point{3, 0}), disc, 2},
		"nothing":             {Path{}, disc, math.Inf(1)},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			for _, got := range []float64{distanceBetween(test.a, test.b), distanceBetween(test.b, test.a)} {
				if got != test.want && !(math.Abs(got-test.want) <= 1e-12) {
					t.Errorf("distance %v, want %v", got, test.want)
				}
			}
		})
	}
}

func TestDistanceLikeSampling(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 24))
		a, b := blob(r, Point{0, 0}, 2), blob(r, Point{5 + r.Float64()*4, r.NormFloat64()}, 2)
		best := math.Inf(1)
		for _, p := range a.Flatten(1e-5) {
			for _, e := range b.Edges() {
				best = min(best, e.Distance(p))
			}
		}
		// Points of one outline bound the distance from above; that a step of nearly
		// as much brings no overlap bounds it from below.
		got := distanceBetween(a, b)
		if got > best+1e-9 {
			t.Errorf("seed %d: distance %v, sampled %v", seed, got, best)
		}
		step := b.Moved(Motion{Shift: Point{-got * 0.999, 0}})
		if got > 0 && Overlap(a, step) > 1e-6 {
			t.Errorf("seed %d: %v apart, and yet they overlap after a step of less", seed, got)
		}
	}
}

func TestClip(t *testing.T) {
	room := Rectangle(Point{0, 0}, Point{4, 3})
	tests := map[string]struct {
		edge            Edge
		inside, outside int
		length          float64
	}{
		"right through":       {line(-1, 1, 5, 1), 1, 2, 4},
		"inside":              {line(1, 1, 2, 2), 1, 0, math.Sqrt2},
		"outside":             {line(5, 0, 5, 3), 0, 1, 0},
		"along the wall":      {line(-1, 0, 3, 0), 1, 1, 3},
		"touching a corner":   {line(3, -1, 5, 1), 0, 1, 0},
		"an arc out and back": {Edge{Point{1, 1}, Point{3, 1}, 1.5}, 2, 1, 0},
		"no length":           {line(1, 1, 1, 1), 0, 0, 0},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			inside, outside := Clip(test.edge, room, 1e-6)
			if len(inside) != test.inside || len(outside) != test.outside {
				t.Errorf("inside %v, outside %v", inside, outside)
			}
			if got := total(inside); test.length > 0 && !near(got, test.length, 1e-9) {
				t.Errorf("%v m inside, want %v", got, test.length)
			}
			if got := total(inside) + total(outside); !near(got, test.edge.Length(), 1e-9) {
				t.Errorf("the pieces are %v m, the edge %v", got, test.edge.Length())
			}
		})
	}
}

func TestCrossesItself(t *testing.T) {
	tests := map[string]struct {
		path Path
		at   Point
		want bool
	}{
		"rectangle":     {Rectangle(Point{0, 0}, Point{4, 3}), Point{}, false},
		"circle":        {Circle(Point{0, 0}, 1), Point{}, false},
		"bow tie":       {Closed(Point{0, 0}, Point{2, 2}, Point{2, 0}, Point{0, 2}), Point{1, 1}, true},
		"open loop":     {Open(Point{0, 0}, Point{4, 0}, Point{4, 2}, Point{2, 2}, Point{2, -1}), Point{2, 0}, true},
		"fold":          {Open(Point{0, 0}, Point{4, 0}, Point{1, 0}), Point{1, 0}, true},
		"touch":         {Closed(Point{0, 0}, Point{4, 0}, Point{4, 4}, Point{2, 0}, Point{0, 4}), Point{2, 0}, true},
		"arc over line": {Path{Closed: true, Vertices: []Vertex{{Point{0, 0}, 0}, {Point{4, 0}, 0}, {Point{4, 2}, -1.5}, {Point{0, 2}, 0}}}, Point{}, true},
		"short steps":   {Open(Point{0, 0}, Point{1e-4, 0}, Point{2e-4, 1e-5}, Point{3e-4, 0}), Point{}, false},
		"doubled point": {Closed(Point{0, 0}, Point{4, 0}, Point{4, 0}, Point{4, 3}), Point{}, false},
		"nothing":       {Path{}, Point{}, false},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			at, ok := test.path.CrossesItself(1e-3)
			if ok != test.want || test.at != (Point{}) && at.To(test.at) > 1e-9 {
				t.Errorf("crosses itself at %v: %v, want %v: %v", at, ok, test.at, test.want)
			}
		})
	}
}

func TestReversedTwiceIsTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 25))
	for _, closed := range []bool{true, false} {
		p := blob(r, Point{0, 0}, 2)
		p.Closed = closed
		if got := p.Reversed().Reversed(); !reflect.DeepEqual(got, p) {
			t.Errorf("reversed twice %v, want %v", got, p)
		}
		if got := p.Reversed().Length(); !near(got, p.Length(), 1e-12) {
			t.Errorf("length reversed %v, want %v", got, p.Length())
		}
	}
}

func TestIntersect(t *testing.T) {
	arc := Edge{Point{1, 0}, Point{-1, 0}, 1}
	tests := map[string]struct {
		e, f Edge
		want []Point
	}{
		"cross":               {line(-1, 0, 1, 0), line(0, -1, 0, 1), []Point{{0, 0}}},
		"apart":               {line(-1, 0, 1, 0), line(0, 1, 0, 2), nil},
		"T":                   {line(-1, 0, 1, 0), line(0, 0.0005, 0, 1), []Point{{0, 0.0005}}},
		"stretch":             {line(0, 0, 4, 0), line(3, 0, 1, 0), []Point{{1, 0}, {3, 0}}},
		"end to end":          {line(0, 0, 4, 0), line(4, 0, 6, 0), []Point{{4, 0}}},
		"line through arc":    {line(-2, 0.6, 2, 0.6), arc, []Point{{-0.8, 0.6}, {0.8, 0.6}}},
		"line touches arc":    {line(-2, 1, 2, 1), arc, []Point{{0, 1}}},
		"line misses by less": {line(-2, 1.0005, 2, 1.0005), arc, []Point{{0, 1.0005}}},
		"line dips a little":  {line(-2, 1-1e-5, 2, 1-1e-5), arc, []Point{{0, 1 - 1e-5}}},
		"arcs":                {arc, Edge{Point{2, 0}, Point{0, 0}, 1}, []Point{{0.5, math.Sqrt(3) / 2}}},
		"arc on its circle": {arc, ArcOf(Point{0, 0}, 1, math.Pi/2, math.Pi)[0],
			[]Point{{0, 1}, {-1, 0}}},
		"round one centre": {arc, Edge{Point{2, 0}, Point{-2, 0}, 1}, nil},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			got := Intersect(test.e, test.f, 1e-3)
			if len(got) != len(test.want) {
				t.Fatalf("meet at %v, want %v", got, test.want)
			}
			for i, p := range got {
				if p.To(test.want[i]) > 1e-6 {
					t.Errorf("meet at %v, want %v", got, test.want)
				}
			}
		})
	}
}

// distanceBetween returns the smallest distance between two paths in metres. A
// closed path counts with all that it encloses: where one path is inside the
// other, or they meet, it is zero. It is infinite when one has no vertex.
func distanceBetween(a, b Path) float64 {
	if len(a.Vertices) == 0 || len(b.Vertices) == 0 {
		return math.Inf(1)
	}
	if a.Contains(b.Vertices[0].Point, 0) || b.Contains(a.Vertices[0].Point, 0) {
		return 0
	}
	best := math.Inf(1)
	for _, e := range edgesOrPoint(a) {
		for _, f := range edgesOrPoint(b) {
			best = min(best, e.DistanceTo(f))
		}
	}
	return best
}

// edgesOrPoint returns the edges of a path, or its only vertex as one.
func edgesOrPoint(p Path) []Edge {
	if len(p.Vertices) == 1 {
		v := p.Vertices[0].Point
		return []Edge{{A: v, B: v}}
	}
	return p.Edges()
}
