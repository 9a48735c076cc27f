package room

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// judged is what the settled shape says of its measurements. With the singular
// values S and directions U, V of the weighted design, the cofactors are V·S⁻²·Vᵀ,
// what a reading decides by itself is its diagonal of U·Uᵀ, and the columns of V
// without a singular value are the ways in which the shape can still move.
type judged struct {
	measures      []Measure
	freedom, open int
	likely        []survey.Covariance2

	u      mat.Dense
	v      mat.Dense
	values []float64
	rank   int
}

// found80 is the error, in standard deviations of a reading that nothing else
// decides, which goes beyond survey.Doubtful eight times in ten: the two normal
// quantiles 3.291 and 0.842 added (W. Baarda, A testing procedure for use in
// geodetic networks, 1968, from memory).
const found80 = survey.Doubtful + 0.8416

// checked is the redundancy below which a reading counts as checked by nothing.
const checked = 1e-6

func (n *net) judge() *judged {
	j := &judged{}
	var svd mat.SVD
	if !svd.Factorize(n.design(), mat.SVDThinU|mat.SVDFullV) {
		return j // finite derivatives always have singular values
	}
	svd.UTo(&j.u)
	svd.VTo(&j.v)
	j.values = svd.Values(nil)
	j.rank = svd.Rank(1e-7)
	j.freedom, j.open = len(n.reads)-j.rank, n.unknowns()-j.rank
	for row, r := range n.reads {
		j.measures = append(j.measures, n.measure(j, row, r))
	}
	j.likely = make([]survey.Covariance2, n.places)
	for place := range j.likely {
		for k := range j.rank {
			along := j.way(place, k).Times(1 / j.values[k])
			c := &j.likely[place]
			*c = c.Plus(survey.Covariance2{XX: along.X * along.X, XY: along.X * along.Y, YY: along.Y * along.Y})
		}
	}
	return j
}

// way is how a place moves with the direction k of the design.
func (j *judged) way(place, k int) (p plane.Point) {
	x, y := column(place)
	if x >= 0 {
		p.X = j.v.At(x, k)
	}
	if y >= 0 {
		p.Y = j.v.At(y, k)
	}
	return p
}

func (n *net) measure(j *judged, row int, r reading) Measure {
	value, _ := r.model(n.at)
	out := Measure{Kind: r.kind, ID: r.id, Name: n.nameOf(r), Read: r.value, Adjusted: r.value - r.miss(value), Redundancy: 1, Shows: math.Inf(1)}
	for k := range j.rank {
		out.Redundancy -= j.u.At(row, k) * j.u.At(row, k)
	}
	if out.Redundancy < checked {
		out.Redundancy = 0
		return out
	}
	root := math.Sqrt(out.Redundancy)
	out.Standardised = -r.miss(value) / r.sigma / root
	out.Shows = found80 * r.sigma / root
	return out
}

// nameOf is what a reading is called.
func (n *net) nameOf(r reading) string {
	if r.kind == Square {
		return n.name(r.b)
	}
	return span(n.name(r.a), n.name(r.b))
}
