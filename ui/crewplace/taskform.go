package crewplace

import (
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// taskForm shows the selected task with everything that can be said of it.
type taskForm struct {
	place *place
	id    string
	whole *fyne.Container
	none  fyne.CanvasObject
	form  *fields.Form

	name, note            *fields.Text
	done                  *fields.Tick
	count, floor          *fields.Choice
	hours                 *fields.Decimal
	hands                 *fields.Whole
	earliest, due, pinned *fields.Date
	people, after         *fields.Multi
	when                  *widget.Label
	trouble               *fields.Banner
}

func newTaskForm(p *place) *taskForm {
	f := &taskForm{place: p, form: fields.NewForm(), when: widget.NewLabel(""), trouble: fields.NewBanner(fields.Warning, "", "", nil)}
	f.when.Wrapping = fyne.TextWrapWord
	f.build()
	words := widget.NewLabel("No task is selected. Click a bar to see its task here and change it, or add one.")
	words.Wrapping = fyne.TextWrapWord
	f.none = container.NewVBox(words, container.NewHBox(fields.NewButton("Add a task", p.addTask)))
	f.whole = container.NewStack(f.none)
	return f
}

func (f *taskForm) build() {
	near := func() time.Time { return nearOf(f.place.desk.View()) }
	f.name, f.note = fields.NewText(), fields.NewMemo(3)
	f.done = fields.NewTick("done")
	f.count, f.floor = fields.NewChoice(countNames()...), fields.NewChoice()
	f.hours = fields.NewDecimal("hours", 0, mostHours)
	f.hands = fields.NewWhole("people at once", 1, mostHands)
	f.earliest, f.due, f.pinned = fields.NewDateTime(near), fields.NewDateTime(near), fields.NewDateTime(near)
	for _, d := range []*fields.Date{f.earliest, f.due, f.pinned} {
		d.SetHint("30 Nov 10:00")
	}
	f.people, f.after = fields.NewMulti(), fields.NewMulti()
	f.wire()

	f.form.AddWide("trouble", f.trouble)
	f.form.Add("name", "Task", f.name)
	f.form.AddBeside("when", "Planned", f.when)
	f.form.Add("done", "", f.done)
	f.form.Add("count", "Counted by", f.count)
	f.form.Add("floor", "On floor", f.floor)
	f.form.Add("hours", "Time", f.hours)
	f.form.Add("hands", "Hands", f.hands)
	f.form.Section("When")
	f.form.Add("earliest", "Not before", f.earliest)
	f.form.Add("due", "Due", f.due)
	f.form.Add("pinned", "Pinned to", f.pinned)
	f.form.Add("note", "Note", f.note)
	f.form.Section("Who is asked for (nobody ticked: anyone)")
	f.form.AddWide("people", f.people)
	f.form.Section("Comes after")
	f.form.AddWide("after", f.after)
	remove := fields.NewButton("Delete this task", func() { f.place.deleteTasks([]string{f.id}) })
	f.form.AddWide("", container.NewHBox(remove))
}

// wire makes every field a named change of the task.
func (f *taskForm) wire() {
	set := func(column int) func(string) error {
		return func(text string) error { return f.place.editTask(f.id, column, text) }
	}
	f.name.OnCommit, f.note.OnCommit = set(colTask), set(colTaskNote)
	f.count.OnCommit, f.floor.OnCommit = set(colCount), set(colFloor)
	f.done.OnCommit = func(on bool) error {
		return f.change("done", func(t *prep.Task) { t.Done = on })
	}
	f.hours.OnCommit = func(v float64) error {
		return f.change("time", func(t *prep.Task) { t.Hours = v })
	}
	f.hands.OnCommit = func(n int) error {
		return f.change("hands", func(t *prep.Task) { t.Hands = n })
	}
	f.earliest.OnCommit = func(at time.Time) error {
		return f.change("not before", func(t *prep.Task) { t.Earliest = at })
	}
	f.due.OnCommit = func(at time.Time) error {
		return f.change("due", func(t *prep.Task) { t.Due = at })
	}
	f.pinned.OnCommit = func(at time.Time) error {
		return f.change("pinned to", func(t *prep.Task) { t.Pinned = at })
	}
	f.people.OnCommit = func(names []string) error { return set(colPeople)(strings.Join(names, between)) }
	f.after.OnCommit = func(names []string) error { return set(colAfter)(strings.Join(names, between)) }
}

// change makes one named change to the task shown.
func (f *taskForm) change(what string, change func(*prep.Task)) error {
	label := "Change " + f.name.Shown() + ": " + what
	return f.place.desk.TryEdit(label, onTask(f.id, func(_ *prep.Production, t *prep.Task) error {
		change(t)
		return nil
	}))
}

// show sets the form from the selected task; without one it says what can be selected.
func (f *taskForm) show(v *desk.View, plan prep.CrewPlan) {
	id, _ := v.Selected.Of(desk.Task)
	t := taskOf(v.P, id)
	if t == nil {
		f.id = ""
		f.put(f.none)
		return
	}
	f.form.Record(id)
	f.id = id
	f.put(f.form)
	f.trouble.Set(fields.Warning, troublesOf(v.P, plan)[id], "", nil)
	f.when.SetText(plannedOf(v.P, plan, *t))
	f.name.Set(t.Name)
	f.note.Set(t.Note)
	f.done.Set(t.Done)
	f.count.Set(string(countOf(*t)))
	f.floor.SetOptions(floorNames(v.P)...)
	floor := floorName(v.P, t.Floor)
	if floor == "" {
		floor = noFloor
	}
	f.floor.Set(floor)
	f.hours.Set(t.Hours)
	f.hands.Set(max(1, t.Hands))
	f.earliest.Set(t.Earliest)
	f.due.Set(t.Due)
	f.pinned.Set(t.Pinned)
	f.form.ShowRow("hours", countOf(*t) == prep.ByHours)
	f.form.ShowRow("floor", countOf(*t) != prep.ByHours || t.Floor != "")
	f.people.SetOptions(personNames(v.P)...)
	f.people.Set(strings.Split(peopleOf(v.P, *t), between))
	others := slices.DeleteFunc(taskNames(v.P), func(name string) bool { return name == t.Name })
	f.after.SetOptions(others...)
	f.after.Set(strings.Split(afterOf(v.P, *t), between))
}

func (f *taskForm) put(o fyne.CanvasObject) {
	if f.whole.Objects[0] != o {
		f.whole.Objects = []fyne.CanvasObject{o}
		f.whole.Refresh()
	}
}

// plannedOf says when a task is done, by whom and for how long.
func plannedOf(p *prep.Production, plan prep.CrewPlan, t prep.Task) string {
	if t.Done {
		return "done"
	}
	for _, a := range plan.Tasks {
		if a.Task != t.ID {
			continue
		}
		var names []string
		for _, id := range a.People {
			if x := personOf(p, id); x != nil {
				names = append(names, x.Name)
			}
		}
		text := shownMoment(a.Start) + " to " + shownMoment(a.End) + ": " + worked(a.Work)
		if what := amount(p, a); what != "" {
			text += " for " + what
		}
		if len(names) > 0 {
			text += ", " + strings.Join(names, " and ")
		}
		return text + "."
	}
	return "not planned"
}

// nearOf is the day that decides the year of one typed without it.
func nearOf(v *desk.View) time.Time {
	if v == nil || v.P.Settings.FirstRehearsal.IsZero() {
		return time.Now()
	}
	return v.P.Settings.FirstRehearsal
}
