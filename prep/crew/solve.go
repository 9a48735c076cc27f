package crew

import (
	"fmt"
	"math/rand/v2"
)

// Solve returns a schedule that keeps every limit, with as little lateness as it
// finds and then as early an end. It is not always the shortest that there is.
// The same problem gives the same schedule on every machine.
//
// Schedules are built serially by several rules of priority (latest finish,
// latest start, most work behind) and by seeded variations of the first; each is
// then pushed to the right and back to the left, which closes gaps: Tormos and
// Lova, A competitive heuristic solution technique for resource-constrained
// project scheduling, Annals of Operations Research 102 (2001), from memory.
func Solve(p Problem) (Plan, error) {
	if err := p.check(); err != nil {
		return nil, fmt.Errorf("schedule jobs: %w", err)
	}
	s := newSearch(p)
	for _, rule := range s.rules() {
		s.try(rule)
	}
	s.vary(samples(len(p.Jobs)))
	return s.best, nil
}

// samples is how many variations are worth their time.
func samples(jobs int) int {
	if jobs < 2 {
		return 0
	}
	return min(120, 150_000/(jobs*jobs))
}

type search struct {
	forward, backward *network
	tail              []int // of each job: the longest chain from its start to the end
	latest            []int // latest finish that delays nothing
	bound             int   // no schedule ends before it
	best              Plan
	bestCost          cost
}

// cost orders schedules: lateness first, then the end.
type cost struct{ late, end int }

func (c cost) less(d cost) bool { return c.late < d.late || c.late == d.late && c.end < d.end }

func newSearch(p Problem) *search {
	n := newNetwork(p)
	s := &search{forward: n, backward: n.reversed()}
	order := n.order()
	head := make([]int, len(order))
	s.tail = make([]int, len(order))
	s.latest = make([]int, len(order))
	for _, i := range order {
		j := n.Jobs[i]
		head[i] = max(head[i], j.Earliest)
		if j.Pinned {
			head[i] = j.Start
		}
		for _, k := range n.next[i] {
			head[k] = max(head[k], head[i]+j.Duration)
		}
		s.bound = max(s.bound, head[i]+j.Duration)
	}
	for k := len(order) - 1; k >= 0; k-- {
		i := order[k]
		s.latest[i] = s.bound
		if due := n.Jobs[i].Due; due > 0 {
			s.latest[i] = min(due, s.bound)
		}
		for _, next := range n.next[i] {
			s.tail[i] = max(s.tail[i], s.tail[next])
			s.latest[i] = min(s.latest[i], s.latest[next]-n.Jobs[next].Duration)
		}
		s.tail[i] += n.Jobs[i].Duration
	}
	return s
}

// rules returns the priorities of the plain rules; lower goes first.
func (s *search) rules() [][]float64 {
	finish, start, work := make([]float64, len(s.tail)), make([]float64, len(s.tail)), make([]float64, len(s.tail))
	for i := range s.tail {
		finish[i] = float64(s.latest[i])
		start[i] = float64(s.latest[i] - s.forward.Jobs[i].Duration)
		work[i] = -float64(s.tail[i])
	}
	return [][]float64{finish, start, work}
}

// vary tries the latest finishes shaken by up to half the bound, in rising and
// falling strength.
func (s *search) vary(n int) {
	rng := rand.New(rand.NewPCG(20, 26))
	priority := make([]float64, len(s.latest))
	for k := 0; k < n && !s.proved(); k++ {
		reach := float64(s.bound) * float64(1+k%5) / 10
		for i, l := range s.latest {
			priority[i] = float64(l) + reach*(rng.Float64()-0.5)
		}
		s.try(priority)
	}
}

// proved tells whether no better schedule can exist.
func (s *search) proved() bool {
	return s.best != nil && s.bestCost == cost{0, s.bound}
}

// try builds a schedule, pushes it right and left while that helps, and keeps
// the best.
func (s *search) try(priority []float64) {
	plan := s.forward.serial(priority)
	c := s.keep(plan)
	for !s.proved() {
		next := s.justify(plan)
		d := s.keep(next)
		if !d.less(c) {
			return
		}
		plan, c = next, d
	}
}

// justify moves the jobs as far right as they go, last first, and then as far
// left, first first.
func (s *search) justify(plan Plan) Plan {
	by := make([]float64, len(plan))
	for i, p := range plan {
		by[i] = -float64(p.End)
	}
	right := s.backward.serial(by)
	for i, p := range right {
		by[i] = -float64(p.End)
	}
	return s.forward.serial(by)
}

// keep remembers the plan when it is the best so far.
func (s *search) keep(plan Plan) cost {
	c := cost{end: plan.Makespan()}
	for i, p := range plan {
		if due := s.forward.Jobs[i].Due; due > 0 {
			c.late += max(0, p.End-due)
		}
	}
	if s.best == nil || c.less(s.bestCost) {
		s.best, s.bestCost = plan, c
	}
	return c
}
