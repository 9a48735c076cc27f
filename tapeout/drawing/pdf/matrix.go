package pdf

import (
	"math"

	"groundrow/tapeout/plane"
)

// matrix maps (x, y) to (a·x + c·y + e, b·x + d·y + f), as the PDF reference writes
// it (1.7, 4.2.2).
type matrix struct{ a, b, c, d, e, f float64 }

var unmoved = matrix{a: 1, d: 1}

// apply moves a place.
func (m matrix) apply(p plane.Point) plane.Point {
	return plane.Point{X: m.a*p.X + m.c*p.Y + m.e, Y: m.b*p.X + m.d*p.Y + m.f}
}

// turn maps a displacement.
func (m matrix) turn(p plane.Point) plane.Point {
	return plane.Point{X: m.a*p.X + m.c*p.Y, Y: m.b*p.X + m.d*p.Y}
}

// then returns the matrix that does m first and outer after it.
func (m matrix) then(outer matrix) matrix {
	x, y := outer.turn(plane.Point{X: m.a, Y: m.b}), outer.turn(plane.Point{X: m.c, Y: m.d})
	o := outer.apply(plane.Point{X: m.e, Y: m.f})
	return matrix{x.X, x.Y, y.X, y.Y, o.X, o.Y}
}

// scale is the factor by which lengths grow; their geometric mean where it depends
// on the direction.
func (m matrix) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

// onPage maps the user space of a page whose visible box is given to the page as it
// is shown: turned clockwise by quarter turns, its bottom left corner at the origin,
// in points of 1/72 inch.
func onPage(box plane.Box, quarters int, userUnit float64) matrix {
	m := matrix{a: 1, d: 1, e: -box.Min.X, f: -box.Min.Y}
	w, h := box.Width(), box.Height()
	for range (quarters%4 + 4) % 4 {
		m = m.then(matrix{b: -1, c: 1, f: w})
		w, h = h, w
	}
	return m.then(matrix{a: userUnit, d: userUnit})
}
