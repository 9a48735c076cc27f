package plane

import "math"

// Edge is a straight segment from A to B, or the circular arc of the given bulge
// (see Vertex). A full circle is two edges.
type Edge struct {
	A, B  Point
	Bulge float64
}

// Straight tells whether the edge is a segment: an arc whose rise above its
// chord is below a nanometre counts as one.
func (e Edge) Straight() bool {
	return math.Abs(e.Bulge)*e.A.To(e.B)/2 < 1e-9
}

// Chord returns the straight distance from A to B.
func (e Edge) Chord() float64 { return e.A.To(e.B) }

// Sweep returns the signed angle of the arc, 4·atan(bulge); zero when straight.
func (e Edge) Sweep() float64 {
	if e.Straight() {
		return 0
	}
	return 4 * math.Atan(e.Bulge)
}

// Circle returns centre and radius of the arc; ok is false when straight.
func (e Edge) Circle() (centre Point, radius float64, ok bool) {
	if e.Straight() {
		return Point{}, 0, false
	}
	b := e.Bulge
	chord := e.B.Sub(e.A)
	offset := (1 - b*b) / (4 * b)
	centre = e.A.Towards(e.B, 0.5).Add(chord.Left().Times(offset))
	return centre, chord.Len() * (1 + b*b) / (4 * math.Abs(b)), true
}

// Length returns the length along the edge in metres.
func (e Edge) Length() float64 {
	_, r, ok := e.Circle()
	if !ok {
		return e.Chord()
	}
	return r * math.Abs(e.Sweep())
}

// At returns the point at fraction t of the length, t in [0, 1].
func (e Edge) At(t float64) Point {
	switch t {
	case 0:
		return e.A
	case 1:
		return e.B
	}
	if e.Straight() {
		return e.A.Towards(e.B, t)
	}
	// The chord from A to the point, seen in the chord from A to B: turned by half
	// the angle between their ends, and in proportion to the sines of the half
	// angles. The centre of a shallow arc is too far off to compute with.
	half := e.Sweep() / 2
	chord := Motion{Turn: half * (t - 1)}.Rotate(e.B.Sub(e.A))
	return e.A.Add(chord.Times(math.Sin(half*t) / math.Sin(half)))
}

// Tangent returns the direction of travel at fraction t of the length, with
// length one; the zero displacement when A and B are the same point.
func (e Edge) Tangent(t float64) Point {
	u, _ := e.B.Sub(e.A).Unit()
	return Motion{Turn: e.Sweep() * (t - 0.5)}.Rotate(u)
}

// Part returns the piece of the edge from fraction s to fraction t, s ≤ t.
func (e Edge) Part(s, t float64) Edge {
	if s == 0 && t == 1 {
		return e
	}
	p := Edge{A: e.At(s), B: e.At(t)}
	if !e.Straight() {
		p.Bulge = math.Tan(e.Sweep() * (t - s) / 4)
	}
	return p
}

// Reversed returns the same edge walked from B to A.
func (e Edge) Reversed() Edge { return Edge{e.B, e.A, -e.Bulge} }

// Moved returns the edge after the motion.
func (e Edge) Moved(m Motion) Edge { return Edge{m.Apply(e.A), m.Apply(e.B), e.Bulge} }

// Bounds returns the smallest box around the edge.
func (e Edge) Bounds() Box {
	b, _ := BoxOf(e.A, e.B)
	if e.Straight() {
		return b
	}
	// The arc reaches furthest where it runs along an axis: at a multiple of a
	// quarter turn of its direction of travel, which starts within a half turn of
	// the chord's and ends less than a full turn later.
	sweep := e.Sweep()
	start := e.B.Sub(e.A).Angle() - sweep/2
	for q := -8; q <= 8; q++ {
		if t := (float64(q)*math.Pi/2 - start) / sweep; t > 0 && t < 1 {
			p := e.At(t)
			b = b.Union(Box{p, p})
		}
	}
	return b
}

// Bounds returns the smallest box around edges; ok is false when there are none.
func Bounds(edges []Edge) (b Box, ok bool) {
	for i, e := range edges {
		if i == 0 {
			b = e.Bounds()
			continue
		}
		b = b.Union(e.Bounds())
	}
	return b, len(edges) > 0
}

// Flatten returns points from A to B such that no chord departs from the edge by
// more than tol metres, and no more of them than that needs: the sagitta of a
// chord of half-angle h on radius R is R·(1 − cos h). An arc without a radius that is
// finite, or a tolerance that is not above zero, gives A and B alone.
func (e Edge) Flatten(tol float64) []Point {
	_, r, ok := e.Circle()
	if !ok || !(tol > 0) || math.IsNaN(r) || math.IsInf(r, 0) {
		return []Point{e.A, e.B}
	}
	half := math.Pi / 2
	if tol < r {
		half = 2 * math.Asin(math.Sqrt(tol/(2*r))) // 1 − cos h = 2·sin²(h/2)
	}
	n := int(min(max(math.Ceil(math.Abs(e.Sweep())/(2*half)-1e-9), 1), maxChords))
	ps := make([]Point, n+1)
	for i := range ps {
		ps[i] = e.At(float64(i) / float64(n))
	}
	return ps
}

// maxChords bounds what one arc may be flattened into: a tolerance of a
// micrometre on a stage-sized arc stays far below it.
const maxChords = 10_000
