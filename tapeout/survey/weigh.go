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

func (w *Weighed) fitOfReading(i int) float64 { return w.pulls[i] * w.pulls[i] / w.weight.At(i, i) }

// fitOfPlace returns where the place lies if it alone lies wrong, from where it
// should. The search starts there and, for a left taken for a right, at the
// mirror place; of two places that fit alike, as two distances always have them,
// the nearer one is meant.
func (w *Weighed) fitOfPlace(place int) (shift plane.Point, fit float64) {
	rows := w.rows[place]
	shift, fit = w.search(place, rows, plane.Point{})
	if s, gain := w.search(place, rows, plane.Point{X: -2 * w.places[place].At.X}); gain > fit+alike {
		shift, fit = s, gain
	}
	return shift, math.Max(0, fit)
}

// alike is the difference of two fits below which neither is the better one: a
// likelihood ratio of 20.
const alike = 6

// search is Gauss–Newton with the two unknowns of one place; a step that makes
// it worse is halved.
func (w *Weighed) search(place int, rows []int, shift plane.Point) (plane.Point, float64) {
	pulls, gain := w.moved(place, rows, shift)
	for range mostRounds {
		step, ok := w.stepOf(place, rows, shift, pulls)
		if !ok || step.Len() < nearEnough {
			break
		}
		better := false
		for range 8 {
			next, more := w.moved(place, rows, shift.Add(step))
			if better = more > gain; better {
				shift, pulls, gain = shift.Add(step), next, more
				break
			}
			step = step.Times(0.5)
		}
		if !better {
			break
		}
	}
	return shift, gain
}

// nearEnough is the step in metres below which a wrong place has been found.
const nearEnough = 1e-5

// moved returns the rows of Q⁻¹m at the place's readings, and by how much mᵀQ⁻¹m
// falls, with the place shifted. Only its own misses change, so that the rest of
// the sums is kept.
func (w *Weighed) moved(place int, rows []int, shift plane.Point) (pulls []float64, gain float64) {
	at := w.places[place].At.Add(shift)
	change := make([]float64, len(rows))
	for k, i := range rows {
		o := w.observed[i]
		change[k] = o.Distance - at.To(w.places[o.From+o.To-place].At) - w.Miss[i]
	}
	pulls = make([]float64, len(rows))
	for k, i := range rows {
		pulls[k] = w.pulls[i]
		for l, j := range rows {
			pulls[k] += w.weight.At(i, j) * change[l]
		}
		gain -= change[k] * (w.pulls[i] + pulls[k])
	}
	return pulls, gain
}

// stepOf solves the two normal equations; where the readings at the place leave
// a direction open, the step has none along it.
func (w *Weighed) stepOf(place int, rows []int, shift plane.Point, pulls []float64) (plane.Point, bool) {
	at := w.places[place].At.Add(shift)
	n, right := w.normal(place, rows, at), plane.Point{}
	for k, i := range rows {
		o := w.observed[i]
		u, _ := at.Sub(w.places[o.From+o.To-place].At).Unit()
		right = right.Add(u.Times(pulls[k]))
	}
	e := n.Standard()
	if !(e.Major > 0) {
		return plane.Point{}, false
	}
	along := plane.Point{X: math.Cos(e.Direction), Y: math.Sin(e.Direction)}
	step := along.Times(right.Dot(along) / (e.Major * e.Major))
	if e.Minor > flatNormal*e.Major {
		across := along.Left()
		step = step.Add(across.Times(right.Dot(across) / (e.Minor * e.Minor)))
	}
	return step, true
}

// flatNormal is the share of the longer axis below which the readings at a place
// fix it along one direction only.
const flatNormal = 1e-3

// normal returns the normal matrix AᵀQ⁻¹A of a place at a position.
func (w *Weighed) normal(place int, rows []int, at plane.Point) Covariance2 {
	var n Covariance2
	for _, i := range rows {
		u, _ := at.Sub(w.places[w.observed[i].From+w.observed[i].To-place].At).Unit()
		for _, j := range rows {
			v, _ := at.Sub(w.places[w.observed[j].From+w.observed[j].To-place].At).Unit()
			p := w.weight.At(i, j)
			n = n.Plus(Covariance2{XX: p * u.X * v.X, XY: p * (u.X*v.Y + u.Y*v.X) / 2, YY: p * u.Y * v.Y})
		}
	}
	return n
}

// blind returns the misplacement in the direction in which it shows least that is
// found in 99 of 100 cases: its deviation there times the critical value and the
// normal quantile of 0.99.
func (w *Weighed) blind(place int, critical float64) float64 {
	e := w.normal(place, w.rows[place], w.places[place].At).Standard()
	if !(e.Minor > flatNormal*e.Major) {
		return math.Inf(1)
	}
	return (math.Sqrt(critical) + surely) / e.Minor
}

// surely is the normal quantile of 0.99.
const surely = 2.326

// Weakest returns the direction in which a misplacement of the place shows least.
// ok is false when no reading joins it: then every direction is as weak.
func (w *Weighed) Weakest(place int) (direction plane.Point, ok bool) {
	rows := w.rows[place]
	if len(rows) == 0 {
		return plane.Point{}, false
	}
	e := w.normal(place, rows, w.places[place].At).Standard()
	return plane.Point{X: -math.Sin(e.Direction), Y: math.Cos(e.Direction)}, true
}
