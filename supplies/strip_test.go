package supplies

import (
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// near is the tolerance of computed lengths, in metres.
const near = 1e-9

func laid(stock plan.StockID, role plan.Role, paths ...plane.Path) []floor.Line {
	var lines []floor.Line
	for _, p := range paths {
		for _, e := range p.Edges() {
			lines = append(lines, floor.Line{Edge: e, Stock: stock, Role: role})
		}
	}
	return lines
}

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func TestStripsMergeWhatOnePieceOfTapeCovers(t *testing.T) {
	half := plane.Path{Vertices: []plane.Vertex{{Point: pt(1, 0), Bulge: 1}, {Point: pt(-1, 0)}}}
	for name, c := range map[string]struct {
		lines  []floor.Line
		strips int
		metres float64
		joints int
	}{
		"nothing":              {nil, 0, 0, 0},
		"one line":             {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(3, 0))), 1, 3, 0},
		"a joint on the way":   {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(1, 0), pt(3, 0))), 1, 3, 0},
		"the same line twice":  {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(3, 0)), plane.Open(pt(3, 0), pt(0, 0))), 1, 3, 0},
		"overlapping lines":    {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(3, 0)), plane.Open(pt(2, 0), pt(5, 0))), 1, 5, 0},
		"a gap":                {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(1, 0)), plane.Open(pt(2, 0), pt(3, 0))), 2, 2, 0},
		"parallel, 5 cm apart": {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(1, 0)), plane.Open(pt(0, 0.05), pt(1, 0.05))), 2, 2, 0},
		"a rectangle":          {laid("r", plan.Outline, plane.Rectangle(pt(0, 0), pt(2, 1))), 4, 6, 4},
		"a corner":             {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(2, 0), pt(2, 1))), 2, 3, 1},
		"a tee":                {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(2, 0)), plane.Open(pt(1, 0), pt(1, 1))), 2, 3, 1},
		"a crossing":           {laid("r", plan.Outline, plane.Open(pt(0, 0), pt(2, 0)), plane.Open(pt(1, -1), pt(1, 1))), 2, 4, 0},
		"two boxes side by side": {laid("r", plan.Outline,
			plane.Rectangle(pt(0, 0), pt(1, 1)), plane.Rectangle(pt(1, 0), pt(2, 1))), 5, 7, 6},
		"a circle":                 {laid("r", plan.Outline, plane.Circle(pt(3, 4), 2)), 1, 4 * math.Pi, 1},
		"a circle drawn twice":     {laid("r", plan.Outline, plane.Circle(pt(3, 4), 2), plane.Circle(pt(3, 4), 2)), 1, 4 * math.Pi, 1},
		"a half circle":            {laid("r", plan.Outline, half), 1, math.Pi, 0},
		"half and whole":           {laid("r", plan.Outline, half, plane.Circle(pt(0, 0), 1)), 1, 2 * math.Pi, 1},
		"half closed by its chord": {laid("r", plan.Outline, half, plane.Open(pt(-1, 0), pt(1, 0))), 2, math.Pi + 2, 2},
		"no length":                {laid("r", plan.Outline, plane.Open(pt(1, 1), pt(1, 1))), 0, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			strips := Strips(c.lines)
			if len(strips) != c.strips || math.Abs(sum(strips)-c.metres) > near {
				t.Errorf("%d strips of %.6f m, want %d of %.6f", len(strips), sum(strips), c.strips, c.metres)
			}
			if n := joints(strips); n != c.joints {
				t.Errorf("%d joints, want %d", n, c.joints)
			}
		})
	}
}

func TestDashesUnderAWholeLineAreNotLaid(t *testing.T) {
	lines := append(laid("r", plan.Swing, plane.Open(pt(0, 0), pt(5, 0)), plane.Circle(pt(0, 9), 1)),
		laid("r", plan.Outline, plane.Open(pt(1, 0), pt(2, 0)), plane.Circle(pt(0, 9), 1))...)
	dashed := 0.0
	for _, s := range Strips(lines) {
		if s.Dashed {
			dashed += s.Length()
		}
	}
	if math.Abs(dashed-4) > near {
		t.Errorf("%.6f m dashed, want 4", dashed)
	}
}

func TestStripsOfDifferentStocksAreNotMerged(t *testing.T) {
	lines := append(laid("r", plan.Outline, plane.Open(pt(0, 0), pt(1, 0))),
		laid("b", plan.Outline, plane.Open(pt(0, 0), pt(1, 0)))...)
	if strips := Strips(lines); len(strips) != 2 {
		t.Errorf("%d strips, want one of each stock", len(strips))
	}
}

// The union of lines does not depend on how they are cut, turned round, ordered
// or placed.
func TestLengthOfStripsIsThatOfTheUnion(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		var lines []floor.Line
		want := 0.0
		for i := range 6 {
			whole := plane.Edge{A: pt(float64(10*i), 0), B: pt(float64(10*i)+rng.Float64()*8+1, rng.Float64()*5)}
			if i%2 == 1 {
				whole.Bulge = rng.Float64()*2 - 1
			}
			want += whole.Length()
			for range 4 {
				s := rng.Float64()
				e := whole.Part(s*0.9, s*0.9+0.1)
				if rng.IntN(2) == 0 {
					e = e.Reversed()
				}
				lines = append(lines, floor.Line{Edge: e, Role: plan.Outline})
			}
			lines = append(lines, floor.Line{Edge: whole.Part(0, 0.6), Role: plan.Outline},
				floor.Line{Edge: whole.Part(0.3, 1), Role: plan.Outline})
		}
		rng.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		m := plane.About(pt(rng.Float64(), 3), rng.Float64()*6)
		for i := range lines {
			lines[i].Edge = lines[i].Moved(m)
		}
		strips := Strips(lines)
		if math.Abs(sum(strips)-want) > 1e-6 || len(strips) != 6 {
			t.Fatalf("%d strips of %.9f m, want 6 of %.9f", len(strips), sum(strips), want)
		}
	}
}

// plane.UnionLength counts the same union in another way.
func TestLengthOfStripsAgreesWithTheUnionOfThePlane(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range 50 {
		var lines []floor.Line
		var edges []plane.Edge
		for range 60 {
			// On a coarse grid much coincides, crosses and touches.
			a := pt(float64(rng.IntN(5)), float64(rng.IntN(5)))
			e := plane.Edge{A: a, B: a.Add(pt(float64(rng.IntN(5)-2), float64(rng.IntN(5)-2)))}
			if rng.IntN(4) == 0 {
				e.Bulge = float64(rng.IntN(3) - 1)
			}
			edges = append(edges, e)
			lines = append(lines, floor.Line{Edge: e, Role: plan.Outline})
		}
		got, want := sum(Strips(lines)), plane.UnionLength(edges, same)
		if math.Abs(got-want) > 1e-6 {
			t.Fatalf("strips are %.9f m, the union is %.9f m", got, want)
		}
	}
}

func sum(strips []Strip) float64 {
	n := 0.0
	for _, s := range strips {
		n += s.Length()
	}
	return n
}

func BenchmarkStripsOfTenThousandLines(b *testing.B) {
	rng := rand.New(rand.NewPCG(3, 4))
	lines := make([]floor.Line, 10_000)
	for i := range lines {
		a := pt(rng.Float64()*20, rng.Float64()*15)
		lines[i] = floor.Line{Edge: plane.Edge{A: a, B: a.Add(plane.Polar(rng.Float64()*2, rng.Float64()*6))}, Role: plan.Outline}
	}
	for b.Loop() {
		joints(Strips(lines))
	}
}
