package prep

import (
	"slices"
	"time"

	"groundrow/prep/crew"
)

// staff sets who a task takes: all who are named when they are no more than the
// hands it asks for, with others to make up the number, else as many as it asks
// for out of those named.
func (s *scheduler) staff(t Task, j *crew.Job) {
	named := s.named(t)
	hands := max(1, t.Hands)
	if len(named) >= hands {
		j.Pick = crew.Pick{Of: named, N: hands}
		return
	}
	j.Uses = make([]int, len(s.p.People))
	for _, i := range named {
		j.Uses[i] = 1
	}
	var others []int
	for i, person := range s.p.People {
		if !slices.Contains(named, i) && (person.Hands || t.Count == ByHours || t.Count == "") {
			others = append(others, i)
		}
	}
	j.Pick = crew.Pick{Of: others, N: min(len(others), hands-len(named))}
}

// named returns the people named for the task, by index, each once.
func (s *scheduler) named(t Task) []int {
	var out []int
	for i, person := range s.p.People {
		if slices.Contains(t.People, person.ID) {
			out = append(out, i)
		}
	}
	return out
}

// heads returns how many people a job takes.
func heads(j crew.Job) int {
	n := j.Pick.N
	for _, u := range j.Uses {
		n += u
	}
	return n
}

// peopleOn returns who does the job, by index, in the team's order.
func peopleOn(j crew.Job, at crew.Placed) []int {
	out := slices.Clone(at.Picked)
	for i, u := range j.Uses {
		if u > 0 {
			out = append(out, i)
		}
	}
	slices.Sort(out)
	return out
}

// assign turns a placed job back into a task in its time.
func (s *scheduler) assign(i int, at crew.Placed) Assignment {
	t, j := s.tasks[i], s.jobs[i]
	a := Assignment{
		Task: t.ID, Name: t.Name, Count: t.Count, Quantity: s.amounts[i],
		Wanted: max(1, t.Hands), Pinned: j.Pinned, Clash: at.Clash, Due: s.due(t),
		Work: time.Duration(j.Duration) * time.Minute,
	}
	for _, k := range peopleOn(j, at) {
		a.People = append(a.People, s.p.People[k].ID)
	}
	a.Segments = s.hours.segments(at.Start, at.End)
	if n := len(a.Segments); n > 0 {
		a.Start, a.End = a.Segments[0].Start, a.Segments[n-1].End
	} else {
		a.Start = s.hours.start(at.Start)
		a.End = a.Start
	}
	if !a.Due.IsZero() {
		a.Late = time.Duration(max(0, at.End-s.hours.before(a.Due))) * time.Minute
	}
	return a
}

// limits walks back from the task that ends last to what it had to wait for, and
// so on to one that waited for nothing.
func (s *scheduler) limits(placed crew.Plan) []Limit {
	at := 0
	for i, p := range placed {
		if p.End > placed[at].End {
			at = i
		}
	}
	var out []Limit
	seen := map[int]bool{}
	for !seen[at] {
		seen[at] = true
		l, next := s.limit(placed, at)
		out = append(out, l)
		if next < 0 {
			break
		}
		at = next
	}
	return out
}

// limit says why one task does not begin earlier, and the job that it waits for.
func (s *scheduler) limit(placed crew.Plan, i int) (l Limit, next int) {
	l = Limit{Task: s.tasks[i].ID, Why: IsFirst}
	j, start := s.jobs[i], placed[i].Start
	if j.Pinned {
		l.Why = IsPinned
		return l, -1
	}
	for _, k := range j.After {
		if placed[k].End == start && start > 0 {
			l.Why, l.By = WaitsForTask, s.tasks[k].ID
			return l, k
		}
	}
	mine := append(peopleOn(j, placed[i]), j.Pick.Of...)
	for k := range placed {
		if k == i || placed[k].End != start || placed[k].Start >= start {
			continue
		}
		for _, person := range peopleOn(s.jobs[k], placed[k]) {
			if slices.Contains(mine, person) {
				l.Why, l.By = WaitsForPerson, s.p.People[person].ID
				return l, k
			}
		}
	}
	awaited := s.awaited[i]
	switch {
	case start != j.Earliest:
	case !awaited.On.IsZero() && start == s.minute(awaited.On):
		l.Why, l.By = WaitsForStock, awaited.Stock
	case !s.tasks[i].Earliest.IsZero():
		l.Why = WaitsForDay
	}
	return l, -1
}

// Calls returns when each person is wanted on each day, by day and then by
// start.
func (c CrewPlan) Calls() []Call {
	type key struct {
		person string
		day    time.Time
	}
	at := map[key]int{}
	var calls []Call
	for _, a := range c.Tasks {
		for _, person := range a.People {
			for _, seg := range a.Segments {
				k := key{person, dayOf(seg.Start, 0)}
				i, ok := at[k]
				if !ok {
					i = len(calls)
					at[k] = i
					calls = append(calls, Call{Person: person, Day: k.day, Start: seg.Start, End: seg.End})
				}
				calls[i].add(a.Task, seg)
			}
		}
	}
	slices.SortStableFunc(calls, byStart)
	return calls
}

func (c *Call) add(task string, seg Segment) {
	if seg.Start.Before(c.Start) {
		c.Start = seg.Start
	}
	if seg.End.After(c.End) {
		c.End = seg.End
	}
	if !slices.Contains(c.Tasks, task) {
		c.Tasks = append(c.Tasks, task)
	}
	c.Segments = append(c.Segments, seg)
}
