package crewplace

import (
	"slices"

	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// copied writes the titles and the selected rows as tab-separated text; all rows when none is selected.
func copied(columns []grid.Column, rows []grid.Row, selected []string) string {
	if len(rows) == 0 {
		return ""
	}
	var titles []string
	for _, c := range columns {
		titles = append(titles, c.Title)
	}
	cells := [][]string{titles}
	for _, r := range rows {
		if len(selected) == 0 || slices.Contains(selected, r.ID) {
			cells = append(cells, r.Cells)
		}
	}
	return grid.Text(cells)
}

// Copy returns what is selected in the table that is open, or all of it; of the board, the tasks.
func (p *place) Copy() string {
	switch p.tabs.SelectedIndex() {
	case tabPeople:
		return copied(peopleColumns(), peopleRows(p.view.P, p.plan), p.people.Selected())
	case tabOrder:
		return copied(orderColumns(), orderRows(p.view, p.order.walk), p.order.list.Selected())
	case tabTasks:
		return copied(taskColumns(), taskRows(p.view.P, p.plan), p.tasks.Selected())
	default:
		return copied(taskColumns(), taskRows(p.view.P, p.plan), p.chosenTasks())
	}
}

func (p *place) chosenTasks() []string {
	if p.view.Selected.Kind == desk.Task {
		return p.view.Selected.IDs
	}
	return nil
}
