package room

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// Verdict is what is wrong with the measurements, if anything is.
type Verdict struct {
	Faults   []Fault // none: nothing is beyond what a tape does
	Together bool    // all of them are wrong; otherwise one of them is
}

// Fault is a measurement that the others contradict.
type Fault struct {
	Measure  int     // index in Solution.Measures
	Expected float64 // metres or radians; what the others make of it
	Cause    string  // the usual slip that explains it; empty: none does
}

// Sure tells whether one measurement, and no other, explains the contradiction.
func (v Verdict) Sure() bool { return len(v.Faults) == 1 }

// farBehind is by how much more badness an explanation is left with before it is no
// longer one beside the best: the 0.1 % point of chi-square with one degree of
// freedom.
const farBehind = 10.83

// leastShare is the share of the badness that a measurement must take with it, to first
// order, to be worth solving the room without it; its square of the standardised residual
// is what it takes. A fault of metres takes less than all of it to first order, so that the
// share is far below one.
const leastShare = 0.1

// mostTried is how many measurements are tried as the wrong one.
const mostTried = 40

// verdict tries each doubtful measurement as the one that is wrong: the room is
// solved without it, and if the others then agree to within what chance does, it
// explains everything. Where none does alone, the worst are taken out until the
// rest agrees.
func (n *net) verdict(j *judged) Verdict {
	if j.freedom < 1 || worst(j.measures) <= survey.Doubtful {
		return Verdict{}
	}
	var v Verdict
	var left []float64 // badness without each of the faults
	least := chance(j.freedom - 1)
	all := badness(n.reads, n.at)
	for _, i := range byDoubt(j.measures) {
		if w := j.measures[i].Standardised; w*w < leastShare*all && all-w*w > least+farBehind {
			continue
		}
		at, bad, err := n.fit(without(n.reads, i), n.at)
		if err == nil && bad <= least+farBehind {
			v.Faults = append(v.Faults, n.fault(i, n.reads[i], j.measures[i], at))
			left = append(left, bad)
		}
	}
	if len(left) == 0 || slices.Min(left) > least {
		return n.several()
	}
	least = slices.Min(left)
	likely := v.Faults[:0]
	for k, f := range v.Faults {
		if left[k] <= least+farBehind {
			likely = append(likely, f)
		}
	}
	v.Faults = likely
	slices.SortStableFunc(v.Faults, func(a, b Fault) int { return explained(b) - explained(a) })
	return v
}

func explained(f Fault) int {
	if f.Cause != "" {
		return 1
	}
	return 0
}

// chance is the weighted sum of squares that readings without a fault exceed once
// in a thousand rooms; without freedom there is only the noise of computing.
func chance(freedom int) float64 {
	if freedom < 1 {
		return 1e-6
	}
	return distuv.ChiSquared{K: float64(freedom)}.Quantile(0.999)
}

func worst(measures []Measure) float64 {
	most := 0.0
	for _, m := range measures {
		most = math.Max(most, math.Abs(m.Standardised))
	}
	return most
}

// byDoubt returns the measurements that are checked, the most doubtful first.
func byDoubt(measures []Measure) []int {
	var out []int
	for i, m := range measures {
		if m.Redundancy > 0 {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		return cmp.Compare(math.Abs(measures[b].Standardised), math.Abs(measures[a].Standardised))
	})
	return out[:min(len(out), mostTried)]
}

func without(reads []reading, i int) []reading { return slices.Delete(slices.Clone(reads), i, i+1) }

// fault compares a measurement with the room that was solved without it.
func (n *net) fault(i int, r reading, m Measure, at []plane.Point) Fault {
	value, _ := r.model(at)
	f := Fault{Measure: i, Expected: r.value - r.miss(value)}
	if r.kind == Square {
		return f
	}
	allowed := 2 * r.sigma / math.Sqrt(m.Redundancy)
	if ok, cause := survey.Compare(f.Expected, r.value, allowed); !ok && survey.Slip(cause) {
		f.Cause = cause
	}
	return f
}

// several takes out the most doubtful measurement again and again until the rest
// agrees. It ends, since every round leaves one measurement less.
func (n *net) several() Verdict {
	v := Verdict{Together: true}
	rest := *n
	index := make([]int, len(n.reads))
	for i := range index {
		index[i] = i
	}
	for {
		j := rest.judge()
		if j.freedom < 1 || worst(j.measures) <= survey.Doubtful {
			break
		}
		out := byDoubt(j.measures)[0]
		at, _, err := rest.fit(without(rest.reads, out), rest.at)
		if err != nil {
			break
		}
		v.Faults = append(v.Faults, n.fault(index[out], rest.reads[out], j.measures[out], at))
		rest.at, rest.reads = at, without(rest.reads, out)
		index = slices.Delete(index, out, out+1)
	}
	return v
}
