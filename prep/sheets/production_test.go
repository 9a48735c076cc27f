package sheets

import (
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func ft(n float64) float64 { return n * length.Foot }

func at(over, up float64) plane.Point { return plane.Point{X: ft(over), Y: ft(up)} }

func box(over, up, w, d float64) plane.Path {
	return plane.Rectangle(at(over, up), at(over+w, up+d))
}

// printed is when the sheets of the tests are printed.
var printed = time.Date(2031, time.March, 3, 9, 30, 0, 0, time.UTC)

// rich is an invented production with something for every sheet.
func rich() *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	s := &p.Settings
	s.Title, s.Company, s.Contact = "The Lantern House", "Millpond Playhouse", "Robin Marsh, production stage manager, 555 0134"
	s.PrepStart, s.FirstRehearsal = printed, printed.AddDate(0, 0, 7)
	s.BudgetCents = 30000
	p.Plan = richPlan()
	p.Floors = []floor.Floor{richRoom(), {ID: "stage", Name: "Millpond stage", Kind: floor.Stage, Outline: box(-30, -6, 60, 40)}}
	p.DanceLines = []marks.DanceLine{{ID: "d1", Floor: "room", Name: "Apron numbers", Up: ft(-2), Step: ft(2), Unit: length.Foot, Reach: ft(16), Habit: marks.Numbers}}
	p.Progress = []marks.Progress{{Floor: "room", Label: "A", Placed: floor.Decision{By: "Kit", On: printed}, Checked: floor.Decision{By: "Kit", On: printed}}}
	richSupplies(p)
	richPeople(p)
	p.Objects = []prep.Object{
		{ID: "o1", Name: "Music stand", Kind: "music stand", Count: 4, Source: "rehearsal stock"},
		{ID: "o2", Name: "Flat on a rack", Kind: "flat on a rack", Count: 2, Source: "shop", Ballast: true},
	}
	p.StandIns = []prep.StandIn{
		{ID: "s1", Element: "door", Object: "o1", Number: 2, State: prep.Confirmed},
		{ID: "s2", Element: "table", Scene: "1.2", Object: "o2", Number: 1, State: prep.Asked, Note: "ask the shop on Monday"},
		{ID: "s3", Element: "bench", Scene: "1.2", State: prep.Wanted},
	}
	p.Notes = []prep.Note{
		{ID: "n1", Element: "stair", Text: "The third tread creaks: is it played?", Owner: "director", Open: true, On: printed},
		{ID: "n2", Text: "Crossover is behind the cyclorama.", Owner: "stage manager", On: printed},
	}
	return p
}

func richPlan() plan.Plan {
	element := func(id, name string, k plan.Kind, stock plan.StockID, paths ...plan.Path) plan.Element {
		return plan.Element{ID: plan.ElementID(id), Name: name, Kind: k, Stock: stock, Use: plan.Essential, Paths: paths}
	}
	line := func(id string, r plan.Role, path plane.Path) plan.Path {
		return plan.Path{ID: plan.PathID(id), Role: r, Path: path}
	}
	arc := func(a, b plane.Point, bulge float64) plane.Path {
		return plane.Path{Vertices: []plane.Vertex{{Point: a, Bulge: bulge}, {Point: b}}}
	}
	wall := element("wall", "Kitchen wall", plan.Wall, "red",
		line("p1", plan.Outline, plane.Open(at(-12, 4), at(-10, 12), at(-2, 12))),
		line("p2", plan.Outline, plane.Open(at(1, 12), at(10, 12), at(12, 4))))
	door := element("door", "Kitchen door", plan.Door, "yellow",
		line("p3", plan.Outline, plane.Open(at(-2, 12), at(1, 12))),
		line("p4", plan.Swing, arc(at(1, 12), at(-2, 15), 0.41421356)))
	platform := element("platform", "Landing", plan.Platform, "blue", line("p5", plan.Outline, box(-14, 14, 10, 5)))
	platform.Level = "upper"
	stair := element("stair", "Main stair", plan.Stair, "blue",
		line("p6", plan.Outline, box(-4, 15, 6, 3)), line("p7", plan.Inner, plane.Open(at(-2, 15), at(-2, 18))),
		line("p8", plan.Inner, plane.Open(at(0, 15), at(0, 18))))
	revolve := element("revolve", "Revolve", plan.Revolve, "green", line("p9", plan.Outline, plane.Circle(at(0, 7), ft(4))))
	escape := element("escape", "Escape stair", plan.EscapeStair, "blue", line("p10", plan.Outline, box(14, 14, 8, 3)))
	escape.Use = plan.Seen
	apron := element("apron", "Apron edge", plan.ApronEdge, "white", line("p11", plan.Outline, arc(at(-18, -3), at(18, -3), 0.1)))
	table := element("table", "Kitchen table", plan.Furniture, "", line("p12", plan.Outline, box(-3, 6, 5, 2.5)))
	bench := element("bench", "Bench", plan.Furniture, "", line("p13", plan.Outline, box(5, 5, 4, 1.2)))
	trap := element("trap", "Cellar trap", plan.Trap, "white", line("p14", plan.Outline, box(6, 8, 3, 3)))
	return plan.Plan{
		Title: "Ground plan 3", Revision: "C of 24 February", Scale: 48, Baseline: plan.PlasterLine,
		Levels:   []plan.Level{{ID: "upper", Name: "Upper floor", Height: 2.7}},
		Scenes:   []plan.Scene{{ID: "1.1", Name: "1.1 The yard"}, {ID: "1.2", Name: "1.2 The kitchen"}},
		Elements: []plan.Element{wall, door, platform, stair, revolve, escape, apron, table, bench, trap},
	}
}

func richRoom() floor.Floor {
	return floor.Floor{
		ID: "room", Name: "Weaver's Hall, studio 2", Kind: floor.Room, Surface: "sprung timber", Rule: floor.SomeTapes, Side: floor.Outside,
		Outline:    plane.Closed(at(-20, -10), at(19, -10.5), at(18.5, 20), at(-20.4, 20.3)),
		Placement:  plane.Motion{},
		Obstacles:  []floor.Obstacle{{ID: "c1", Name: "Column", Kind: "column", Shape: box(12.5, 9, 1.2, 1.2)}},
		KeepClears: []floor.KeepClear{{ID: "k1", Name: "North exit", Kind: "exit", Shape: box(13, -10, 5, 6)}, {ID: "k2", Name: "Director's table", Kind: "front table", Shape: box(-5, -9.5, 10, 4)}},
		Pivots:     []floor.Pivot{{ID: "v1", Name: "south-west corner, skirting", At: at(-19.5, -3)}, {ID: "v2", Name: "radiator pipe, foot", At: at(18, -3)}},
		Treatments: []floor.Treatment{
			{Element: "escape", How: floor.LeftOut, Reason: "nobody uses it"},
			{Element: "stair", How: floor.OutlineOnly, Decided: floor.Decision{By: "director", On: printed}},
			{Element: "trap", How: floor.MovedAside, Over: ft(1), Reason: "the column stands there"},
		},
	}
}

func richSupplies(p *prep.Production) {
	stock := func(id, name, colour string, shelf float64, duty supplies.Duty) supplies.Stock {
		return supplies.Stock{ID: plan.StockID(id), Name: name, Material: "cloth", Colour: colour, Width: length.Inch, Roll: ft(150), Cents: 1295, Shelf: shelf, LeadDays: 3, Supplier: "any", Duty: duty}
	}
	p.Stocks = []supplies.Stock{
		stock("red", "Red, 1 in cloth", "red", 0.5, supplies.Lines), stock("blue", "Blue, 1 in cloth", "blue", 0, supplies.Lines),
		stock("yellow", "Yellow, 1/2 in cloth", "yellow", 1, supplies.Lines), stock("green", "Green, 1 in cloth", "green", 0, supplies.Lines),
		stock("white", "1 in paper", "white", 2, supplies.Tabs), stock("clear", "Clear vinyl, 2 in", "clear", 0.25, supplies.Patches),
		stock("pink", "Spike, 1/2 in", "pink", 1, supplies.Spikes), stock("num", "Number tape", "black", 0, supplies.Figures),
	}
	p.Items = []supplies.Item{
		{ID: "i1", Name: "100 ft tape measure", Group: "measuring", Rule: supplies.PerTape, PerUnit: 1, Shelf: 1, Cents: 2400},
		{ID: "i2", Name: "Chalk line", Group: "measuring", Rule: supplies.Fixed, Least: 1, PerUnit: 1, Shelf: 1, Out: 1},
		{ID: "i3", Name: "Knee pads, pair", Group: "protection", Rule: supplies.PerPerson, PerUnit: 1, Shelf: 2, Note: "the good ones"},
	}
}

func richPeople(p *prep.Production) {
	p.People = []prep.Person{
		{ID: "a", Name: "Robin Marsh", Role: "production stage manager", Phone: "555 0134", Hands: true},
		{ID: "b", Name: "Ines Holt", Role: "assistant stage manager", Hands: true},
		{ID: "c", Name: "Kit Barrow", Role: "assistant stage manager", Hands: true},
		{ID: "d", Name: "Sam Vale", Role: "dance captain"},
	}
	p.Tasks = []prep.Task{
		{ID: "t1", Name: "Measure the room", Count: prep.ByHours, Hours: 1.5, Hands: 2},
		{ID: "t2", Name: "Place the marks", Count: prep.ByMarks, Floor: "room", Hands: 2, After: []string{"t1"}},
		{ID: "t3", Name: "Check measures", Count: prep.ByChecks, Floor: "room", Hands: 2, After: []string{"t2"}},
		{ID: "t4", Name: "Lay the tape", Count: prep.ByTape, Floor: "room", Hands: 3, After: []string{"t3"}, Due: printed.AddDate(0, 0, 3)},
		{ID: "t5", Name: "Order tape", Count: prep.ByHours, Hours: 0.5, Hands: 1, People: []string{"a"}, Due: printed.AddDate(0, 0, 1)},
		{ID: "t6", Name: "Show the room to the company", Count: prep.ByHours, Hours: 1, Hands: 1, People: []string{"d"}, After: []string{"t4"}},
	}
}

func richJob(size PageSize) Job {
	return Job{P: rich(), Floor: "room", Size: size, Printed: printed, By: "Robin"}
}
