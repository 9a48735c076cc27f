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

func TestAngleErrorOfOneTriangleIsWhatMovingEachSideDoes(t *testing.T) {
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

// Each length is moved alone, and what the line through both places turns is
// added up in squares.
func TestAngleErrorIsWhatMovingEachLengthDoes(t *testing.T) {
	across, _ := SquareAcross(8, 6, 6, 1)
	// lengths: up, and over and slope of either side
	turn := func(l [5]float64) float64 {
		top := pt(0, l[0])
		left, errL := TwoTape{pt(0, 0), top}.Locate(Reading{A: l[1], B: l[2], Side: Left})
		right, errR := TwoTape{pt(0, 0), top}.Locate(Reading{A: l[3], B: l[4], Side: Right})
		if errL != nil || errR != nil {
			t.Fatal(errL, errR)
		}
		return right.Sub(left).Angle()
	}
	const h, sigma = 1e-6, 0.004
	true5 := [5]float64{across.Up, across.Over, across.Slope, across.Over, across.Slope}
	variance := 0.0
	for k := range true5 {
		more, less := true5, true5
		more[k] += h
		less[k] -= h
		variance += math.Pow((turn(more)-turn(less))/(2*h)*sigma, 2)
	}
	if got, want := across.AngleError(sigma), math.Sqrt(variance); math.Abs(got-want) > 1e-8 {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestALargerTriangleHasATruerAngle(t *testing.T) {
	small, _ := SquareAcross(4, 3, 3, 1)
	large, _ := SquareAcross(8, 6, 6, 1)
	if got := small.AngleError(0.003) / large.AngleError(0.003); math.Abs(got-2) > 1e-12 {
		t.Errorf("twice the triangle has the angle error divided by %v", got)
	}
}

// The sides and diagonals of a leaning frame are measured and each moved alone.
func TestAFrameLeansByWhatItsDiagonalsAndSidesMiss(t *testing.T) {
	f := Frame{Half: 4, Up: 6}
	const h, side, diagonal = 1e-6, 0.003, 0.005
	// The frame leans until both diagonals read the same.
	lean := func(left, right, dLeft, dRight float64) float64 {
		low, high := -0.1, 0.1
		for range 80 {
			m := (low + high) / 2
			end := pt(4*math.Cos(m), 4*math.Sin(m))
			fromLeft := end.Times(-1).To(end.Add(pt(0, 6+right))) + dLeft
			fromRight := end.To(end.Times(-1).Add(pt(0, 6+left))) + dRight
			if fromLeft > fromRight {
				high = m
			} else {
				low = m
			}
		}
		return low
	}
	got := []float64{
		(lean(h, 0, 0, 0) - lean(-h, 0, 0, 0)) / (2 * h) * side, (lean(0, h, 0, 0) - lean(0, -h, 0, 0)) / (2 * h) * side,
		(lean(0, 0, h, 0) - lean(0, 0, -h, 0)) / (2 * h) * diagonal, (lean(0, 0, 0, h) - lean(0, 0, 0, -h)) / (2 * h) * diagonal,
	}
	if want := rootSum(got...); math.Abs(f.AngleError(side, diagonal)-want) > 1e-7 {
		t.Errorf("%v, want %v", f.AngleError(side, diagonal), want)
	}
	if !math.IsInf((Frame{}).AngleError(side, diagonal), 1) {
		t.Error("a frame without a size is square")
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
	rise, ok := Ordinate(radius, chord, 0)
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

// Table II, Radii, Ordinates and Deflections, chord 100 ft, as printed in surveyors'
// field books (read on the covers of field books that Dane County, Wisconsin, has
// put on line: planning.countyofdane.com/Weblink8Planning, documents 963327 and
// 978886). Radii are printed to a tenth of a foot, ordinates to a thousandth.
func TestMiddleOrdinatesOfAFieldBooksTable(t *testing.T) {
	for radius, want := range map[float64]float64{
		17189: 0.073, 11459: 0.109, 8594.4: 0.145, 6875.5: 0.182, 5729.6: 0.218, 4911.2: 0.255, 4297.3: 0.291,
		3819.8: 0.327, 3437.9: 0.364, 3125.4: 0.400, 2864.9: 0.436, 819.0: 1.528, 781.8: 1.600, 764.5: 1.637,
		747.9: 1.673, 716.8: 1.746, 688.2: 1.819, 674.7: 1.855, 661.7: 1.892, 637.3: 1.965, 614.6: 2.037, 603.8: 2.074,
	} {
		got, ok := Ordinate(radius, 100, 0)
		if !ok || math.Abs(got-want) > 0.0006 {
			t.Errorf("radius %v ft: %.4f ft, printed %v", radius, got, want)
		}
	}
}

// For a flat arc handbooks use c²/8R; the exact formula keeps its figures there.
func TestSagittaOfAFlatArc(t *testing.T) {
	got, ok := Ordinate(1e6, 2, 0)
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
