// Package crewplace is the place in which prep week is staffed: who does what when, what limits the end of work, and in
// which order the marks are placed.
package crewplace

import (
	"context"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// place is the place Crew.
type place struct {
	desk *desk.Desk
	now  func() time.Time
	run  func(doing string, work func(context.Context) error, done func(error)) // long work; Desk.Run
	view *desk.View

	of   *prep.Production // what the plan belongs to, and when
	on   time.Time
	plan prep.CrewPlan

	tabs   *container.AppTabs
	days   *daysTab
	order  *orderTab
	tasks  *grid.Grid
	people *grid.Grid
}

var (
	_ desk.Place   = (*place)(nil)
	_ desk.Zoomer  = (*place)(nil)
	_ desk.Finder  = (*place)(nil)
	_ desk.Adder   = (*place)(nil)
	_ desk.Remover = (*place)(nil)
	_ desk.Copier  = (*place)(nil)
)

// The tabs, in their order.
const (
	tabDays = iota
	tabTasks
	tabPeople
	tabOrder
)

// New builds the place.
func New(d *desk.Desk) desk.Place { return newPlace(d, time.Now) }

func newPlace(d *desk.Desk, now func() time.Time) *place {
	p := &place{desk: d, now: now, run: d.Run}
	p.tasks, p.people = p.newTasks(), p.newPeople()
	p.days = newDaysTab(p)
	p.order = newOrderTab(p)
	p.tabs = container.NewAppTabs(
		container.NewTabItem("The days", p.days.content),
		container.NewTabItem("Tasks", p.tasks),
		container.NewTabItem("People", p.people),
		container.NewTabItem("Order of placing", p.order.content),
	)
	p.tabs.OnSelected = func(*container.TabItem) {
		if p.view != nil {
			p.Show(p.view)
		}
	}
	return p
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Crew }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.tabs }

// Show sets the tab that is open from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	p.reckon(v)
	switch p.tabs.SelectedIndex() {
	case tabDays:
		p.days.show(v, p.plan)
	case tabTasks:
		p.tasks.SetChoices(colFloor, floorNames(v.P))
		p.tasks.SetRows(taskRows(v.P, p.plan))
		follow(p.tasks, v.Selected, desk.Task)
	case tabPeople:
		p.people.SetRows(peopleRows(v.P, p.plan))
		follow(p.people, v.Selected, desk.Person)
	case tabOrder:
		p.order.show(v)
	}
}

// reckon plans the work once for every snapshot and half hour.
func (p *place) reckon(v *desk.View) {
	now := p.now().Truncate(30 * time.Minute)
	if p.of == v.P && p.on.Equal(now) && v.P != nil {
		return
	}
	p.of, p.on = v.P, now
	p.plan = prep.Schedule(v.P, prep.QuantitiesOf(v.P, v.Work), p.now())
}

// follow marks in a table what is selected elsewhere.
func follow(g *grid.Grid, s desk.Selection, kind desk.Kind) {
	if s.Kind == kind {
		g.Follow(s.IDs...)
	}
}

func (p *place) pickTask(id string) { p.desk.Select(desk.Select(desk.Task, id)) }

// Zoom and Fit serve the View menu while the order of placing is open.
func (p *place) Zoom(by float64) { p.order.canvas.Zoom(by) }
func (p *place) Fit()            { p.order.canvas.Fit() }

// Find looks for a row in the table that is open; from the board it opens the tasks.
func (p *place) Find() {
	switch p.tabs.SelectedIndex() {
	case tabDays:
		p.tabs.SelectIndex(tabTasks)
		p.tasks.FocusFilter()
	case tabTasks:
		p.tasks.FocusFilter()
	case tabPeople:
		p.people.FocusFilter()
	case tabOrder:
		p.order.list.FocusFilter()
	}
}

// Add adds a person where people are listed, else a task.
func (p *place) Add() {
	if p.tabs.SelectedIndex() == tabPeople {
		p.addPerson()
		return
	}
	p.addTask()
}

// Remove deletes the selected tasks or people.
func (p *place) Remove() {
	switch s := p.view.Selected; s.Kind {
	case desk.Task:
		p.deleteTasks(s.IDs)
	case desk.Person:
		p.deletePeople(s.IDs)
	}
}
