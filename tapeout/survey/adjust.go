package survey

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"groundrow/tapeout/plane"
)

// Doubtful is the standardised residual beyond which a reading does not belong:
// the 0.1 % point of the normal distribution in both directions (Baarda).
const Doubtful = 3.29

// Observed is one measured distance between two places.
type Observed struct {
	From, To int     // indices of the places
	Distance float64 // metres, as read
	Sigma    float64 // metres, the error of reading it
}

// Adjusted is what all readings together say.
type Adjusted struct {
	Points     []plane.Point
	Covariance []Covariance2 // of each place, from the sigmas given
	Readings   []Residue     // one for each observed distance
	Freedom    int           // readings beyond those needed
	SigmaZero  float64       // one if the readings are as good as their sigmas say; NaN without freedom
}

// Residue is how one reading sits with all the others.
type Residue struct {
	Residual     float64 // metres, adjusted minus read
	Redundancy   float64 // how much the others check it, 0 (not at all) to 1
	Standardised float64 // residual over its own deviation; zero when nothing checks it
}

// Worst returns the reading that belongs least and whether it is beyond Doubtful.
// Where readings check each other in one way only they share one standardised
// residual, and any of them may be the wrong one: the first is returned.
func (a Adjusted) Worst() (reading int, doubtful bool) {
	most := 0.0
	for i, r := range a.Readings {
		if w := math.Abs(r.Standardised); w > most*(1+1e-6) {
			reading, most = i, w
		}
	}
	return reading, most > Doubtful
}

// Adjust moves the places that are not fixed so that the squares of the weighted
// residuals of all distances are least (Gauss–Newton; C. D. Ghilani, Adjustment
// Computations, chapter 14). places are where they should be, to a metre or so;
// fixed may be nil. What the distances leave open, without fixed places the whole
// floor's shift and turn, is settled by the smallest move from places.
func Adjust(places []plane.Point, fixed []bool, observed []Observed) (Adjusted, error) {
	n := adjustment{places: append([]plane.Point(nil), places...), observed: observed}
	if err := n.prepare(fixed); err != nil {
		return Adjusted{}, fmt.Errorf("weigh the readings: %w", err)
	}
	for range mostRounds {
		moved, err := n.step()
		if err != nil {
			return Adjusted{}, fmt.Errorf("weigh the readings: %w", err)
		}
		if moved < settled {
			return n.judge(), nil
		}
	}
	return Adjusted{}, errors.New("weigh the readings: they contradict each other too much; measure the largest distances again")
}

// The places stand still when none moves by more than settled metres: what
// floating point can tell apart even in national coordinates.
const (
	settled    = 1e-7
	mostRounds = 50
)

// adjustment is one on its way. Each free place has two unknowns, from
// column[place] on; a fixed one has the column −1.
type adjustment struct {
	places   []plane.Point
	observed []Observed
	column   []int
	unknowns int

	design *mat.Dense // weighted derivatives of the distances
	svd    mat.SVD    // of the design
	rank   int
}

func (n *adjustment) prepare(fixed []bool) error {
	n.column = make([]int, len(n.places))
	for i, p := range n.places {
		if !p.Finite() {
			return fmt.Errorf("place number %d has no position", i+1)
		}
		n.column[i] = -1
		if i >= len(fixed) || !fixed[i] {
			n.column[i] = n.unknowns
			n.unknowns += 2
		}
	}
	if n.unknowns == 0 || len(n.observed) == 0 {
		return errors.New("there is nothing to move or nothing measured")
	}
	for i, o := range n.observed {
		if o.From < 0 || o.To < 0 || o.From >= len(n.places) || o.To >= len(n.places) || o.From == o.To {
			return fmt.Errorf("reading number %d is not between two places", i+1)
		}
		if !(o.Sigma > 0 && o.Distance >= 0 && o.Distance <= longest) || math.IsInf(o.Sigma, 0) {
			return fmt.Errorf("reading number %d is not a length with an error", i+1)
		}
		if !(n.places[o.From].To(n.places[o.To]) >= Near) {
			return fmt.Errorf("reading number %d is between two marks on one spot", i+1)
		}
	}
	return nil
}

// step moves the places once and returns the farthest move of one unknown.
func (n *adjustment) step() (moved float64, err error) {
	miss := mat.NewVecDense(len(n.observed), nil)
	n.design = mat.NewDense(len(n.observed), n.unknowns, nil)
	for row, o := range n.observed {
		d := n.places[o.To].Sub(n.places[o.From])
		u, ok := d.Unit()
		if !ok {
			return 0, fmt.Errorf("reading number %d puts two marks on one spot; measure it again", row+1)
		}
		u = u.Times(1 / o.Sigma)
		miss.SetVec(row, (o.Distance-d.Len())/o.Sigma)
		n.derive(row, o.To, u)
		n.derive(row, o.From, u.Times(-1))
	}
	if !n.svd.Factorize(n.design, mat.SVDThin) {
		return 0, errors.New("the readings cannot be solved; measure the largest distances again")
	}
	n.rank = n.svd.Rank(1e-9)
	var move mat.VecDense
	n.svd.SolveVecTo(&move, miss, n.rank)
	for i, c := range n.column {
		if c >= 0 {
			step := plane.Point{X: move.AtVec(c), Y: move.AtVec(c + 1)}
			n.places[i] = n.places[i].Add(step)
			moved = max(moved, math.Abs(step.X), math.Abs(step.Y))
		}
	}
	return moved, nil
}

func (n *adjustment) derive(row, place int, u plane.Point) {
	if c := n.column[place]; c >= 0 {
		n.design.Set(row, c, u.X)
		n.design.Set(row, c+1, u.Y)
	}
}

// judge returns the places as they are now with their errors. With the singular
// values S and directions U, V of the weighted design, the cofactors are
// V·S⁻²·Vᵀ and what a reading decides by itself is its diagonal of U·Uᵀ.
func (n *adjustment) judge() Adjusted {
	var u, v mat.Dense
	n.svd.UTo(&u)
	n.svd.VTo(&v)
	values := n.svd.Values(nil)
	out := Adjusted{Points: n.places, Freedom: len(n.observed) - n.rank, SigmaZero: math.NaN()}
	sum := 0.0
	for row, o := range n.observed {
		r := Residue{Residual: n.places[o.From].To(n.places[o.To]) - o.Distance, Redundancy: 1}
		for k := range n.rank {
			r.Redundancy -= u.At(row, k) * u.At(row, k)
		}
		w := r.Residual / o.Sigma
		sum += w * w
		if r.Redundancy > 1e-6 {
			r.Standardised = w / math.Sqrt(r.Redundancy)
		}
		out.Readings = append(out.Readings, r)
	}
	if out.Freedom > 0 {
		out.SigmaZero = math.Sqrt(sum / float64(out.Freedom))
	}
	out.Covariance = make([]Covariance2, len(n.places))
	for i, c := range n.column {
		for k := range n.rank {
			if c >= 0 {
				along := plane.Point{X: v.At(c, k), Y: v.At(c+1, k)}
				out.Covariance[i] = out.Covariance[i].Plus(outer(along.Times(1 / values[k])))
			}
		}
	}
	return out
}
