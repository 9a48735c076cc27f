package crewplace

import (
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Copy returns what is selected in the table that is open, or all of it; of the board, the tasks.
func (p *place) Copy() string {
	switch p.tabs.SelectedIndex() {
	case tabPeople:
		return grid.Copied(peopleColumns(), peopleRows(p.view.P, p.plan), p.people.Selected())
	case tabOrder:
		return grid.Copied(orderColumns(), orderRows(p.view, p.order.walk), p.order.list.Selected())
	case tabTasks:
		return grid.Copied(taskColumns(), taskRows(p.view.P, p.plan), p.tasks.Selected())
	default:
		return grid.Copied(taskColumns(), taskRows(p.view.P, p.plan), p.chosenTasks())
	}
}

func (p *place) chosenTasks() []string {
	if p.view.Selected.Kind == desk.Task {
		return p.view.Selected.IDs
	}
	return nil
}
