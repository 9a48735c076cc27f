package weekplace

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
)

// linkTo says where a line leads.
func linkTo(place desk.Name) string {
	if place == desk.Week {
		return "Set the dates"
	}
	return "Go to " + string(place)
}

// firstStep words what is done first in a place that has nothing yet, and the place where it is done.
func firstStep(p *prep.Production, place desk.Name) (link string, where desk.Name) {
	noPlan, noFloor := len(p.Plan.Elements) == 0, len(p.Floors) == 0
	switch place {
	case desk.Plan:
		return "Start the plan", desk.Plan
	case desk.Floors:
		return "Add a floor", desk.Floors
	case desk.Marks, desk.Tape:
		switch {
		case noPlan:
			return "Start the plan", desk.Plan
		case noFloor:
			return "Add a floor", desk.Floors
		}
	case desk.Supplies:
		return "List what you have", desk.Supplies
	case desk.Crew:
		return "Add people and tasks", desk.Crew
	case desk.StandIns:
		return "List the stock", desk.StandIns
	case desk.Transfer:
		return "Add the stage", desk.Floors
	case desk.Paper:
		return "Print the first sheet", desk.Paper
	}
	return linkTo(place), place
}

// targetOf leads to the row with the identifier.
func targetOf(p *prep.Production, place, id string) target {
	t := target{place: desk.Name(place)}
	if kind := kindOf(p, t.place, id); kind != desk.Nothing {
		t.what = desk.Select(kind, id)
	}
	return t
}

// kindOf tells what sort of thing has the identifier; Nothing when it is not known.
func kindOf(p *prep.Production, place desk.Name, id string) desk.Kind {
	switch {
	case id == "":
		return desk.Nothing
	case place == desk.Marks:
		return desk.Mark
	case p.Plan.Element(plan.ElementID(id)) != nil:
		return desk.Element
	case p.Floor(floor.ID(id)) != nil:
		return desk.Floor
	case p.Stock(plan.StockID(id)) != nil:
		return desk.Stock
	case p.Object(id) != nil:
		return desk.Object
	case p.Plan.Level(plan.LevelID(id)) != nil:
		return desk.Level
	}
	if _, kind, ok := desk.InRoom(p, id); ok {
		return kind
	}
	for _, t := range p.Tasks {
		if t.ID == id {
			return desk.Task
		}
	}
	for _, i := range p.Items {
		if i.ID == id {
			return desk.Item
		}
	}
	return desk.Nothing
}
