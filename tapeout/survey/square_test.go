package survey

import (
	"encoding/json"
	"math"
	"testing"
)

const foot = 0.3048

func TestSquare345TakesTheLargestThatFits(t *testing.T) {
	for name, c := range map[string]struct {
		up, over, unit float64
		want           Triangle
		ok             bool
	}{
		"deep room":      {20 * foot, 16 * foot, foot, Triangle{20 * foot, 15 * foot, 25 * foot, 5}, true},
		"wide room":      {9.1 * foot, 30 * foot, foot, Triangle{9 * foot, 12 * foot, 15 * foot, 3}, true},
		"exactly fits":   {6, 4.5, 0.5, Triangle{6, 4.5, 7.5, 3}, true},
		"square room":    {5, 5, 0.5, Triangle{4, 3, 5, 2}, true},
		"too small":      {1, 1.9, 0.5, Triangle{}, false},
		"no unit":        {5, 5, 0, Triangle{}, false},
		"not a number":   {math.NaN(), 5, 1, Triangle{}, false},
		"negative space": {-5, 5, 1, Triangle{}, false},
	} {
		got, ok := Square345(c.up, c.over, c.unit)
		if ok != c.ok || got.Multiple != c.want.Multiple ||
			math.Abs(got.Up-c.want.Up)+math.Abs(got.Over-c.want.Over)+math.Abs(got.Slope-c.want.Slope) > 1e-9 {
			t.Errorf("%s: %+v, %v; want %+v", name, got, ok, c.want)
		}
		if ok && math.Abs(math.Hypot(got.Up, got.Over)-got.Slope) > 1e-12 {
			t.Errorf("%s: %+v has no right angle", name, got)
		}
	}
}

func TestAngleErrorIsWhatMovingEachSideDoes(t *testing.T) {
	tri, _ := Square345(8, 6, 1)
	angle := func(up, over, slope float64) float64 {
		return math.Acos((up*up + over*over - slope*slope) / (2 * up * over))
	}
	const h, sigma = 1e-6, 0.004
	variance := 0.0
	for _, d := range [][3]float64{{h, 0, 0}, {0, h, 0}, {0, 0, h}} {
		turn := angle(tri.Up+d[0], tri.Over+d[1], tri.Slope+d[2]) - angle(tri.Up-d[0], tri.Over-d[1], tri.Slope-d[2])
		variance += math.Pow(turn/(2*h)*sigma, 2)
	}
	if got, want := tri.AngleError(sigma), math.Sqrt(variance); math.Abs(got-want) > 1e-8 {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestALargerTriangleHasATruerAngle(t *testing.T) {
	small, _ := Square345(4, 3, 1)
	large, _ := Square345(8, 6, 1)
	if got := small.AngleError(0.003) / large.AngleError(0.003); math.Abs(got-2) > 1e-12 {
		t.Errorf("twice the triangle has the angle error divided by %v", got)
	}
}

func TestSquareAcrossFitsTheNarrowerSide(t *testing.T) {
	got, ok := SquareAcross(8, 3.2, 9, 1)
	if !ok || got.Over != 3 || got.Up != 4 || got.Slope != 5 || got.Between != 6 {
		t.Errorf("%+v, %v", got, ok)
	}
	if _, ok := SquareAcross(8, 0, 9, 1); ok {
		t.Error("a triangle where one side has no room")
	}
}

// Circles with whole numbers: 3-4-5 and 5-12-13.
func TestSagittaAndOrdinateOfWholeNumbers(t *testing.T) {
	for _, c := range []struct{ radius, chord, x, want float64 }{
		{5, 8, 0, 2}, {5, 8, 3, 1}, {5, 8, -3, 1}, {5, 8, 4, 0}, {5, 6, 0, 1}, {13, 24, 0, 8}, {13, 24, 5, 7}, {5, 10, 0, 5}, {5, 0, 0, 0},
	} {
		if got, ok := Ordinate(c.radius, c.chord, c.x); !ok || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("radius %v, chord %v, at %v: %v, %v", c.radius, c.chord, c.x, got, ok)
		}
	}
}

// An examination question of long standing (long chord 80 m, versed sine 5 m,
// ordinates every 10 m) has the radius 162.5 m by c²/8s + s/2.
func TestOrdinatesLieOnTheCircle(t *testing.T) {
	const radius, chord = 162.5, 80.0
	rise, ok := Sagitta(radius, chord)
	if !ok || math.Abs(rise-5) > 1e-12 {
		t.Fatalf("versed sine %v", rise)
	}
	for x := -40.0; x <= 40; x += 10 {
		got, ok := Ordinate(radius, chord, x)
		if off := math.Hypot(x, radius-rise+got) - radius; !ok || math.Abs(off) > 1e-12 {
			t.Errorf("at %v the ordinate %v is %g off the circle", x, got, off)
		}
	}
}

// For a flat arc handbooks use c²/8R; the exact formula keeps its figures there.
func TestSagittaOfAFlatArc(t *testing.T) {
	got, ok := Sagitta(1e6, 2)
	if want := 2.0 * 2 / 8e6; !ok || math.Abs(got-want) > 1e-15 {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestNoArcHasAChordLongerThanItsCircle(t *testing.T) {
	for _, c := range [][3]float64{{5, 10.1, 0}, {0, 0, 0}, {-5, 2, 0}, {5, -2, 0}, {5, 8, 4.1}, {math.NaN(), 8, 0}, {math.Inf(1), 8, 0}, {5, 8, math.NaN()}} {
		if got, ok := Ordinate(c[0], c[1], c[2]); ok {
			t.Errorf("%v: %v", c, got)
		}
	}
}

// Directive 2014/32/EU, annex X, chapter I, as read in SI 2016/1153, schedule 1I;
// the cases are computed from its formula and kept with its coefficients.
func TestTapeClassesOfTheDirective(t *testing.T) {
	var published struct {
		Directive struct {
			Coefficients map[string]struct{ A, B float64 } `json:"coefficients_mm"`
		} `json:"EU_2014_32_MI008"`
		Cases []map[string]json.RawMessage `json:"cases_MI008"`
	}
	readPublished(t, "tape_tolerances.json", &published)
	if len(published.Cases) < 10 {
		t.Fatalf("only %d cases", len(published.Cases))
	}
	for _, class := range Classes {
		k := published.Directive.Coefficients[class.Name]
		if math.Abs(class.A*1000-k.A) > 1e-12 || math.Abs(class.B*1000-k.B) > 1e-12 {
			t.Errorf("class %s: %+v, published %+v", class.Name, class, k)
		}
		for _, c := range published.Cases {
			var metres float64
			var limit struct {
				MPE float64 `json:"mpe_mm"`
			}
			decode(t, c["length_m"], &metres)
			decode(t, c[class.Name], &limit)
			if got := class.Error(metres) * 1000; math.Abs(got-limit.MPE) > 1e-9 {
				t.Errorf("class %s at %v m: %v mm, published %v mm", class.Name, metres, got, limit.MPE)
			}
		}
	}
	if got := ClassII.Error(0); got != 0 {
		t.Errorf("nothing measured is off by %v", got)
	}
}

func decode(t *testing.T, text json.RawMessage, into any) {
	t.Helper()
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatal(err)
	}
}
