package sense_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestProposeElements(t *testing.T) {
	s := stage().sheet()
	left := sense.Set{}
	for _, a := range sense.ProposeAside(s) {
		left = left.With(a.Items)
	}
	keep := sense.Seen(s).Without(left)
	datum := sense.ProposeDatum(s)[0]
	got := sense.ProposeElements(s, sense.Options{PerUnit: 1, Motion: sense.Axes(datum.Origin, datum.Turn, 1).Inverse(), Keep: keep})

	type row struct {
		name  string
		kind  plan.Kind
		paths int
		roles []plan.Role
	}
	want := []row{
		{"Wall 1", plan.Wall, 1, []plan.Role{plan.Outline}},
		{"Wall 2", plan.Wall, 1, []plan.Role{plan.Outline}},
		{"Door", plan.Door, 2, []plan.Role{plan.Outline, plan.Swing}},
		{"Stair", plan.Stair, 0, nil},
		{"Sofa seat 1", plan.Furniture, 2, []plan.Role{plan.Inner, plan.Outline}},
		{"Sofa seat 2", plan.Furniture, 2, []plan.Role{plan.Inner, plan.Outline}},
		{"Carousel", plan.Revolve, 1, []plan.Role{plan.Outline}},
		{"Header", plan.Wall, 1, []plan.Role{plan.Hidden}},
	}
	if len(got.Candidates) != len(want) {
		for _, c := range got.Candidates {
			t.Logf("%s: %s, %d paths. %s", c.Name, c.Kind, len(c.Paths), c.Why)
		}
		t.Fatalf("%d candidates, want %d", len(got.Candidates), len(want))
	}
	for i, w := range want {
		c := got.Candidates[i]
		var roles []plan.Role
		for _, p := range c.Paths {
			roles = append(roles, p.Role)
		}
		slices.Sort(roles)
		if c.Name != w.name || c.Kind != w.kind || w.paths > 0 && (len(c.Paths) != w.paths || !slices.Equal(roles, w.roles)) || c.Why == "" {
			t.Errorf("got %s, %s, %v; want %+v. %s", c.Name, c.Kind, roles, w, c.Why)
		}
	}
	// Plan axes: the corner of the first wall is 1 m to stage right, 2 m up.
	corner := got.Candidates[0].Paths[0].Vertices[1].Point
	if corner.To(pt(-1, 2)) > 1e-9 {
		t.Errorf("the corner of the first wall is at %v", corner)
	}
	if !slices.Equal(got.Specks, sense.NewSet(len(s.Items)-1)) {
		t.Errorf("specks are %v", got.Specks)
	}
	if n := got.Candidates[6].Paths[0].Length(); math.Abs(n-4*math.Pi) > 1e-9 {
		t.Errorf("a circle of 2 m became %v m long", n)
	}
}

func TestElementsKeepEveryLine(t *testing.T) {
	s := stage().sheet()
	got := sense.ProposeElements(s, sense.Options{PerUnit: 2})
	items, total := sense.Set{}, 0.0
	for _, c := range got.Candidates {
		if n := len(items); len(items.With(c.Items)) != n+len(c.Items) {
			t.Errorf("%s has items of another candidate", c.Name)
		}
		items = items.With(c.Items)
		for _, p := range c.Paths {
			total += p.Length()
		}
	}
	if diff := cmp.Diff(sense.Seen(s), items.With(got.Specks)); diff != "" {
		t.Error(diff)
	}
	want := 0.0
	for _, i := range items {
		want += 2 * s.Items[i].Length()
	}
	if math.Abs(total-want) > 0.02 {
		t.Errorf("%v m of lines became %v m", want, total)
	}
}

func TestElementsAreTheSameEveryTime(t *testing.T) {
	s := crowded(600).sheet()
	first := sense.ProposeElements(s, sense.Options{PerUnit: 1})
	for range 3 {
		if diff := cmp.Diff(first, sense.ProposeElements(s, sense.Options{PerUnit: 1})); diff != "" {
			t.Fatal(diff)
		}
	}
}

func TestKindsByWordsAndShape(t *testing.T) {
	box := plane.Rectangle(pt(0, 0), pt(1, 1)).Edges()
	for _, c := range []struct {
		name, layer, block string
		edges              []plane.Edge
		want               plan.Kind
		level              string
	}{
		{"layer", "A-WALL-FULL", "", box, plan.Wall, ""},
		{"plural", "Doors", "", box, plan.Door, ""},
		{"words run together", "StageTraps", "", box, plan.Trap, ""},
		{"escape before stair", "ESCAPE STAIR", "", box, plan.EscapeStair, ""},
		{"the block before the layer", "SCENERY", "Chair_01", box, plan.Furniture, ""},
		{"level", "PLATFORM LEVEL 2", "", box, plan.Platform, "Level 2"},
		{"upper", "UPPER-WALLS", "", box, plan.Wall, "Upper"},
		{"no part of a word", "STEPHANIE", "", box, plan.Furniture, ""},
		{"large closed", "0", "", plane.Rectangle(pt(0, 0), pt(4, 3)).Edges(), plan.Platform, ""},
		{"thin", "0", "", plane.Rectangle(pt(0, 0), pt(4, 0.1)).Edges(), plan.Wall, ""},
		{"one line", "0", "", []plane.Edge{seg(0, 0, 3, 0)}, plan.Wall, ""},
		{"small circle", "0", "", plane.Circle(pt(0, 0), 0.15).Edges(), plan.Other, ""},
		{"table", "0", "", plane.Circle(pt(0, 0), 0.6).Edges(), plan.Furniture, ""},
		{"large circle", "0", "", plane.Circle(pt(0, 0), 3).Edges(), plan.Revolve, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := &draft{}
			i := d.put(c.layer, c.edges...)
			if c.block != "" {
				d.Items[i].Group, d.Items[i].Block = 1, c.block
			}
			got := sense.ProposeElements(d.sheet(), sense.Options{PerUnit: 1})
			if len(got.Candidates) != 1 || got.Candidates[0].Kind != c.want || got.Candidates[0].Level != c.level {
				t.Errorf("got %+v, want %s on %q", got.Candidates, c.want, c.level)
			}
		})
	}
}

func TestStairByShapeHasInnerTreads(t *testing.T) {
	d := &draft{}
	d.rect("0", 0, 0, 1.2, 2.1)
	for k := range 6 {
		y := 0.3 * float64(k+1)
		d.put("0", seg(0, y, 1.2, y))
	}
	got := sense.ProposeElements(d.sheet(), sense.Options{PerUnit: 1}).Candidates
	if len(got) != 1 || got[0].Kind != plan.Stair {
		t.Fatalf("%+v", got)
	}
	inner := 0
	for _, p := range got[0].Paths {
		if p.Role == plan.Inner {
			inner++
		}
	}
	if inner != 6 {
		t.Errorf("%d inner paths, want the 6 treads", inner)
	}
}

func TestALayerOverheadIsDrawnBroken(t *testing.T) {
	d := &draft{}
	d.put("OVERHEAD", seg(0, 0, 3, 0))
	got := sense.ProposeElements(d.sheet(), sense.Options{PerUnit: 1}).Candidates
	if len(got) != 1 || len(got[0].Paths) != 1 || got[0].Paths[0].Role != plan.Hidden || got[0].Why == "" {
		t.Errorf("%+v", got)
	}
}

func TestLooseLinesBecomeOneClosedPath(t *testing.T) {
	d := &draft{}
	sides := plane.Rectangle(pt(0, 0), pt(2, 1)).Edges()
	d.put("0", sides[2].Reversed())
	d.put("0", sides[0])
	d.put("0", plane.Edge{A: sides[3].A, B: sides[3].B.Add(pt(0.003, 0))}) // not quite home
	d.put("0", sides[1])
	got := sense.ProposeElements(d.sheet(), sense.Options{PerUnit: 1}).Candidates
	if len(got) != 1 || len(got[0].Paths) != 1 || !got[0].Paths[0].Closed || len(got[0].Paths[0].Vertices) != 4 {
		t.Fatalf("%+v", got)
	}
	if a := got[0].Paths[0].Area(); math.Abs(a-2) > 0.01 {
		t.Errorf("it encloses %v m²", a)
	}
}

func TestNoScaleNoElements(t *testing.T) {
	for _, k := range []float64{0, -1, math.NaN()} {
		if got := sense.ProposeElements(stage().sheet(), sense.Options{PerUnit: k}); len(got.Candidates) != 0 {
			t.Errorf("%d candidates at %v m in a unit", len(got.Candidates), k)
		}
	}
}

// crowded is a drawing of n items: walls in loose lines, blocks, arcs, words.
func crowded(n int) *draft {
	rng := rand.New(rand.NewPCG(5, 5))
	d := &draft{}
	d.Unit = linework.Metre
	layers := []string{"WALLS", "FURN", "0", "PLATFORMS", "DOORS"}
	at := pt(0, 0)
	for len(d.Items) < n {
		k := len(d.Items)
		if k%8 == 0 {
			at = pt(rng.Float64()*60, rng.Float64()*40)
		}
		next := at.Add(plane.Polar(0.2+rng.Float64(), rng.Float64()*6))
		e := plane.Edge{A: at, B: next}
		if k%5 == 0 {
			e.Bulge = rng.Float64() - 0.5
		}
		i := d.put(layers[k/8%len(layers)], e)
		if k/8%7 == 0 {
			d.Items[i].Group, d.Items[i].Block = k/8+1, "CHAIR"
		}
		if k%20 == 0 {
			d.write("Piece", at.X, at.Y, 0.1)
		}
		at = next
	}
	return d
}

func BenchmarkProposeElements(b *testing.B) {
	s := crowded(20_000).sheet()
	for b.Loop() {
		sense.ProposeElements(s, sense.Options{PerUnit: 1})
	}
}

func BenchmarkProposeAside(b *testing.B) {
	s := crowded(20_000).sheet()
	for b.Loop() {
		sense.ProposeAside(s)
	}
}
