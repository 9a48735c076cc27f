package prep

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"groundrow/supplies"
)

// typedTask is a task of typed hours for one.
func typedTask(id string, hours float64, after ...string) Task {
	return Task{ID: id, Name: id, Count: ByHours, Hours: hours, Hands: 1, After: after}
}

// A task that lays tape waits for the tape, and the plan says for which.
func TestLayingTapeWaitsForItsDelivery(t *testing.T) {
	p := planned(2, Task{ID: "t", Name: "Lay", Count: ByTape, Floor: "room", Hands: 2})
	p.Stocks = []supplies.Stock{{ID: "blue", Name: "Blue cloth"}}
	q := TaskQuantities{"room": {Tape: 90, Awaits: []Delivery{
		{Stock: "green", Work: ByPatches, On: clock(3, 0, 0)}, {Stock: "blue", Work: ByTape, On: clock(1, 0, 0)}}}}
	c := Schedule(p, q, time.Time{})
	if got, want := taskIn(t, c, "t").Start, clock(1, 10, 0); !got.Equal(want) {
		t.Errorf("begins %v, want %v, the day of the delivery", got, want)
	}
	if got, want := c.Limits[0].Sentence(p), "Lay waits for the delivery of Blue cloth."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Only tape that the shelf does not hold, and that is on order for a known day, is
// waited for.
func TestOnlyTapeThatIsMissingIsWaitedFor(t *testing.T) {
	order := supplies.Order{ID: "o", For: "blue", Quantity: 2, State: supplies.Ordered, Expected: clock(1, 0, 0)}
	received, unknown := order, order
	received.State, unknown.Expected = supplies.Received, time.Time{}
	run := supplies.Run{Stock: "blue", Lines: 40, Total: 50, Patches: 1}
	for name, c := range map[string]struct {
		shelf  float64
		orders []supplies.Order
		want   int
	}{
		"missing":          {0.5, []supplies.Order{order}, 2}, // lines and patches
		"on the shelf":     {1, []supplies.Order{order}, 0},
		"received":         {0.5, []supplies.Order{received}, 0},
		"day not known":    {0.5, []supplies.Order{unknown}, 0},
		"nothing on order": {0.5, nil, 0},
	} {
		t.Run(name, func(t *testing.T) {
			p := &Production{Orders: c.orders, Stocks: []supplies.Stock{{ID: "blue", Roll: 50, Shelf: c.shelf}}}
			if got := awaits(p, &FloorWork{Tape: []supplies.Run{run}}); len(got) != c.want {
				t.Errorf("waits for %v, want %d", got, c.want)
			}
		})
	}
}

func team(n int) []Person {
	var out []Person
	for i := range n {
		out = append(out, Person{ID: fmt.Sprint("p", i), Name: fmt.Sprint("Person ", i), Hands: true})
	}
	return out
}

func planned(people int, tasks ...Task) *Production {
	p := &Production{Settings: DefaultSettings(), People: team(people), Tasks: tasks}
	p.Settings.PrepStart, p.Settings.FirstRehearsal = monday, clock(4, 10, 0)
	return p
}

func taskIn(t *testing.T, c CrewPlan, id string) Assignment {
	t.Helper()
	for _, a := range c.Tasks {
		if a.Task == id {
			return a
		}
	}
	t.Fatalf("task %s is not in the plan", id)
	return Assignment{}
}

// The room opens at 10 and closes at 18, with a quarter of an hour's break after
// every two and a half hours.
func TestScheduleByHand(t *testing.T) {
	marks := Task{ID: "m", Name: "m", Count: ByMarks, Floor: "room", Hands: 2}
	tape := Task{ID: "t", Name: "t", Count: ByTape, Floor: "room", Hands: 2, After: []string{"m"}}
	q := TaskQuantities{"room": {Marks: 80, Tape: 90}}
	for name, c := range map[string]struct {
		p        *Production
		id       string
		from, to time.Time
	}{
		"an hour":                      {planned(1, typedTask("a", 1)), "a", clock(0, 10, 0), clock(0, 11, 0)},
		"over a break":                 {planned(1, typedTask("a", 3)), "a", clock(0, 10, 0), clock(0, 13, 15)},
		"ends at a break":              {planned(1, typedTask("a", 2.5)), "a", clock(0, 10, 0), clock(0, 12, 30)},
		"begins after a break":         {planned(1, typedTask("a", 2.5), typedTask("b", 1, "a")), "b", clock(0, 12, 45), clock(0, 13, 45)},
		"over the night":               {planned(1, typedTask("a", 8)), "a", clock(0, 10, 0), clock(1, 10, 30)},
		"two in a row":                 {planned(2, typedTask("a", 1), typedTask("b", 1, "a")), "b", clock(0, 11, 0), clock(0, 12, 0)},
		"one person for two":           {planned(1, typedTask("a", 1), typedTask("b", 1)), "b", clock(0, 11, 0), clock(0, 12, 0)},
		"two people side by side":      {planned(2, typedTask("a", 1), typedTask("b", 1)), "b", clock(0, 10, 0), clock(0, 11, 0)},
		"80 marks by a pair":           {planned(2, marks), "m", clock(0, 10, 0), clock(0, 12, 0)},
		"90 m by two":                  {planned(2, marks, tape), "t", clock(0, 12, 0), clock(0, 13, 0)},
		"a pair of which one is there": {planned(1, marks), "m", clock(0, 10, 0), clock(0, 14, 15)},
		"nobody":                       {planned(0, typedTask("a", 1)), "a", clock(0, 10, 0), clock(0, 11, 0)},
		"not before Tuesday":           {planned(1, Task{ID: "a", Hours: 1, Earliest: clock(1, 0, 0)}), "a", clock(1, 10, 0), clock(1, 11, 0)},
		"pinned":                       {planned(1, Task{ID: "a", Hours: 1, Pinned: clock(2, 14, 0)}), "a", clock(2, 14, 0), clock(2, 15, 0)},
		"pinned in the night":          {planned(1, Task{ID: "a", Hours: 1, Pinned: clock(2, 3, 0)}), "a", clock(2, 10, 0), clock(2, 11, 0)},
		"no length":                    {planned(1, typedTask("a", 0)), "a", clock(0, 10, 0), clock(0, 10, 0)},
	} {
		t.Run(name, func(t *testing.T) {
			a := taskIn(t, Schedule(c.p, q, time.Time{}), c.id)
			if !a.Start.Equal(c.from) || !a.End.Equal(c.to) {
				t.Errorf("%v to %v, want %v to %v", a.Start, a.End, c.from, c.to)
			}
		})
	}
}

func TestSchedulingBeginsNoEarlierThanAsked(t *testing.T) {
	p := planned(1, typedTask("a", 1))
	if a := taskIn(t, Schedule(p, nil, clock(1, 11, 30)), "a"); !a.Start.Equal(clock(1, 11, 30)) {
		t.Errorf("begins %v, want Tuesday at 11:30", a.Start)
	}
	if a := taskIn(t, Schedule(p, nil, monday.AddDate(0, -1, 0)), "a"); !a.Start.Equal(clock(0, 10, 0)) {
		t.Errorf("begins %v, want the start of prep week", a.Start)
	}
}

func TestWhatIsDoneIsNotPlanned(t *testing.T) {
	p := planned(1, typedTask("a", 1), typedTask("b", 1, "a"))
	p.Tasks[0].Done = true
	c := Schedule(p, nil, time.Time{})
	if len(c.Tasks) != 1 || !c.Tasks[0].Start.Equal(clock(0, 10, 0)) {
		t.Errorf("%+v, want b alone at 10", c.Tasks)
	}
}

func TestStaffing(t *testing.T) {
	for name, c := range map[string]struct {
		task  Task
		want  []string
		short bool
	}{
		"anyone":                 {Task{Hours: 1, Hands: 1}, []string{"p0"}, false},
		"the one who is named":   {Task{Hours: 1, Hands: 1, People: []string{"p2"}}, []string{"p2"}, false},
		"named and one more":     {Task{Hours: 1, Hands: 2, People: []string{"p2"}}, []string{"p0", "p2"}, false},
		"two of three named":     {Task{Hours: 1, Hands: 2, People: []string{"p0", "p1", "p2"}}, []string{"p0", "p1"}, false},
		"more than there are":    {Task{Hours: 1, Hands: 5}, []string{"p0", "p1", "p2"}, true},
		"those who can kneel":    {Task{Count: ByTape, Hands: 3}, []string{"p0", "p1"}, true},
		"named though not kneel": {Task{Count: ByTape, Hands: 1, People: []string{"p2"}}, []string{"p2"}, false},
		"someone who has left":   {Task{Hours: 1, Hands: 1, People: []string{"gone"}}, []string{"p0"}, false},
	} {
		t.Run(name, func(t *testing.T) {
			c.task.ID = "a"
			p := planned(3, c.task)
			p.People[2].Hands = false
			a := taskIn(t, Schedule(p, nil, time.Time{}), "a")
			if !reflect.DeepEqual(a.People, c.want) || a.Short() != c.short {
				t.Errorf("%v, short %v; want %v, %v", a.People, a.Short(), c.want, c.short)
			}
		})
	}
}

func TestLateWorkIsNamedWithWhatMakesItLate(t *testing.T) {
	p := planned(1, typedTask("a", 20), typedTask("b", 15, "a"), typedTask("c", 1))
	c := Schedule(p, nil, time.Time{})
	b := taskIn(t, c, "b")
	// 36 hours of work for one in four days of 7 h 30.
	if c.Spare != -6*time.Hour || b.Late == 0 {
		t.Errorf("spare %v, b late %v; want −6 h and lateness", c.Spare, b.Late)
	}
	last := c.Limits[len(c.Limits)-1]
	if len(c.Limits) < 2 || last.Why != IsFirst {
		t.Errorf("limits %+v, want a chain back to the first task", c.Limits)
	}
	if ps := c.Problems(p); len(ps) == 0 || ps[0].Rule != RuleLate {
		t.Errorf("problems %+v, want lateness", ps)
	}
}

func TestTasksInACycleAreNamedAndStillPlanned(t *testing.T) {
	p := planned(1, typedTask("a", 1, "c"), typedTask("b", 1, "a"), typedTask("c", 1, "b"), typedTask("d", 1, "d"), typedTask("e", 1, "a"))
	c := Schedule(p, nil, time.Time{})
	if want := [][]string{{"a", "b", "c"}, {"d"}}; !reflect.DeepEqual(c.Cycles, want) {
		t.Errorf("cycles %v, want %v", c.Cycles, want)
	}
	if len(c.Tasks) != 5 {
		t.Errorf("%d tasks planned, want all 5", len(c.Tasks))
	}
	if taskIn(t, c, "e").Start.Before(taskIn(t, c, "a").End) {
		t.Error("e begins before a ends")
	}
}

func TestPinnedTasksForOnePersonClash(t *testing.T) {
	a, b := typedTask("a", 2), typedTask("b", 2)
	a.Pinned, b.Pinned = clock(0, 10, 0), clock(0, 11, 0)
	p := planned(1, a, b)
	if ps := Schedule(p, nil, time.Time{}).Problems(p); len(ps) != 1 || ps[0].Rule != RuleClash || ps[0].ID != "b" {
		t.Errorf("problems %+v, want one clash of b", ps)
	}
}

func TestRandomWeeksKeepPeopleHoursAndOrder(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 15 {
		var tasks []Task
		for i := range 10 {
			task := typedTask(fmt.Sprint("t", i), rng.Float64()*5)
			task.Hands = 1 + rng.IntN(4)
			for k := range i {
				if rng.IntN(5) == 0 {
					task.After = append(task.After, fmt.Sprint("t", k))
				}
			}
			tasks = append(tasks, task)
		}
		p := planned(3, tasks...)
		c := Schedule(p, nil, time.Time{})
		checkPlan(t, p, c)
		if again := Schedule(p, nil, time.Time{}); !reflect.DeepEqual(c, again) {
			t.Fatal("the same week gave two plans")
		}
	}
}

func checkPlan(t *testing.T, p *Production, c CrewPlan) {
	t.Helper()
	if len(c.Tasks) != len(p.Tasks) {
		t.Fatalf("%d tasks planned of %d", len(c.Tasks), len(p.Tasks))
	}
	busy := map[string][]Segment{}
	for _, a := range c.Tasks {
		worked := time.Duration(0)
		for _, s := range a.Segments {
			worked += s.End.Sub(s.Start)
			if s.Start.Hour() < 10 || s.End.After(dayOf(s.Start, 0).Add(18*time.Hour)) {
				t.Errorf("%s works %v to %v, outside the room's hours", a.Task, s.Start, s.End)
			}
			for _, person := range a.People {
				for _, other := range busy[person] {
					if s.Start.Before(other.End) && other.Start.Before(s.End) {
						t.Errorf("%s is in two places at %v", person, s.Start)
					}
				}
				busy[person] = append(busy[person], s)
			}
		}
		if worked != a.Work {
			t.Errorf("%s works %v, want %v", a.Task, worked, a.Work)
		}
	}
	for _, task := range p.Tasks {
		for _, before := range task.After {
			if taskIn(t, c, task.ID).Start.Before(taskIn(t, c, before).End) {
				t.Errorf("%s begins before %s ends", task.ID, before)
			}
		}
	}
}

func TestOddHoursNeverBreakThePlan(t *testing.T) {
	for _, r := range []Rates{{}, {DayStart: 20, DayEnd: 8}, {DayStart: -5, DayEnd: 99, BreakAfter: 1e-9, BreakLength: 1e-9},
		{DayStart: 10, DayEnd: 10.02, BreakAfter: 24, BreakLength: 24}} {
		p := planned(1, typedTask("a", 3), typedTask("b", 1e300), Task{ID: "c", Hours: 1, Pinned: clock(9999, 0, 0)})
		p.Settings.Rates = r
		if c := Schedule(p, nil, time.Time{}); len(c.Tasks) != 3 {
			t.Errorf("%+v: %d tasks planned, want 3", r, len(c.Tasks))
		}
	}
	undated := planned(1, typedTask("a", 1))
	undated.Settings.PrepStart, undated.Settings.FirstRehearsal = time.Time{}, time.Time{}
	if c := Schedule(undated, nil, time.Time{}); len(c.Tasks) != 1 {
		t.Errorf("without dates: %d tasks planned, want 1", len(c.Tasks))
	}
}

func TestCallsGatherAPersonsDay(t *testing.T) {
	c := Schedule(planned(1, typedTask("a", 2), typedTask("b", 7, "a")), nil, time.Time{})
	calls := c.Calls()
	if len(calls) != 2 {
		t.Fatalf("%d calls, want two days", len(calls))
	}
	first := calls[0]
	if !first.Start.Equal(clock(0, 10, 0)) || !first.End.Equal(clock(0, 18, 0)) || !reflect.DeepEqual(first.Tasks, []string{"a", "b"}) {
		t.Errorf("first call %+v", first)
	}
	if second := calls[1]; !second.End.Equal(clock(1, 11, 30)) || len(second.Tasks) != 1 {
		t.Errorf("second call %+v", second)
	}
}

func BenchmarkScheduleOfThirtyTasks(b *testing.B) {
	var tasks []Task
	for i := range 30 {
		task := typedTask(fmt.Sprint("t", i), float64(1+i%4))
		task.Hands = 1 + i%3
		if i > 3 {
			task.After = []string{fmt.Sprint("t", i-3)}
		}
		tasks = append(tasks, task)
	}
	p := planned(4, tasks...)
	for b.Loop() {
		Schedule(p, nil, time.Time{})
	}
}

func TestTheNextHalfHourIsByTheClock(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Skip("no zone data: " + err.Error())
	}
	// The clocks go forward on 30 March 2031, at one in the morning.
	for _, c := range []struct{ now, want time.Time }{
		{time.Date(2031, 3, 29, 10, 0, 1, 0, zone), time.Date(2031, 3, 29, 10, 30, 0, 0, zone)},
		{time.Date(2031, 3, 30, 10, 0, 0, 0, zone), time.Date(2031, 3, 30, 10, 0, 0, 0, zone)},
		{time.Date(2031, 3, 30, 10, 31, 0, 0, zone), time.Date(2031, 3, 30, 11, 0, 0, 0, zone)},
		{time.Date(2031, 3, 31, 23, 59, 0, 0, zone), time.Date(2031, 4, 1, 0, 0, 0, 0, zone)},
	} {
		if got := nextHalfHour(c.now); !got.Equal(c.want) {
			t.Errorf("after %v comes %v, want %v", c.now, got, c.want)
		}
	}
}
