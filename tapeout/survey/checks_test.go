package survey

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

// threeInches is the gross error that a check list has to expose.
const threeInches = 0.0762

// checking is a floor of points that are each placed to within a few millimetres.
func checking(points []plane.Point, squares ...[4]int) Checking {
	c := Checking{Squares: squares, Sigma: func(l float64) float64 { return ClassII.Sigma(l) + 0.0025 }, Shows: threeInches}
	for _, p := range points {
		c.Marks = append(c.Marks, Placed{At: p, Covariance: Round(0.004)})
	}
	return c
}

// shown returns how far beyond chance the readings of a list are when one mark
// lies off its place.
func shown(t *testing.T, c Checking, list []Check, mark int, off plane.Point) float64 {
	t.Helper()
	observed := make([]Observed, len(list))
	lies := func(i int) plane.Point {
		if i == mark {
			return c.Marks[i].At.Add(off)
		}
		return c.Marks[i].At
	}
	for k, l := range list {
		observed[k] = Observed{l.From, l.To, lies(l.From).To(lies(l.To)), c.Sigma(l.Expected)}
	}
	w, err := Weigh(c.Marks, observed)
	if err != nil {
		t.Fatal(err)
	}
	beyond := math.Inf(-1)
	for _, s := range w.Suspicions {
		beyond = max(beyond, s.Beyond)
	}
	return beyond
}

// An error of three inches is tried in each mark, in eight directions.
func TestTheCheckListExposesAGrossErrorInAnyMark(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for n := 4; n < 44; n += 4 {
		c := checking(somewhere(rng, n))
		list := CheckList(c)
		for mark := range n {
			for way := range 8 {
				s, k := math.Sincos(float64(way) * math.Pi / 4)
				off := plane.Point{X: threeInches * k, Y: threeInches * s}
				if beyond := shown(t, c, list, mark, off); !(beyond > 0) {
					t.Errorf("%d marks: mark %d is off by %v and nothing shows", n, mark, off)
				}
			}
		}
		if n >= 8 && len(list) > n*5/4 {
			t.Errorf("%d marks: %d checks, which is not a short list", n, len(list))
		}
	}
}

func TestChecksAreDifferentPairsInOrder(t *testing.T) {
	c := checking(somewhere(rand.New(rand.NewPCG(15, 16)), 40))
	pairs := map[[2]int]bool{}
	for _, k := range CheckList(c) {
		if k.From >= k.To || pairs[[2]int{k.From, k.To}] {
			t.Errorf("%+v twice or the wrong way round", k)
		}
		pairs[[2]int{k.From, k.To}] = true
		if math.Abs(k.Expected-c.Marks[k.From].At.To(c.Marks[k.To].At)) > 1e-12 {
			t.Errorf("%+v expects a wrong distance", k)
		}
	}
}

// Without any one of its measures the list would leave a mark less than seen.
func TestNoMeasureOfTheListIsSuperfluous(t *testing.T) {
	c := checking(somewhere(rand.New(rand.NewPCG(17, 18)), 30))
	list := CheckList(c)
	for k := range list {
		l := newCheckList(c)
		for i, m := range list {
			if i != k {
				l.add(m.From, m.To, m.Why)
			}
		}
		a, b := list[k].From, list[k].To
		if list[k].Why != Longest && l.worth(a, l.shown[a]) >= inFull && l.worth(b, l.shown[b]) >= inFull {
			t.Errorf("the list does without %+v", list[k])
		}
	}
}

func TestChecksKeepWithinReachAndOutOfTheWay(t *testing.T) {
	c := checking(somewhere(rand.New(rand.NewPCG(19, 20)), 40))
	c.Reach = 5
	c.Blocked = func(a, b plane.Point) bool { return (a.X < 0) != (b.X < 0) }
	list := CheckList(c)
	if len(list) < 20 {
		t.Fatalf("%d checks", len(list))
	}
	for _, k := range list {
		a, b := c.Marks[k.From].At, c.Marks[k.To].At
		if k.Expected > c.Reach || c.Blocked(a, b) {
			t.Errorf("%+v from %v to %v cannot be measured", k, a, b)
		}
	}
}

func TestARectangleHasItsDiagonals(t *testing.T) {
	list := CheckList(checking(plane.Rectangle(pt(0, 0), pt(4, 3)).Points(), [4]int{0, 1, 2, 3}))
	if len(list) < 2 || list[0].Why != Diagonal || list[1].Why != Diagonal ||
		math.Abs(list[0].Expected-5) > 1e-12 || math.Abs(list[1].Expected-5) > 1e-12 {
		t.Errorf("%+v", list)
	}
}

func TestChecksOfTooFewOrWrongMarks(t *testing.T) {
	if got := CheckList(checking(nil)); len(got) != 0 {
		t.Errorf("none: %+v", got)
	}
	if got := CheckList(checking([]plane.Point{pt(1, 1)}, [4]int{0, 1, 2, -3})); len(got) != 0 {
		t.Errorf("one: %+v", got)
	}
	if got := CheckList(checking([]plane.Point{pt(1, 1), pt(1, 1), pt(4, 1)})); len(got) == 0 {
		t.Error("two marks on one spot leave the third unchecked")
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

func BenchmarkCheckList(b *testing.B) {
	c := checking(somewhere(rand.New(rand.NewPCG(1, 2)), 3000))
	for b.Loop() {
		CheckList(c)
	}
}
