package plan

import (
	"math"
	"testing"

	"groundrow/tapeout/plane"
)

func TestRevolveStopsByAngleAboutItsCentre(t *testing.T) {
	ring := Element{ID: "ring", Kind: Revolve, Paths: []Path{{Role: Outline, Path: plane.Circle(plane.Point{X: 1, Y: 5}, 2)}}}
	p := &Plan{
		Scenes: threeScenes(), Elements: []Element{ring},
		Carries: []Carry{{"ring", "two", 90}, {"ring", "three", -270}},
	}
	got := p.Stations(&p.Elements[0])
	if len(got) != 2 {
		t.Fatalf("stations %+v, want the revolve as drawn and at a quarter turn", got)
	}
	// Straight downstage as drawn; a quarter turn counter-clockwise brings it to stage left.
	wantAt(t, got[0].At, plane.Point{X: 1, Y: 3})
	wantAt(t, got[1].At, plane.Point{X: 3, Y: 5})
	if !got[0].Start || len(got[0].Scenes) != 1 || len(got[1].Scenes) != 2 || got[1].Travel != 90 {
		t.Errorf("stations %+v, want scene one as drawn and two and three at 90°", got)
	}
	for _, s := range got {
		// The point lies on the rim, and its tick along the radius.
		if r := s.At.Sub(s.Centre); math.Abs(r.Len()-2) > near || math.Abs(r.Cross(s.Across)) > near {
			t.Errorf("station %+v is not on the rim", s)
		}
	}
	p.Carries = nil
	if got := p.Stations(&p.Elements[0]); got != nil {
		t.Errorf("a revolve that never turns has stations %+v", got)
	}
}

func TestTrackHasStartStopAndWhatScenesUse(t *testing.T) {
	way := Element{ID: "way", Kind: Track, Paths: []Path{{
		Role: Way, Path: plane.Open(plane.Point{}, plane.Point{X: 4}, plane.Point{X: 4, Y: 3}),
	}}}
	boat := box("boat", plane.Point{X: -1, Y: -1}, plane.Point{X: 1, Y: 1})
	boat.Rides = "way"
	boat.Stands = []Stand{{Scene: "one"}, {Scene: "three"}}
	p := &Plan{
		Scenes: threeScenes(), Elements: []Element{way, boat},
		Carries: []Carry{{"way", "one", 5}, {"way", "three", 99}},
	}
	got := p.Stations(&p.Elements[0])
	if len(got) != 3 {
		t.Fatalf("stations %+v, want start, five metres on, and stop", got)
	}
	wantAt(t, got[0].At, plane.Point{})
	wantAt(t, got[1].At, plane.Point{X: 4, Y: 1})
	wantAt(t, got[2].At, plane.Point{X: 4, Y: 3})
	if !got[0].Start || len(got[0].Scenes) != 0 || !got[2].Stop || len(got[2].Scenes) != 1 {
		t.Errorf("stations %+v, want an unused start and a stop that scene three uses", got)
	}
	if across := got[1].Across; math.Abs(across.Y) > near || math.Abs(math.Abs(across.X)-1) > near {
		t.Errorf("the tick lies along %v, want it square to the way", across)
	}
}

// What rides a revolve and the station of the revolve turn together.
func TestStationTurnsWithItsRiders(t *testing.T) {
	ring := Element{ID: "ring", Kind: Revolve, Paths: []Path{{Role: Outline, Path: plane.Circle(plane.Point{X: 1, Y: 5}, 2)}}}
	nail := box("nail", plane.Point{X: 1, Y: 3}, plane.Point{X: 1, Y: 3})
	nail.Rides = "ring"
	p := &Plan{Scenes: threeScenes(), Elements: []Element{ring, nail}, Carries: []Carry{{"ring", "two", 37.5}, {"ring", "three", 211}}}
	stations := p.Stations(&p.Elements[0])
	if len(stations) != 3 {
		t.Fatalf("%d stations, want one for each scene", len(stations))
	}
	for _, s := range stations {
		wantAt(t, at(t, p, "nail", s.Scenes[0], plane.Point{X: 1, Y: 3}), s.At)
	}
}
