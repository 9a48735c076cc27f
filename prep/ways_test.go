package prep

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// hallway is a room with a wall across it that leaves one metre at stage left, a
// platform that narrows that to 0.7 m in the second scene, and a door in the east.
func hallway() *Production {
	p := &Production{Settings: DefaultSettings()}
	p.Settings.Unit, p.Settings.Step = "m", 0.005
	box := element("box", plan.Platform, plane.Rectangle(pt(5.3, 3.5), pt(7, 4.5)))
	box.Stands = []plan.Stand{{Scene: "two"}}
	p.Plan = plan.Plan{
		Scale: 50, Scenes: []plan.Scene{{ID: "one", Name: "1.1"}, {ID: "two", Name: "1.2"}},
		Elements: []plan.Element{element("wall", plan.Wall, plane.Open(pt(-6, 4), pt(5, 4))), box},
	}
	p.Floors = []floor.Floor{{
		ID: "room", Name: "Room", Kind: floor.Room, Rule: floor.AnyTape, Outline: plane.Rectangle(pt(-6, 0), pt(6, 8)),
		Features: []floor.Feature{{ID: "door", Name: "East door", Kind: floor.RoomDoor, Opens: floor.OpensOut, Shape: plane.Open(pt(6, 1), pt(6, 1.9))}},
		Ways: []floor.Way{
			{ID: "out", Name: "Way out", From: floor.Spot{At: pt(-4, 6)}, To: floor.Spot{Thing: "door"}, Width: 0.85},
		},
	}}
	return p
}

func TestWayIsFoundSceneByScene(t *testing.T) {
	w := Work(hallway(), "room", "")
	out := w.Ways[0]
	if math.Abs(out.Found.Width-0.3) > 1e-9 || out.Scene != "two" {
		t.Fatalf("narrowest %.6f m in %q, want 0.3 m in the second scene", out.Found.Width, out.Scene)
	}
	first := w.In("one").Ways[0]
	if math.Abs(first.Found.Width-0.9) > 1e-9 || first.Short() {
		t.Errorf("in the first scene %.6f m, want the 0.9 m of the door, which will do", first.Found.Width)
	}
	if path := first.Path(); len(path) < 3 || path[0] != pt(-4, 6) || path[len(path)-1] != first.To.At {
		t.Errorf("drawn along %v", first.Path())
	}
	if got := out.Sentence(hallway()); !strings.Contains(got, "box") || !strings.Contains(got, "in 1.2") || !strings.Contains(got, "0.850 m is required") {
		t.Errorf("said as %q", got)
	}
}

func TestWaysThatDoNotDoAreProblems(t *testing.T) {
	problem := func(p *Production, rule string) (Problem, bool) {
		for _, pr := range Work(p, "room", "").Problems {
			if pr.Rule == rule {
				return pr, true
			}
		}
		return Problem{}, false
	}
	for _, c := range []struct {
		name   string
		change func(*floor.Floor)
		rule   string // empty: none
		says   string
	}{
		{"too narrow", func(*floor.Floor) {}, RuleWay, "0.300 m wide, between"},
		{"just as wide", func(f *floor.Floor) { f.Ways[0].Width = 0.3 }, "", ""},
		{"only measured", func(f *floor.Floor) { f.Ways[0].Width = 0 }, "", ""},
		{"the door is gone", func(f *floor.Floor) { f.Features = nil }, RuleNoWay, "not there any more"},
		{"it begins in an obstacle", func(f *floor.Floor) {
			f.Obstacles = []floor.Obstacle{{ID: "o", Name: "Piano", Shape: plane.Rectangle(pt(-5, 5), pt(-3, 7))}}
		}, RuleNoWay, "Piano"},
		{"to an area that is covered", func(f *floor.Floor) {
			f.KeepClears = []floor.KeepClear{{ID: "k", Name: "Exit", Shape: plane.Rectangle(pt(-3, 1), pt(-2, 2))}}
			f.Obstacles = []floor.Obstacle{{ID: "o", Name: "Chairs", Shape: plane.Rectangle(pt(-4, 0.5), pt(-1, 3))}}
			f.Ways[0].To = floor.Spot{Thing: "k"}
		}, RuleNoWay, "no place to stand"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := hallway()
			c.change(&p.Floors[0])
			for _, rule := range []string{RuleWay, RuleNoWay} {
				pr, found := problem(p, rule)
				if found != (rule == c.rule) {
					t.Errorf("%s: found %v (%s)", rule, found, pr.Sentence())
				}
				if found && (pr.ID != "out" || !strings.Contains(pr.Sentence(), c.says)) {
					t.Errorf("%s says %q", pr.ID, pr.Sentence())
				}
			}
		})
	}
}

func TestElementRoundAWholeAreaIsNamed(t *testing.T) {
	p := hallway()
	f := &p.Floors[0]
	f.KeepClears = []floor.KeepClear{
		{ID: "in", Name: "Exit", Kind: "exit", Shape: plane.Rectangle(pt(5.8, 3.7), pt(6, 4.2))},
		{ID: "off", Name: "Other exit", Kind: "exit", Shape: plane.Rectangle(pt(-6, 0), pt(-5, 1))},
	}
	var got []string
	for _, pr := range Work(p, "room", "").Problems {
		if pr.Rule == RuleKeepClear {
			got = append(got, pr.ID+" on "+pr.Got)
		}
	}
	if len(got) != 1 || got[0] != "box on Exit" {
		t.Errorf("named %v, want the platform on the exit within it", got)
	}
}

func TestDanceLineThroughAnExitIsNamed(t *testing.T) {
	p := small()
	f := p.Floor("room")
	named := func(area plane.Path, kind string) bool {
		f.KeepClears = []floor.KeepClear{{ID: "k", Name: "Exit", Kind: kind, Shape: area}}
		for _, pr := range Work(p, "room", "").Problems {
			if pr.Rule == RuleFigures && pr.ID == "k" {
				return true
			}
		}
		return false
	}
	w := Work(p, "room", "")
	at := f.FloorToDatum().Inverse().Apply(w.Dance[0].At.Towards(w.Dance[1].At, 0.5))
	through := plane.Rectangle(at.Add(pt(-0.1, -0.1)), at.Add(pt(0.1, 0.1)))
	if !named(through, "exit") {
		t.Error("a line between two figures runs through an exit unnamed")
	}
	if named(through, "front table") {
		t.Error("a line beneath the front table is named")
	}
	if named(plane.Rectangle(at.Add(pt(-0.1, 1)), at.Add(pt(0.1, 1.1))), "exit") {
		t.Error("an exit off the line is named")
	}
}

func TestMirrorThatIsFacedIsNamed(t *testing.T) {
	p := small()
	f := p.Floor("room")
	f.Features = []floor.Feature{{ID: "m", Name: "the long mirror", Kind: floor.WallMirror, Shape: plane.Open(pt(-4, -2), pt(4, -2))}}
	has := func() bool {
		for _, pr := range Work(p, "room", "").Problems {
			if pr.Rule == RuleMirror && pr.ID == "m" {
				return true
			}
		}
		return false
	}
	if !has() {
		t.Error("actors face a mirror and nobody says so")
	}
	f.Placement.Turn = math.Pi
	if has() {
		t.Error("a mirror behind the actors is called faced")
	}
}

func TestWaysTooNarrowAreNamedWithWhatIsLeft(t *testing.T) {
	p := hallway()
	if got, want := NarrowWords(p, WaysOf(p, &p.Floors[0])), "Way out: 0.300 m of 0.850 m, "; !strings.HasPrefix(got, want) || !strings.HasSuffix(got, ", in 1.2") {
		t.Errorf("said %q, want it to begin with %q and to name the scene", got, want)
	}
	p.Floors[0].Ways[0].Width = 0.3
	if got := NarrowWords(p, WaysOf(p, &p.Floors[0])); got != "" {
		t.Errorf("a way that is wide enough is named: %q", got)
	}
}
