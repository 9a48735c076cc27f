package prep_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// hall is a crew in the demo's hall: it places the marks with the errors of the
// hall's own budget and reads check measures with those of its tape.
type hall struct {
	*rand.Rand
	p      *prep.Production
	w      *prep.FloorWork
	budget survey.Budget
	lies   map[string]plane.Point // where each pivot and mark lies really
	slip   func(from, to string) float64
}

func newHall(p prep.Production, w *prep.FloorWork, seed uint64) *hall {
	h := &hall{Rand: rand.New(rand.NewPCG(seed, 3)), p: &p, w: w, lies: map[string]plane.Point{}}
	h.p.Readings = nil
	h.budget = prep.ErrorBudget(h.p, w)
	h.slip = func(string, string) float64 { return 0 }
	pair, _ := prep.Pivots(w.Floor)
	for name, at := range map[string]plane.Point{prep.FirstPivot: pair.A, prep.SecondPivot: pair.B} {
		h.lies[name] = at
	}
	for _, name := range []string{prep.FirstPivot, prep.SecondPivot} {
		h.lies[name] = h.lies[name].Add(h.scatter(survey.Round(h.budget.Pivot)))
	}
	for _, m := range w.Marks {
		h.lies[m.Label] = m.At.Add(h.scatter(prep.Placing(m)))
	}
	return h
}

func (h *hall) scatter(c survey.Covariance2) plane.Point {
	e := c.Standard()
	s, k := math.Sincos(e.Direction)
	a, b := e.Major*h.NormFloat64(), e.Minor*h.NormFloat64()
	return plane.Point{X: a*k - b*s, Y: a*s + b*k}
}

func (h *hall) read(from, to string) {
	d := h.lies[from].To(h.lies[to])
	d += h.NormFloat64() * math.Hypot(h.budget.Tape.Sigma(d), h.budget.Reading)
	step := h.p.Style().Grain()
	d = math.Round(d/step)*step + h.slip(from, to)
	h.p.Readings = append(h.p.Readings, prep.Reading{
		ID: fmt.Sprint(len(h.p.Readings)), Floor: h.w.Floor.ID, From: from, To: to, Metres: d,
	})
}

func (h *hall) readList() {
	h.read(prep.FirstPivot, prep.SecondPivot)
	for _, c := range prep.ChecksOf(h.p, h.w) {
		h.read(h.w.Marks[c.From].Label, h.w.Marks[c.To].Label)
	}
}

// readBothWays measures across until every mark is checked both ways or nothing
// more helps.
func (h *hall) readBothWays() {
	for range 4 {
		more := prep.VerdictOf(h.p, h.w).Cross
		if len(more) == 0 {
			return
		}
		for _, a := range more {
			h.read(a.From, a.To)
		}
	}
}

// answer measures what the verdict asks for until it asks for no more.
func (h *hall) answer() prep.Verdict {
	v := prep.VerdictOf(h.p, h.w)
	for range 6 {
		if len(v.Ask) == 0 {
			break
		}
		for _, a := range v.Ask {
			h.read(a.From, a.To)
		}
		v = prep.VerdictOf(h.p, h.w)
	}
	return v
}

// slipOnce makes the slip at the first reading of the distance only.
func (h *hall) slipOnce(from, to string, by float64) {
	done := false
	h.slip = func(a, b string) float64 {
		if done || a != from || b != to {
			return 0
		}
		done = true
		return by
	}
}

func (h *hall) sign() float64 {
	if h.IntN(2) == 0 {
		return -1
	}
	return 1
}

func (h *hall) misplace(label string, by float64) {
	s, k := math.Sincos(h.Float64() * 2 * math.Pi)
	h.lies[label] = h.lies[label].Add(plane.Point{X: by * k, Y: by * s})
}

// at returns where a mark should be.
func (h *hall) at(label string) plane.Point {
	for _, m := range h.w.Marks {
		if m.Label == label {
			return m.At
		}
	}
	return plane.Point{}
}

var trials = flag.Int("trials", 10, "how many floors of each kind the crew of the trials lays")

// each runs the trials, fewer when tests are to be short, and returns how many
// there were.
func each(t *testing.T, trial func(h *hall)) int {
	t.Helper()
	n := *trials
	if testing.Short() {
		n = min(n, 5)
	}
	p := demo.Production(time.Date(2031, 3, 10, 9, 0, 0, 0, time.UTC))
	w := prep.Work(p, p.Floors[0].ID, "")
	if w.Floor.Name != "Tannery Hall" {
		t.Fatalf("the first floor is %s", w.Floor.Name)
	}
	for seed := range n {
		trial(newHall(*p, w, uint64(seed)))
	}
	return n
}

// want fails when fewer than a share of the trials went as they should.
func want(t *testing.T, what string, got, of int, share float64) {
	t.Helper()
	t.Logf("%s: %d of %d", what, got, of)
	if float64(got) < math.Floor(share*float64(of)) {
		t.Errorf("%s: %d of %d, want at least %.0f %%", what, got, of, 100*share)
	}
}

func found(v prep.Verdict, in func(prep.Fault) bool) bool { return slices.ContainsFunc(v.Faults, in) }

func traced(v prep.Verdict, in func(prep.Fault) bool) bool {
	return len(v.Faults) == 1 && v.Faults[0].Found() && in(v.Faults[0])
}

func TestAGoodFloorRaisesNoAlarm(t *testing.T) {
	list, both := 0, 0
	n := each(t, func(h *hall) {
		h.readList()
		if v := prep.VerdictOf(h.p, h.w); v.State == prep.Accepted {
			list++
		}
		h.readBothWays()
		if v := prep.VerdictOf(h.p, h.w); v.State == prep.Accepted && len(v.OneWay) == 0 {
			both++
		}
	})
	want(t, "accepted by the check list", list, n, 0.99)
	want(t, "accepted with every mark checked both ways", both, n, 0.99)
}

// The check list shows a slip of reading; what is asked for then tells it from a
// mark that lies wrong.
func TestASlipOfReadingIsFoundAndTraced(t *testing.T) {
	first, last := 0, 0
	n := each(t, func(h *hall) {
		checks := prep.ChecksOf(h.p, h.w)
		k := h.IntN(len(checks))
		from, to := h.w.Marks[checks[k].From].Label, h.w.Marks[checks[k].To].Label
		h.slipOnce(from, to, h.sign()*prep.Blunder)
		h.readList()
		it := func(f prep.Fault) bool { return slices.Contains(f.Readings, k+1) } // the pivots come first
		if found(prep.VerdictOf(h.p, h.w), it) {
			first++
		}
		if v := h.answer(); traced(v, it) && v.State == prep.Accepted {
			last++
		}
	})
	want(t, "found by the check list", first, n, 0.99)
	want(t, "traced after what was asked for", last, n, 0.99)
}

// The check list measures every mark in two ways, so that it shows a mark that lies
// wrong in whatever direction.
func TestAMisplacedMarkIsFoundAndTraced(t *testing.T) {
	alone, both, last, said, near := 0, 0, 0, 0, 0
	n := each(t, func(h *hall) {
		label := h.w.Marks[h.IntN(len(h.w.Marks))].Label
		was := h.at(label)
		h.misplace(label, prep.Blunder)
		it := func(f prep.Fault) bool { return slices.Contains(f.Places, label) }
		h.readList()
		if found(prep.VerdictOf(h.p, h.w), it) {
			alone++
		}
		h.readBothWays()
		if found(prep.VerdictOf(h.p, h.w), it) {
			both++
		}
		if v := h.answer(); traced(v, it) && v.State == prep.WrongMarks {
			last++
			if f := v.Faults[0]; f.Sure > 0 {
				said++
				if f.Shift.To(h.lies[label].Sub(was)) < f.Sure {
					near++
				}
			}
		}
	})
	want(t, "found by the check list alone", alone, n, 0.99)
	want(t, "found with every mark checked both ways", both, n, 0.99)
	want(t, "traced after what was asked for", last, n, 0.99)
	want(t, "lying within what is said of it", near, said, 0.9)
}

// An error of three inches is tried in every mark of every floor of the demo, each
// in a direction of its own, while everything else is true.
func TestTheCheckListOfEachFloorExposesAnErrorInAnyMark(t *testing.T) {
	if testing.Short() {
		t.Skip("several hundred verdicts")
	}
	p := demo.Production(time.Date(2031, 3, 10, 9, 0, 0, 0, time.UTC))
	for i := range p.Floors {
		w := prep.Work(p, p.Floors[i].ID, "")
		h := newHall(*p, w, 7)
		missed := 0
		for _, m := range w.Marks {
			h.trueFloor()
			h.misplace(m.Label, prep.Blunder)
			h.readTrue()
			if v := prep.VerdictOf(h.p, w); !found(v, func(f prep.Fault) bool { return slices.Contains(f.Places, m.Label) }) {
				missed++
				t.Logf("%s: %s is off by three inches and is not suspected; one-way: %v", w.Floor.Name, m.Label, v.OneWay)
			}
		}
		t.Logf("%s: %d marks, %d check measures", w.Floor.Name, len(w.Marks), len(prep.ChecksOf(p, w)))
		if missed > 0 {
			t.Errorf("%s: an error in %d of %d marks does not show", w.Floor.Name, missed, len(w.Marks))
		}
	}
}

// trueFloor puts everything where it should be, with nothing read.
func (h *hall) trueFloor() {
	h.p.Readings = nil
	pair, _ := prep.Pivots(h.w.Floor)
	h.lies[prep.FirstPivot], h.lies[prep.SecondPivot] = pair.A, pair.B
	for _, m := range h.w.Marks {
		h.lies[m.Label] = m.At
	}
}

// readTrue reads the check list with a tape that errs by its rounding alone.
func (h *hall) readTrue() {
	step := h.p.Style().Grain()
	for _, c := range prep.ChecksOf(h.p, h.w) {
		from, to := h.w.Marks[c.From].Label, h.w.Marks[c.To].Label
		d := math.Round(h.lies[from].To(h.lies[to])/step) * step
		h.p.Readings = append(h.p.Readings, prep.Reading{ID: fmt.Sprint(len(h.p.Readings)), Floor: h.w.Floor.ID, From: from, To: to, Metres: d})
	}
}

// BenchmarkVerdict judges the demo's hall with its whole check list read and one
// mark three inches off: more than two hundred marks and readings.
func BenchmarkVerdict(b *testing.B) {
	p := demo.Production(time.Date(2031, 3, 10, 9, 0, 0, 0, time.UTC))
	h := newHall(*p, prep.Work(p, p.Floors[0].ID, ""), 1)
	h.misplace(h.w.Marks[20].Label, prep.Blunder)
	h.readList()
	for b.Loop() {
		prep.VerdictOf(h.p, h.w)
	}
}
