package sense

import (
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// pathsOf chains the edges of a group into as few paths as their ends allow: where
// exactly two ends of lines drawn alike meet, one goes on in the other. What is
// drawn broken, or on a layer that says so, is overhead or beneath.
func pathsOf(s *linework.Sheet, g group, o Options) []plan.Path {
	above := hasWord(tokens(g.layer), "overhead", "above", "hidden", "flown")
	var solid, broken []plane.Edge
	for _, i := range g.items {
		for _, e := range s.Items[i].Edges {
			e = o.edge(e)
			if n := e.Length(); !(n > 0) || math.IsInf(n, 0) {
				continue // no length, or no place on a floor
			}
			if len(s.Items[i].Dash) > 0 || above {
				broken = append(broken, e)
			} else {
				solid = append(solid, e)
			}
		}
	}
	var out []plan.Path
	for _, p := range chain(solid, o.Join) {
		out = append(out, plan.Path{Role: plan.Outline, Path: p})
	}
	for _, p := range chain(broken, o.Join) {
		out = append(out, plan.Path{Role: plan.Hidden, Path: p})
	}
	return out
}

// chain joins edges end to end into paths, in the order of the edges.
func chain(edges []plane.Edge, tol float64) []plane.Path {
	ends := newEnds(edges, tol)
	used := make([]bool, len(edges))
	var out []plane.Path
	for i := range edges {
		if used[i] {
			continue
		}
		used[i] = true
		run := []plane.Edge{edges[i]}
		run = ends.follow(edges, used, run, 2*i+1)
		if len(run) == 1 || ends.node[ends.tail] != ends.node[2*i] {
			back := ends.follow(edges, used, reversedRun(run), 2*i)
			run = reversedRun(back)
		}
		out = append(out, pathOf(run, tol))
	}
	return out
}

// ends knows which ends of edges meet. End 2i is where edge i starts, 2i+1 where
// it ends.
type ends struct {
	node []int
	at   [][]int // the ends at each node
	tail int     // the end at which the last follow stopped
}

func newEnds(edges []plane.Edge, tol float64) *ends {
	e := &ends{node: make([]int, 2*len(edges))}
	cells := map[[2]int64][]int{}
	var places []plane.Point
	for k := range e.node {
		p := edges[k/2].A
		if k%2 == 1 {
			p = edges[k/2].B
		}
		cell := [2]int64{int64(math.Floor(p.X / tol)), int64(math.Floor(p.Y / tol))}
		found := -1
		for n := range int64(9) {
			for _, q := range cells[[2]int64{cell[0] + n%3 - 1, cell[1] + n/3 - 1}] {
				if found < 0 && places[q].To(p) <= tol {
					found = q
				}
			}
		}
		if found < 0 {
			found = len(places)
			places = append(places, p)
			e.at = append(e.at, nil)
			cells[cell] = append(cells[cell], found)
		}
		e.node[k] = found
		e.at[found] = append(e.at[found], k)
	}
	return e
}

// follow lengthens the run from its last end on for as long as there is exactly
// one edge to go on with.
func (e *ends) follow(edges []plane.Edge, used []bool, run []plane.Edge, end int) []plane.Edge {
	e.tail = end
	for {
		here := e.at[e.node[e.tail]]
		if len(here) != 2 {
			return run
		}
		next := here[0] + here[1] - e.tail
		if next == e.tail || used[next/2] {
			return run
		}
		used[next/2] = true
		edge := edges[next/2]
		if next%2 == 1 {
			edge = edge.Reversed()
		}
		run = append(run, edge)
		e.tail = next ^ 1
	}
}

func reversedRun(run []plane.Edge) []plane.Edge {
	out := make([]plane.Edge, len(run))
	for i, e := range run {
		out[len(run)-1-i] = e.Reversed()
	}
	return out
}

// pathOf makes a path of edges that follow each other; it is closed where the last
// comes back to the first.
func pathOf(run []plane.Edge, tol float64) plane.Path {
	var p plane.Path
	for _, e := range run {
		p.Vertices = append(p.Vertices, plane.Vertex{Point: e.A, Bulge: e.Bulge})
	}
	last := run[len(run)-1]
	if len(run) > 1 && last.B.To(run[0].A) <= tol && (len(run) > 2 || !run[0].Straight() || !run[1].Straight()) {
		p.Closed = true
		return p
	}
	p.Vertices = append(p.Vertices, plane.Vertex{Point: last.B})
	return p
}
