package survey

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func TestEveryMarkIsInACheckAndThereAreFew(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for n := 2; n < 40; n++ {
		points := somewhere(rng, n)
		checks := CheckList(points)
		seen := make([]bool, n)
		pairs := map[[2]int]bool{}
		for _, c := range checks {
			seen[c.From], seen[c.To] = true, true
			if c.From >= c.To || pairs[[2]int{c.From, c.To}] {
				t.Errorf("%d marks: %+v twice or the wrong way round", n, c)
			}
			pairs[[2]int{c.From, c.To}] = true
			if math.Abs(c.Expected-points[c.From].To(points[c.To])) > 1e-12 {
				t.Errorf("%d marks: %+v expects a wrong distance", n, c)
			}
		}
		for i, ok := range seen {
			if !ok {
				t.Errorf("%d marks: mark %d is in no check", n, i)
			}
		}
		if len(checks) != (n+1)/2 {
			t.Errorf("%d marks: %d checks", n, len(checks))
		}
	}
}

func TestChecksOfARectangleAreItsDiagonals(t *testing.T) {
	points := plane.Rectangle(pt(0, 0), pt(4, 3)).Points()
	got := CheckList(points, [4]int{0, 1, 2, 3})
	if len(got) != 2 || got[0].Why != Diagonal || got[1].Why != Diagonal ||
		math.Abs(got[0].Expected-5) > 1e-12 || math.Abs(got[1].Expected-5) > 1e-12 {
		t.Errorf("%+v", got)
	}
}

func TestChecksOfTooFewOrWrongMarks(t *testing.T) {
	if got := CheckList(nil); len(got) != 0 {
		t.Errorf("none: %+v", got)
	}
	if got := CheckList([]plane.Point{pt(1, 1)}, [4]int{0, 1, 2, -3}); len(got) != 0 {
		t.Errorf("one: %+v", got)
	}
}

func TestCompareNamesTheLikelySlip(t *testing.T) {
	const inch = 0.0254
	for name, c := range map[string]struct {
		expected, read float64
		says           string
	}{
		"good":            {5, 5.004, ""},
		"foot long":       {5, 5.3048, "a whole foot too long"},
		"foot short":      {5, 4.6972, "a whole foot too short"},
		"foot, and a bit": {5, 5.3078, "a whole foot too long"},
		"ten centimetres": {5, 5.1, "ten centimetres too long"},
		"inch":            {4.231, 4.2056, "an inch too short"},
		"metre":           {5.12, 6.121, "a whole metre too long"},
		"two feet":        {5, 5.6096, "two whole feet"},
		"transposed":      {3.240, 3.420, "transposed"},
		"feet and inches": {68 * inch, 101 * inch, "feet and inches exchanged"},
		"upside down":     {4.612, 4.912, "6 read as a 9"},
		"no slip":         {5, 5.039, "none of the usual slips"},
		"not a number":    {5, math.NaN(), "not a length"},
		"negative":        {5, -1, "not a length"},
		"endless":         {5, math.Inf(1), "not a length"},
	} {
		ok, cause := Compare(c.expected, c.read, 0.006)
		if ok != (c.says == "") || !strings.Contains(cause, c.says) || ok && cause != "" {
			t.Errorf("%s: %v, %q", name, ok, cause)
		}
	}
}

func TestCompareWithAWideAllowanceStillAsksForACloseFit(t *testing.T) {
	if ok, cause := Compare(10, 10.14, 0.05); ok || strings.Contains(cause, "ten centimetres") {
		t.Errorf("fourteen centimetres: %v, %q", ok, cause)
	}
}
