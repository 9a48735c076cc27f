package room

import (
	"fmt"
	"math"
	"strings"
)

// Contradiction is a length that no room can have beside the others.
type Contradiction struct {
	Name   string  // "A–C"
	Length float64 // metres, as read
	Way    string  // "A–B–C"
	Least  float64 // metres along that way, which is shorter than straight across
	Walls  bool    // the way is all the other walls
	Twice  bool    // the way is the same length, measured once more
}

// Error says it with lengths in metres; see Why.
func (c *Contradiction) Error() string {
	return c.say(func(m float64) string { return fmt.Sprintf("%.3f m", m) })
}

func (c *Contradiction) say(write func(float64) string) string {
	switch {
	case c.Twice:
		return fmt.Sprintf("%s was measured twice, as %s and as %s. Measure it again, and take out the one that is wrong", c.Name, write(c.Length), write(c.Least))
	case c.Walls:
		return fmt.Sprintf("the walls cannot close: %s is %s long, and all the others together are %s. Measure %s again, then the others",
			c.Name, write(c.Length), write(c.Least), c.Name)
	}
	return fmt.Sprintf("no room has these lengths: %s is %s straight across, and the way %s is only %s. Measure %s again, then the others",
		c.Name, write(c.Length), c.Way, write(c.Least), c.Name)
}

// contradiction finds a length that no room can have: it is longer than another
// way between its ends along lengths that were measured. With a third corner that
// is the triangle that cannot be, with all other walls the room that cannot close.
func (n *net) contradiction() error {
	for i, r := range n.reads {
		if r.kind == Square {
			continue
		}
		way, length, found := n.otherWay(i)
		allowed := 4 * r.sigma * math.Sqrt(float64(len(way)))
		if !found || r.value <= length+allowed {
			continue
		}
		names := make([]string, len(way))
		for k, place := range way {
			names[k] = n.name(place)
		}
		return &Contradiction{
			Name: span(n.name(r.a), n.name(r.b)), Length: r.value,
			Way: strings.Join(names, "–"), Least: length, Walls: len(way) == n.corners && r.kind == Wall, Twice: len(way) == 2,
		}
	}
	return nil
}

// otherWay returns the shortest way between the ends of a length along the other
// ones (Bellman–Ford), as the places that it passes.
func (n *net) otherWay(without int) (way []int, length float64, found bool) {
	from, to := n.reads[without].a, n.reads[without].b
	far := make([]float64, n.places)
	last := make([]int, n.places)
	for i := range far {
		far[i], last[i] = math.Inf(1), -1
	}
	far[from] = 0
	for changed := true; changed; {
		changed = false
		for i, r := range n.reads {
			if i == without || r.kind == Square {
				continue
			}
			for _, d := range [2][2]int{{r.a, r.b}, {r.b, r.a}} {
				if next := far[d[0]] + r.value; next < far[d[1]]-1e-12 {
					far[d[1]], last[d[1]], changed = next, d[0], true
				}
			}
		}
	}
	if math.IsInf(far[to], 1) {
		return nil, 0, false
	}
	for at := to; at >= 0; at = last[at] {
		way = append([]int{at}, way...)
	}
	return way, far[to], true
}
