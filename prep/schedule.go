package prep

import (
	"cmp"
	"math"
	"slices"
	"time"

	"groundrow/prep/crew"
)

// Schedule plans the tasks that are not done: nobody is in two places at once,
// nothing begins before what it comes after has ended, all work lies within the
// room's hours and outside breaks, and what is due early goes first. Nothing
// begins before from, or rather the half hour after it, so that a plan stays the
// same for a while, nor before the start of prep week; nothing that takes tape
// begins before the day on which the last of it is expected.
//
// A task takes as many people as it asks for out of those who are named for it,
// or out of all, for counted work out of those who can kneel and lay tape; with
// fewer to be had it takes them and is short. Counted work takes longer with
// fewer hands. Tasks that wait for each other are named in Cycles and planned
// without waiting for each other, so that none is lost.
func Schedule(p *Production, q TaskQuantities, from time.Time) CrewPlan {
	s := newScheduler(p, q, from)
	plan := CrewPlan{Rehearsal: p.Settings.FirstRehearsal, Cycles: s.cycles}
	if len(s.jobs) == 0 {
		return plan
	}
	placed, err := crew.Solve(crew.Problem{Capacity: s.ones(), Jobs: s.jobs})
	if err != nil {
		// Every problem built here makes sense; a plan without tasks shows that it did not.
		return plan
	}
	for i, at := range placed {
		plan.Tasks = append(plan.Tasks, s.assign(i, at))
	}
	plan.Limits = s.limits(placed)
	slices.SortStableFunc(plan.Tasks, func(a, b Assignment) int { return a.Start.Compare(b.Start) })
	s.frame(&plan, placed)
	return plan
}

// scheduler holds the tasks as jobs of the crew package, minutes of work as its
// unit of time, and each person as a resource of one.
type scheduler struct {
	p       *Production
	tasks   []Task
	jobs    []crew.Job
	amounts []float64  // of each task's count
	awaited []Delivery // the last that each task waits for; its day is zero without any
	from    time.Time
	hours   workTime
	cycles  [][]string
}

func newScheduler(p *Production, q TaskQuantities, from time.Time) *scheduler {
	s := &scheduler{p: p, from: nextHalfHour(from)}
	if s.from.Before(p.Settings.PrepStart) {
		s.from = p.Settings.PrepStart
	}
	if s.from.IsZero() && !p.Settings.FirstRehearsal.IsZero() {
		s.from = dayOf(p.Settings.FirstRehearsal, -7)
	}
	for _, t := range p.Tasks {
		if !t.Done {
			s.tasks = append(s.tasks, t)
		}
	}
	after := s.after()
	total := 0
	for i, t := range s.tasks {
		j := crew.Job{After: after[i]}
		s.staff(t, &j)
		j.Duration = minutesOf(p.Settings.Rates, t, q[t.Floor], heads(j))
		total += j.Duration
		s.amounts = append(s.amounts, quantityOf(t, q[t.Floor]))
		s.awaited = append(s.awaited, q[t.Floor].awaited(t.Count))
		s.jobs = append(s.jobs, j)
	}
	s.setTimes(total)
	return s
}

// after returns what every task comes after, by index, without the waiting
// within a cycle.
func (s *scheduler) after() [][]int {
	at := map[string]int{}
	for i, t := range s.tasks {
		at[t.ID] = i
	}
	after := make([][]int, len(s.tasks))
	for i, t := range s.tasks {
		for _, id := range t.After {
			if k, ok := at[id]; ok && !slices.Contains(after[i], k) {
				after[i] = append(after[i], k)
			}
		}
	}
	for _, group := range crew.Cycles(after) {
		var ids []string
		for _, i := range group {
			ids = append(ids, s.tasks[i].ID)
			after[i] = slices.DeleteFunc(after[i], func(k int) bool { return slices.Contains(group, k) })
		}
		s.cycles = append(s.cycles, ids)
	}
	return after
}

// setTimes lays out the days and turns the tasks' days into minutes of work.
func (s *scheduler) setTimes(total int) {
	until := s.p.Settings.FirstRehearsal
	for i, t := range s.tasks {
		for _, day := range []time.Time{t.Earliest, t.Due, t.Pinned, s.awaited[i].On} {
			if day.After(until) {
				until = day
			}
		}
	}
	days := newWorkTime(s.p.Settings.Rates, s.from, until, 0)
	s.hours = newWorkTime(s.p.Settings.Rates, s.from, until, days.total()+total)
	start := s.hours.before(s.from)
	for i, t := range s.tasks {
		j := &s.jobs[i]
		j.Earliest = max(start, s.minute(t.Earliest), s.minute(s.awaited[i].On))
		if due := s.due(t); !due.IsZero() {
			// Zero stands for no date, so what is due before all work is due in its first minute.
			j.Due = max(1, s.hours.before(due))
		}
		if !t.Pinned.IsZero() {
			j.Pinned, j.Start = true, s.hours.before(t.Pinned)
		}
	}
}

// awaited returns the last delivery that such work waits for.
func (q Quantity) awaited(work Count) Delivery {
	var last Delivery
	for _, d := range q.Awaits {
		if d.Work == work && d.On.After(last.On) {
			last = d
		}
	}
	return last
}

func (s *scheduler) minute(t time.Time) int {
	if t.IsZero() {
		return 0
	}
	return s.hours.before(t)
}

func (s *scheduler) due(t Task) time.Time {
	if t.Due.IsZero() {
		return s.p.Settings.FirstRehearsal
	}
	return t.Due
}

// ones gives each person once.
func (s *scheduler) ones() []int {
	ones := make([]int, len(s.p.People))
	for i := range ones {
		ones[i] = 1
	}
	return ones
}

// quantum is what a duration is rounded up to, in minutes: finer than anyone
// plans.
const quantum = 5

// minutesOf returns how long the task takes so many people. With none it is
// counted as if one did it. No task is longer than a month of whole days.
func minutesOf(r Rates, t Task, q Quantity, people int) int {
	n := float64(max(1, people))
	hours := t.Hours
	switch t.Count {
	case ByMarks:
		hours = float64(q.Marks) / (rate(r.MarksPerHour, DefaultRates.MarksPerHour) * n / 2)
	case ByChecks:
		hours = float64(q.Checks) / (rate(r.ChecksPerHour, DefaultRates.ChecksPerHour) * n / 2)
	case ByTape:
		hours = q.Tape / (rate(r.TapePerHour, DefaultRates.TapePerHour) * n)
	case ByPatches:
		hours = float64(q.Patches) / (rate(r.PatchesPerHour, DefaultRates.PatchesPerHour) * n)
	}
	if !(hours > 0) {
		return 0
	}
	return quantum * int(math.Ceil(min(hours, 30*24)*60/quantum-1e-6))
}

func rate(set, usual float64) float64 {
	if set > 0 {
		return set
	}
	return usual
}

func quantityOf(t Task, q Quantity) float64 {
	switch t.Count {
	case ByMarks:
		return float64(q.Marks)
	case ByChecks:
		return float64(q.Checks)
	case ByTape:
		return q.Tape
	case ByPatches:
		return float64(q.Patches)
	}
	return t.Hours
}

// frame sets the plan's own start, end and spare time.
func (s *scheduler) frame(plan *CrewPlan, placed crew.Plan) {
	for _, a := range plan.Tasks {
		if plan.Start.IsZero() || a.Start.Before(plan.Start) {
			plan.Start = a.Start
		}
		if a.End.After(plan.End) {
			plan.End = a.End
		}
	}
	if !plan.Rehearsal.IsZero() {
		spare := s.hours.before(plan.Rehearsal) - placed.Makespan()
		plan.Spare = time.Duration(spare) * time.Minute
	}
}

func byStart(a, b Call) int {
	return cmp.Or(a.Day.Compare(b.Day), a.Start.Compare(b.Start))
}
