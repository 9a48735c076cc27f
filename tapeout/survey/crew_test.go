package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/plane"
)

const (
	trials             = 20_000
	fewest, mostInside = 0.93 * trials, 0.97 * trials
)

// inside tells whether a displacement lies in the ellipse.
func inside(e Ellipse, d plane.Point) bool {
	d = plane.Motion{Turn: -e.Direction}.Apply(d)
	return math.Pow(d.X/e.Major, 2)+math.Pow(d.Y/e.Minor, 2) <= 1
}

// crew lays marks by the steps of each method, with every cause of error drawn
// anew: tapes that are not true, pulled unevenly, misread and rounded; pivots and
// datum set beside their places; tabs put down beside theirs.
type crew struct {
	Budget
	rng *rand.Rand
}

func (c crew) normal(sigma float64) float64 { return sigma * c.rng.NormFloat64() }
func (c crew) even(limit float64) float64   { return limit * (2*c.rng.Float64() - 1) }

// beside is an error with the deviation sigma in each direction.
func (c crew) beside(sigma float64) plane.Point { return pt(c.normal(sigma), c.normal(sigma)) }

// tape is what is really laid off when the sheet says l.
func (c crew) tape(l float64) float64 {
	return l + c.even(c.Tape.Error(l)) + c.normal(c.Stretch*l) + c.normal(c.Reading) + c.even(c.Rounding/2)
}

func (c crew) twoTapes(t TwoTape, p plane.Point) (plane.Point, bool) {
	r, _ := t.Read(p)
	set := TwoTape{t.A.Add(c.beside(c.Pivot)), t.B.Add(c.beside(c.Pivot))}
	got, err := set.Locate(Reading{A: c.tape(r.A), B: c.tape(r.B), Side: r.Side})
	return got.Add(c.beside(c.Placing)), err == nil
}

// upOver measures up along the centre line and over at a right angle to it that is
// off by lean.
func (c crew) upOver(p plane.Point, lean float64) plane.Point {
	foot := pt(0, c.tape(p.Y))
	over := plane.Motion{Turn: lean}.Apply(pt(c.tape(math.Abs(p.X))*math.Copysign(1, p.X), 0))
	return foot.Add(over).Add(c.beside(c.Pivot)).Add(c.beside(c.Placing))
}

// baseline lays a 3-4-5 to both sides and returns by how much the line through
// both places leans.
func (c crew) baseline(a Across) float64 {
	arms := TwoTape{pt(0, 0), pt(0, c.tape(a.Up))}
	left, _ := arms.Locate(Reading{A: c.tape(a.Over), B: c.tape(a.Slope), Side: Left})
	right, _ := arms.Locate(Reading{A: c.tape(a.Over), B: c.tape(a.Slope), Side: Right})
	return right.Sub(left).Angle()
}

// frame lays guide lines and second baseline so that both diagonals read the same,
// and returns by how much its baseline leans.
func (c crew) frame(f Frame) float64 {
	topLeft := pt(0, c.tape(f.Up)).Add(c.beside(c.Pivot))
	topRight := pt(0, c.tape(f.Up)).Add(c.beside(c.Pivot))
	missLeft, missRight := c.tape(f.Diagonal())-f.Diagonal(), c.tape(f.Diagonal())-f.Diagonal()
	low, high := -0.1, 0.1
	for range 50 {
		m := (low + high) / 2
		end := pt(f.Half*math.Cos(m), f.Half*math.Sin(m))
		if end.Times(-1).To(end.Add(topRight))+missLeft > end.To(end.Times(-1).Add(topLeft))+missRight {
			high = m
		} else {
			low = m
		}
	}
	return low
}

// guided reads up on the centre line and on the guide line of the mark's side, and
// over from centre along the line through both.
func (c crew) guided(f Frame, p plane.Point) plane.Point {
	lean := c.frame(f)
	side := math.Copysign(f.Half, p.X)
	centre := pt(0, c.tape(p.Y))
	guide := pt(side, side*math.Tan(lean)+c.tape(p.Y))
	way, _ := guide.Sub(centre).Unit()
	return centre.Add(way.Times(c.tape(math.Abs(p.X)))).Add(c.beside(c.Pivot)).Add(c.beside(c.Placing))
}

var budgets = map[string]Budget{
	"steel":         steelBudget,
	"cloth, poorly": {Tape: ClassIII, Stretch: 0.0005, Reading: 0.004, Placing: 0.003, Pivot: 0.004, RightAngle: 0.002, Rounding: 0.006},
	"finely":        {Tape: ClassI, Reading: 0.001, Placing: 0.001, Pivot: 0.0005, RightAngle: 0.0005, Rounding: 0.001},
}

// share returns how many of the trials fall in the 95 % ellipse.
func share(t *testing.T, name string, cov Covariance2, p plane.Point, lay func() (plane.Point, bool)) {
	t.Helper()
	e, hits := cov.Ellipse95(), 0
	for range trials {
		if got, ok := lay(); ok && inside(e, got.Sub(p)) {
			hits++
		}
	}
	t.Logf("%s: %.1f %% inside", name, 100*float64(hits)/trials)
	if float64(hits) < fewest || float64(hits) > mostInside {
		t.Errorf("%s: %.1f %% inside", name, 100*float64(hits)/trials)
	}
}

func TestSimulatedTwoTapePlacingsFallInTheEllipse(t *testing.T) {
	pivots := TwoTape{pt(0, 0), pt(0, 9)}
	for name, b := range budgets {
		c := crew{b, rand.New(rand.NewPCG(5, 6))}
		for where, p := range map[string]plane.Point{
			"near": pt(1.5, 2), "at a right angle": pt(4.5, 4.5), "flat": pt(1, 4), "far to a side": pt(22, 5),
			"beyond a pivot": pt(3, 14), "very weak": pt(0.6, 11),
		} {
			cov, ok := b.TwoTape(pivots, p)
			if !ok {
				t.Fatal(name, where)
			}
			share(t, name+", "+where, cov, p, func() (plane.Point, bool) { return c.twoTapes(pivots, p) })
		}
	}
}

func TestSimulatedUpAndOverPlacingsFallInTheEllipse(t *testing.T) {
	a, _ := SquareAcross(8, 6, 6, 0.5)
	for name, b := range budgets {
		c := crew{b, rand.New(rand.NewPCG(7, 8))}
		for _, p := range []plane.Point{pt(0.5, 1), pt(-4, 6), pt(9, 2), pt(-14, 12)} {
			share(t, name+", a right angle of known error", b.UpOver(p), p,
				func() (plane.Point, bool) { return c.upOver(p, c.normal(b.RightAngle)), true })
			laid := b
			laid.RightAngle = a.AngleError(b.Measure(a.Slope))
			share(t, name+", from a 3-4-5", laid.UpOver(p), p,
				func() (plane.Point, bool) { return c.upOver(p, c.baseline(a)), true })
		}
	}
}

func TestSimulatedGuidedPlacingsFallInTheEllipse(t *testing.T) {
	f := Frame{Half: 7, Up: 9}
	for name, b := range budgets {
		c := crew{b, rand.New(rand.NewPCG(9, 10))}
		for _, p := range []plane.Point{pt(0.5, 1), pt(-4, 6), pt(7, 9), pt(-12, 4)} {
			share(t, name+", from guide lines", b.Guided(f, p), p, func() (plane.Point, bool) { return c.guided(f, p), true })
		}
	}
}

func TestAdviseTakesTheQuickestWayThatIsGoodEnough(t *testing.T) {
	way := func(m Method, major float64) Way {
		return Way{Method: m, Usable: major > 0, Ellipse: Ellipse{Major: major}}
	}
	for name, c := range map[string]struct {
		ways []Way
		want int
		good bool
	}{
		"the first will do":     {[]Way{way(UpAndOver, 0.02), way(TwoTapes, 0.01)}, 0, true},
		"the second is needed":  {[]Way{way(UpAndOver, 0.03), way(TwoTapes, 0.02), way(WithGuideLines, 0.01)}, 1, true},
		"the second is no way":  {[]Way{way(UpAndOver, 0.03), way(TwoTapes, 0), way(WithGuideLines, 0.01)}, 2, true},
		"none is good enough":   {[]Way{way(UpAndOver, 0.06), way(TwoTapes, 0.04), way(WithGuideLines, 0.05)}, 1, false},
		"nothing gives a place": {[]Way{way(UpAndOver, 0)}, -1, false},
	} {
		if got, good := Advise(c.ways, 0.025); got != c.want || good != c.good {
			t.Errorf("%s: %d, %v", name, got, good)
		}
	}
}

// steelBudget is common practice, no source, but for the tape's class: a steel
// tape, two millimetres for reading, placing and pivot each, a right angle good to
// two millimetres a metre, and measures rounded to five millimetres.
var steelBudget = Budget{
	Tape: ClassII, Reading: 0.002, Placing: 0.002, Pivot: 0.002, RightAngle: 0.002, Rounding: 0.005,
}
