package crew

import (
	"cmp"
	"slices"
)

// profile is how much of every resource is taken over time: used[i] holds from
// at[i] to at[i+1], and the last stretch, with nothing taken, goes on for ever.
type profile struct {
	capacity []int
	at       []int
	used     [][]int
	peak     []int // working space of fit
}

func newProfile(capacity []int) *profile {
	return &profile{
		capacity: capacity, at: []int{0}, used: [][]int{make([]int, len(capacity))},
		peak: make([]int, len(capacity)),
	}
}

// fit returns the earliest start from t at which the job can run, and the
// resources for its pick, those that rank lowest first. The problem was checked,
// so that after the last stretch everything is free.
func (p *profile) fit(j Job, t int, rank []int) (start int, picked []int) {
	for i := p.stretch(t); ; i++ {
		if i > 0 || t < p.at[0] {
			t = max(t, p.at[i])
		}
		p.measure(i, t+j.Duration)
		if picked, ok := p.room(j, rank); ok {
			return t, picked
		}
	}
}

// stretch returns the index of the stretch that holds t.
func (p *profile) stretch(t int) int {
	i, found := slices.BinarySearch(p.at, t)
	if found {
		return i
	}
	return i - 1
}

// measure sets peak to the most that is taken from stretch i until end.
func (p *profile) measure(i, end int) {
	clear(p.peak)
	for ; i < len(p.at) && p.at[i] < end; i++ {
		for r, n := range p.used[i] {
			p.peak[r] = max(p.peak[r], n)
		}
	}
}

// room tells whether the job fits over the measured peak, and with what.
func (p *profile) room(j Job, rank []int) (picked []int, ok bool) {
	for r, n := range j.Uses {
		if n > 0 && p.peak[r]+n > p.capacity[r] {
			return nil, false
		}
	}
	if j.Pick.N <= 0 {
		return nil, true
	}
	for _, r := range j.Pick.Of {
		if p.peak[r]+j.uses(r) < p.capacity[r] {
			picked = append(picked, r)
		}
	}
	if len(picked) < j.Pick.N {
		return nil, false
	}
	slices.SortStableFunc(picked, func(a, b int) int { return cmp.Compare(rank[a], rank[b]) })
	return picked[:j.Pick.N], true
}

// take books the job from start.
func (p *profile) take(j Job, start int, picked []int) {
	if j.Duration == 0 {
		return
	}
	first, last := p.split(start), p.split(start+j.Duration)
	for i := first; i < last; i++ {
		for r, n := range j.Uses {
			p.used[i][r] += n
		}
		for _, r := range picked {
			p.used[i][r]++
		}
	}
}

// split makes t the beginning of a stretch and returns its index.
func (p *profile) split(t int) int {
	i := p.stretch(t)
	if p.at[i] == t {
		return i
	}
	p.at = slices.Insert(p.at, i+1, t)
	p.used = slices.Insert(p.used, i+1, slices.Clone(p.used[i]))
	return i + 1
}
