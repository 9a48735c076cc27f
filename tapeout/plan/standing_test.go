package plan

import (
	"math"
	"testing"

	"groundrow/tapeout/plane"
)

const near = 1e-9

func box(id ElementID, min, max plane.Point) Element {
	return Element{ID: id, Kind: Platform, Paths: []Path{{ID: PathID(id), Role: Outline, Path: plane.Rectangle(min, max)}}}
}

func threeScenes() []Scene {
	return []Scene{{ID: "one"}, {ID: "two"}, {ID: "three"}}
}

func at(t *testing.T, p *Plan, id ElementID, scene SceneID, from plane.Point) plane.Point {
	t.Helper()
	m, ok := p.Where(p.Element(id), scene)
	if !ok {
		t.Fatalf("%s is not in scene %s", id, scene)
	}
	return m.Apply(from)
}

func wantAt(t *testing.T, got, want plane.Point) {
	t.Helper()
	if got.To(want) > near {
		t.Errorf("stands at %v, want %v", got, want)
	}
}

func TestElementWithoutStandsIsInEveryScene(t *testing.T) {
	p := &Plan{Scenes: threeScenes(), Elements: []Element{box("wall", plane.Point{}, plane.Point{X: 2, Y: 1})}}
	got := p.Standings(&p.Elements[0])
	if len(got) != 1 || got[0].Scenes != nil || !got[0].Motion.IsZero() {
		t.Errorf("standings %+v, want one as drawn in all scenes", got)
	}
}

func TestElementTurnsAboutItsAnchorThenShifts(t *testing.T) {
	e := box("sofa", plane.Point{X: 2, Y: 2}, plane.Point{X: 4, Y: 3})
	e.Stands = []Stand{{Scene: "two", Over: 1, Up: -1, Turn: 90}}
	p := &Plan{Scenes: threeScenes(), Elements: []Element{e}}

	wantAt(t, at(t, p, "sofa", "two", plane.Point{X: 3, Y: 2.5}), plane.Point{X: 4, Y: 1.5})
	// A quarter turn counter-clockwise takes the corner at stage left, downstage
	// of the anchor to stage left, upstage of it.
	wantAt(t, at(t, p, "sofa", "two", plane.Point{X: 4, Y: 2}), plane.Point{X: 4.5, Y: 2.5})
	if _, ok := p.Where(p.Element("sofa"), "one"); ok {
		t.Error("an element with stands is in a scene that none of them names")
	}
}

func TestRevolveCarriesByAngleAboutItsCentre(t *testing.T) {
	ring := Element{ID: "ring", Kind: Revolve, Paths: []Path{{Role: Outline, Path: plane.Circle(plane.Point{X: 1, Y: 5}, 3)}}}
	lamp := box("lamp", plane.Point{X: 2.9, Y: 4.9}, plane.Point{X: 3.1, Y: 5.1})
	lamp.Rides = "ring"
	p := &Plan{
		Scenes: threeScenes(), Elements: []Element{ring, lamp},
		Carries: []Carry{{"ring", "two", 90}, {"ring", "three", 450}},
	}
	wantAt(t, at(t, p, "lamp", "one", plane.Point{X: 3, Y: 5}), plane.Point{X: 3, Y: 5})
	wantAt(t, at(t, p, "lamp", "two", plane.Point{X: 3, Y: 5}), plane.Point{X: 1, Y: 7})

	// One and a quarter turns stand where a quarter turn does.
	got := p.Standings(p.Element("lamp"))
	if len(got) != 2 || len(got[1].Scenes) != 2 {
		t.Errorf("standings %+v, want two, the second in two scenes", got)
	}
}

func TestTrackCarriesAlongItsWay(t *testing.T) {
	way := Element{ID: "way", Kind: Track, Paths: []Path{{
		Role: Way, Path: plane.Open(plane.Point{}, plane.Point{X: 4}, plane.Point{X: 4, Y: 3}),
	}}}
	boat := box("boat", plane.Point{X: -1, Y: -1}, plane.Point{X: 1, Y: 1})
	boat.Rides = "way"
	p := &Plan{
		Scenes: threeScenes(), Elements: []Element{way, boat},
		Carries: []Carry{{"way", "one", 2.5}, {"way", "two", 6}, {"way", "three", 99}},
	}
	for _, c := range []struct {
		scene SceneID
		want  plane.Point
	}{
		{"one", plane.Point{X: 2.5}},
		{"two", plane.Point{X: 4, Y: 2}},
		{"three", plane.Point{X: 4, Y: 3}}, // held at the end of the track
	} {
		t.Run(string(c.scene), func(t *testing.T) {
			wantAt(t, at(t, p, "boat", c.scene, plane.Point{}), c.want)
		})
	}
}

func TestCarriersThatRideEachOtherDoNotHang(t *testing.T) {
	a, b := box("a", plane.Point{}, plane.Point{X: 1, Y: 1}), box("b", plane.Point{}, plane.Point{X: 1, Y: 1})
	a.Rides, b.Rides = "b", "a"
	p := &Plan{Scenes: threeScenes(), Elements: []Element{a, b}}
	if got := p.Standings(p.Element("a")); len(got) != 1 {
		t.Errorf("standings %+v, want one", got)
	}
}

func TestAnchorOfArcsUsesTheWholeArc(t *testing.T) {
	half := plane.Path{Vertices: []plane.Vertex{{Point: plane.Point{X: 1}, Bulge: 1}, {Point: plane.Point{X: -1}}}}
	e := Element{Paths: []Path{{Role: Outline, Path: half}}}
	got, ok := e.Anchor()
	if want := (plane.Point{Y: 0.5}); !ok || got.To(want) > near {
		t.Errorf("anchor %v %v, want %v", got, ok, want)
	}
	if _, ok := (&Element{}).Anchor(); ok {
		t.Error("an element without line work has an anchor")
	}
}

func TestPlanWithoutScenesShowsElementsAsDrawn(t *testing.T) {
	e := box("sofa", plane.Point{}, plane.Point{X: 1, Y: 1})
	e.Stands = []Stand{{Scene: "gone", Over: math.Pi}}
	p := &Plan{Elements: []Element{e}}
	if got := p.Standings(&p.Elements[0]); len(got) != 1 || !got[0].Motion.IsZero() {
		t.Errorf("standings %+v, want one as drawn", got)
	}
}
