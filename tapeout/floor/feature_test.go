package floor

import (
	"math"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func door(opens Opens, hinge, jamb plane.Point) Feature {
	return Feature{ID: "door", Name: "Yard door", Kind: RoomDoor, Opens: opens, Shape: plane.Open(hinge, jamb)}
}

// The leaf is 0.9 m wide, so the quarter circle is π·0.9²/4 and lies inside the wall
// that the door is in, whichever jamb the hinge is on.
func TestDoorSweepsAQuarterCircleIntoTheRoom(t *testing.T) {
	f := room()
	for name, d := range map[string]Feature{
		"east wall, hinge below":  door(OpensIn, plane.Point{X: 10, Y: 2}, plane.Point{X: 10, Y: 2.9}),
		"east wall, hinge above":  door(OpensIn, plane.Point{X: 10, Y: 2.9}, plane.Point{X: 10, Y: 2}),
		"south wall, hinge right": door(OpensBoth, plane.Point{X: 4.9}, plane.Point{X: 4}),
		"a hand off its wall":     door(OpensIn, plane.Point{X: 10.1, Y: 2}, plane.Point{X: 10.1, Y: 2.9}),
	} {
		t.Run(name, func(t *testing.T) {
			swing, ok := f.Swing(&d)
			if !ok {
				t.Fatal("no swing")
			}
			wantLength(t, "area of the swing", swing.Area(), math.Pi*0.81/4)
			if c, _ := swing.Centroid(); !f.Outline.Contains(c, 0) {
				t.Errorf("it swings out of the room, round %v", c)
			}
			if at, _ := f.Before(&d); math.Abs(at.To(d.Shape.Vertices[0].Point)-0.45*math.Sqrt2) > 1e-9 || !f.Outline.Contains(at, 0) {
				t.Errorf("one stands before it at %v", at)
			}
		})
	}
	for _, opens := range []Opens{OpensOut, Slides} {
		d := door(opens, plane.Point{X: 10, Y: 2}, plane.Point{X: 10, Y: 2.9})
		if _, ok := f.Swing(&d); ok {
			t.Errorf("a door that %s sweeps the room", opens)
		}
	}
	for _, none := range []Feature{{Kind: RoomDoor}, door(OpensIn, plane.Point{X: 1}, plane.Point{X: 1}), {Kind: RoomWindow, Shape: plane.Open(plane.Point{}, plane.Point{X: 1})}} {
		if _, ok := f.Swing(&none); ok {
			t.Errorf("%+v sweeps the room", none)
		}
	}
}

func TestDoorIsKeptClearByItself(t *testing.T) {
	f := room()
	f.KeepClears = []KeepClear{{ID: "k", Name: "Front table", Kind: "front table", Shape: plane.Rectangle(plane.Point{}, plane.Point{X: 1, Y: 1})}}
	f.Features = []Feature{door(OpensIn, plane.Point{X: 10, Y: 2}, plane.Point{X: 10, Y: 2.9}), {ID: "w", Kind: RoomWindow}}
	got := f.Clears()
	if len(got) != 2 || got[1].ID != "door" || len(f.KeepClears) != 1 {
		t.Errorf("kept clear: %+v", got)
	}
}

// The front is to the south: a mirror there is faced, one in the north is behind, one
// in the east is at the side.
func TestMirrorsAreFacedOrNot(t *testing.T) {
	f := room()
	mirror := func(id string, from, to plane.Point) Feature {
		return Feature{ID: id, Kind: WallMirror, Shape: plane.Open(from, to)}
	}
	f.Features = []Feature{
		mirror("south", plane.Point{X: 2}, plane.Point{X: 8}),
		mirror("north", plane.Point{X: 2, Y: 8}, plane.Point{X: 8, Y: 8}),
		mirror("east", plane.Point{X: 10, Y: 2}, plane.Point{X: 10, Y: 6}),
	}
	f.Obstacles = []Obstacle{{ID: "standing", Kind: "mirror", Shape: plane.Rectangle(plane.Point{X: 4, Y: 0.2}, plane.Point{X: 6, Y: 0.4})}}
	seen := map[string][2]bool{}
	for _, m := range f.Mirrors() {
		seen[m.ID] = [2]bool{m.Faced(), m.Behind()}
	}
	want := map[string][2]bool{"south": {true, false}, "north": {false, true}, "east": {false, false}, "standing": {true, false}}
	for id, w := range want {
		if seen[id] != w {
			t.Errorf("%s: faced, behind %v, want %v", id, seen[id], w)
		}
	}
	f.Placement.Turn = math.Pi // now the front is to the north
	for _, m := range f.Mirrors() {
		if m.ID == "north" && !m.Faced() || m.ID == "south" && !m.Behind() {
			t.Errorf("turned round, %s is at %.0f°", m.ID, m.Ahead*180/math.Pi)
		}
	}
}

// Joints half a metre apart along a room of ten by eight: 17 of ten metres along it, 21
// of eight across it.
func TestBoardsLieWithinTheWalls(t *testing.T) {
	f := room()
	f.BoardModule = 0.5
	for _, c := range []struct {
		direction, least float64
		n                int
		length           float64
	}{{0, 0.01, 17, 170}, {90, 0.01, 21, 168}, {0, 0.6, 9, 90}, {0, 1.5, 5, 50}} {
		f.BoardDirection = c.direction
		joints := f.Boards(c.least)
		sum := 0.0
		for _, e := range joints {
			sum += e.Length()
		}
		if len(joints) != c.n || math.Abs(sum-c.length) > 0.01 {
			t.Errorf("%v°, at least %v m: %d joints of %.3f m, want %d of %.0f m", c.direction, c.least, len(joints), sum, c.n, c.length)
		}
	}
	for name, g := range map[string]Floor{
		"no module": {Outline: f.Outline}, "no walls": {BoardModule: 0.1},
		"walls beyond reason": {BoardModule: 0.001, Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 1e9, Y: 1e9})},
	} {
		if joints := g.Boards(0.0001); len(joints) != 0 {
			t.Errorf("%s: %d joints", name, len(joints))
		}
	}
}

func TestWhatOneWalksRound(t *testing.T) {
	f := room()
	up := wall("up", plane.Point{X: -1, Y: 3}, plane.Point{X: 1, Y: 3})
	up.Level = "upper"
	aside := up
	aside.ID = "aside"
	leaf := wall("leaf", plane.Point{X: 1, Y: 1}, plane.Point{X: 2, Y: 1})
	leaf.Kind = plan.Door
	screen := wall("screen", plane.Point{X: -2, Y: 2}, plane.Point{X: -1, Y: 2})
	screen.Stands = []plan.Stand{{Scene: "one", Over: 1}}
	pl := &plan.Plan{
		Levels:   []plan.Level{{ID: "upper", Height: 2.6}},
		Scenes:   []plan.Scene{{ID: "one"}, {ID: "two"}},
		Elements: []plan.Element{wall("w", plane.Point{}, plane.Point{Y: 1}), up, aside, leaf, screen},
	}
	f.Treatments = []Treatment{{Element: "aside", How: MovedAside, Over: 2}}
	names := func(scene plan.SceneID) (s string) {
		for _, x := range f.Solids(pl, scene) {
			s += string(x.Element) + " "
		}
		return s
	}
	if got := names("one"); got != "w aside screen " {
		t.Errorf("in the first scene one walks round %q", got)
	}
	if got := names("two"); got != "w aside " {
		t.Errorf("in the second scene one walks round %q", got)
	}
	at := f.Solids(pl, "one")[2].Path.Vertices[0].Point
	if want := (plane.Point{X: 4, Y: 4}); at.To(want) > 1e-9 {
		t.Errorf("the screen stands at %v on the floor, want %v", at, want)
	}
}

func TestClothLiesTheSameWayEachTime(t *testing.T) {
	f := room() // the centre line runs along X = 5
	got := f.Registrations()
	if len(got) != 6 {
		t.Fatalf("%d marks, want four corners and two ends of the centre line: %+v", len(got), got)
	}
	if down, up := got[4], got[5]; down.At.To(plane.Point{Y: -2}) > 1e-9 || up.At.To(plane.Point{Y: 6}) > 1e-9 || down.Double || !up.Double {
		t.Errorf("the centre line is marked at %+v and %+v", down, up)
	}
	round := &Floor{Outline: plane.Circle(plane.Point{}, 3)}
	if got := round.Registrations(); len(got) != 4 {
		t.Errorf("a round cloth has %d marks, want four ticks", len(got))
	}
	if got := (&Floor{}).Registrations(); got != nil {
		t.Errorf("a cloth without edges has marks %+v", got)
	}
}
