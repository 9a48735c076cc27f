package pdf

import (
	"math"

	"groundrow/tapeout/plane"
)

// bezier is a cubic curve from p[0] to p[3].
type bezier [4]plane.Point

const (
	samples   = 16                  // places at which a curve is compared with an arc
	straight  = 1.0 / 8             // part of the tolerance by which a line may be bent; more of it is an arc
	widestArc = 100 * math.Pi / 180 // that drawing programs write in one curve; a quarter turn as a rule
	mostParts = 1000                // of one curve
)

// at returns the point at parameter t in [0, 1].
func (b *bezier) at(t float64) plane.Point {
	u := 1 - t
	return b[0].Times(u * u * u).Add(b[1].Times(3 * u * u * t)).Add(b[2].Times(3 * u * t * t)).Add(b[3].Times(t * t * t))
}

// edges returns the curve as a segment or a circular arc where it is one within tol,
// else as a chain of chords that leave it by no more than tol.
func (b *bezier) edges(tol float64) []plane.Edge {
	if b.isStraight(tol * straight) {
		return []plane.Edge{{A: b[0], B: b[3]}}
	}
	if arc, ok := b.arc(tol); ok {
		return []plane.Edge{arc}
	}
	return b.chords(tol)
}

// isStraight tells whether the curve stays within tol of its chord: it lies in the
// hull of its four points.
func (b *bezier) isStraight(tol float64) bool {
	chord := plane.Edge{A: b[0], B: b[3]}
	return chord.Distance(b[1]) <= tol && chord.Distance(b[2]) <= tol
}

// arc returns the circular arc through both ends and the middle of the curve, where
// the curve is within tol of it, or is how that arc is usually written.
func (b *bezier) arc(tol float64) (arc plane.Edge, ok bool) {
	arc, ok = plane.Through(b[0], b.at(0.5), b[3])
	if !ok || arc.Straight() || arc.Length() > b.longest()+tol { // the curve turns back, the arc goes all round
		return plane.Edge{}, false
	}
	if b.writes(arc, tol) {
		return arc, true
	}
	for i := 1; i < samples; i++ {
		if arc.Distance(b.at(float64(i)/samples)) > tol {
			return plane.Edge{}, false
		}
	}
	return arc, true
}

// longest is the length of the lines by the control points, than which the curve is
// no longer.
func (b *bezier) longest() float64 { return b[0].To(b[1]) + b[1].To(b[2]) + b[2].To(b[3]) }

// writes tells whether the control points are those by which drawing programs write
// the arc: on its tangents, 4/3·tan(sweep/4) of the radius from its ends. Such a
// curve leaves the circle by up to 0.03 % of the radius, which is more than tol on a
// large circle, but the circle is what was drawn.
func (b *bezier) writes(arc plane.Edge, tol float64) bool {
	_, r, _ := arc.Circle()
	sweep := math.Abs(arc.Sweep())
	reach := 4.0 / 3 * math.Tan(sweep/4) * r
	return sweep <= widestArc &&
		b[1].To(b[0].Add(arc.Tangent(0).Times(reach))) <= tol &&
		b[2].To(b[3].Sub(arc.Tangent(1).Times(reach))) <= tol
}

// chords cuts the curve at equal steps of its parameter. The distance of a curve
// from its chord is at most an eighth of its greatest second derivative, here six
// times the greatest second difference of its points.
func (b *bezier) chords(tol float64) []plane.Edge {
	bend := max(b[0].Add(b[2]).Sub(b[1].Times(2)).Len(), b[1].Add(b[3]).Sub(b[2].Times(2)).Len())
	parts := int(max(1, min(mostParts, math.Ceil(math.Sqrt(6*bend/(8*tol))))))
	out := make([]plane.Edge, parts)
	from := b[0]
	for i := range out {
		to := b.at(float64(i+1) / float64(parts))
		if i == parts-1 {
			to = b[3]
		}
		out[i] = plane.Edge{A: from, B: to}
		from = to
	}
	return out
}
