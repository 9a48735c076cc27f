package crew

import "slices"

// Cycles returns the groups of jobs that wait for each other, given what each
// comes after; a job that comes after itself is a group of one. Groups and their
// members are in ascending order. Indices out of range are ignored.
//
// The groups are the strongly connected components, found by Tarjan's method
// with a stack of its own, so that a long chain cannot exhaust the program's.
func Cycles(after [][]int) [][]int {
	t := tarjan{after: after, index: make([]int, len(after)), low: make([]int, len(after)), on: make([]bool, len(after))}
	for v := range after {
		if t.index[v] == 0 {
			t.visit(v)
		}
	}
	slices.SortFunc(t.groups, func(a, b []int) int { return a[0] - b[0] })
	return t.groups
}

type tarjan struct {
	after  [][]int
	index  []int // order of discovery from 1; zero: not met
	low    []int
	on     []bool
	stack  []int
	next   int
	groups [][]int
}

type frame struct{ v, edge int }

func (t *tarjan) visit(root int) {
	calls := []frame{t.enter(root)}
	for len(calls) > 0 {
		f := &calls[len(calls)-1]
		if f.edge < len(t.after[f.v]) {
			w := t.after[f.v][f.edge]
			f.edge++
			switch {
			case w < 0 || w >= len(t.after):
			case t.index[w] == 0:
				calls = append(calls, t.enter(w))
			case t.on[w]:
				t.low[f.v] = min(t.low[f.v], t.index[w])
			}
			continue
		}
		v := f.v
		calls = calls[:len(calls)-1]
		if len(calls) > 0 {
			up := calls[len(calls)-1].v
			t.low[up] = min(t.low[up], t.low[v])
		}
		if t.low[v] == t.index[v] {
			t.leave(v)
		}
	}
}

func (t *tarjan) enter(v int) frame {
	t.next++
	t.index[v], t.low[v], t.on[v] = t.next, t.next, true
	t.stack = append(t.stack, v)
	return frame{v: v}
}

// leave takes the component of v off the stack and keeps it when it is a cycle.
func (t *tarjan) leave(v int) {
	at := slices.Index(t.stack, v)
	group := slices.Clone(t.stack[at:])
	t.stack = t.stack[:at]
	for _, w := range group {
		t.on[w] = false
	}
	if len(group) > 1 || slices.Contains(t.after[v], v) {
		slices.Sort(group)
		t.groups = append(t.groups, group)
	}
}
