package survey

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"groundrow/tapeout/plane"
)

// network is a published distance network with its published coordinates.
type network struct {
	Fixed []struct {
		ID   string
		X, Y float64
	} `json:"fixed_points"`
	Published map[string]struct{ X, Y float64 } `json:"published_adjusted"`
	Key       struct {
		Residuals []struct {
			From, To string
			Adjusted float64
		}
	}
}

func readPublished(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatal(err)
	}
}

func (n network) places() map[string]plane.Point {
	at := map[string]plane.Point{}
	for _, f := range n.Fixed {
		at[f.ID] = pt(f.X, f.Y)
	}
	for id, p := range n.Published {
		at[id] = pt(p.X, p.Y)
	}
	return at
}

func (n network) distance(from, to string) (float64, bool) {
	for _, r := range n.Key.Residuals {
		if r.From == from && r.To == to || r.From == to && r.To == from {
			return r.Adjusted, true
		}
	}
	return 0, false
}

// Every pair of stations with adjusted distances to a third is a two-distance
// intersection. Coordinates as printed (0.1 mm) in
//   - C. D. Ghilani, Adjustment Computations, 5th edition, Wiley 2010, example 14.5;
//   - W. Höpke, Fehlerlehre und Ausgleichungsrechnung, de Gruyter 1980, example 35.5;
//
// both by way of F. Krumm, Geodetic Network Adjustment Examples, Stuttgart, rev.
// 3.5, 2020. A coordinate printed to 0.1 mm is off by up to 0.05 mm in each of
// three stations and two axes, and the intersection enlarges that by 1/sin γ.
func TestPublishedNetworksAreFoundByTwoDistances(t *testing.T) {
	for file, least := range map[string]int{
		"PUB_Ghilani14_5_Distance_fix.json": 4,
		"PUB_Hoepke_Distance_free.json":     100,
	} {
		var n network
		readPublished(t, file, &n)
		at, checked := n.places(), 0
		for a, atA := range at {
			for b, atB := range at {
				for p, want := range at {
					toA, okA := n.distance(a, p)
					toB, okB := n.distance(b, p)
					if a == b || !okA || !okB {
						continue
					}
					checked++
					pivots := TwoTape{atA, atB}
					r, ok := pivots.Read(want)
					if !ok || math.Abs(r.A-toA) > 2e-4 || math.Abs(r.B-toB) > 2e-4 {
						t.Errorf("%s: %s from %s and %s reads %.4f and %.4f, printed %.4f and %.4f", file, p, a, b, r.A, r.B, toA, toB)
					}
					got, err := pivots.Locate(Reading{A: toA, B: toB, Side: r.Side})
					if allowed := 4e-4 / math.Sin(r.Angle); err != nil || got.To(want) > allowed {
						t.Errorf("%s: %s from %s and %s at %v, printed %v (%v)", file, p, a, b, got, want, err)
					}
				}
			}
		}
		if checked < least {
			t.Errorf("%s: only %d intersections", file, checked)
		}
	}
}

// J. Mahun, Open Access Surveying, Coordinate Geometry, chapter E, example 2
// (jerrymahun.com): J 1419.51 N 3511.69 E, K 2056.64 N 2341.36 E, the azimuth
// from J to T is 329°46′45″, K to T is 738.15 ft and the answer J to T is
// 878.915 ft. Turned round: the two distances give the azimuth.
func TestAPublishedIntersectionGivesItsAzimuth(t *testing.T) {
	j, k := pt(3511.69, 1419.51), pt(2341.36, 2056.64)
	got, err := TwoTape{j, k}.Locate(Reading{A: 878.915, B: 738.15, Side: Right})
	if err != nil {
		t.Fatal(err)
	}
	d := got.Sub(j)
	azimuth := math.Atan2(d.X, d.Y)*180/math.Pi + 360
	if want := 329 + 46.0/60 + 45.0/3600; math.Abs(azimuth-want) > 1.0/3600 {
		t.Errorf("azimuth %.5f°, printed %.5f°", azimuth, want)
	}
}
