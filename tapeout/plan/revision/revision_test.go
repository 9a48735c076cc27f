package revision_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
)

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func element(name string, kind plan.Kind, paths ...plane.Path) plan.Element {
	e := plan.Element{ID: plan.ElementID("id of " + name), Name: name, Kind: kind}
	for i, p := range paths {
		e.Paths = append(e.Paths, plan.Path{ID: plan.PathID(fmt.Sprint(name, " ", i)), Role: plan.Outline, Path: p})
	}
	return e
}

func moved(e plan.Element, m plane.Motion) plan.Element {
	e.Paths = slices.Clone(e.Paths)
	for i := range e.Paths {
		e.Paths[i].Path = e.Paths[i].Path.Moved(m)
	}
	return e
}

func named(e plan.Element, name string) plan.Element { e.Name = name; return e }

// bay is a wall without any symmetry, with an arc in it.
func bay(name string) plan.Element {
	return element(name, plan.Wall, plane.Path{Vertices: []plane.Vertex{
		{Point: pt(-3, 4)}, {Point: pt(-1, 4), Bulge: 0.5}, {Point: pt(0.5, 4)}, {Point: pt(2, 5.5)}, {Point: pt(2, 6)},
	}})
}

func legs() []plan.Element {
	var out []plan.Element
	for i := range 6 {
		x := -4 + 1.6*float64(i)
		e := element("Leg", plan.Masking, plane.Open(pt(x, 2), pt(x+0.9, 2)))
		e.ID = plan.ElementID(fmt.Sprint("leg ", i))
		out = append(out, e)
	}
	return out
}

func set() []plan.Element {
	stair := element("Stair", plan.Stair, plane.Rectangle(pt(3, 1), pt(4.2, 3.4)))
	for i := range 7 {
		y := 1.3 + 0.3*float64(i)
		stair.Paths = append(stair.Paths, plan.Path{ID: plan.PathID(fmt.Sprint("tread ", i)), Role: plan.Inner, Path: plane.Open(pt(3, y), pt(4.2, y))})
	}
	return append([]plan.Element{
		bay("Bay wall"), stair,
		element("Revolve", plan.Revolve, plane.Circle(pt(0, 3), 2.5)),
		element("Sofa", plan.Furniture, plane.Rectangle(pt(-1, 1), pt(1, 1.8))),
		element("Table", plan.Furniture, plane.Rectangle(pt(-2.5, 1), pt(-1.7, 1.8))),
	}, legs()...)
}

func outcomes(cs revision.Changes) map[string]revision.Outcome {
	out := map[string]revision.Outcome{}
	for i := range cs {
		out[cs[i].Name()] = cs[i].Outcome
	}
	return out
}

func TestComparingAPlanWithItselfFindsNothing(t *testing.T) {
	old := set()
	for seed := range uint64(20) {
		shuffled := slices.Clone(old)
		rand.New(rand.NewPCG(seed, 1)).Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
		cs := revision.Compare(old, shuffled, revision.DefaultTolerance)
		if n := cs.Count(revision.Unchanged); n != len(old) || len(cs) != len(old) {
			t.Fatalf("order %d: %d of %d unchanged: %v", seed, n, len(old), outcomes(cs))
		}
		for i := range cs {
			if cs[i].Before.ID != old[i].ID || cs[i].After.ID != old[i].ID {
				t.Errorf("%s became %s", cs[i].Before.ID, cs[i].After.ID)
			}
		}
	}
}

func TestRigidMotionOfOneElementIsFoundExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for _, c := range []struct {
		name string
		at   int
		most float64 // radians of turn: beyond it a symmetric shape has turned less the other way
	}{{"a wall without symmetry", 0, math.Pi}, {"a stair", 1, 1.5}, {"a sofa", 3, 1.5}, {"a square table", 4, 0.75}} {
		t.Run(c.name, func(t *testing.T) {
			for range 40 {
				old, young := set(), set()
				want := plane.About(pt(1, 2), (2*rng.Float64()-1)*c.most)
				want.Shift = want.Shift.Add(pt(rng.Float64()*4-2, rng.Float64()*4-2))
				young[c.at] = moved(young[c.at], want)
				cs := revision.Compare(old, young, revision.DefaultTolerance)
				got := cs[c.at]
				if got.Outcome != revision.Moved || cs.Count(revision.Unchanged) != len(old)-1 {
					t.Fatalf("%v: %v", want, outcomes(cs))
				}
				if math.Abs(math.Remainder(got.Motion.Turn-want.Turn, 2*math.Pi)) > 1e-9 || got.Motion.Shift.To(want.Shift) > 1e-9 {
					t.Fatalf("moved by %v, want %v", got.Motion, want)
				}
				anchor, _ := old[c.at].Anchor()
				if d := got.Shift.To(want.Apply(anchor).Sub(anchor)); d > 1e-9 {
					t.Errorf("the shift of the anchor is off by %v", d)
				}
			}
		})
	}
}

func TestOutcomes(t *testing.T) {
	shift := func(x, y float64) plane.Motion { return plane.Motion{Shift: pt(x, y)} }
	for _, c := range []struct {
		name   string
		change func(es []plan.Element) []plan.Element
		want   map[string]revision.Outcome // of those that are not unchanged
	}{
		{"renamed", func(es []plan.Element) []plan.Element { es[3].Name = "Settee"; return es }, nil},
		{"capitals and spaces", func(es []plan.Element) []plan.Element { es[0].Name = " BAY  wall"; return es }, nil},
		{"moved by less than shows", func(es []plan.Element) []plan.Element { es[3] = moved(es[3], shift(0.004, 0)); return es }, nil},
		{"moved a little", func(es []plan.Element) []plan.Element { es[3] = moved(es[3], shift(0.02, 0)); return es },
			map[string]revision.Outcome{"Sofa": revision.Moved}},
		{"moved across the stage", func(es []plan.Element) []plan.Element { es[3] = moved(es[3], shift(7, 3)); return es },
			map[string]revision.Outcome{"Sofa": revision.Moved}},
		{"moved and renamed", func(es []plan.Element) []plan.Element {
			es[3] = named(moved(es[3], shift(0.5, 0)), "Settee")
			return es
		}, map[string]revision.Outcome{"Sofa": revision.Moved}},
		{"two have changed places", func(es []plan.Element) []plan.Element {
			es[3], es[4] = moved(es[3], shift(-2.1, 0)), moved(es[4], shift(2.1, 0))
			return es
		}, map[string]revision.Outcome{"Sofa": revision.Moved, "Table": revision.Moved}},
		{"longer", func(es []plan.Element) []plan.Element {
			es[3] = element("Sofa", plan.Furniture, plane.Rectangle(pt(-1, 1), pt(1.4, 1.8)))
			return es
		}, map[string]revision.Outcome{"Sofa": revision.Reshaped}},
		{"a tread less", func(es []plan.Element) []plan.Element { es[1].Paths = es[1].Paths[:7]; return es },
			map[string]revision.Outcome{"Stair": revision.Reshaped}},
		{"mirrored", func(es []plan.Element) []plan.Element {
			es[0].Paths = slices.Clone(es[0].Paths)
			var vs []plane.Vertex
			for _, v := range es[0].Paths[0].Vertices {
				vs = append(vs, plane.Vertex{Point: pt(-v.X, v.Y), Bulge: -v.Bulge})
			}
			es[0].Paths[0].Path = plane.Path{Vertices: vs}
			return es
		}, map[string]revision.Outcome{"Bay wall": revision.Reshaped}},
		{"broken lines", func(es []plan.Element) []plan.Element {
			es[3].Paths = slices.Clone(es[3].Paths)
			es[3].Paths[0].Role = plan.Hidden
			return es
		}, map[string]revision.Outcome{"Sofa": revision.Reshaped}},
		{"gone", func(es []plan.Element) []plan.Element { return slices.Delete(es, 3, 4) },
			map[string]revision.Outcome{"Sofa": revision.Gone}},
		{"new", func(es []plan.Element) []plan.Element {
			return append(es, element("Lamp", plan.Furniture, plane.Circle(pt(5, 5), 0.2)))
		}, map[string]revision.Outcome{"Lamp": revision.New}},
		{"another thing at the same place", func(es []plan.Element) []plan.Element {
			es[3] = element("Piano", plan.Platform, plane.Closed(pt(-0.7, 0.5), pt(0.7, 0.5), pt(0, 2.8)))
			return es
		}, map[string]revision.Outcome{"Sofa": revision.Gone, "Piano": revision.New}},
		{"drawn the other way round, in pieces", func(es []plan.Element) []plan.Element {
			es[3] = element("Sofa", plan.Furniture, plane.Open(pt(1, 1.8), pt(1, 1), pt(0, 1)), plane.Open(pt(1, 1.8), pt(-1, 1.8), pt(-1, 1), pt(0, 1)))
			return es
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			cs := revision.Compare(set(), c.change(set()), revision.Tolerance{})
			for name, got := range outcomes(cs) {
				want, ok := c.want[name]
				if !ok {
					want = revision.Unchanged
				}
				if got != want {
					t.Errorf("%s is %s, want %s", name, got, want)
				}
			}
		})
	}
}

func TestTwinsKeepTheirPlaces(t *testing.T) {
	for _, c := range []struct {
		name  string
		shift func(i int) plane.Point
	}{
		{"all a little upstage", func(int) plane.Point { return pt(0, 0.4) }},
		{"each further out than its neighbour", func(i int) plane.Point { return pt(0.1*float64(i-3), 0) }},
		{"all half way to their neighbours", func(int) plane.Point { return pt(0.7, 0) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			old, young := legs(), legs()
			for i := range young {
				young[i] = moved(young[i], plane.Motion{Shift: c.shift(i)})
			}
			slices.Reverse(young)
			cs := revision.Compare(old, young, revision.DefaultTolerance)
			for i := range old {
				if cs[i].After.ID != old[i].ID || cs[i].Shift.To(c.shift(i)) > 1e-9 {
					t.Errorf("%s became %s, moved by %v; want %v", old[i].ID, cs[i].After.ID, cs[i].Shift, c.shift(i))
				}
			}
		})
	}
}

func TestOneTwinIsGone(t *testing.T) {
	cs := revision.Compare(legs(), slices.Delete(legs(), 2, 3), revision.DefaultTolerance)
	if cs.Count(revision.Unchanged) != 5 || cs[2].Outcome != revision.Gone {
		t.Errorf("%d unchanged, the third is %s", cs.Count(revision.Unchanged), cs[2].Outcome)
	}
}

func TestEmptyLists(t *testing.T) {
	bare := plan.Element{ID: "bare", Name: "Bare"}
	for _, c := range []struct {
		name       string
		old, young []plan.Element
		want       []revision.Outcome
	}{
		{"both", nil, nil, nil},
		{"before", nil, legs()[:2], []revision.Outcome{revision.New, revision.New}},
		{"after", legs()[:2], nil, []revision.Outcome{revision.Gone, revision.Gone}},
		{"without lines", []plan.Element{bare}, []plan.Element{bare}, []revision.Outcome{revision.Unchanged}},
		{"lines have come", []plan.Element{bare}, []plan.Element{element("Bare", "", plane.Circle(pt(0, 0), 1))}, []revision.Outcome{revision.Reshaped}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []revision.Outcome
			for _, ch := range revision.Compare(c.old, c.young, revision.DefaultTolerance) {
				got = append(got, ch.Outcome)
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("%v, want %v", got, c.want)
			}
		})
	}
}

func TestNoiseOfADrawingIsNotAChangeNorATurn(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	old, young := set(), set()
	shift := plane.Motion{Shift: pt(0.6, 0.3)}
	for i := range young {
		young[i] = moved(young[i], shift)
		for k := range young[i].Paths {
			for v := range young[i].Paths[k].Vertices {
				p := &young[i].Paths[k].Vertices[v].Point
				*p = p.Add(pt(rng.NormFloat64()*2e-4, rng.NormFloat64()*2e-4))
			}
		}
	}
	for _, c := range revision.Compare(old, young, revision.DefaultTolerance) {
		if c.Outcome != revision.Moved || math.Abs(c.Turn) > 0.002 || c.Shift.To(shift.Shift) > 1e-3 {
			t.Errorf("%s is %s by %v, %v rad", c.Name(), c.Outcome, c.Shift, c.Turn)
		}
	}
}

func TestAPlatformLongerAtOneEndHasStayed(t *testing.T) {
	old := []plan.Element{element("Platform", plan.Platform, plane.Rectangle(pt(0, 0), pt(2, 1)))}
	young := []plan.Element{element("Platform", plan.Platform, plane.Rectangle(pt(0, 0), pt(2.5, 1)))}
	c := revision.Compare(old, young, revision.DefaultTolerance)[0]
	if c.Outcome != revision.Reshaped || !c.Motion.IsZero() || math.Abs(c.Off-0.5) > 1e-9 {
		t.Errorf("%s, %v, off by %v", c.Outcome, c.Motion, c.Off)
	}
}

func large(n int, seed uint64) []plan.Element {
	rng := rand.New(rand.NewPCG(seed, 9))
	var out []plan.Element
	for i := range n {
		at := pt(rng.Float64()*30-15, rng.Float64()*20)
		vs := []plane.Point{at}
		for range 8 + rng.IntN(24) {
			vs = append(vs, vs[len(vs)-1].Add(pt(rng.NormFloat64(), rng.NormFloat64())))
		}
		out = append(out, element(fmt.Sprint("Element ", i), plan.Wall, plane.Open(vs...)))
	}
	return out
}

func BenchmarkCompare(b *testing.B) {
	for _, c := range []struct {
		name   string
		change func([]plan.Element)
	}{
		{"nothing changed", func([]plan.Element) {}},
		{"everything moved", func(es []plan.Element) {
			for i := range es {
				es[i] = moved(es[i], plane.About(pt(0, 5), 0.03))
			}
		}},
		{"everything moved, without names", func(es []plan.Element) {
			for i := range es {
				es[i] = named(moved(es[i], plane.About(pt(0, 5), 0.03)), "")
			}
		}},
		{"everything another", func(es []plan.Element) { copy(es, large(len(es), 2)) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			old, young := large(500, 1), large(500, 1)
			c.change(young)
			for b.Loop() {
				revision.Compare(old, young, revision.DefaultTolerance)
			}
		})
	}
}
