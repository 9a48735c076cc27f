package passage

// forest is a set of trees over numbered things, in which the way from each to its
// root is odd or even.
type forest struct {
	parent []int
	odd    []bool // of the way to the parent
	size   []int
}

func newForest(n int) *forest {
	f := &forest{make([]int, n), make([]bool, n), make([]int, n)}
	for i := range n {
		f.parent[i], f.size[i] = i, 1
	}
	return f
}

// root returns the root of i and whether the way to it is odd; ways get shorter as
// they are walked.
func (f *forest) root(i int) (root int, odd bool) {
	for f.parent[i] != i {
		p := f.parent[i]
		f.odd[i] = f.odd[i] != f.odd[p] // a root's own is even
		f.parent[i] = f.parent[p]
		odd = odd != f.odd[i]
		i = f.parent[i]
	}
	return i, odd
}

// join adds a way from i to j and tells whether it closes a ring that is odd.
func (f *forest) join(i, j int, odd bool) (closesOdd bool) {
	a, oddI := f.root(i)
	b, oddJ := f.root(j)
	odd = odd != oddI != oddJ
	if a == b {
		return odd
	}
	if f.size[a] > f.size[b] {
		a, b = b, a
	}
	f.parent[a], f.odd[a] = b, odd
	f.size[b] += f.size[a]
	return false
}
