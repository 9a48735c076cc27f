package supplies

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// joints counts the places where tape of one stock is laid over the end of
// another piece: one where two strips meet at a corner, one more for each
// further strip that ends there or that ends on the way of another, and one
// where a whole circle closes.
func joints(strips []Strip) int {
	count := 0
	var ends []plane.Point
	for _, s := range strips {
		if s.Whole {
			count++
			continue
		}
		ends = append(ends, s.A, s.B)
	}
	nodes := clusters(ends)
	places := make([]plane.Point, len(nodes))
	for i, node := range nodes {
		places[i] = ends[node[0]]
		count += len(node) - 1
	}
	return count + passed(places, strips)
}

// clusters gathers points that lie within the same place, by their indices.
func clusters(ps []plane.Point) [][]int {
	type cell struct{ x, y int }
	at := func(p plane.Point) cell { return cell{int(p.X / same), int(p.Y / same)} }
	first := map[cell][]int{} // clusters by the cell of their first point
	var out [][]int
	for i, p := range ps {
		found := -1
		c := at(p)
		for x := c.x - 1; x <= c.x+1 && found < 0; x++ {
			for y := c.y - 1; y <= c.y+1 && found < 0; y++ {
				for _, k := range first[cell{x, y}] {
					if ps[out[k][0]].To(p) <= same {
						found = k
						break
					}
				}
			}
		}
		if found < 0 {
			first[c] = append(first[c], len(out))
			out = append(out, []int{i})
			continue
		}
		out[found] = append(out[found], i)
	}
	return out
}

// passed counts the places that some strip runs through without ending there.
// Places are sorted in its course.
func passed(places []plane.Point, strips []Strip) int {
	slices.SortFunc(places, func(p, q plane.Point) int { return cmp.Compare(p.X, q.X) })
	through := make([]bool, len(places))
	for _, s := range strips {
		c := carrierOf(s.Edge)
		box := c.bounds(s).Grow(same)
		from, _ := slices.BinarySearchFunc(places, box.Min.X, func(p plane.Point, x float64) int { return cmp.Compare(p.X, x) })
		for i := from; i < len(places) && places[i].X <= box.Max.X; i++ {
			p := places[i]
			if !through[i] && box.Holds(p) && c.near(p) && c.between(s, p) {
				through[i] = true
			}
		}
	}
	n := 0
	for _, t := range through {
		if t {
			n++
		}
	}
	return n
}

// bounds returns the box around the strip.
func (c carrier) bounds(s Strip) plane.Box {
	if !s.Whole {
		return s.Edge.Bounds()
	}
	r := plane.Point{X: c.radius, Y: c.radius}
	return plane.Box{Min: c.centre.Sub(r), Max: c.centre.Add(r)}
}

// near tells whether the point lies on the carrier.
func (c carrier) near(p plane.Point) bool {
	if c.radius > 0 {
		return math.Abs(p.To(c.centre)-c.radius) <= same
	}
	return c.off(p) <= same
}

// between tells whether a point of the carrier lies between the strip's ends
// and not at one of them.
func (c carrier) between(s Strip, p plane.Point) bool {
	if s.Whole {
		return true
	}
	if s.A.To(p) <= same || s.B.To(p) <= same {
		return false
	}
	if c.radius == 0 {
		m := p.Sub(c.origin).Dot(c.along)
		return m > 0 && m < s.Edge.Length()
	}
	// The arc of a positive bulge lies to the right of its chord.
	return s.B.Sub(s.A).Cross(p.Sub(s.A))*s.Bulge < 0
}
