package plane

import "math"

// DistanceTo returns the smallest distance between two edges in metres, zero where
// they cross.
func (e Edge) DistanceTo(f Edge) float64 {
	p, q := e.Gap(f)
	return p.To(q)
}

// Gap returns the nearest points of two edges, p on e and q on f; they are the same
// point where the edges cross. Of several nearest pairs it is any one.
func (e Edge) Gap(f Edge) (p, q Point) {
	c, d := e.curve(), f.curve()
	if c.length > 0 && d.length > 0 {
		var room [2]Point
		if met := crossings(&c, &d, 0, room[:0]); len(met) > 0 {
			return met[0], met[0]
		}
	}
	best := math.Inf(1)
	try := func(from Point, on *curve, swap bool) {
		at, _ := on.nearest(from)
		if dist := from.To(at); dist < best {
			best, p, q = dist, from, at
			if swap {
				p, q = at, from
			}
		}
	}
	try(e.A, &d, false)
	try(e.B, &d, false)
	try(f.A, &c, true)
	try(f.B, &c, true)
	for _, at := range facing(&c, &d) {
		try(at, &d, false)
	}
	for _, at := range facing(&d, &c) {
		try(at, &c, true)
	}
	return p, q
}

// facing returns the points of an arc, besides its ends, that can be the nearest
// to another edge: those on the perpendicular to a line, or in line with the
// centre of the other arc.
func facing(arc, other *curve) []Point {
	if arc.straight || other.length == 0 {
		return nil
	}
	centre := arc.mid.Sub(arc.out.Times(1 / (2 * arc.bend)))
	way := other.along.Left()
	if !other.straight {
		u, ok := other.mid.Sub(other.out.Times(1 / (2 * other.bend))).Sub(centre).Unit()
		if !ok {
			return nil
		}
		way = u
	}
	var points []Point
	for _, w := range []Point{way, way.Times(-1)} {
		if q, t := arc.nearest(centre.Add(w.Times(1 / (2 * arc.bend)))); t > 0 && t < 1 {
			points = append(points, q)
		}
	}
	return points
}
