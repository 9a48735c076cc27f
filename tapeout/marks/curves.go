package marks

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// swinger tells which arcs can be swung from their centres.
type swinger struct {
	on      bool
	f       *floor.Floor
	sight   floor.Sight
	longest float64 // metres of tape; zero: no limit
}

// swingRoom is how far apart, in metres of sagitta, the places on an arc are looked
// at from its centre.
const swingRoom = 0.05

// swings tells whether an arc can be swung: its centre is on the floor, the longest
// tape reaches from there, and nothing stands in the tape's way.
func (s swinger) swings(e plane.Edge) bool {
	centre, radius, curved := e.Circle()
	if !curved || !s.on || s.longest > 0 && radius > s.longest {
		return false
	}
	if !s.f.Holds(centre) {
		return false
	}
	for _, p := range e.Flatten(swingRoom) {
		if s.sight.Blocked(centre, p) {
			return false
		}
	}
	return true
}

// curves are the arcs and smooth chains of an arrangement.
type curves struct {
	chains []chain
	swung  []int  // links that are swung from their centres
	inside []bool // nodes within a chain, which need no mark of their own
}

// gentle is the turn, in radians, up to which straight pieces that follow each other
// can be a curve that was drawn as chords; fewest is how many such turns in a row make
// one. A bay of three walls stays what it is.
const (
	gentle = 15 * math.Pi / 180
	fewest = 4
)

// curvesOf gathers arcs that run on into each other, and the chords of a curve that
// was drawn as chords, into chains. A chain whose arcs can all be swung is swung arc
// by arc instead.
func curvesOf(arr plane.Arrangement, lines []floor.Line, s swinger) curves {
	out := curves{inside: make([]bool, len(arr.Nodes))}
	smooth, turns := make([]bool, len(arr.Nodes)), make([]bool, len(arr.Nodes))
	for i := range arr.Nodes {
		smooth[i], turns[i] = runsOn(arr, lines, i)
	}
	done := make([]bool, len(arr.Links))
	follow := func(start int) {
		c := walkChain(arr, smooth, start)
		straight, bends := true, 0
		for _, l := range c.links {
			done[l] = true
			straight = straight && arr.Links[l].Straight()
		}
		for _, n := range c.nodes {
			if turns[n] {
				bends++
			}
		}
		switch {
		case straight && bends < fewest:
		case !straight && c.all(s.swings):
			out.swung = append(out.swung, c.links...)
		default:
			out.chains = append(out.chains, c)
			for _, n := range c.nodes {
				out.inside[n] = true
			}
		}
	}
	for l := range arr.Links {
		if !done[l] && (!arr.Links[l].Straight() || smooth[arr.Links[l].From] || smooth[arr.Links[l].To]) {
			follow(l)
		}
	}
	return out
}

// runsOn tells whether the two links of a node are one smooth curve, laid alike: two
// arcs without a corner, or two straight pieces with a gentle turn or none; turns tells
// whether there is one.
func runsOn(arr plane.Arrangement, lines []floor.Line, node int) (smooth, turns bool) {
	links := arr.Nodes[node].Links
	if len(links) != 2 || links[0] == links[1] {
		return false, false
	}
	one, other := arr.Links[links[0]], arr.Links[links[1]]
	if one.Straight() != other.Straight() {
		return false, false
	}
	if _, changes := changeOf(lines, one.Sources, other.Sources); changes {
		return false, false
	}
	a, b := leaving(arr, links[0], node), leaving(arr, links[1], node)
	turn := math.Pi - math.Abs(math.Atan2(a.Cross(b), a.Dot(b)))
	if one.Straight() {
		return turn < gentle, turn > noTurn
	}
	return turn <= straightOn, false
}

// noTurn is the turn, in radians, below which two chords of a curve lie in one line.
const noTurn = straightOn / 10

// walkChain goes from a link both ways through smooth nodes, as far as they reach or
// once round.
func walkChain(arr plane.Arrangement, smooth []bool, start int) chain {
	c := chain{parts: []plane.Edge{arr.Links[start].Edge}, links: []int{start}}
	seen := map[int]bool{start: true}
	grow := func(node int, front bool) int {
		for smooth[node] {
			next := arr.Nodes[node].Links[0]
			if seen[next] {
				next = arr.Nodes[node].Links[1]
			}
			if seen[next] {
				break // once round: the first node keeps its mark
			}
			seen[next] = true
			l := arr.Links[next]
			e, far := l.Edge, l.To
			if (l.To == node) != front {
				e = e.Reversed()
			}
			if l.To == node {
				far = l.From
			}
			if front {
				c.parts, c.links = append([]plane.Edge{e}, c.parts...), append([]int{next}, c.links...)
			} else {
				c.parts, c.links = append(c.parts, e), append(c.links, next)
			}
			c.nodes = append(c.nodes, node)
			node = far
		}
		return node
	}
	grow(arr.Links[start].To, false)
	grow(arr.Links[start].From, true)
	return c
}
