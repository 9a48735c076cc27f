// Package crew finds short schedules for jobs that share limited resources: the
// project scheduling problem in which every job runs without a stop once begun,
// uses resources while it runs and begins after the jobs before it have ended.
//
// Time is in whole units of the caller's choice, from zero.
package crew

import "fmt"

// Job is one piece of work.
type Job struct {
	Duration int
	Uses     []int // units of each resource while it runs; shorter than the resources: none of the rest
	Pick     Pick
	After    []int // jobs that must have ended before it begins
	Earliest int
	Due      int // zero: none
	Pinned   bool
	Start    int // when Pinned
}

// Pick asks for so many of the resources in Of, one unit of each: three people
// out of those who can kneel.
type Pick struct {
	Of []int
	N  int
}

// Problem is what must be scheduled. Capacity holds the units of each resource.
type Problem struct {
	Capacity []int
	Jobs     []Job
}

// Placed is where one job has come to lie.
type Placed struct {
	Start, End int
	Picked     []int // resources chosen for its Pick
	Clash      bool  // pinned where something it uses is taken, or before what it comes after has ended
}

// Plan holds the place of every job, in the problem's order.
type Plan []Placed

// Makespan returns the end of the last job.
func (p Plan) Makespan() int {
	last := 0
	for _, j := range p {
		last = max(last, j.End)
	}
	return last
}

// check returns what makes the problem senseless.
func (p Problem) check() error {
	after := make([][]int, len(p.Jobs))
	for i, j := range p.Jobs {
		if j.Duration < 0 || j.Earliest < 0 || j.Start < 0 {
			return fmt.Errorf("job %d has a time below zero", i)
		}
		for _, a := range j.After {
			if a < 0 || a >= len(p.Jobs) {
				return fmt.Errorf("job %d comes after job %d, which there is not", i, a)
			}
		}
		if err := p.fits(j); err != nil {
			return fmt.Errorf("job %d: %w", i, err)
		}
		after[i] = j.After
	}
	if c := Cycles(after); len(c) > 0 {
		return fmt.Errorf("jobs %v wait for each other", c[0])
	}
	return nil
}

// fits tells whether the job could run with everything free.
func (p Problem) fits(j Job) error {
	if len(j.Uses) > len(p.Capacity) {
		return fmt.Errorf("uses %d resources of %d", len(j.Uses), len(p.Capacity))
	}
	for r, n := range j.Uses {
		if n < 0 || n > p.Capacity[r] {
			return fmt.Errorf("uses %d of resource %d, which has %d", n, r, p.Capacity[r])
		}
	}
	free, seen := 0, map[int]bool{}
	for _, r := range j.Pick.Of {
		if r < 0 || r >= len(p.Capacity) || seen[r] {
			return fmt.Errorf("picks resource %d wrongly", r)
		}
		seen[r] = true
		if p.Capacity[r] > j.uses(r) {
			free++
		}
	}
	if j.Pick.N > free {
		return fmt.Errorf("picks %d of %d resources", j.Pick.N, free)
	}
	return nil
}

func (j Job) uses(r int) int {
	if r < len(j.Uses) {
		return j.Uses[r]
	}
	return 0
}
