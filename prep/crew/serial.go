package crew

import "slices"

// network is a problem with what every schedule of it needs, worked out once.
type network struct {
	Problem
	next [][]int // jobs that come after each
	rank []int   // of each resource: how many jobs would pick it
}

func newNetwork(p Problem) *network {
	n := &network{Problem: p, next: make([][]int, len(p.Jobs)), rank: make([]int, len(p.Capacity))}
	for i, j := range p.Jobs {
		for _, a := range j.After {
			n.next[a] = append(n.next[a], i)
		}
		for _, r := range j.Pick.Of {
			n.rank[r]++
		}
		for r, u := range j.Uses {
			if u > 0 {
				n.rank[r] += len(p.Jobs) // who is wanted by name is picked last
			}
		}
	}
	return n
}

// serial places the jobs one by one, each as early as it can be, taking of those
// whose predecessors are placed the one of lowest priority value; equal ones in
// the problem's order. Pinned jobs are placed first, where they are pinned.
func (n *network) serial(priority []float64) Plan {
	plan := make(Plan, len(n.Jobs))
	taken := newProfile(n.Capacity)
	waits := make([]int, len(n.Jobs))
	for i, j := range n.Jobs {
		waits[i] = len(j.After)
		if j.Pinned {
			plan[i] = n.pin(taken, j)
		}
	}
	var ready []int
	for i, w := range waits {
		if w == 0 {
			ready = append(ready, i)
		}
	}
	for len(ready) > 0 {
		k := 0
		for c := 1; c < len(ready); c++ {
			a, b := ready[c], ready[k]
			if priority[a] < priority[b] || priority[a] == priority[b] && a < b {
				k = c
			}
		}
		i := ready[k]
		ready = slices.Delete(ready, k, k+1)
		n.place(plan, taken, i)
		for _, s := range n.next[i] {
			if waits[s]--; waits[s] == 0 {
				ready = append(ready, s)
			}
		}
	}
	return plan
}

// place puts one job after those before it.
func (n *network) place(plan Plan, taken *profile, i int) {
	j := n.Jobs[i]
	from := j.Earliest
	for _, a := range j.After {
		from = max(from, plan[a].End)
	}
	if j.Pinned {
		plan[i].Clash = plan[i].Clash || plan[i].Start < from
		return
	}
	start, picked := taken.fit(j, from, n.rank)
	taken.take(j, start, picked)
	plan[i] = Placed{Start: start, End: start + j.Duration, Picked: picked}
}

// pin books a job where it is pinned, even where what it uses is taken.
func (n *network) pin(taken *profile, j Job) Placed {
	taken.measure(taken.stretch(j.Start), j.Start+j.Duration)
	picked, ok := taken.room(j, n.rank)
	if !ok && j.Pick.N > 0 {
		picked = slices.Clone(j.Pick.Of[:j.Pick.N])
	}
	taken.take(j, j.Start, picked)
	return Placed{Start: j.Start, End: j.Start + j.Duration, Picked: picked, Clash: !ok}
}

// order returns the jobs so that each comes after those before it.
func (n *network) order() []int {
	waits := make([]int, len(n.Jobs))
	var out []int
	for i, j := range n.Jobs {
		if waits[i] = len(j.After); waits[i] == 0 {
			out = append(out, i)
		}
	}
	for k := 0; k < len(out); k++ {
		for _, s := range n.next[out[k]] {
			if waits[s]--; waits[s] == 0 {
				out = append(out, s)
			}
		}
	}
	return out
}

// reversed returns the problem with time running backwards: what came after
// comes before. Pins and earliest starts are dropped, since only the order of
// its schedules is used.
func (n *network) reversed() *network {
	p := Problem{Capacity: n.Capacity, Jobs: make([]Job, len(n.Jobs))}
	for i, j := range n.Jobs {
		p.Jobs[i] = Job{Duration: j.Duration, Uses: j.Uses, Pick: j.Pick, After: n.next[i]}
	}
	return newNetwork(p)
}
