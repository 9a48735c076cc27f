package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func TestReadOfTheTriangleThreeFourFive(t *testing.T) {
	pivots := TwoTape{pt(0, 0), pt(5, 0)}
	r, ok := pivots.Read(pt(1.8, 2.4)) // sides 3, 4, 5: a right angle at the mark
	if !ok || math.Abs(r.A-3) > 1e-12 || math.Abs(r.B-4) > 1e-12 {
		t.Fatalf("read %+v, %v", r, ok)
	}
	if r.Side != Left || math.Abs(r.Angle-math.Pi/2) > 1e-12 {
		t.Errorf("side %q, angle %v", r.Side, r.Angle)
	}
}

func TestReadFindsNothingWhereTapesCannotTell(t *testing.T) {
	inf := math.Inf(1)
	for name, c := range map[string]struct {
		pivots TwoTape
		at     plane.Point
	}{
		"pivots within a millimetre": {TwoTape{pt(0, 0), pt(0.0009, 0)}, pt(1, 1)},
		"on the first pivot":         {TwoTape{pt(0, 0), pt(4, 0)}, pt(0, 0)},
		"on the second pivot":        {TwoTape{pt(0, 0), pt(4, 0)}, pt(4, 0)},
		"no number":                  {TwoTape{pt(0, 0), pt(4, 0)}, pt(math.NaN(), 0)},
		"infinite":                   {TwoTape{pt(0, 0), pt(inf, 0)}, pt(1, 1)},
	} {
		if r, ok := c.pivots.Read(c.at); ok {
			t.Errorf("%s: read %+v", name, r)
		}
	}
}

func TestLocateUndoesRead(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	anywhere := func() plane.Point { return pt(rng.Float64()*40-20, rng.Float64()*40-20) }
	for range 5000 {
		pivots, p := TwoTape{anywhere(), anywhere()}, anywhere()
		r, ok := pivots.Read(p)
		if !ok {
			continue
		}
		got, err := pivots.Locate(r)
		if err != nil {
			t.Fatalf("%+v at %v: %v", pivots, p, err)
		}
		// A reading off by one unit in the last place moves a mark by that over
		// the sine of the angle.
		allowed := 1e-9
		if r.Side == OnLine {
			allowed = Near
		} else if s := math.Sin(r.Angle); s < 1e-4 {
			allowed = 1e-13 / s
		}
		if got.To(p) > allowed {
			t.Errorf("%+v at %v: located %v, %g m away", pivots, p, got, got.To(p))
		}
	}
}

func TestSwappedPivotsGiveTheSameMark(t *testing.T) {
	pivots := TwoTape{pt(-3, 0.5), pt(4, -0.2)}
	for _, p := range []plane.Point{pt(1, 6), pt(-8, -2), pt(0, 0.1)} {
		r, _ := pivots.Read(p)
		s, _ := pivots.Swapped().Read(p)
		if r.A != s.B || r.B != s.A || r.Side == s.Side || math.Abs(r.Angle-s.Angle) > 1e-15 {
			t.Errorf("%v reads %+v, swapped %+v", p, r, s)
		}
		got, err := pivots.Swapped().Locate(s)
		if err != nil || got.To(p) > 1e-9 {
			t.Errorf("%v located at %v, %v", p, got, err)
		}
	}
}

func TestAMotionOfTheFloorChangesNoReading(t *testing.T) {
	pivots, p := TwoTape{pt(0, 0), pt(6, 1)}, pt(2, 5)
	want, _ := pivots.Read(p)
	for _, m := range []plane.Motion{{Turn: 1}, {Turn: -2.5, Shift: pt(7, -3)}, {Shift: pt(100, 50)}} {
		moved := TwoTape{m.Apply(pivots.A), m.Apply(pivots.B)}
		got, ok := moved.Read(m.Apply(p))
		if !ok || math.Abs(got.A-want.A) > 1e-12 || math.Abs(got.B-want.B) > 1e-12 ||
			got.Side != want.Side || math.Abs(got.Angle-want.Angle) > 1e-12 {
			t.Errorf("after %+v: %+v, want %+v", m, got, want)
		}
	}
}

func TestLocateOnTheLine(t *testing.T) {
	pivots := TwoTape{pt(0, 0), pt(0, 8)}
	for name, c := range map[string]struct {
		a, b    float64
		want    plane.Point
		allowed float64
	}{
		"between":           {3, 5, pt(0, 3), 1e-9},
		"beyond the second": {10, 2, pt(0, 10), 1e-9},
		"before the first":  {2, 10, pt(0, -2), 1e-9},
		"rounded apart":     {3.005, 5.005, pt(0, 3), 0.005},
		"rounded together":  {2.995, 4.995, pt(0, 3), 0.005},
	} {
		got, err := pivots.Locate(Reading{A: c.a, B: c.b, Side: OnLine})
		if err != nil || got.To(c.want) > c.allowed {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
}

func TestLocateSaysWhatIsWrong(t *testing.T) {
	pivots := TwoTape{pt(0, 0), pt(8, 0)}
	for name, c := range map[string]struct {
		pivots TwoTape
		r      Reading
		fault  Fault
		by     float64
		says   string
	}{
		"coincide":   {TwoTape{}, Reading{A: 1, B: 1, Side: Left}, PivotsCoincide, 0, "same place"},
		"short":      {pivots, Reading{A: 3, B: 4.75, Side: Left}, TapesTooShort, 0.25, "0.250 m shorter"},
		"first long": {pivots, Reading{A: 12, B: 3, Side: Right}, OneTapeTooLong, 1, "first is 1.000 m too long"},
		"other long": {pivots, Reading{A: 3, B: 12, Side: Right}, OneTapeTooLong, 1, "second is 1.000 m too long"},
		"off line":   {pivots, Reading{A: 5, B: 5, Side: OnLine}, OffTheLine, 2, "say on which side"},
		"no side":    {pivots, Reading{A: 5, B: 5}, SideUnknown, 0, "left or right"},
		"endless":    {pivots, Reading{A: 1e300, B: 1e300, Side: Left}, NotALength, 0, "not a length"},
		"negative":   {pivots, Reading{A: -5, B: 5, Side: Left}, NotALength, 0, "not a length"},
		"not number": {pivots, Reading{A: math.NaN(), B: 5, Side: Left}, NotALength, 0, "not a length"},
	} {
		_, err := c.pivots.Locate(c.r)
		var e *LocateError
		if !errors.As(err, &e) {
			t.Fatalf("%s: %v", name, err)
		}
		if e.Fault != c.fault || math.Abs(e.By-c.by) > 1e-12 || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %s by %g: %s", name, e.Fault, e.By, err)
		}
	}
}

// The distance from the line by the law of cosines alone, as any trigonometry
// text has it, beside Heron's formula in Locate.
func TestHeronAgreesWithTheLawOfCosines(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		base, a := 1+rng.Float64()*10, 1+rng.Float64()*10
		turn := 0.1 + rng.Float64()*(math.Pi-0.2)
		b := math.Sqrt(a*a + base*base - 2*a*base*math.Cos(turn))
		got, err := TwoTape{pt(0, 0), pt(base, 0)}.Locate(Reading{A: a, B: b, Side: Left})
		if want := plane.Polar(a, turn); err != nil || got.To(want) > 1e-9 {
			t.Fatalf("sides %v, %v, %v: %v, want %v (%v)", base, a, b, got, want, err)
		}
	}
}

func FuzzLocate(f *testing.F) {
	f.Add(0.0, 0.0, 5.0, 0.0, 3.0, 4.0, "left")
	f.Add(0.0, 0.0, 0.0, 0.0, 1.0, 1.0, "right")
	f.Add(0.0, 0.0, 8.0, 0.0, 3.0, 4.0, "on the line")
	f.Add(1e300, 0.0, -1e300, 0.0, 1e300, 1e300, "left")
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, a, b float64, side string) {
		pivots := TwoTape{pt(ax, ay), pt(bx, by)}
		p, err := pivots.Locate(Reading{A: a, B: b, Side: Side(side)})
		if err != nil {
			if err.Error() == "" {
				t.Error("an error that says nothing")
			}
			return
		}
		if !p.Finite() {
			t.Fatalf("located at %v", p)
		}
		// Floating point keeps the tapes true to a millionth of the longest
		// length, unless the pivots are all but one place beside it.
		size := max(math.Abs(ax), math.Abs(ay), math.Abs(bx), math.Abs(by), a, b, 1)
		if Side(side) == OnLine || pivots.Base() < 1e-5*size {
			return
		}
		if miss := math.Abs(pivots.A.To(p) - a); miss > 1e-6*size {
			t.Errorf("the first tape misses by %g", miss)
		}
	})
}
