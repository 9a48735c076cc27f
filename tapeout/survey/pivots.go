package survey

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"groundrow/tapeout/plane"
)

// Limits are what the choice of pivots has to respect.
type Limits struct {
	Budget  Budget                          // what makes a mark land beside its place
	Longest float64                         // metres of tape; zero: no limit
	Blocked func(from, to plane.Point) bool // a column is in the way; nil: nothing is
	Allowed float64                         // metres; a mark with a longer 95 % half-axis is poor; zero: none is
	Keep    int                             // how many choices are wanted; zero: three
}

// Site is where a pivot may be set: anywhere along an edge (a wall, the centre
// line), or in one spot where the edge has no length.
type Site struct{ plane.Edge }

// Spot returns the site of one place.
func Spot(at plane.Point) Site { return Site{plane.Edge{A: at, B: at}} }

// Stand is a pivot in its site.
type Stand struct {
	Site int // index of the site
	At   plane.Point
}

// Choice is one pair of pivots and what it does to the marks.
type Choice struct {
	A, B       Stand
	Worst      float64 // metres; the longer half-axis of the 95 % ellipse of the worst mark within reach
	Weakest    int     // index of that mark, or −1
	Poor       int     // marks within reach that are less sure than allowed
	OutOfReach int     // marks beyond the tape, behind something, or on the line of the pivots
}

// Pair returns the pivots of the choice.
func (c Choice) Pair() TwoTape { return TwoTape{c.A.At, c.B.At} }

// Unserved counts the marks that the pair does not place as well as is allowed.
func (c Choice) Unserved() int { return c.OutOfReach + c.Poor }

// Compare orders choices, the better first: by how many marks they leave
// unserved, then by the worst of those within reach.
func (c Choice) Compare(d Choice) int {
	return cmp.Or(cmp.Compare(c.Unserved(), d.Unserved()), cmp.Compare(c.Worst, d.Worst))
}

// BestPairs returns the best few pairs of pivots that the sites offer: first those
// that leave the fewest marks out of reach or poor, among them those whose worst
// mark has the smallest 95 % ellipse. Pairs that differ by less than apart metres count as one. A mark on a
// pivot needs no tape and has no error. Pivots within Near of each other are no
// pair.
//
// Sites with a length are tried from place to place; the best pairs are then slid
// along their sites until no step of a centimetre makes them better.
func BestPairs(sites []Site, points []plane.Point, limits Limits) ([]Choice, error) {
	if err := pairable(sites, points); err != nil {
		return nil, fmt.Errorf("choose pivots: %w", err)
	}
	if limits.Keep <= 0 {
		limits.Keep = 3
	}
	s := search{sites: sites, points: points, limits: limits}
	s.sample()
	found := s.coarse()
	if len(found) == 0 {
		return nil, errors.New("choose pivots: all the places offered are the same one; offer two that are apart")
	}
	best := s.refined(found)
	if best[0].OutOfReach == len(points) {
		return nil, errors.New("choose pivots: no two of the places offered reach a single mark; offer nearer places, a longer tape, or places with a clear view")
	}
	return best, nil
}

// JudgePair tells what one pair of pivots does to the marks.
func JudgePair(pair TwoTape, points []plane.Point, limits Limits) Choice {
	s := search{points: points, limits: limits}
	return s.judge(s.place(Stand{At: pair.A}), s.place(Stand{At: pair.B}))
}

// pairable tells what is missing for a choice of pivots.
func pairable(sites []Site, points []plane.Point) error {
	long := false
	for i, s := range sites {
		if !s.A.Finite() || !s.B.Finite() {
			return fmt.Errorf("place number %d has no position", i+1)
		}
		long = long || s.Length() >= Near
	}
	switch {
	case len(sites) < 2 && !long:
		return errors.New("two fixed places in the room are needed, and there are fewer; measure in at least two")
	case len(points) == 0:
		return errors.New("there are no marks to reach yet")
	}
	for i, p := range points {
		if !p.Finite() {
			return fmt.Errorf("mark number %d has no position", i+1)
		}
	}
	return nil
}

// sight is the view from a place to a mark.
type sight struct {
	direction plane.Point // of length one; zero on the place itself
	distance  float64
	variance  float64 // square metres; of the distance, with the pivot's own error
	clear     bool
}

// post is a place tried for a pivot with its views of all marks.
type post struct {
	Stand
	along  float64 // fraction of the site's length
	sights []sight
}

func (s *search) place(at Stand) post {
	p := post{Stand: at, sights: make([]sight, len(s.points))}
	b := s.limits.Budget
	for i, mark := range s.points {
		d := at.At.To(mark)
		v := sight{distance: d, clear: s.limits.Longest <= 0 || d <= s.limits.Longest}
		if d >= Near {
			v.direction = mark.Sub(at.At).Times(1 / d)
			m := b.Measure(d)
			v.variance = m*m + b.Pivot*b.Pivot
			v.clear = v.clear && (s.limits.Blocked == nil || !s.limits.Blocked(at.At, mark))
		}
		p.sights[i] = v
	}
	return p
}

// judge fills in what a pair does to the marks. With the tapes crossing at γ, the
// variances α and β of the two distances give the mark a covariance of the trace
// (α + β)/sin²γ and the determinant αβ/sin²γ, whose larger eigenvalue is the
// square of the longer half-axis. The distance of a mark from the line of the
// pivots is a·b·sin γ over the base: twice the triangle's area.
func (s *search) judge(a, b post) Choice {
	c := Choice{A: a.Stand, B: b.Stand, Weakest: -1}
	base, most := a.At.To(b.At), 0.0
	placing, poor := s.limits.Budget.Placing*s.limits.Budget.Placing, s.poorBeyond()
	for i, u := range a.sights {
		v := b.sights[i]
		if u.distance < Near || v.distance < Near {
			continue
		}
		sine := math.Abs(u.direction.Cross(v.direction))
		if !u.clear || !v.clear || u.distance*v.distance*sine < Near*base {
			c.OutOfReach++
			continue
		}
		half, det := (u.variance+v.variance)/(2*sine*sine), u.variance*v.variance/(sine*sine)
		larger := half + math.Sqrt(max(0, half*half-det))
		if larger > poor {
			c.Poor++
		}
		if larger > most {
			most, c.Weakest = larger, i
		}
	}
	if c.Weakest >= 0 {
		c.Worst = math.Sqrt(Chi95 * (most + placing))
	}
	return c
}

// poorBeyond returns the variance of the tapes, in square metres, beyond which a
// mark is poor.
func (s *search) poorBeyond() float64 {
	allowed, placing := s.limits.Allowed, s.limits.Budget.Placing
	if allowed <= 0 {
		return math.Inf(1)
	}
	return allowed*allowed/Chi95 - placing*placing
}
