package planplace

import (
	"math"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// staged is a production with two scenes, a revolve that has turned a quarter in
// the second one, and a box that rides on it or not.
func staged(rides plan.ElementID, placed bool) *prep.Production {
	p := inFeet(plane.Rectangle(plane.Point{X: 1, Y: 1}, plane.Point{X: 2, Y: 2}))
	p.Plan.Scenes = []plan.Scene{{ID: "one", Name: "1.1 Quay"}, {ID: "two", Name: "1.2 Kitchen"}}
	p.Plan.Elements = append(p.Plan.Elements, plan.Element{
		ID: "ring", Name: "Revolve", Kind: plan.Revolve,
		Paths: []plan.Path{{ID: "rim", Role: plan.Outline, Path: plane.Circle(plane.Point{}, 4)}},
	})
	travel(p, "ring", "two", 90)
	e := p.Plan.Element("e")
	e.Rides = rides
	if placed {
		e.Stands = []plan.Stand{{Scene: "one"}, {Scene: "two", Over: 1, Turn: 30}}
	}
	return p
}

// centre is where the middle of the box is seen in a scene.
func centre(p *prep.Production, scene plan.SceneID) plane.Point {
	e := p.Plan.Element("e")
	anchor, _ := e.Anchor()
	return seenAt(p, e, scene).Apply(anchor)
}

func TestMovingGoesWhereItIsDragged(t *testing.T) {
	by := plane.Point{X: 0.5, Y: -0.25}
	for _, c := range []struct {
		name   string
		rides  plan.ElementID
		placed bool
		scene  plan.SceneID
	}{
		{"as drawn", "", false, ""},
		{"drawn, seen in a scene", "", false, "two"},
		{"placed by scene", "", true, "two"},
		{"placed by scene, seen as drawn", "", true, ""},
		{"drawn, on a turned revolve", "ring", false, "two"},
		{"placed, on a turned revolve", "ring", true, "two"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := staged(c.rides, c.placed)
			before, other := centre(p, c.scene), centre(p, "one")
			move(p, []plan.ElementID{"e", "gone"}, c.scene, by)
			if got, want := centre(p, c.scene), before.Add(by); got.To(want) > near {
				t.Errorf("stands at %v, want %v", got, want)
			}
			stays := c.placed && c.scene == "two"
			if moved := centre(p, "one").To(other) > near; moved == stays {
				t.Errorf("moved in the other scene: %v", moved)
			}
		})
	}
}

func TestTurning(t *testing.T) {
	p := staged("", true)
	before := centre(p, "two")
	turn(p, []plan.ElementID{"e"}, "two", 340)
	if got := p.Plan.Element("e").Stands[1].Turn; got != 10 {
		t.Errorf("turned to %v degrees", got)
	}
	if got := centre(p, "two"); got.To(before) > near {
		t.Errorf("turning moved the middle to %v", got)
	}
	turn(p, []plan.ElementID{"e"}, "", 90)
	if got := p.Plan.Element("e").Paths[0].Vertices[0].Point; got.To(plane.Point{X: 2, Y: 1}) > near {
		t.Errorf("the first corner turned to %v", got)
	}
}

func TestAnElementNotInTheSceneIsNotMoved(t *testing.T) {
	p := staged("", true)
	p.Plan.Element("e").Stands = p.Plan.Element("e").Stands[:1]
	before := p.Plan.Element("e").Paths[0].Vertices[0]
	move(p, []plan.ElementID{"e"}, "two", plane.Point{X: 1})
	if got := p.Plan.Element("e").Paths[0].Vertices[0]; got != before {
		t.Errorf("moved to %v", got)
	}
}

func TestADuplicateIsItsOwn(t *testing.T) {
	p := staged("ring", true)
	fresh := counter()
	ids := duplicate(p, []plan.ElementID{"e"}, plane.Point{X: 1}, fresh)
	again := duplicate(p, ids, plane.Point{X: 1}, fresh)
	if len(ids) != 1 || len(again) != 1 {
		t.Fatal(ids, again)
	}
	copied := p.Plan.Element(ids[0])
	if copied.Name != "Wall 2" || p.Plan.Element(again[0]).Name != "Wall 3" {
		t.Errorf("named %q and %q", copied.Name, p.Plan.Element(again[0]).Name)
	}
	copied.Stands[1].Over = 9
	copied.Paths[0].Vertices[0].X = 9
	e := p.Plan.Element("e")
	if e.Stands[1].Over != 1 || e.Paths[0].Vertices[0].X != 1 || copied.Paths[0].ID == "line" {
		t.Errorf("the copy shares with the original: %+v", e)
	}
}

func TestACarrierDoesNotCarryItself(t *testing.T) {
	p := staged("ring", false)
	if err := ride(p, "ring", "e"); err == nil {
		t.Error("a ring of carriers is taken")
	}
	if err := ride(p, "ring", "ring"); err == nil {
		t.Error("a carrier carries itself")
	}
	if err := ride(p, "e", ""); err != nil || p.Plan.Element("e").Rides != "" {
		t.Error("it cannot be taken off", err)
	}
}

func TestStandingInScenes(t *testing.T) {
	p := staged("", false)
	e := p.Plan.Element("e")
	if err := setStand(p, e, "two", standUp, "2' DS"); err != nil {
		t.Fatal(err)
	}
	if len(e.Stands) != 2 || math.Abs(standIn(e, "two").Up+0.6096) > near {
		t.Fatalf("stands %+v", e.Stands)
	}
	rows := standRows(p, e, "two")
	if rows[1].Cells[1] != "2' DS" || !rows[1].Here || rows[0].Here {
		t.Errorf("shown as %+v", rows)
	}
	if err := setStand(p, e, "two", standTick, ""); err != nil || standIn(e, "two") != nil {
		t.Errorf("it cannot be taken out: %v", err)
	}
	if err := setStand(p, e, "one", standTick, ""); err == nil {
		t.Error("the last scene is taken away, which would put it into every scene")
	}
	if err := placeByScene(p, e, false); err != nil || e.Stands != nil {
		t.Error("it cannot stand in every scene again", err)
	}
	if err := placeByScene(&prep.Production{}, e, true); err == nil {
		t.Error("placed by scene without scenes")
	}
}

func TestTravel(t *testing.T) {
	p := staged("ring", false)
	ring := p.Plan.Element("ring")
	if err := setTravel(p, ring, "one", "45 right"); err != nil || travelOf(p, "ring", "one") != -45 {
		t.Errorf("turned %v, %v", travelOf(p, "ring", "one"), err)
	}
	track := plan.Element{ID: "track", Kind: plan.Track, Paths: []plan.Path{{
		ID: "way", Role: plan.Way, Path: plane.Open(plane.Point{}, plane.Point{X: 5}),
	}}}
	p.Plan.Elements = append(p.Plan.Elements, track)
	for text, taken := range map[string]bool{"3 m": true, "6 m": false, "-1 m": false, "far": false, "": true} {
		if err := setTravel(p, p.Plan.Element("track"), "one", text); (err == nil) != taken {
			t.Errorf("%q: %v", text, err)
		}
	}
	bare := plan.Element{ID: "bare", Kind: plan.Track}
	if err := setTravel(p, &bare, "one", "1 m"); err == nil || !strings.Contains(err.Error(), "way") {
		t.Errorf("a track without a way: %v", err)
	}
}

func TestParseDegrees(t *testing.T) {
	for text, want := range map[string]float64{"90": 90, "-45°": -45, "−30": -30, "12,5": 12.5, "20 right": -20, "20° left": 20, "": 0} {
		if got, err := parseDegrees(text); err != nil || got != want {
			t.Errorf("%q reads as %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"a quarter", "NaN", "1e9", "9 0"} {
		if got, err := parseDegrees(text); err == nil {
			t.Errorf("%q reads as %v", text, got)
		}
	}
}

func TestDrawn(t *testing.T) {
	a, b, c := plane.Point{}, plane.Point{X: 2}, plane.Point{X: 2, Y: 2}
	for _, x := range []struct {
		name   string
		tool   tool
		points []plane.Point
		closed bool
		length float64 // 0: refused
	}{
		{"a line", drawLine, []plane.Point{a, b, b, c}, false, 4},
		{"a line closed on its first point", drawLine, []plane.Point{a, b, c}, true, 4 + 2*math.Sqrt2},
		{"a shape", drawShape, []plane.Point{a, b, c}, false, 4 + 2*math.Sqrt2},
		{"a shape of two corners", drawShape, []plane.Point{a, b}, false, 0},
		{"one point", drawLine, []plane.Point{a, a}, false, 0},
		{"a circle", drawCircle, []plane.Point{a, b}, false, 4 * math.Pi},
		{"a circle without a radius", drawCircle, []plane.Point{a, a}, false, 0},
		{"an arc", drawArc, []plane.Point{a, {X: 1, Y: 1}, b}, false, math.Pi},
		{"an arc through one point twice", drawArc, []plane.Point{a, a, b}, false, 0},
	} {
		t.Run(x.name, func(t *testing.T) {
			path, err := x.tool.drawn(x.points, x.closed)
			if (err != nil) != (x.length == 0) {
				t.Fatalf("refused: %v", err)
			}
			if err == nil && math.Abs(path.Length()-x.length) > near {
				t.Errorf("%v long, want %v", path.Length(), x.length)
			}
		})
	}
}

func TestALineDrawnInASceneIsSeenWhereItWasDrawn(t *testing.T) {
	p := staged("ring", true)
	path := plane.Open(plane.Point{X: -1, Y: 3}, plane.Point{X: -2, Y: 3})
	if _, err := takeDrawn(p, "e", "two", path, plan.Wall, counter()); err != nil {
		t.Fatal(err)
	}
	e := p.Plan.Element("e")
	added := e.Paths[1]
	if added.Role != plan.Inner {
		t.Errorf("taken as %s", added.Role)
	}
	// The middle of the element, about which it turns, has moved with the new line;
	// that is seen in the scene only by an element turned there.
	if _, err := takeDrawn(p, "gone", "", path, plan.Wall, counter()); err == nil {
		t.Error("drawn on an element that is gone")
	}
	id, err := takeDrawn(p, "", "two", path, plan.Wall, counter())
	if err != nil || p.Plan.Element(id).Name != "Wall or flat 1" {
		t.Errorf("a new element %v, %v", id, err)
	}
}
