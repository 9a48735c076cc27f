package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

type dxfArc struct {
	A, B, Centre [2]float64
	Bulge        float64
	Radius       float64 `json:"radius_m"`
	Start        float64 `json:"start_rad"`
	End          float64 `json:"end_rad"`
}

// The published DXF reference defines the bulge as the tangent of a quarter of the
// arc's angle, negative when the arc runs clockwise from start to end, 1 for a half
// circle; the centres and angles were computed by ezdxf 0.18.1 (arcs.py).
func TestArcsLikeDXF(t *testing.T) {
	for i, c := range readGEOS[dxfArc](t, "arcs.json") {
		e := Edge{Point{c.A[0], c.A[1]}, Point{c.B[0], c.B[1]}, c.Bulge}
		centre, radius, ok := e.Circle()
		if want := (Point{c.Centre[0], c.Centre[1]}); !ok || centre.To(want) > 1e-9 || !near(radius, c.Radius, 1e-12) {
			t.Errorf("case %d: circle %v %v, want %v %v", i, centre, radius, want, c.Radius)
		}
		// ezdxf gives every arc counter-clockwise.
		turn := math.Mod(c.End-c.Start+4*math.Pi, 2*math.Pi)
		if !near(e.Sweep(), math.Copysign(turn, c.Bulge), 1e-9) {
			t.Errorf("case %d: sweep %v, want %v", i, e.Sweep(), math.Copysign(turn, c.Bulge))
		}
		middle := centre.Add(Polar(radius, c.Start+turn/2))
		if e.At(0.5).To(middle) > 1e-9 {
			t.Errorf("case %d: middle %v, want %v", i, e.At(0.5), middle)
		}
	}
}

func TestHalfCircleRunsCounterClockwise(t *testing.T) {
	e := Edge{Point{1, 0}, Point{-1, 0}, 1}
	if got := e.At(0.5); got.To(Point{0, 1}) > 1e-15 {
		t.Errorf("middle %v, want upstage of the centre", got)
	}
	if got := e.Length(); !near(got, math.Pi, 1e-15) {
		t.Errorf("length %v, want π", got)
	}
	if got := e.Tangent(0); got.To(Point{0, 1}) > 1e-15 {
		t.Errorf("sets out towards %v, want upstage", got)
	}
}

// anyEdge returns an edge of any bulge, from nearly straight to nearly a circle.
func anyEdge(r *rand.Rand) Edge {
	at := func() float64 { return r.NormFloat64() * 10 }
	bulge := math.Pow(10, r.Float64()*9-7.5)
	if r.IntN(2) == 0 {
		bulge = -bulge
	}
	return Edge{Point{at(), at()}, Point{at(), at()}, bulge}
}

func TestEdgeFromFirstPrinciples(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 11))
		e := anyEdge(r)
		scale := 1 + e.Length()
		// A chain of short chords is the length, and its steps are the direction.
		const n = 2000
		length, before := 0.0, e.A
		for i := 1; i <= n; i++ {
			p := e.At(float64(i) / n)
			step := p.Sub(before)
			length += step.Len()
			if u, _ := step.Unit(); i%250 == 0 && u.To(e.Tangent((float64(i)-0.5)/n)) > 1e-5 {
				t.Errorf("%+v runs %v at %v, tangent %v", e, u, float64(i)/n, e.Tangent(float64(i)/n))
			}
			if !e.Bounds().Grow(1e-9 * scale).Holds(p) {
				t.Errorf("%+v: %v is outside the bounds %v", e, p, e.Bounds())
			}
			before = p
		}
		if math.Abs(length-e.Length()) > 2e-6*scale {
			t.Errorf("%+v is %v m, its chords %v", e, e.Length(), length)
		}
		s := r.Float64() / 2
		part := e.Part(s, s+0.5)
		if !near(part.Length(), e.Length()/2, 1e-9) || part.At(0.5).To(e.At(s+0.25)) > 1e-9*scale {
			t.Errorf("%+v: half of it from %v is %+v", e, s, part)
		}
		if back := e.Reversed(); back.At(0.3).To(e.At(0.7)) > 1e-9*scale {
			t.Errorf("%+v reversed is at %v, want %v", e, back.At(0.3), e.At(0.7))
		}
	}
}

func TestBoundsTouchTheEdge(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 12))
		e := anyEdge(r)
		box, scale := e.Bounds(), 1+e.Length()
		sampled, _ := BoxOf(e.A)
		for i := range 2001 {
			p := e.At(float64(i) / 2000)
			sampled = sampled.Union(Box{p, p})
		}
		// Between samples the edge departs by less than length²/(8·radius·2000²).
		if box.Min.To(sampled.Min) > 2e-6*scale || box.Max.To(sampled.Max) > 2e-6*scale {
			t.Errorf("%+v: bounds %v, sampled %v", e, box, sampled)
		}
	}
}

func TestNearestLikeSampling(t *testing.T) {
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 13))
		e := anyEdge(r)
		p := Point{r.NormFloat64() * 15, r.NormFloat64() * 15}
		q, at := e.Nearest(p)
		if e.At(at).To(q) > 1e-9 {
			t.Errorf("%+v: nearest %v is not at %v", e, q, at)
		}
		best := math.Inf(1)
		for i := range 2001 {
			best = min(best, e.At(float64(i)/2000).To(p))
		}
		got := e.Distance(p)
		if step := e.Length() / 2000; got > best+1e-9 || got < best-step {
			t.Errorf("%+v: distance of %v is %v, sampled %v", e, p, got, best)
		}
	}
}

func TestFlattenKeepsTolerance(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 14))
		e := anyEdge(r)
		tol := math.Pow(10, -r.Float64()*4)
		points := e.Flatten(tol)
		if points[0] != e.A || points[len(points)-1] != e.B {
			t.Errorf("%+v: flattened from %v to %v", e, points[0], points[len(points)-1])
		}
		n := float64(len(points) - 1)
		for i, p := range points[1:] {
			middle := e.At((float64(i) + 0.5) / n)
			if d := line(points[i].X, points[i].Y, p.X, p.Y).Distance(middle); d > tol*1.001+1e-9 {
				t.Errorf("%+v: chord %d departs by %v, tolerance %v", e, i, d, tol)
			}
		}
	}
}

// What is not finite has no arc to be walked along: its ends are given as they are.
func TestWhatIsNotFiniteIsFlattenedToItsEnds(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, e := range []Edge{
		{Point{inf, 0}, Point{1, 0}, 0.5},
		{Point{0, 0}, Point{1, -inf}, 1},
		{Point{inf, inf}, Point{inf, inf}, 0.5},
		{Point{nan, 0}, Point{1, 0}, 0.5},
		{Point{-math.MaxFloat64, 0}, Point{math.MaxFloat64, 0}, 0.5},
		{Point{0, 0}, Point{1, 0}, inf},
		{Point{0, 0}, Point{1, 0}, nan},
	} {
		if got := e.Flatten(0.001); len(got) != 2 {
			t.Errorf("%+v: %d points, want its ends", e, len(got))
		}
	}
	for _, tol := range []float64{nan, inf, 0, -1, 1e-300} {
		e := Edge{Point{0, 0}, Point{1, 0}, 1}
		got := e.Flatten(tol)
		if got[0] != e.A || got[len(got)-1] != e.B || len(got) > maxChords+1 {
			t.Errorf("tolerance %v: %d points", tol, len(got))
		}
	}
}

func TestThrough(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 15))
		want := anyEdge(r)
		m := want.At(0.1 + 0.8*r.Float64())
		got, ok := Through(want.A, m, want.B)
		if scale := 1 + want.Length(); !ok || got.Distance(m) > 1e-8*scale || math.Abs(got.Length()-want.Length()) > 1e-5*scale {
			t.Errorf("through %v of %+v: %+v", m, want, got)
		}
	}
	straight := []struct {
		name    string
		a, m, b Point
		ok      bool
	}{
		{"between", Point{0, 0}, Point{1, 1}, Point{3, 3}, true},
		{"beyond", Point{0, 0}, Point{4, 4}, Point{3, 3}, false},
		{"on an end", Point{0, 0}, Point{0, 0}, Point{3, 3}, false},
		{"ends on each other", Point{0, 0}, Point{4, 4}, Point{0, 0}, false},
		{"not a number", Point{0, 0}, Point{math.NaN(), 4}, Point{1, 0}, false},
	}
	for _, c := range straight {
		if e, ok := Through(c.a, c.m, c.b); ok != c.ok || ok && !e.Straight() {
			t.Errorf("%s: %+v %v", c.name, e, ok)
		}
	}
}

func TestArcOf(t *testing.T) {
	centre := Point{2, -1}
	for _, sweep := range []float64{0.1, -1, math.Pi, -math.Pi, 4, -5, 2 * math.Pi, -2 * math.Pi, 9} {
		edges := ArcOf(centre, 3, 0.7, sweep)
		turned := max(-2*math.Pi, min(2*math.Pi, sweep))
		if got := total(edges); !near(got, 3*math.Abs(turned), 1e-12) {
			t.Errorf("sweep %v: length %v, want %v", sweep, got, 3*math.Abs(turned))
		}
		for i, e := range edges {
			if math.Abs(e.Sweep()) > math.Pi+1e-12 || e.Sweep()*sweep < 0 {
				t.Errorf("sweep %v: edge %d sweeps %v", sweep, i, e.Sweep())
			}
			want := centre.Add(Polar(3, 0.7+turned*(float64(i)+0.5)/float64(len(edges))))
			if e.At(0.5).To(want) > 1e-12 {
				t.Errorf("sweep %v: edge %d passes %v, want %v", sweep, i, e.At(0.5), want)
			}
			if i > 0 && edges[i-1].B != e.A {
				t.Errorf("sweep %v: edge %d does not start where the one before ends", sweep, i)
			}
		}
		if math.Abs(sweep) >= 2*math.Pi && edges[0].A != edges[1].B {
			t.Errorf("sweep %v does not close", sweep)
		}
	}
	for _, none := range [][]Edge{ArcOf(centre, 0, 0, 1), ArcOf(centre, -1, 0, 1), ArcOf(centre, 1, 0, 0), ArcOf(centre, math.NaN(), 0, 1), ArcOf(centre, 1, 0, math.NaN())} {
		if none != nil {
			t.Errorf("got %v, want no arc", none)
		}
	}
}

func TestMotions(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 16))
		motion := func() Motion {
			return Motion{r.Float64()*10 - 5, Point{r.NormFloat64() * 20, r.NormFloat64() * 20}}
		}
		m, n := motion(), motion()
		p, q := Point{r.NormFloat64(), r.NormFloat64()}, Point{r.NormFloat64(), r.NormFloat64()}
		if got := m.Inverse().Apply(m.Apply(p)); got.To(p) > 1e-12 {
			t.Errorf("%v and back moves %v to %v", m, p, got)
		}
		if got, want := m.Then(n).Apply(p), n.Apply(m.Apply(p)); got.To(want) > 1e-12 {
			t.Errorf("%v then %v moves %v to %v, want %v", m, n, p, got, want)
		}
		if got := m.Apply(p).To(m.Apply(q)); !near(got, p.To(q), 1e-12) {
			t.Errorf("%v changes the distance %v to %v", m, p.To(q), got)
		}
		if got := About(q, m.Turn).Apply(q); got.To(q) > 1e-12 {
			t.Errorf("a turn about %v moves it to %v", q, got)
		}
		e := anyEdge(r)
		if got, want := e.Moved(m).At(0.3), m.Apply(e.At(0.3)); got.To(want) > 1e-9*(1+e.Length()) {
			t.Errorf("%+v moved is at %v, want %v", e, got, want)
		}
	}
	if got := About(Point{1, 1}, math.Pi/2).Apply(Point{2, 1}); got.To(Point{1, 2}) > 1e-15 {
		t.Errorf("a quarter turn counter-clockwise leads to %v", got)
	}
}

func TestBounds(t *testing.T) {
	if _, ok := Bounds(nil); ok {
		t.Error("no edges have bounds")
	}
	b, ok := Bounds(append(Circle(Point{1, 1}, 2).Edges(), line(0, 0, 5, -3)))
	want := Box{Point{-1, -3}, Point{5, 3}}
	if !ok || b.Min.To(want.Min) > 1e-12 || b.Max.To(want.Max) > 1e-12 {
		t.Errorf("bounds %v, want %v", b, want)
	}
}

func TestFinite(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if (Point{v, 0}).Finite() || (Point{0, v}).Finite() {
			t.Errorf("%v counts as a number", v)
		}
	}
	if !(Point{1e300, -1e300}).Finite() {
		t.Error("a large number does not count as one")
	}
}
