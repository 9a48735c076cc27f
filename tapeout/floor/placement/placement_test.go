package placement

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func at(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

// hall is ten metres by eight with a column and an exit.
func hall() *floor.Floor {
	return &floor.Floor{
		Outline:    plane.Rectangle(at(0, 0), at(10, 8)),
		Obstacles:  []floor.Obstacle{{ID: "c", Name: "Column", Kind: "column", Shape: plane.Rectangle(at(4, 4), at(5, 5))}},
		KeepClears: []floor.KeepClear{{ID: "x", Name: "Exit", Kind: "exit", Shape: plane.Rectangle(at(9, 0), at(10, 2))}},
	}
}

func thing(id string, kind plan.Kind, use plan.Use, p plane.Path) plan.Element {
	return plan.Element{ID: plan.ElementID(id), Name: id, Kind: kind, Use: use, Paths: []plan.Path{{Role: plan.Outline, Path: p}}}
}

func set(elements ...plan.Element) *plan.Plan { return &plan.Plan{Elements: elements} }

func TestScoreIsTheShareThatIsKept(t *testing.T) {
	f := hall()
	pl := set(
		thing("wall", plan.Wall, plan.Useful, plane.Open(at(-2, 1), at(2, 1))),             // half of it outside, worth 2
		thing("across", plan.Wall, plan.Seen, plane.Open(at(3, 4.5), at(6, 4.5))),          // a metre on the column, worth 1
		thing("exit", plan.Wall, plan.Seen, plane.Open(at(8, 1), at(10, 1))),               // a metre on the exit, worth 1
		thing("deck", plan.Platform, plan.Seen, plane.Rectangle(at(3.5, 5.5), at(5.5, 7))), // clear of all
	)
	c := mustCase(t, pl, f)
	k := c.At(plane.Motion{})
	kept, of := 2*2.0+2+1+7, 2*4.0+3+2+7
	if math.Abs(k.Score-kept/of) > 1e-9 {
		t.Errorf("score %.9f, want %.9f", k.Score, kept/of)
	}
	want := map[plan.ElementID]Why{
		"wall": {BeyondWalls, "", 2}, "across": {OnObstacle, "Column", 1}, "exit": {OnClear, "Exit", 1},
	}
	if len(k.Losses) != len(want) {
		t.Fatalf("losses %+v", k.Losses)
	}
	for _, l := range k.Losses {
		w := want[l.Element]
		if len(l.Why) != 1 || l.Why[0].Cause != w.Cause || l.Why[0].Name != w.Name || math.Abs(l.Why[0].Length-w.Length) > 1e-3 {
			t.Errorf("%s is lost for %+v, want %+v", l.Element, l.Why, w)
		}
	}
}

func TestAreaAndLinesAreWeighedAsWished(t *testing.T) {
	f := hall()
	f.Wishes.Area = 3
	pl := set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(-1, 1), at(1, 3))))
	k := mustCase(t, pl, f).At(plane.Motion{})
	// Half of the area, and four of eight metres of its edge: the wall cuts two sides in half.
	if math.Abs(k.Score-0.5) > 1e-9 || math.Abs(k.Area.Part()-0.5) > 1e-9 {
		t.Errorf("score %.6f, area %.6f, want a half of both", k.Score, k.Area.Part())
	}
	pl = set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(3, 3), at(6, 6))))
	k = mustCase(t, pl, f).At(plane.Motion{})
	if want := (1 + 3*8.0/9) / 4; math.Abs(k.Score-want) > 1e-9 {
		t.Errorf("with a column inside: score %.6f, want %.6f", k.Score, want)
	}
}

func TestTheTableSeesNeitherPastAColumnNorBehindItself(t *testing.T) {
	f := &floor.Floor{
		Outline:    plane.Rectangle(at(0, 0), at(10, 10)),
		Obstacles:  []floor.Obstacle{{Name: "Column", Shape: plane.Rectangle(at(4, 4), at(6, 5))}},
		KeepClears: []floor.KeepClear{{Name: "Table", Kind: FrontTable, Shape: plane.Rectangle(at(4.5, 1.5), at(5.5, 2.5))}},
		Wishes:     floor.Wishes{Sight: 1},
	}
	pl := set(
		thing("shadowed", plan.Wall, plan.Seen, plane.Open(at(0, 8), at(10, 8))),
		thing("behind", plan.Wall, plan.Seen, plane.Open(at(0, 1), at(10, 1))),
	)
	k := mustCase(t, pl, f).At(plane.Motion{})
	// From (5, 2) the near corners of the column, (4, 4) and (6, 4), hide what is
	// within 3 m of the middle at 6 m: x from 2 to 8. All of the other is behind.
	if math.Abs(k.Sight.Kept-4) > 1e-3 || math.Abs(k.Sight.Of-20) > 1e-9 {
		t.Errorf("seen %.4f of %.4f m, want 4 of 20", k.Sight.Kept, k.Sight.Of)
	}
	turned := mustCase(t, pl, f).At(plane.About(at(5, 5), math.Pi))
	if turned.Sight.Kept > 10+1e-6 {
		t.Errorf("with its back to the table %.3f m are seen", turned.Sight.Kept)
	}
}

// What the bound says of a box holds for every placement in it.
func TestNoPlacementOfABoxPassesItsBound(t *testing.T) {
	f := hall()
	f.Wishes = floor.Wishes{Area: 1, Sight: 0.5}
	f.KeepClears = append(f.KeepClears, floor.KeepClear{Name: "Table", Kind: FrontTable, Shape: plane.Rectangle(at(4, 0), at(6, 1))})
	pl := set(
		thing("back", plan.Wall, plan.Useful, plane.Open(at(-5, 6), at(5, 6))),
		thing("deck", plan.Platform, plan.Seen, plane.Closed(at(-3, 1), at(1, 1), at(1, 2), at(3, 4), at(-3, 4))),
		thing("ring", plan.Revolve, plan.Useful, plane.Circle(at(0, 3), 2.4)),
		thing("piece", plan.Platform, plan.Essential, plane.Rectangle(at(2, 4), at(4, 5))),
	)
	c := mustCase(t, pl, f)
	p := &probe{c: c}
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 100 {
		size := math.Pow(10, -3*rnd.Float64())
		b := box{x: rnd.Float64() * 10, y: rnd.Float64() * 8, turn: rnd.Float64() * 7, dx: size, dy: size * rnd.Float64(), swing: size / 5 * rnd.Float64()}
		p.at(&b)
		bound, ok := p.bound(math.Inf(-1))
		for range 20 {
			s := spot{x: b.x + b.dx*(2*rnd.Float64()-1), y: b.y + b.dy*(2*rnd.Float64()-1), turn: b.turn + b.swing*(2*rnd.Float64()-1)}
			k := c.At(c.motion(s))
			if k.OK() && !ok {
				t.Fatalf("%+v was given up, and %+v keeps to everything", b, k.Placement)
			}
			if ok && k.Score > bound+1e-6 {
				t.Fatalf("%+v has the bound %.6f and in it %+v scores %.6f", b, bound, k.Placement, k.Score)
			}
		}
	}
}

// The quick score of the search is the exact one but for areas round corners.
func TestQuickScoreIsNearTheExactOne(t *testing.T) {
	f := hall()
	pl := set(
		thing("back", plan.Wall, plan.Useful, plane.Open(at(-5, 6), at(5, 6), at(5, 0))),
		thing("piece", plan.Platform, plan.Seen, plane.Rectangle(at(2, 4), at(4, 5))),
	)
	c := mustCase(t, pl, f)
	p := &probe{c: c}
	rnd := rand.New(rand.NewPCG(1, 3))
	for range 300 {
		s := p.tried(spot{x: rnd.Float64() * 10, y: rnd.Float64() * 8, turn: rnd.Float64() * 7})
		if k := c.At(c.motion(s)); math.Abs(k.Score-s.score) > 1e-4 {
			t.Fatalf("at %+v %.6f, exactly %.6f", s, s.score, k.Score)
		}
	}
}

func TestWhatFitsOneWayOnlyIsFound(t *testing.T) {
	f := &floor.Floor{Outline: plane.Rectangle(at(0, 0), at(10, 8))}
	pl := set(thing("deck", plan.Platform, plan.Essential, plane.Rectangle(at(0, 0), at(7.95, 9.9)))) // quarter turned it fits
	a := mustCase(t, pl, f).Search(context.Background(), Options{Proposals: 1})
	if len(a.Proposals) != 1 || a.Proposals[0].Score < 1-1e-9 || !a.Proposals[0].OK() {
		t.Fatalf("%+v", a)
	}
}

func TestRulesForTurnsAndFrontsAreKept(t *testing.T) {
	pl := set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(-4, 0), at(4, 6))))
	for _, c := range []struct {
		name   string
		wishes floor.Wishes
		fronts []float64
		turn   func(float64) bool
	}{
		{"square to the walls, the east side the front", floor.Wishes{Angles: floor.ToWalls}, []float64{0},
			func(a float64) bool { return apart(a, math.Pi/2) < 1e-9 }},
		{"steps of 30° from the boards at 10°", floor.Wishes{Angles: floor.InSteps, Step: 30}, nil,
			func(a float64) bool { return math.Abs(math.Remainder(a*180/math.Pi-10, 30)) < 1e-6 }},
		{"any turn, the north side the front", floor.Wishes{}, []float64{math.Pi / 2},
			func(a float64) bool { return apart(a, math.Pi) <= math.Pi/4+1e-9 }},
	} {
		f := hall()
		f.Wishes, f.BoardDirection = c.wishes, 10
		for _, toward := range c.fronts {
			f.Fronts = append(f.Fronts, floor.Front{Toward: toward})
		}
		a := mustCase(t, pl, f).Search(context.Background(), Options{})
		if len(a.Proposals) == 0 {
			t.Fatalf("%s: nothing proposed", c.name)
		}
		for _, k := range a.Proposals {
			if !c.turn(k.Placement.Turn) || !k.OK() {
				t.Errorf("%s: turned by %.3f°, %+v", c.name, k.Placement.Turn*180/math.Pi, k.Breaches)
			}
		}
	}
}

func TestProposalsDiffer(t *testing.T) {
	pl := set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(-6, 0), at(6, 6))))
	c := mustCase(t, pl, hall())
	a := c.Search(context.Background(), Options{Looks: 4_000_000})
	if len(a.Proposals) < 2 {
		t.Fatalf("%d proposed", len(a.Proposals))
	}
	for i, k := range a.Proposals {
		for _, l := range a.Proposals[:i] {
			if c.apart(k.Placement, l.Placement) < differs {
				t.Errorf("%v and %v are one", k.Placement, l.Placement)
			}
			if k.Score > l.Score+1e-6 {
				t.Error("not the best first")
			}
		}
	}
}

func TestOfEqualPlacementsTheOneSquareToAWallIsBetter(t *testing.T) {
	better := mustCase(t, set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(0, 0), at(2, 2)))), hall()).better()
	askew := 0.7
	if better(1, 1-1e-9, askew, math.Pi) <= 0 || better(1, 1, math.Pi, askew) >= 0 {
		t.Error("of two that keep all the one askew comes first")
	}
	if better(1, 0.999, askew, math.Pi) >= 0 {
		t.Error("one that keeps less comes first because it is square")
	}
}

func TestWhatIsImpossibleSaysWhatWouldHaveToGive(t *testing.T) {
	small := thing("stair", plan.Stair, plan.Essential, plane.Rectangle(at(-1, 1), at(1, 2)))
	for _, c := range []struct {
		name  string
		pl    *plan.Plan
		floor func(*floor.Floor)
		want  []Give
		alone bool
	}{
		{"one is larger than the room in every direction", set(small, thing("bridge", plan.Platform, plan.Essential, plane.Rectangle(at(-8, 0), at(8, 1)))),
			func(*floor.Floor) {}, []Give{{What: WholeElement, Element: "bridge"}}, true},
		{"two are", set(small, thing("bridge", plan.Platform, plan.Essential, plane.Rectangle(at(-8, 0), at(8, 1))), thing("wall", plan.Wall, plan.Essential, plane.Open(at(-9, 3), at(9, 3)))),
			func(*floor.Floor) {}, []Give{{What: WholeElement, Element: "bridge"}, {What: WholeElement, Element: "wall"}}, false},
		{"all of the floor must stay clear", set(small), func(f *floor.Floor) {
			f.KeepClears = append(f.KeepClears, floor.KeepClear{Name: "Everything", Shape: plane.Rectangle(at(-1, -1), at(11, 9))})
		}, []Give{{What: ClearArea, Name: "Everything"}}, true},
		{"and nothing must be whole", set(thing("wall", plan.Wall, plan.Useful, plane.Open(at(0, 1), at(1, 1)))), func(f *floor.Floor) {
			f.KeepClears = []floor.KeepClear{{Name: "Everything", Shape: plane.Rectangle(at(-1, -1), at(11, 9))}}
		}, []Give{{What: ClearArea, Name: "Everything"}}, true},
		{"no step faces the front", set(small), func(f *floor.Floor) {
			f.Fronts = []floor.Front{{Toward: 0}}
			f.Wishes = floor.Wishes{Angles: floor.InSteps, Step: 180}
		}, []Give{{What: FrontSides}, {What: TurnRule}}, true},
	} {
		f := hall()
		c.floor(f)
		k := mustCase(t, c.pl, f)
		a := k.Search(context.Background(), Options{})
		if len(a.Proposals) > 0 || !a.None {
			t.Errorf("%s: %d proposals, certain %v", c.name, len(a.Proposals), a.None)
		}
		give, alone := k.WhatGives(context.Background())
		if alone != c.alone || len(give) != len(c.want) {
			t.Errorf("%s: %+v alone %v, want %+v", c.name, give, alone, c.want)
			continue
		}
		for i := range give {
			if give[i] != c.want[i] {
				t.Errorf("%s: %+v, want %+v", c.name, give[i], c.want[i])
			}
		}
	}
}

func TestASearchThatIsCalledOffEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	pl := set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(-6, 0), at(6, 6))))
	a := mustCase(t, pl, hall()).Search(ctx, Options{})
	if a.Proven || a.Looks > 0 {
		t.Errorf("%+v", a)
	}
}

func TestWhatCannotBePlacedSaysWhy(t *testing.T) {
	if _, err := New(set(), hall()); err == nil {
		t.Error("a plan without line work was taken")
	}
	if _, err := New(set(thing("w", plan.Wall, plan.Useful, plane.Open(at(0, 0), at(1, 0)))), &floor.Floor{}); err == nil {
		t.Error("a floor without walls was taken")
	}
}

func TestAbsurdFiguresDoNotCrash(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e12, 1e-300} {
		for name, spoil := range map[string]func(*plan.Plan, *floor.Floor){
			"a corner of the room": func(_ *plan.Plan, f *floor.Floor) { f.Outline.Vertices[1].X = v },
			"an obstacle":          func(_ *plan.Plan, f *floor.Floor) { f.Obstacles[0].Shape.Vertices[2].Y = v },
			"an area":              func(_ *plan.Plan, f *floor.Floor) { f.KeepClears[0].Shape.Vertices[2].Bulge = v },
			"the plan":             func(p *plan.Plan, _ *floor.Floor) { p.Elements[0].Paths[0].Vertices[0].X = v },
			"worth":                func(p *plan.Plan, _ *floor.Floor) { p.Elements[0].Weight = v },
			"wishes": func(_ *plan.Plan, f *floor.Floor) {
				f.Wishes = floor.Wishes{Area: v, Sight: v, Angles: floor.InSteps, Step: v}
			},
			"boards": func(_ *plan.Plan, f *floor.Floor) {
				f.BoardDirection, f.Wishes.Angles, f.Wishes.Step = v, floor.InSteps, 15
			},
			"fronts": func(_ *plan.Plan, f *floor.Floor) { f.Fronts = []floor.Front{{Toward: v}} },
		} {
			pl, f := set(thing("deck", plan.Platform, plan.Useful, plane.Rectangle(at(0, 0), at(3, 2))), thing("w", plan.Wall, plan.Seen, plane.Open(at(0, 0), at(5, 0)))), hall()
			spoil(pl, f)
			c, err := New(pl, f)
			if err != nil {
				continue // that it says so is enough
			}
			a := c.Search(context.Background(), Options{Looks: 100_000})
			for _, k := range a.Proposals {
				if !(k.Score >= 0 && k.Score <= 1+1e-9) || !k.Placement.Shift.Finite() {
					t.Errorf("%s of %g: %+v", name, v, k)
				}
			}
		}
	}
}
