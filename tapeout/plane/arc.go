package plane

import "math"

// Through returns the arc from a to b that passes through m. Where m lies on the
// segment between them it is that segment. ok is false when two of the points are
// one, or when m lies on the line outside the segment: no arc does that.
//
// The angle at m is half the rest of the full turn (inscribed angle), so the
// bulge is its half's cotangent.
func Through(a, m, b Point) (e Edge, ok bool) {
	u, v := a.Sub(m), b.Sub(m)
	lengths, dot, cross := u.Len()*v.Len(), u.Dot(v), u.Cross(v)
	bulge := -cross / (lengths - dot)
	if dot > 0 { // the same, without the difference of nearly equal numbers
		bulge = -(lengths + dot) / cross
	}
	if a == b || lengths == 0 || !(math.Abs(bulge) < largestBulge) {
		return Edge{}, false
	}
	return Edge{a, b, bulge}, true
}

// largestBulge is that of an arc so nearly a full circle that float64 can no longer
// tell the two.
const largestBulge = 1e9

// ArcOf returns the arc around centre from direction start, as far as sweep
// (radians, positive counter-clockwise), in one edge or in two equal ones, so that
// none turns more than half a turn. A sweep beyond a full turn is a full circle;
// there is no arc without a radius or a sweep.
func ArcOf(centre Point, radius, start, sweep float64) []Edge {
	sweep = max(-2*math.Pi, min(2*math.Pi, sweep))
	from := centre.Add(Polar(radius, start))
	if !(radius > 0) || sweep == 0 || !from.Finite() || math.IsNaN(sweep) {
		return nil
	}
	to := centre.Add(Polar(radius, start+sweep))
	if math.Abs(sweep) <= math.Pi {
		return []Edge{{from, to, math.Tan(sweep / 4)}}
	}
	if math.Abs(sweep) == 2*math.Pi {
		to = from
	}
	half := centre.Add(Polar(radius, start+sweep/2))
	bulge := math.Tan(sweep / 8)
	return []Edge{{from, half, bulge}, {half, to, bulge}}
}
