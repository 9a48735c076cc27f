package survey

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

// adjustable is a published network with its published or recomputed results.
type adjustable struct {
	Fixed        []place `json:"fixed_points"`
	Approximate  []place `json:"approximate_points"`
	Observations []struct {
		From, To string
		Distance float64
		SigmaMM  float64 `json:"sigma_mm"`
	}
	Published map[string]struct {
		X, Y float64
		SX   float64 `json:"sx_cm"`
		SY   float64 `json:"sy_cm"`
	} `json:"published_adjusted"`
	Key struct {
		Freedom   int     `json:"degrees_of_freedom"`
		SigmaZero float64 `json:"sigma0_a_posteriori"`
		Points    []struct {
			ID      string
			Ellipse struct {
				A, B    float64
				Bearing float64 `json:"bearing_deg"`
			} `json:"ellipse_apriori_mm"`
		} `json:"adjusted_points"`
		Residuals []struct {
			Residual     float64 `json:"residual_mm"`
			Redundancy   float64 `json:"redundancy_number"`
			Standardised float64 `json:"w_standardized"`
		}
		Largest struct{ From, To string } `json:"largest_abs_w"`
	}
}

type place struct {
	ID   string
	X, Y float64
}

// The networks of published_test.go, adjusted: coordinates and deviations as
// printed there; residuals, redundancies and ellipses recomputed for the same
// networks with GNU Gama 2.24 and kept with them. Höpke's has a slip of five
// centimetres among millimetres.
func TestAdjustAgreesWithPublishedNetworks(t *testing.T) {
	for _, file := range []string{"PUB_Ghilani14_5_Distance_fix.json", "PUB_Hoepke_Distance_free.json"} {
		t.Run(file, func(t *testing.T) {
			var n adjustable
			readPublished(t, file, &n)
			index := map[string]int{}
			var places []plane.Point
			var fixed []bool
			for i, p := range append(n.Fixed, n.Approximate...) {
				index[p.ID] = i
				places, fixed = append(places, pt(p.X, p.Y)), append(fixed, i < len(n.Fixed))
			}
			var observed []Observed
			for _, o := range n.Observations {
				observed = append(observed, Observed{index[o.From], index[o.To], o.Distance, o.SigmaMM / 1000})
			}
			got, err := Adjust(places, fixed, observed)
			if err != nil {
				t.Fatal(err)
			}
			if got.Freedom != n.Key.Freedom || math.Abs(got.SigmaZero-n.Key.SigmaZero) > 1e-4 {
				t.Errorf("freedom %d, sigma zero %v; want %d, %v", got.Freedom, got.SigmaZero, n.Key.Freedom, n.Key.SigmaZero)
			}
			for id, want := range n.Published {
				i := index[id]
				if got.Points[i].To(pt(want.X, want.Y)) > 1e-4 {
					t.Errorf("%s at %v, printed %v", id, got.Points[i], want)
				}
				sx, sy := got.Covariance[i].Along(0)*got.SigmaZero*100, got.Covariance[i].Along(math.Pi/2)*got.SigmaZero*100
				if math.Abs(sx-want.SX) > 1e-3 || math.Abs(sy-want.SY) > 1e-3 {
					t.Errorf("%s off by %.4f and %.4f cm, printed %v and %v", id, sx, sy, want.SX, want.SY)
				}
			}
			for _, want := range n.Key.Points {
				e := got.Covariance[index[want.ID]].Standard()
				bearing := 90 - e.Direction*180/math.Pi
				if math.Abs(e.Major*1000-want.Ellipse.A) > 1e-3 || math.Abs(e.Minor*1000-want.Ellipse.B) > 1e-3 ||
					math.Abs(math.Sin((bearing-want.Ellipse.Bearing)*math.Pi/180)) > 1e-3 {
					t.Errorf("%s: ellipse %+v, want %+v", want.ID, e, want.Ellipse)
				}
			}
			for i, want := range n.Key.Residuals {
				r := got.Readings[i]
				if math.Abs(r.Residual*1000-want.Residual) > 1e-3 || math.Abs(r.Redundancy-want.Redundancy) > 1e-5 ||
					math.Abs(r.Standardised-want.Standardised) > 1e-2 {
					t.Errorf("reading %d: %+v, want %+v", i, r, want)
				}
			}
			worst, doubtful := got.Worst()
			if !doubtful {
				t.Error("no reading is doubtful")
			}
			if o := n.Observations[worst]; len(n.Fixed) == 0 && (o.From != n.Key.Largest.From || o.To != n.Key.Largest.To) {
				t.Errorf("the worst reading is %s to %s, want %+v", o.From, o.To, n.Key.Largest)
			}
		})
	}
}

func TestAdjustNamesTheReadingThatIsAFootOff(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 24))
	places := []plane.Point{pt(-5, 0), pt(5, 0), pt(-3, 4), pt(2, 5), pt(4, 3), pt(-1, 7)}
	fixed := []bool{true, true}
	var observed []Observed
	for i := range places {
		for j := max(i+1, 2); j < len(places); j++ {
			observed = append(observed, Observed{i, j, places[i].To(places[j]) + 0.003*rng.NormFloat64(), 0.003})
		}
	}
	if good, err := Adjust(places, fixed, observed); err != nil {
		t.Fatal(err)
	} else if _, doubtful := good.Worst(); doubtful || good.SigmaZero > 2 {
		t.Errorf("good readings in doubt: %+v", good.Readings)
	}
	for slip := range observed {
		wrong := append([]Observed(nil), observed...)
		wrong[slip].Distance += foot
		got, err := Adjust(places, fixed, wrong)
		if err != nil {
			t.Fatal(err)
		}
		if worst, doubtful := got.Worst(); worst != slip || !doubtful {
			t.Errorf("slip in reading %d, named %d (%v)", slip, worst, doubtful)
		}
	}
}

func TestAdjustWithoutFreedomLeavesPlacesWhereTheTapesPutThem(t *testing.T) {
	places := []plane.Point{pt(0, 0), pt(5, 0), pt(2, 2)}
	got, err := Adjust(places, []bool{true, true}, []Observed{{0, 2, 3, 0.003}, {1, 2, 4, 0.003}})
	if err != nil || got.Points[2].To(pt(1.8, 2.4)) > 1e-9 || got.Freedom != 0 || !math.IsNaN(got.SigmaZero) {
		t.Fatalf("%+v, %v", got, err)
	}
	if want, _ := (TwoTape{places[0], places[1]}).Covariance(pt(1.8, 2.4), 0.003, 0.003); math.Abs(got.Covariance[2].XX-want.XX) > 1e-12 {
		t.Errorf("covariance %+v, want %+v", got.Covariance[2], want)
	}
	if _, doubtful := got.Worst(); doubtful {
		t.Error("nothing checks these readings")
	}
}

func TestAdjustSaysWhatIsWrong(t *testing.T) {
	two := []plane.Point{pt(0, 0), pt(3, 0)}
	for name, c := range map[string]struct {
		places   []plane.Point
		fixed    []bool
		observed []Observed
		says     string
	}{
		"nothing measured": {two, nil, nil, "nothing measured"},
		"all fixed":        {two, []bool{true, true}, []Observed{{0, 1, 3, 0.003}}, "nothing to move"},
		"to itself":        {two, nil, []Observed{{1, 1, 3, 0.003}}, "not between two places"},
		"to nowhere":       {two, nil, []Observed{{0, 2, 3, 0.003}}, "not between two places"},
		"no error":         {two, nil, []Observed{{0, 1, 3, 0}}, "not a length"},
		"not a number":     {two, nil, []Observed{{0, 1, math.NaN(), 0.003}}, "not a length"},
		"one spot":         {[]plane.Point{pt(1, 1), pt(1, 1)}, nil, []Observed{{0, 1, 3, 0.003}}, "one spot"},
		"no position":      {[]plane.Point{pt(1, 1), pt(math.Inf(1), 1)}, nil, []Observed{{0, 1, 3, 0.003}}, "no position"},
	} {
		if _, err := Adjust(c.places, c.fixed, c.observed); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Sixty marks by two tapes each and as many check measures.
func BenchmarkAdjust(b *testing.B) {
	rng := rand.New(rand.NewPCG(25, 26))
	places := append([]plane.Point{pt(-6, -1), pt(6, -1)}, somewhere(rng, 60)...)
	var observed []Observed
	for i := 2; i < len(places); i++ {
		for pivot := range 2 {
			observed = append(observed, Observed{pivot, i, places[pivot].To(places[i]) + 0.003*rng.NormFloat64(), 0.003})
		}
	}
	for _, c := range CheckList(checking(places[2:])) {
		observed = append(observed, Observed{c.From + 2, c.To + 2, c.Expected + 0.003*rng.NormFloat64(), 0.003})
	}
	for b.Loop() {
		if _, err := Adjust(places, []bool{true, true}, observed); err != nil {
			b.Fatal(err)
		}
	}
}
