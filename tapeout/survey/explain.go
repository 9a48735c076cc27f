package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

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
