package sense

import (
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// union joins numbers into groups; each group is known by its lowest number.
type union []int

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = i
	}
	return u
}

func (u union) of(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

func (u union) join(i, j int) {
	i, j = u.of(i), u.of(j)
	u[max(i, j)] = min(i, j)
}

// connected returns for each of the items, by its place in the list, the group
// that it belongs to: items that meet within tol drawing units are in one group,
// which is known by the lowest place in it.
func connected(s *linework.Sheet, items []int, tol float64) []int {
	var edges []plane.Edge
	var owner []int
	groups := newUnion(len(items))
	for k, i := range items {
		for _, e := range s.Items[i].Edges {
			edges, owner = append(edges, e), append(owner, k)
		}
	}
	arr := plane.Arrange(edges, tol)
	for _, node := range arr.Nodes {
		first := -1
		for _, l := range node.Links {
			for _, source := range arr.Links[l].Sources {
				if first < 0 {
					first = owner[source]
				}
				groups.join(first, owner[source])
			}
		}
	}
	out := make([]int, len(items))
	for k := range out {
		out[k] = groups.of(k)
	}
	return out
}
