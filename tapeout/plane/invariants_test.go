package plane

import (
	"fmt"
	"math"
	"slices"
)

// faults returns what is wrong with an arrangement of edges, whatever they are.
// reach is how many tolerances a link may be away from its sources.
func faults(edges []Edge, a Arrangement, tol, reach float64) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for i, n := range a.Nodes {
		if i > 0 && (a.Nodes[i-1].At.Y > n.At.Y || a.Nodes[i-1].At.Y == n.At.Y && a.Nodes[i-1].At.X >= n.At.X) {
			say("node %d is not in order", i)
		}
		if len(n.Links) == 0 || !slices.IsSorted(n.Links) {
			say("node %d has links %v", i, n.Links)
		}
		for j, m := range a.Nodes[:i] {
			if n.At.To(m.At) < tol {
				say("nodes %d and %d are %g apart", j, i, n.At.To(m.At))
			}
		}
		for _, l := range n.Links {
			if a.Links[l].From != i && a.Links[l].To != i {
				say("node %d lists link %d, which ends elsewhere", i, l)
			}
		}
	}
	for i, l := range a.Links {
		from, to := a.Nodes[l.From], a.Nodes[l.To]
		loop := l.From == l.To
		if !loop && (l.A != from.At || l.B != to.At || l.From > l.To) {
			say("link %d does not end at its nodes", i)
		}
		if loop && (l.A.To(from.At) > reach*tol || l.B.To(from.At) > reach*tol) {
			say("loop %d does not end near its node", i)
		}
		if len(l.Sources) == 0 || !slices.IsSorted(l.Sources) {
			say("link %d has sources %v", i, l.Sources)
		}
		for _, s := range l.Sources {
			for _, t := range []float64{0, 0.3, 0.5, 0.8, 1} {
				if d := edges[s].Distance(l.At(t)); d > reach*tol {
					say("link %d %+v is %g from its source %d %+v", i, l.Edge, d, s, edges[s])
					break
				}
			}
		}
	}
	out = append(out, crossingFaults(a, tol)...)
	return append(out, coverFaults(edges, a, tol, reach)...)
}

// crossingFaults returns the links that cross each other away from a shared node.
func crossingFaults(a Arrangement, tol float64) []string {
	var out []string
	for i, k := range a.Links {
		for j, l := range a.Links[:i] {
			e, f := k.curve(), l.curve()
			for _, p := range crossings(&e, &f, 1e-12, nil) {
				if !meetsAtNode(k, l, p, tol) {
					out = append(out, fmt.Sprintf("links %d %+v and %d %+v cross at %v", j, l, i, k, p))
				}
			}
		}
	}
	return out
}

// coverFaults returns the edges of which a part has no link.
func coverFaults(edges []Edge, a Arrangement, tol, reach float64) []string {
	var out []string
	for i, e := range edges {
		c := e.curve()
		if pieces, _ := usable([]Edge{e}); len(pieces) == 0 || c.length < 4*tol {
			continue
		}
		for _, t := range []float64{0.1, 0.5, 0.77} {
			p, best := e.At(t), math.Inf(1)
			for _, l := range a.Links {
				if slices.Contains(l.Sources, i) {
					best = min(best, l.Distance(p))
				}
			}
			if best > reach*tol {
				out = append(out, fmt.Sprintf("edge %d %+v has no link within %g of %v", i, e, best, p))
				break
			}
		}
	}
	return out
}

// meetsAtNode tells whether a crossing of two links at p is only the wake of a node
// that they share: nearer than tol to it, or reached from it with hardly a gap. The
// gap is probed at a few places only, so it can be somewhat wider.
func meetsAtNode(k, l Link, p Point, tol float64) bool {
	e, f := k.curve(), l.curve()
	for i, at := range []Point{k.A, k.B} {
		for j, and := range []Point{l.A, l.B} {
			shared := []int{k.From, k.To}[i] == []int{l.From, l.To}[j]
			near := p.To(at) <= tol && p.To(and) <= tol
			if shared && (near || joined(&e, &f, p, at, 1.5*tol/touchShare)) {
				return true
			}
		}
	}
	return false
}
