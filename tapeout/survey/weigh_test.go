package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/plane"
)

// The same floor adjusted by Adjust, each place held by two far fixed points at
// the deviation of its placing, gives the same standardised residuals.
func TestWeighAgreesWithAdjust(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	const far, sigma, tape = 5000, 0.006, 0.003
	points := somewhere(rng, 8)
	var placed []Placed
	var observed []Observed
	places := append([]plane.Point(nil), points...)
	fixed := make([]bool, len(points))
	for i := range points {
		placed = append(placed, Placed{points[i], Round(sigma)})
		for j := range i {
			if rng.IntN(2) == 0 {
				observed = append(observed, Observed{j, i, points[i].To(points[j]) + 0.008*rng.NormFloat64(), tape})
			}
		}
	}
	held := append([]Observed(nil), observed...)
	for i, p := range points {
		for _, way := range []plane.Point{{X: far}, {Y: far}} {
			held = append(held, Observed{i, len(places), far, sigma})
			places, fixed = append(places, p.Add(way)), append(fixed, true)
		}
	}
	w, err := Weigh(placed, observed)
	if err != nil {
		t.Fatal(err)
	}
	a, err := Adjust(places, fixed, held)
	if err != nil {
		t.Fatal(err)
	}
	for i := range observed {
		if got, want := math.Sqrt(w.Suspicions[i].Fit), math.Abs(a.Readings[i].Standardised); math.Abs(got-want) > 0.02*(1+want) {
			t.Errorf("reading %d: %v, adjusted %v", i, got, want)
		}
	}
}

// A mark on the other side of the centre line is found where it lies.
func TestWeighFindsAPlaceThatIsMetresOff(t *testing.T) {
	at := []plane.Point{pt(-5, 0), pt(5, 0), pt(2, 4), pt(0, 7)}
	placed := make([]Placed, len(at))
	for i, p := range at {
		placed[i] = Placed{p, Round(0.004)}
	}
	really := pt(-2, 4)
	var observed []Observed
	for _, o := range []int{0, 1, 3} {
		observed = append(observed, Observed{o, 2, at[o].To(really), 0.003})
	}
	w, err := Weigh(placed, observed)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range w.Suspicions {
		if s.Place == 2 && (s.Shift.To(pt(-4, 0)) > 0.01 || s.Beyond < 100) {
			t.Errorf("found %+v, want it four metres to stage right", s)
		}
	}
	if math.IsInf(w.Blind[2], 1) || !math.IsInf(w.Blind[0], 1) {
		t.Errorf("blind %v: three readings fix mark 2, one does not fix the others", w.Blind)
	}
}

func TestWeighRefusesWhatIsNoReading(t *testing.T) {
	two := []Placed{{At: pt(0, 0)}, {At: pt(3, 0)}}
	for name, o := range map[string][]Observed{
		"nothing":      nil,
		"to itself":    {{0, 0, 3, 0.003}},
		"to nowhere":   {{0, 5, 3, 0.003}},
		"no error":     {{0, 1, 3, 0}},
		"not a number": {{0, 1, math.NaN(), 0.003}},
	} {
		if _, err := Weigh(two, o); err == nil {
			t.Errorf("%s is weighed", name)
		}
	}
}
