package placement

import (
	"slices"

	"groundrow/tapeout/plane"
)

// part is a straight piece of line work, or a triangle of an area, with its share
// of the whole score. Places are measured from the pivot, in plan axes.
type part struct {
	a, b, c  plane.Point // c of a triangle alone
	triangle bool
	share    float64
	seen     bool // counts where the table sees it, not wherever it is free
	whole    bool // must be free in any case
	reach    float64
	item     int // whose it is
}

// split cuts the items into parts.
func (c *Case) split() []part {
	var out []part
	for i := range c.items {
		it := &c.items[i]
		for _, e := range it.lines {
			share := it.worth * e.Length() / max(c.worth.length, 1e-12)
			out = c.addEdge(out, e, part{share: share * c.worth.lineW, whole: it.whole, item: i})
			if c.worth.sightWorth > 0 {
				out = c.addEdge(out, e, part{share: share * c.worth.sightWorth, seen: true, item: i})
			}
		}
		for _, a := range it.areas {
			share := 0.0
			if c.worth.areaW > 0 {
				share = it.worth * a.Area() / c.worth.area * c.worth.areaW
			}
			if share > 0 {
				out = c.addArea(out, a, part{share: share, triangle: true, item: i})
			}
		}
		if it.whole {
			for _, a := range it.solid {
				out = c.addArea(out, a, part{triangle: true, whole: true, item: i})
			}
		}
	}
	for i := range out {
		p := &out[i]
		p.reach = max(p.a.Len(), p.b.Len(), p.c.Len())
	}
	// What must be whole first: most boxes that hold nothing good fail there.
	slices.SortStableFunc(out, func(a, b part) int {
		switch {
		case a.whole == b.whole:
			return 0
		case a.whole:
			return -1
		}
		return 1
	})
	return out
}

func (c *Case) addEdge(out []part, e plane.Edge, p part) []part {
	pts := e.Flatten(chord)
	each := p.share / float64(len(pts)-1)
	for i := range pts[1:] {
		p.a, p.b, p.share = pts[i].Sub(c.pivot), pts[i+1].Sub(c.pivot), each
		out = append(out, p)
	}
	return out
}

// addArea cuts an area into triangles: level slabs between its corners, each of
// them trapezoids between neighbouring sides.
func (c *Case) addArea(out []part, a plane.Path, p part) []part {
	pts := a.Flatten(chord)
	var levels []float64
	for _, q := range pts {
		levels = append(levels, q.Y)
	}
	slices.Sort(levels)
	levels = slices.Compact(levels)
	var cuts [][3]plane.Point
	for i := range levels[1:] {
		cuts = slab(cuts, pts, levels[i], levels[i+1])
	}
	// What the chords of a curve leave out is taken as free wherever it is.
	whole, rest := a.Area(), 1.0
	share := p.share
	for _, t := range cuts {
		part := t[1].Sub(t[0]).Cross(t[2].Sub(t[0])) / 2 / whole
		rest -= part
		p.a, p.b, p.c = t[0].Sub(c.pivot), t[1].Sub(c.pivot), t[2].Sub(c.pivot)
		p.share = share * part
		out = append(out, p)
	}
	c.granted += share * max(rest, 0)
	return out
}

// slab adds the triangles of a polygon between two levels without corners between.
func slab(out [][3]plane.Point, pts []plane.Point, low, high float64) [][3]plane.Point {
	type crossing struct{ at, low, high float64 }
	var xs []crossing
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		if min(p.Y, q.Y) > low || max(p.Y, q.Y) < high {
			continue
		}
		x := func(y float64) float64 { return p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y) }
		xs = append(xs, crossing{x((low + high) / 2), x(low), x(high)})
	}
	slices.SortFunc(xs, func(a, b crossing) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	for i := 0; i+1 < len(xs); i += 2 {
		a, b := plane.Point{X: xs[i].low, Y: low}, plane.Point{X: xs[i+1].low, Y: low}
		d, e := plane.Point{X: xs[i].high, Y: high}, plane.Point{X: xs[i+1].high, Y: high}
		if a.X < b.X {
			out = append(out, [3]plane.Point{a, b, e})
		}
		if d.X < e.X {
			out = append(out, [3]plane.Point{a, e, d})
		}
	}
	return out
}
