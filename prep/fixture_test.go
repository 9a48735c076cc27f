package prep

import (
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// monday is the first day of prep week in these tests.
var monday = time.Date(2031, 3, 10, 0, 0, 0, 0, time.UTC)

func clock(day int, hour, minute int) time.Time {
	return time.Date(2031, 3, 10+day, hour, minute, 0, 0, time.UTC)
}

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func element(id plan.ElementID, kind plan.Kind, path plane.Path) plan.Element {
	return plan.Element{
		ID: id, Name: "the " + string(id), Kind: kind, Stock: "red", Use: plan.Essential,
		Paths: []plan.Path{{ID: plan.PathID(id + "-p"), Role: plan.Outline, Path: path}},
	}
}

// small is a production with one of everything that refers to something else.
func small() *Production {
	p := &Production{Settings: DefaultSettings()}
	s := &p.Settings
	s.Title, s.PrepStart, s.FirstRehearsal = "The Lamp Room", monday, clock(4, 10, 0)
	p.Plan = plan.Plan{
		Revision: "B", Scale: 48,
		Levels: []plan.Level{{ID: "up", Name: "Upper", Height: 2.4}},
		Scenes: []plan.Scene{{ID: "one", Name: "1.1"}, {ID: "two", Name: "1.2"}},
		Elements: []plan.Element{
			element("wall", plan.Wall, plane.Open(pt(-2, 3), pt(2, 3))),
			element("revolve", plan.Revolve, plane.Circle(pt(0, 2), 1.5)),
			element("stair", plan.Stair, plane.Rectangle(pt(3, 1), pt(4, 3))),
			element("chair", plan.Furniture, plane.Rectangle(pt(0, 1), pt(0.5, 1.5))),
			element("lamp", plan.Furniture, plane.Rectangle(pt(1, 1), pt(1.3, 1.3))),
		},
		Carries: []plan.Carry{{Carrier: "revolve", Scene: "two", Travel: 90}},
	}
	e := p.Plan.Elements
	e[0].Level = "up"
	e[3].Rides = "revolve"
	e[4].Stands = []plan.Stand{{Scene: "two", Over: 0.2}}
	p.Floors = []floor.Floor{
		{ID: "room", Name: "Room", Kind: floor.Room, Rule: floor.AnyTape, Outline: plane.Rectangle(pt(-6, -2), pt(6, 8)),
			Pivots: []floor.Pivot{{ID: "pv1", At: pt(-5, 0)}, {ID: "pv2", At: pt(5, 0)}},
			Treatments: []floor.Treatment{
				{Element: "wall", How: floor.MovedAside, Over: 1, Reason: "column", Decided: floor.Decision{By: "The director"}},
				{Element: "stair", How: floor.LeftOut, Reason: "no room", Decided: floor.Decision{By: "The director"}},
			}},
		{ID: "stage", Name: "Stage", Kind: floor.Stage, Rule: floor.AnyTape, Outline: plane.Rectangle(pt(-9, -2), pt(9, 12)),
			Pivots: []floor.Pivot{{ID: "pv3", At: pt(-5, 0)}, {ID: "pv4", At: pt(5, 0)}}},
	}
	p.DanceLines = []marks.DanceLine{{ID: "dance", Floor: "room", Step: 0.6096, Unit: 0.3048, Reach: 3}}
	p.Issued = []marks.Issued{{Floor: "room", Label: "A"}}
	p.Progress = []marks.Progress{{Floor: "room", Label: "A"}}
	p.Readings = []Reading{{ID: "read1", Floor: "room", From: FirstPivot, To: SecondPivot, Metres: 10, Text: "10 m"}}
	p.Stocks = []supplies.Stock{{ID: "red", Name: "Red cloth", Roll: 50, Cents: 1400, Duty: supplies.Lines},
		{ID: "clear", Name: "Clear vinyl", Roll: 30, Cents: 2600, Duty: supplies.Patches}}
	p.Items = []supplies.Item{{ID: "knife", Name: "Knife", Rule: supplies.Fixed, PerUnit: 1, Cents: 700}}
	p.Orders = []supplies.Order{{ID: "o1", For: "red", Quantity: 1, State: supplies.Planned}, {ID: "o2", For: "knife", Quantity: 1}}
	p.People = []Person{{ID: "ada", Name: "Ada", Hands: true}, {ID: "ben", Name: "Ben", Hands: true}, {ID: "cy", Name: "Cy"}}
	p.Tasks = []Task{
		{ID: "clean", Name: "Clean the floor", Count: ByHours, Hours: 1, Hands: 1},
		{ID: "place", Name: "Place the marks", Count: ByMarks, Floor: "room", Hands: 2, After: []string{"clean"}, People: []string{"ada"}},
		{ID: "lay", Name: "Lay the tape", Count: ByTape, Floor: "room", Hands: 2, After: []string{"place"}},
	}
	p.Objects = []Object{{ID: "block", Name: "Block", Count: 1, Ballast: true}}
	p.StandIns = []StandIn{{ID: "s1", Element: "chair", Object: "block", Number: 1, State: Asked},
		{ID: "s2", Element: "lamp", Scene: "two", Object: "block", Number: 1, State: InRoom}}
	p.Notes = []Note{{ID: "n1", Element: "wall", Text: "Is it real there?", Owner: "Ada", Open: true}, {ID: "n2", Element: "chair", Text: "Settled"}}
	p.Moves = []Move{{ID: "m1", Floor: "room", Element: "lamp", Scene: "two", Over: 0.3, Reason: "sight lines", By: "Ada", On: monday}}
	p.Printings = []Printing{{Sheet: "floor plan", Floor: "room", On: monday}}
	for _, row := range []string{"wall", "wall-p", "room", "pv1", "dance", "red", "knife", "ada", "clean", "block", "s1", "n1", "o1", "one", "up"} {
		p.Typed = append(p.Typed, Typed{Row: row, Column: "x", Text: "1'"})
	}
	return p
}

// worker computes floors and keeps what it has computed.
func worker(p *Production) func(floor.ID) *FloorWork {
	done := map[floor.ID]*FloorWork{}
	return func(id floor.ID) *FloorWork {
		if _, ok := done[id]; !ok {
			done[id] = Work(p, id, "")
		}
		return done[id]
	}
}
