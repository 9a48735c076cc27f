package passage

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"groundrow/tapeout/plane"
)

func at(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func box(x1, y1, x2, y2 float64) plane.Path { return plane.Rectangle(at(x1, y1), at(x2, y2)) }

func solids(paths ...plane.Path) []Solid {
	var out []Solid
	for _, p := range paths {
		out = append(out, Solid{Path: p})
	}
	return out
}

func TestWidthOfAWay(t *testing.T) {
	room := box(0, 0, 10, 6)
	for _, c := range []struct {
		name    string
		outline plane.Path
		solids  []Solid
		a, b    plane.Point
		want    float64
		limit   Limit
	}{
		{"an empty room", room, nil, at(3, 3), at(7, 3), 6, ByStart},
		{"as wide as the end", room, nil, at(3, 3), at(9, 3), 2, ByEnd},
		{"between two screens", room, solids(plane.Open(at(5, 0), at(5, 2.4)), plane.Open(at(5, 6), at(5, 3.3))), at(2, 3), at(8, 3), 0.9, ByGap},
		{"the wider of two ways", room, solids(box(4, 0.5, 6, 4.8)), at(2, 3), at(8, 3), 1.2, ByGap},
		{"screens that overlap", room, solids(plane.Open(at(4, 0), at(4, 4)), plane.Open(at(5, 6), at(5, 2))), at(2, 3), at(8, 3), 1, ByGap},
		{"a screen from wall to wall", room, solids(plane.Open(at(5, 0), at(5, 6))), at(2, 3), at(8, 3), 0, ByGap},
		{"past a column", room, solids(plane.Circle(at(5, 3), 2.5)), at(1, 3), at(9, 3), 0.5, ByGap},
		{"between two columns", plane.Path{}, solids(
			plane.Circle(at(0, 0), 1), plane.Open(at(-9, -5), at(-1, 0)), plane.Circle(at(3, 0), 1.5), plane.Open(at(9, -5), at(4, 0)), plane.Open(at(-9, -5), at(9, -5)),
		), at(1.3, -2), at(1.3, 2), 0.5, ByGap},
		{"out of a ring with a gap", room, solids(plane.Open(at(2, 2), at(4, 2), at(4, 4), at(2, 4), at(2, 2.7))), at(3, 3), at(8, 3), 0.7, ByGap},
		{"inside one ring", room, solids(box(1, 1, 9, 5)), at(2, 3), at(8, 3), 0, StartIn},
		{"it ends in a column", room, solids(box(7, 2, 9, 5)), at(2, 3), at(8, 3), 0, EndIn},
		{"it begins outside", room, nil, at(-2, 3), at(8, 3), 0, StartIn},
		{"from a place to itself", room, nil, at(5, 3), at(5, 3), 6, ByStart},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Of(c.outline, c.solids)
			f := s.Between(c.a, c.b)
			if math.Abs(f.Width-c.want) > 1e-9 || f.Limit != c.limit {
				t.Errorf("width %.9f by %q, want %.9f by %q", f.Width, f.Limit, c.want, c.limit)
			}
			if f.Width > 0 && math.Abs(f.At[0].To(f.At[1])-f.Width) > 1e-9 {
				t.Errorf("the sides %v are %.9f apart, not %.9f", f.At, f.At[0].To(f.At[1]), f.Width)
			}
		})
	}
}

func TestNothingStandsAnywhere(t *testing.T) {
	f := Of(plane.Path{}, nil).Between(at(0, 0), at(9, 0))
	if !math.IsInf(f.Width, 1) || f.Limit != ByNothing {
		t.Errorf("found %+v on a floor without an end", f)
	}
}

func TestWhoseSidesAreNamed(t *testing.T) {
	s := Of(box(0, 0, 10, 6), solids(box(4, 1.5, 6, 3), box(4, 3.8, 6, 6)))
	f := s.Between(at(2, 3), at(8, 3))
	if math.Abs(f.Width-1.5) > 1e-12 || f.Of != [2]int{0, Walls} && f.Of != [2]int{Walls, 0} {
		t.Errorf("found %+v, want 1.5 m between the first solid and the wall", f)
	}
}

// scatter is a seeded room: a rectangle or an L, with columns, round and square, and
// screens, straight and bent, and two places to stand.
func scatter(seed uint64) (outline plane.Path, list []Solid, a, b plane.Point) {
	r := rand.New(rand.NewPCG(seed, 11))
	w, h := 6+3*r.Float64(), 5+2*r.Float64()
	outline = box(0, 0, w, h)
	if seed%2 == 1 {
		outline = plane.Closed(at(0, 0), at(w, 0), at(w, h*0.6), at(w*0.7, h*0.6), at(w*0.7, h), at(0, h))
	}
	a, b = at(0.5, 0.5), at(w-0.5, 0.5)
	for len(list) < 14 {
		p := at(w*r.Float64(), h*r.Float64())
		var shape plane.Path
		switch r.IntN(4) {
		case 0:
			shape = plane.Circle(p, 0.15+0.5*r.Float64())
		case 1:
			shape = plane.Rectangle(at(0, 0), at(0.2+1.5*r.Float64(), 0.2+r.Float64())).Moved(plane.Motion{Turn: 7 * r.Float64(), Shift: p})
		case 2:
			shape = plane.Open(p, p.Add(plane.Polar(0.5+2.5*r.Float64(), 7*r.Float64())))
		case 3:
			shape = plane.Open(p, p.Add(plane.Polar(0.5+2*r.Float64(), 7*r.Float64())))
			shape.Vertices[0].Bulge = 2 * (r.Float64() - 0.5)
		}
		if distant(shape, a) && distant(shape, b) {
			list = append(list, Solid{Path: shape})
		}
	}
	return outline, list, a, b
}

// The way back is as wide, turning the floor changes nothing, and taking something
// away makes no way narrower.
func TestWidthKeepsItsProperties(t *testing.T) {
	for seed := range uint64(30) {
		outline, list, a, b := scatter(seed)
		width := Of(outline, list).Between(a, b).Width
		if back := Of(outline, list).Between(b, a).Width; math.Abs(back-width) > 1e-9 {
			t.Errorf("seed %d: %.9f there and %.9f back", seed, width, back)
		}
		m := plane.Motion{Turn: 1 + float64(seed), Shift: at(3, -4)}
		turned := make([]Solid, len(list))
		for i, s := range list {
			turned[len(list)-1-i] = Solid{Path: s.Path.Moved(m)}
		}
		if again := Of(outline.Moved(m), turned).Between(m.Apply(a), m.Apply(b)).Width; math.Abs(again-width) > 1e-9 {
			t.Errorf("seed %d: %.9f as it lies and %.9f turned", seed, width, again)
		}
		for i := range list {
			fewer := append(append([]Solid(nil), list[:i]...), list[i+1:]...)
			if less := Of(outline, fewer).Between(a, b).Width; less < width-1e-9 {
				t.Errorf("seed %d: %.9f with, %.9f without the solid %d", seed, width, less, i)
			}
		}
	}
}

// The path that is drawn is one that a person of the width can walk, up to the size of
// the squares on which it is searched, and leads past no narrower place.
func TestPathIsWalkable(t *testing.T) {
	drawn := 0
	for seed := range uint64(30) {
		outline, list, a, b := scatter(seed)
		s := Of(outline, list)
		f := s.Between(a, b)
		way := s.Path(a, b, f)
		if way == nil {
			if f.Width > 0.1 {
				t.Errorf("seed %d: no path drawn through %.3f m", seed, f.Width)
			}
			continue
		}
		drawn++
		if way[0] != a || way[len(way)-1] != b {
			t.Errorf("seed %d: the path runs from %v to %v", seed, way[0], way[len(way)-1])
		}
		for i, p := range way[1:] {
			if off := s.off(plane.Edge{A: way[i], B: p}); off < f.Width/2*0.8-0.005 {
				t.Errorf("seed %d: the path comes %.3f m near, the way is %.3f m wide", seed, off, f.Width)
			}
		}
	}
	if drawn < 20 {
		t.Errorf("only %d of 30 rooms have a way", drawn)
	}
}

func TestWhatIsNoPlaceIsLeftOut(t *testing.T) {
	bad := plane.Open(at(math.NaN(), 0), at(5, 6))
	s := Of(box(0, 0, 10, 6), solids(bad, plane.Path{}, plane.Open(at(5, 5.5))))
	if f := s.Between(at(2, 3), at(8, 3)); !(f.Width > 3) {
		t.Errorf("found %+v", f)
	}
	if f := s.Between(at(math.Inf(1), 3), at(8, 3)); f.Width != 0 || f.Limit != StartIn {
		t.Errorf("from nowhere: %+v", f)
	}
}

func BenchmarkBetween(b *testing.B) {
	outline, list, from, to := scatter(3)
	for b.Loop() {
		Of(outline, list).Between(from, to)
	}
}

func BenchmarkPath(b *testing.B) {
	outline, list, from, to := scatter(4)
	s := Of(outline, list)
	f := s.Between(from, to)
	for b.Loop() {
		s.Path(from, to, f)
	}
}

// Whatever stands on a floor, the width is the same both ways and never beyond what
// the ends allow.
func FuzzBetween(f *testing.F) {
	f.Add(1., 1., 5., 5., 0.3, 4., 2., -1.)
	f.Add(0., 0., 0., 0., 0., 0., 0., 0.)
	f.Add(2., 3., 2., 3., 1e9, -1e-9, 8., 1e300)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, bulge, u, v, w float64) {
		bent := plane.Path{Vertices: []plane.Vertex{{Point: at(x1, y1), Bulge: bulge}, {Point: at(x2, y2)}, {Point: at(u, v)}}}
		s := Of(box(0, 0, 10, 6), solids(bent, plane.Rectangle(at(x1, v), at(w, y2)), plane.Circle(at(u, y1), w)))
		a, b := at(1, 1), at(9, 5)
		there, back := s.Between(a, b), s.Between(b, a)
		if math.Abs(there.Width-back.Width) > 1e-9 || there.Width < 0 || there.Width > 2+1e-9 {
			t.Errorf("%.12f there, %.12f back", there.Width, back.Width)
		}
	})
}

// distant tells whether a shape leaves a person room to stand at p.
func distant(shape plane.Path, p plane.Point) bool {
	return !shape.Contains(p, 0) && !slices.ContainsFunc(shape.Edges(), func(e plane.Edge) bool { return e.Distance(p) <= 0.35 })
}
