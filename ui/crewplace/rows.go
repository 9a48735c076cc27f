package crewplace

import (
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/grid"
)

// Columns of the table of tasks.
const (
	colTask = iota
	colDone
	colCount
	colFloor
	colAmount
	colHours
	colHands
	colPeople
	colAfter
	colEarliest
	colDue
	colPinned
	colTaskNote
)

// noFloor is how a table offers that a task belongs to no floor.
const noFloor = "no floor"

func taskColumns() []grid.Column {
	when := "30 Nov 10:00"
	return []grid.Column{
		{Title: "Task", Width: 190, Grow: true},
		{Title: "Done", Width: 54, Tick: true},
		{Title: "Counted by", Width: 112, Choices: countNames()},
		{Title: "Floor", Width: 92},
		{Title: "Amount", Width: 90, Right: true, ReadOnly: true},
		{Title: "Time", Width: 60, Right: true, Hint: "hours"},
		{Title: "Hands", Width: 60, Right: true},
		{Title: "People", Width: 98, Hint: "anyone"},
		{Title: "After", Width: 112, Hint: "names, with ; between"},
		{Title: "Earliest", Width: 122, Hint: when},
		{Title: "Due", Width: 122, Hint: when},
		{Title: "Pinned to", Width: 122, Hint: when},
		{Title: "Note", Width: 70},
	}
}

func countNames() []string {
	var out []string
	for _, c := range prep.Counts {
		out = append(out, string(c))
	}
	return out
}

// taskRows shows every task with what the plan makes of it.
func taskRows(p *prep.Production, plan prep.CrewPlan) []grid.Row {
	at := map[string]prep.Assignment{}
	for _, a := range plan.Tasks {
		at[a.Task] = a
	}
	troubles := troublesOf(p, plan)
	rows := make([]grid.Row, 0, len(p.Tasks))
	for _, t := range p.Tasks {
		a, planned := at[t.ID]
		row := grid.Row{ID: t.ID, Dim: t.Done, Problem: troubles[t.ID], Cells: make([]string, colTaskNote+1)}
		c := row.Cells
		c[colTask], c[colCount], c[colFloor], c[colTaskNote] = t.Name, string(countOf(t)), floorName(p, t.Floor), t.Note
		if t.Done {
			c[colDone] = grid.On
		}
		c[colHands] = strconv.Itoa(max(1, t.Hands))
		if planned {
			c[colAmount] = amount(p, a)
		}
		switch {
		case countOf(t) == prep.ByHours:
			c[colHours] = decimal(t.Hours)
		case planned:
			c[colHours] = worked(a.Work)
		}
		c[colPeople], c[colAfter] = peopleOf(p, t), afterOf(p, t)
		c[colEarliest], c[colDue], c[colPinned] = shownMoment(t.Earliest), shownMoment(t.Due), shownMoment(t.Pinned)
		rows = append(rows, row)
	}
	return rows
}

func countOf(t prep.Task) prep.Count {
	if t.Count == "" {
		return prep.ByHours
	}
	return t.Count
}

// amount writes what a task is counted by: "245 marks", "643' of tape"; nothing for typed hours.
func amount(p *prep.Production, a prep.Assignment) string {
	n := strconv.Itoa(int(a.Quantity))
	switch a.Count {
	case prep.ByMarks:
		return n + " marks"
	case prep.ByChecks:
		return n + " checks"
	case prep.ByPatches:
		return n + " patches"
	case prep.ByTape:
		return p.Style().Format(a.Quantity)
	}
	return ""
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// troublesOf gives every task the sentences of what is wrong with it. Of tasks that wait for each other each says so.
func troublesOf(p *prep.Production, plan prep.CrewPlan) map[string]string {
	out := map[string]string{}
	add := func(id, sentence string) { out[id] = strings.TrimSpace(out[id] + " " + sentence) }
	for _, pr := range plan.Problems(p) {
		if pr.Rule != prep.RuleCycle {
			add(pr.ID, pr.Sentence())
			continue
		}
		for _, group := range plan.Cycles {
			if group[0] == pr.ID {
				for _, id := range group {
					add(id, pr.Sentence())
				}
			}
		}
	}
	return out
}

func floorName(p *prep.Production, id floor.ID) string {
	if f := p.Floor(id); f != nil {
		return f.Name
	}
	return ""
}

func floorNames(p *prep.Production) []string {
	out := []string{noFloor}
	for _, f := range p.Floors {
		out = append(out, f.Name)
	}
	return out
}

func taskNames(p *prep.Production) []string {
	out := make([]string, len(p.Tasks))
	for i, t := range p.Tasks {
		out[i] = t.Name
	}
	return out
}

func personNames(p *prep.Production) []string {
	out := make([]string, len(p.People))
	for i, x := range p.People {
		out[i] = x.Name
	}
	return out
}

func peopleOf(p *prep.Production, t prep.Task) string {
	var names []string
	for _, x := range p.People {
		for _, id := range t.People {
			if id == x.ID {
				names = append(names, x.Name)
			}
		}
	}
	return strings.Join(names, between)
}

func afterOf(p *prep.Production, t prep.Task) string {
	var names []string
	for _, id := range t.After {
		if b := taskOf(p, id); b != nil {
			names = append(names, b.Name)
		}
	}
	return strings.Join(names, between)
}

func taskOf(p *prep.Production, id string) *prep.Task {
	for i := range p.Tasks {
		if p.Tasks[i].ID == id {
			return &p.Tasks[i]
		}
	}
	return nil
}

func personOf(p *prep.Production, id string) *prep.Person {
	for i := range p.People {
		if p.People[i].ID == id {
			return &p.People[i]
		}
	}
	return nil
}

// Columns of the table of people.
const (
	colName = iota
	colRole
	colKneels
	colPhone
	colWork
	colNote
)

func peopleColumns() []grid.Column {
	return []grid.Column{
		{Title: "Name", Width: 200},
		{Title: "Role", Width: 220},
		{Title: "Hands on the floor", Width: 130, Tick: true},
		{Title: "Phone", Width: 150},
		{Title: "Work planned", Width: 110, Right: true, ReadOnly: true},
		{Title: "Note", Width: 240, Grow: true},
	}
}

func peopleRows(p *prep.Production, plan prep.CrewPlan) []grid.Row {
	rows := make([]grid.Row, 0, len(p.People))
	for _, x := range p.People {
		row := grid.Row{ID: x.ID, Cells: []string{x.Name, x.Role, "", x.Phone, worked(workOf(plan, x.ID)), x.Note}}
		if x.Hands {
			row.Cells[colKneels] = grid.On
		}
		rows = append(rows, row)
	}
	return rows
}
