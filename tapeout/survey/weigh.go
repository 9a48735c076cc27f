package survey

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"groundrow/tapeout/plane"
)

// Placed is where a mark or a pivot should be, and how sure its placing is.
type Placed struct {
	At         plane.Point
	Covariance Covariance2
}

// Suspicion is how well one single fault explains all readings together: one
// reading is wrong, or one place lies wrong.
type Suspicion struct {
	Reading int         // index of the reading, or −1
	Place   int         // index of the place, or −1
	Fit     float64     // by how much the weighted sum of squares falls if that is the fault
	Beyond  float64     // Fit beyond what chance explains; over zero: it is no chance
	Shift   plane.Point // how far the place lies from where it should; zero for a reading
}

// Weighed is what check measures say about the places that they join, when every
// place is taken to lie where it should to within the error of its placing.
type Weighed struct {
	Miss       []float64   // metres, read minus expected, of each reading
	Sigma      []float64   // metres, the deviation of that from placing and reading
	Suspicions []Suspicion // every reading that counts, then every place that one joins
	Blind      []float64   // metres; the smallest misplacement of each place that shows whatever its direction; +Inf: none does

	places   []Placed
	observed []Observed
	counts   []bool        // the readings that have not been set aside
	rows     [][]int       // of each place: the readings that count and end there
	weight   *mat.SymDense // inverse of the covariance of the misses; nought for a reading set aside
	pulls    []float64     // the weight times the misses
}

// Chance is how often, in one floor that is all right, chance alone raises a
// suspicion: five times in a thousand, shared out evenly over all suspicions.
const Chance = 0.005

// Weigh compares readings with the distances between the places. It is the
// adjustment of the distances with the places as prior observations, solved for
// the misses (B. Teunissen, Testing Theory, the w-test and its two-dimensional
// form, from memory): with their covariance Q = J·C·Jᵀ + S, one fault that
// changes the misses by c explains (cᵀQ⁻¹m)²/(cᵀQ⁻¹c) of mᵀQ⁻¹m. A place that
// lies wrong has two unknowns, which are found exactly, not to first order, so
// that a mark which is metres off is told as well.
func Weigh(places []Placed, observed []Observed) (Weighed, error) {
	w := Weighed{places: places, observed: observed}
	if err := w.prepare(); err != nil {
		return Weighed{}, fmt.Errorf("weigh the check measures: %w", err)
	}
	w.suspect()
	return w, nil
}

// Aside returns what the other readings say by themselves. A reading set aside
// keeps its index and its miss and raises no suspicion. Its row leaves the inverse
// by a rank-one change, so that nothing is solved again.
func (w Weighed) Aside(readings ...int) Weighed {
	n := len(w.observed)
	w.counts = slices.Clone(w.counts)
	weight := mat.NewSymDense(n, nil)
	weight.CopySym(w.weight)
	row := make([]float64, n)
	for _, i := range readings {
		own := weight.At(i, i)
		if !w.counts[i] || own <= 0 {
			continue
		}
		w.counts[i] = false
		for j := range row {
			row[j] = weight.At(i, j)
		}
		weight.SymRankOne(weight, -1/own, mat.NewVecDense(n, row))
		for j := range n {
			weight.SetSym(i, j, 0)
		}
	}
	w.weight = weight
	w.pull()
	w.suspect()
	return w
}

// At returns the readings that count and have an end at the place.
func (w *Weighed) At(place int) []int { return w.rows[place] }

// suspect tries every reading and every place as the one fault.
func (w *Weighed) suspect() {
	w.gather()
	joined, readings := 0, 0
	for _, rows := range w.rows {
		if len(rows) > 0 {
			joined++
		}
	}
	for _, yes := range w.counts {
		if yes {
			readings++
		}
	}
	one, two := critical(readings + joined)
	w.Suspicions = nil
	for i, yes := range w.counts {
		if yes {
			fit := w.fitOfReading(i)
			w.Suspicions = append(w.Suspicions, Suspicion{Reading: i, Place: -1, Fit: fit, Beyond: fit - one})
		}
	}
	w.Blind = make([]float64, len(w.places))
	for place, rows := range w.rows {
		if len(rows) == 0 {
			w.Blind[place] = math.Inf(1)
			continue
		}
		shift, fit := w.fitOfPlace(place)
		w.Suspicions = append(w.Suspicions, Suspicion{Reading: -1, Place: place, Fit: fit, Beyond: fit - two, Shift: shift})
		w.Blind[place] = w.blind(place, two)
	}
}

// critical returns what chance alone explains when so many suspicions are tried:
// the quantiles of chi-square with one and with two degrees of freedom at Chance
// shared out evenly.
func critical(suspicions int) (one, two float64) {
	each := Chance / float64(max(1, suspicions))
	root := math.Sqrt2 * math.Erfinv(1-each)
	return root * root, -2 * math.Log(each)
}

func (w *Weighed) prepare() error {
	n := len(w.observed)
	if n == 0 {
		return errors.New("nothing has been measured")
	}
	w.Miss, w.Sigma = make([]float64, n), make([]float64, n)
	q := mat.NewSymDense(n, nil)
	for i, o := range w.observed {
		if o.From < 0 || o.To < 0 || o.From >= len(w.places) || o.To >= len(w.places) || o.From == o.To {
			return fmt.Errorf("reading number %d is not between two places", i+1)
		}
		expected := w.places[o.From].At.To(w.places[o.To].At)
		if !(expected >= Near && expected <= longest && o.Distance >= 0 && o.Distance <= longest && o.Sigma > 0) || math.IsInf(o.Sigma, 0) {
			return fmt.Errorf("reading number %d is not a length with an error between two places", i+1)
		}
		w.Miss[i] = o.Distance - expected
		for j := range i + 1 {
			v := w.shared(o, w.observed[j])
			if i == j {
				v += o.Sigma * o.Sigma
				w.Sigma[i] = math.Sqrt(v)
			}
			q.SetSym(i, j, v)
		}
	}
	var c mat.Cholesky
	if !c.Factorize(q) {
		return errors.New("the errors of placing make no sense")
	}
	w.weight = new(mat.SymDense)
	if err := c.InverseTo(w.weight); err != nil {
		return fmt.Errorf("weigh the misses: %w", err)
	}
	w.counts = make([]bool, n)
	for i := range w.counts {
		w.counts[i] = true
	}
	w.pull()
	return nil
}

func (w *Weighed) pull() {
	var pulls mat.VecDense
	pulls.MulVec(w.weight, mat.NewVecDense(len(w.Miss), w.Miss))
	w.pulls = pulls.RawVector().Data
}

// shared returns the covariance of two distances from the places they share.
func (w *Weighed) shared(a, b Observed) float64 {
	sum := 0.0
	for _, place := range []int{a.From, a.To} {
		if place != b.From && place != b.To {
			continue
		}
		c := w.places[place].Covariance
		u, v := w.derive(a, place), w.derive(b, place)
		sum += u.X*(c.XX*v.X+c.XY*v.Y) + u.Y*(c.XY*v.X+c.YY*v.Y)
	}
	return sum
}

// derive returns how a distance grows as one of its places moves.
func (w *Weighed) derive(o Observed, place int) plane.Point {
	other := o.From + o.To - place
	u, _ := w.places[place].At.Sub(w.places[other].At).Unit()
	return u
}

// gather lists the readings that count at each place.
func (w *Weighed) gather() {
	w.rows = make([][]int, len(w.places))
	for i, o := range w.observed {
		if w.counts[i] {
			w.rows[o.From], w.rows[o.To] = append(w.rows[o.From], i), append(w.rows[o.To], i)
		}
	}
}
