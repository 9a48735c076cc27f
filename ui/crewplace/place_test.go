package crewplace

import (
	"context"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/grid"
)

// wednesday is the day of prep week that the tests look at, in the morning.
var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// atOnce stands in for the background: the tests wait for everything.
func atOnce(_ string, work func(context.Context) error, done func(error)) {
	done(work(context.Background()))
}

// shown returns the place with a production in a window of the size that it has beside the rail.
func shown(t testing.TB, production *prep.Production) (*place, *desk.Desk) {
	return desktest.Open(t, production, func(d *desk.Desk) *place {
		p := newPlace(d, func() time.Time { return wednesday })
		p.run = atOnce
		return p
	})
}

func taskNamed(t testing.TB, p *prep.Production, name string) *prep.Task {
	t.Helper()
	for i := range p.Tasks {
		if p.Tasks[i].Name == name {
			return &p.Tasks[i]
		}
	}
	t.Fatalf("there is no task %q", name)
	return nil
}

func TestABarSelectsItsTaskAndTheFormChangesIt(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	zones := p.days.poster.Zones()
	if len(zones) == 0 {
		t.Fatal("the board has no bars")
	}
	zones[0].Do()
	id, ok := d.View().Selected.Of(desk.Task)
	if !ok || p.days.form.id != id {
		t.Fatalf("selected %+v, the form shows %q", d.View().Selected, p.days.form.id)
	}
	entry := p.days.form.hands.Target()
	win := d.Window().Canvas()
	win.Focus(entry)
	test.Type(entry, "3")
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if got := taskOf(d.View().P, id).Hands; got != 13 && got != 31 && got != 3 {
		t.Errorf("%d hands after typing a 3 beside the 1", got)
	}
	if label, _ := d.File().UndoLabel(); !strings.HasPrefix(label, "Change ") || !strings.HasSuffix(label, ": hands") {
		t.Errorf("undo says %q", label)
	}
}

func TestDaysAreSteppedThrough(t *testing.T) {
	p, _ := shown(t, demo.Production(wednesday))
	tab := p.days
	if !sameDay(tab.day, wednesday) {
		t.Fatalf("the board opens on %v, want today", tab.day)
	}
	test.Tap(tab.forward)
	if got := tab.board.days; len(got) != 1 || got[0].title != "Thursday 4 March" {
		t.Errorf("after today comes %+v", got)
	}
	test.Tap(tab.back)
	test.Tap(tab.all)
	if len(tab.board.days) != len(tab.days) || !tab.back.Disabled() {
		t.Errorf("%d of %d days are shown", len(tab.board.days), len(tab.days))
	}
}

func TestSelectingATaskBringsItsDayIntoView(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	walk := taskNamed(t, d.View().P, "Walk the floor with the dance captain")
	d.Select(desk.Select(desk.Task, walk.ID))
	plan := prep.Schedule(d.View().P, prep.QuantitiesOf(d.View().P, d.View().Work), wednesday)
	for _, a := range plan.Tasks {
		if a.Task != walk.ID {
			continue
		}
		if want := a.Start.Format(time.DateOnly); p.days.day.Format(time.DateOnly) != want {
			t.Errorf("the board shows %v, the task is on %s", p.days.day, want)
		}
		return
	}
	t.Error("the task is not in the plan")
}

func TestCellsOfATask(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabTasks)
	id := taskNamed(t, d.View().P, "Collect the stand-ins").ID
	for _, c := range []struct {
		column int
		text   string
		good   func(*prep.Task) bool
		bad    string
	}{
		{colTask, "Fetch the stand-ins", func(t *prep.Task) bool { return t.Name == "Fetch the stand-ins" }, " "},
		{colDone, "yes", func(t *prep.Task) bool { return t.Done }, ""},
		{colHours, "2,5", func(t *prep.Task) bool { return t.Hours == 2.5 }, "long"},
		{colHands, "3", func(t *prep.Task) bool { return t.Hands == 3 }, "0"},
		{colPeople, "pia castellan, Wren Halloway", func(t *prep.Task) bool { return len(t.People) == 2 }, "Nobody Known"},
		{colAfter, "Lay the datum, Tannery Hall, Order tape and kit", func(t *prep.Task) bool { return len(t.After) == 2 }, "Fetch the stand-ins"},
		{colEarliest, "4 Mar", func(t *prep.Task) bool { return t.Earliest.Hour() == 10 && t.Earliest.Day() == 4 }, "soon"},
		{colDue, "5 Mar 16:30", func(t *prep.Task) bool { return t.Due.Hour() == 16 && t.Due.Minute() == 30 }, "31 Feb"},
		{colPinned, "4 Mar 11:00", func(t *prep.Task) bool { return t.Pinned.Hour() == 11 }, "25:00"},
		{colTaskNote, "by van", func(t *prep.Task) bool { return t.Note == "by van" }, ""},
		{colFloor, "Tannery Hall", func(t *prep.Task) bool { return t.Floor != "" }, "Elsewhere"},
		{colCount, "marks to place", func(t *prep.Task) bool { return t.Count == prep.ByMarks }, "guess"},
	} {
		title := taskColumns()[c.column].Title
		if err := p.tasks.OnEdit(id, c.column, c.text); err != nil {
			t.Errorf("%s %q: %v", title, c.text, err)
		}
		if !c.good(taskOf(d.View().P, id)) {
			t.Errorf("%s %q gives %+v", title, c.text, *taskOf(d.View().P, id))
		}
		if c.bad != "" && p.tasks.OnEdit(id, c.column, c.bad) == nil {
			t.Errorf("%s takes %q", title, c.bad)
		}
	}
	if err := p.tasks.OnEdit(id, colHours, "2"); err == nil {
		t.Error("hours are typed into a task that is counted by its marks")
	}
}

func TestTasksThatWaitForEachOtherSaySo(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabTasks)
	datum := taskNamed(t, d.View().P, "Lay the datum, Tannery Hall").ID
	if err := p.tasks.OnEdit(datum, colAfter, "Place the marks, Tannery Hall"); err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, r := range taskRows(d.View().P, p.plan) {
		if strings.Contains(r.Problem, "wait for each other") {
			said++
		}
	}
	if said != 2 {
		t.Errorf("%d rows say that they wait for each other, want 2", said)
	}
}

func TestAddingAndDeleting(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabTasks)
	tasks, people := len(d.View().P.Tasks), len(d.View().P.People)
	p.Add()
	if len(d.View().P.Tasks) != tasks+1 || !p.tasks.Editing() {
		t.Fatal("no new task is open")
	}
	p.Remove()
	if len(d.View().P.Tasks) != tasks {
		t.Error("the new task is still there")
	}
	p.tabs.SelectIndex(tabPeople)
	p.Add()
	if len(d.View().P.People) != people+1 || !p.people.Editing() {
		t.Fatal("no new person is open")
	}
	p.Remove()
	if len(d.View().P.People) != people {
		t.Error("the new person is still there")
	}
}

func TestWhoIsNamedIsAskedAbout(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabPeople)
	people := len(d.View().P.People)
	p.people.OnDelete([]string{d.View().P.People[0].ID})
	if len(d.View().P.People) != people || d.Window().Canvas().Overlays().Top() == nil {
		t.Error("somebody whom tasks ask for is taken out without a question")
	}
}

func TestEverythingCanBeEmpty(t *testing.T) {
	p, d := shown(t, &prep.Production{Settings: prep.DefaultSettings()})
	for i := range p.tabs.Items {
		p.tabs.SelectIndex(i)
	}
	p.askCalendar()
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("nothing is said of calls that are not there")
	}
}

func TestTheWalkIsShorterThanByLabel(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	p.tabs.SelectIndex(tabOrder)
	k := p.order.walk
	if len(k.order) != len(k.marks) || len(k.order) == 0 || !(k.length < k.byLabel) {
		t.Fatalf("%d of %d marks, %v m against %v m", len(k.order), len(k.marks), k.length, k.byLabel)
	}
	if n := len(p.order.list.Shown()); n != len(k.order) {
		t.Errorf("the list has %d rows of %d", n, len(k.order))
	}
	label := k.marks[k.order[3]].Label
	p.order.list.OnSelect([]string{label})
	if id, ok := d.View().Selected.Of(desk.Mark); !ok || id != label {
		t.Errorf("selected %+v", d.View().Selected)
	}
}

func TestCopying(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	tasks, walk := len(d.View().P.Tasks), taskNamed(t, d.View().P, "Walk the floor with the dance captain").ID
	if got := len(grid.Cells(p.Copy())); got != tasks+1 {
		t.Errorf("%d lines without a selection, want the titles and %d tasks", got, tasks)
	}
	d.Select(desk.Select(desk.Task, walk))
	if got := grid.Cells(p.Copy()); len(got) != 2 || got[1][colTask] != "Walk the floor with the dance captain" {
		t.Errorf("copied %v", got)
	}
	p.tabs.SelectIndex(tabPeople)
	if got := len(grid.Cells(p.Copy())); got != len(d.View().P.People)+1 {
		t.Errorf("%d lines of people", got)
	}
}

func BenchmarkShowDays(b *testing.B) {
	p, d := shown(b, demo.Production(wednesday))
	for b.Loop() {
		p.Show(d.View())
	}
}
