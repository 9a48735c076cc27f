package crewplace

import (
	"fmt"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

func (p *place) newTasks() *grid.Grid {
	g := grid.New(taskColumns())
	g.SetToolWords("Add a task", "Delete tasks")
	g.SetEmpty("No tasks yet. A task is one piece of the work of prep week: measure the room, place the marks, lay the tape.",
		"List the usual tasks for this floor", p.addUsualTasks)
	g.OnEdit = p.editTask
	g.OnAdd = p.addTask
	g.OnDelete = p.deleteTasks
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Task, ids...)) }
	return g
}

func (p *place) newPeople() *grid.Grid {
	g := grid.New(peopleColumns())
	g.SetToolWords("Add a person", "Take people out")
	g.SetEmpty("Nobody is in the team yet. List who works in prep week, and who of them can kneel, measure and lay tape.",
		"Add the first person", p.addPerson)
	g.OnEdit = func(id string, column int, text string) error {
		label, change := personEdit(p.view.P, id, column, text)
		return p.desk.TryEdit(label, change)
	}
	g.OnAdd = p.addPerson
	g.OnDelete = p.deletePeople
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Person, ids...)) }
	return g
}

func (p *place) editTask(id string, column int, text string) error {
	label, change := taskEdit(p.view.P, id, column, text)
	return p.desk.TryEdit(label, change)
}

// addTask adds a task and opens its name.
func (p *place) addTask() {
	t := newTask(p.view.P)
	if !p.desk.Edit("Add a task", func(pr *prep.Production) error {
		pr.Tasks = append(pr.Tasks, t)
		return nil
	}) {
		return
	}
	p.desk.Select(desk.Select(desk.Task, t.ID))
	if p.tabs.SelectedIndex() == tabDays {
		p.days.form.form.Focus("name")
		return
	}
	p.tabs.SelectIndex(tabTasks)
	p.tasks.Edit(t.ID, colTask)
}

// addUsualTasks lists what the floor that is looked at needs from its measuring to
// the first rehearsal.
func (p *place) addUsualTasks() {
	on := p.view.Floor
	if p.view.P.Floor(on) == nil {
		p.desk.Told("Describe a floor first: the usual tasks are those of one floor")
		return
	}
	if p.desk.Edit("List the usual tasks", func(pr *prep.Production) error {
		pr.AddUsualTasks(on, uuid.NewString)
		return nil
	}) {
		p.tabs.SelectIndex(tabTasks)
	}
}

// addPerson adds a person and opens their name.
func (p *place) addPerson() {
	x := newPerson(p.view.P)
	if !p.desk.Edit("Add a person", func(pr *prep.Production) error {
		pr.People = append(pr.People, x)
		return nil
	}) {
		return
	}
	p.tabs.SelectIndex(tabPeople)
	p.desk.Select(desk.Select(desk.Person, x.ID))
	p.people.Edit(x.ID, colName)
}

func (p *place) deleteTasks(ids []string) {
	label := fmt.Sprintf("Delete %d tasks", len(ids))
	if len(ids) == 1 {
		t := taskOf(p.view.P, ids[0])
		if t == nil {
			return
		}
		label = "Delete the task " + t.Name
	}
	p.desk.Edit(label, func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemoveTask(id)
		}
		return nil
	})
}

// deletePeople takes people out of the team. Those who are named for tasks are asked about first.
func (p *place) deletePeople(ids []string) {
	label, named := fmt.Sprintf("Take %d people out of the team", len(ids)), 0
	for _, id := range ids {
		x := personOf(p.view.P, id)
		if x == nil {
			return
		}
		if len(ids) == 1 {
			label = "Take " + x.Name + " out of the team"
		}
		named += namedIn(p.view.P, id)
	}
	remove := func() {
		p.desk.Edit(label, func(pr *prep.Production) error {
			for _, id := range ids {
				pr.RemovePerson(id)
			}
			return nil
		})
	}
	if named == 0 {
		remove()
		return
	}
	fields.Confirm(p.desk.Window(), label,
		fmt.Sprintf("Tasks ask for them by name %d times; those will take anyone. Undo brings all of it back.", named), "Take out", remove)
}

// namedIn counts the tasks that ask for a person by name.
func namedIn(p *prep.Production, person string) int {
	n := 0
	for _, t := range p.Tasks {
		for _, id := range t.People {
			if id == person {
				n++
			}
		}
	}
	return n
}
