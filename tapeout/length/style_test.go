package length

import (
	"fmt"
	"math"
	"strconv"
	"testing"
)

func TestFormat(t *testing.T) {
	cases := []struct {
		name  string
		style Style
		m     float64
		want  string
	}{
		{"feet, inches and a fraction", Style{FeetInches, 0}, 3.8227, `12' 6 1/2"`},
		{"whole inches", Style{FeetInches, 0}, 3.81, `12' 6"`},
		{"whole feet", Style{FeetInches, 0}, 3.6576, `12' 0"`},
		{"inches only", Style{FeetInches, 0}, 0.1651, `0' 6 1/2"`},
		{"less than an inch", Style{FeetInches, 0}, 0.0127, `0' 0 1/2"`},
		{"sixteenths", Style{FeetInches, Inch / 16}, 11 * Inch / 16, `0' 0 11/16"`},
		{"a carry into the next foot", Style{FeetInches, Inch / 8}, 11.9375 * Inch, `1' 0"`},
		{"no carry with a finer step", Style{FeetInches, Inch / 16}, 11.9375 * Inch, `0' 11 15/16"`},
		{"a tie goes up", Style{FeetInches, Inch / 2}, 6.25 * Inch, `0' 6 1/2"`},
		{"a negative tie goes down", Style{FeetInches, Inch / 2}, -6.25 * Inch, `-0' 6 1/2"`},
		{"a step in millimetres among feet", Style{FeetInches, 0.005}, 3.8227, `12' 6 9/16"`},
		{"negative", Style{FeetInches, 0}, -3.81, `-12' 6"`},
		{"no negative zero in feet", Style{FeetInches, 0}, -0.0001, `0' 0"`},
		{"metres to the millimetre", Style{Metres, 0}, 3.81, `3.810 m`},
		{"metres to five millimetres", Style{Metres, 0.005}, 3.8125, `3.815 m`},
		{"metres to ten millimetres", Style{Metres, 0.01}, 3.8149, `3.81 m`},
		{"metres to a tenth", Style{Metres, 0.1}, 3.8149, `3.8 m`},
		{"metres to a metre", Style{Metres, 1}, 3.8149, `4 m`},
		{"less than a metre", Style{Metres, 0}, 0.007, `0.007 m`},
		{"centimetres", Style{Centimetres, 0.005}, 3.81, `381.0 cm`},
		{"whole centimetres", Style{Centimetres, 0.01}, 3.81, `381 cm`},
		{"millimetres", Style{Millimetres, 0.005}, 3.8124, `3810 mm`},
		{"a negative metric length", Style{Metres, 0.01}, -3.81, `-3.81 m`},
		{"no negative zero in metres", Style{Metres, 0.01}, -0.004, `0.00 m`},
		{"a tie that binary misses", Style{Metres, 0.01}, 1.005, `1.01 m`},
		{"an unknown unit", Style{"", 0.01}, 3.81, `3.81 m`},
		{"no number", Style{Metres, 0}, math.NaN(), Unreadable},
		{"infinite", Style{FeetInches, 0}, math.Inf(-1), Unreadable},
		{"a step that is no number", Style{FeetInches, math.NaN()}, 3.81, `12' 6"`},
		{"a step of nothing", Style{Metres, -1}, 3.81, `3.810 m`},
		{"an endless step", Style{Metres, math.Inf(1)}, 3.81, `3.810 m`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if got := c.style.Format(c.m); got != c.want {
				t.Errorf("Format(%v) = %q, want %q", c.m, got, c.want)
			}
		})
	}
}

func TestFormatOverAndUp(t *testing.T) {
	s := Style{FeetInches, Inch / 8}
	for _, c := range []struct {
		m        float64
		over, up string
	}{
		{3.8227, `12' 6 1/2" SL`, `12' 6 1/2"`},
		{-3.8227, `12' 6 1/2" SR`, `12' 6 1/2" DS`},
		{0, "on centre", `0' 0"`},
		{-0.001, "on centre", `0' 0"`},
		{math.NaN(), Unreadable, Unreadable},
	} {
		if got := s.FormatOver(c.m); got != c.over {
			t.Errorf("FormatOver(%v) = %q, want %q", c.m, got, c.over)
		}
		if got := s.FormatUp(c.m); got != c.up {
			t.Errorf("FormatUp(%v) = %q, want %q", c.m, got, c.up)
		}
	}
}

func TestBare(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		m    float64
		want string
	}{
		{FeetInches, 3.8227, `12' 6 1/2"`},
		{FeetInches, -3.8227, `-12' 6 1/2"`},
		{FeetInches, 3.8127, `12' 6.106"`},
		{FeetInches, 0.30479, `1' 0"`}, // 11.9996" carries into the foot
		{Inches, 0.1651, `0' 6 1/2"`},
		{Metres, 3.81, "3.81"},
		{Metres, 3.8127, "3.8127"},
		{Metres, -3, "-3"},
		{Metres, -0.000001, "0"},
		{Centimetres, 3.8127, "381.27"},
		{Millimetres, 3.81, "3810"},
		{Millimetres, 10, "10000"},
		{Metres, math.NaN(), ""},
		{Metres, 2 * Limit, ""},
	} {
		if got := (Style{Unit: c.unit, Step: 0.5}).Bare(c.m); got != c.want {
			t.Errorf("%s: Bare(%v) = %q, want %q", c.unit, c.m, got, c.want)
		}
	}
}

// everyLine calls f with every line of a tape in the unit: each 1/16" to 200 ft,
// or each millimetre to 60 m.
func everyLine(u Unit, f func(m float64)) {
	n, line := 60_000, func(i int) float64 { return float64(i) / 1000 }
	if u == FeetInches {
		n, line = 200*12*16, func(i int) float64 { return float64(i) / 16 * Inch }
	}
	for i := range n + 1 {
		f(line(i))
	}
}

func TestWhatIsWrittenReadsBack(t *testing.T) {
	for _, u := range Units {
		t.Run(u.Name(), func(t *testing.T) {
			s := Style{Unit: u}
			everyLine(u, func(m float64) {
				readsBack(t, s.Format(m), m, Parse, Metres)
				readsBack(t, s.Bare(m), m, Parse, u)
			})
		})
	}
}

func TestNegativeLengthsAndSidesReadBack(t *testing.T) {
	for _, u := range Units {
		t.Run(u.Name(), func(t *testing.T) {
			s := Style{Unit: u}
			for i := -500; i <= 500; i++ {
				m := s.Round(float64(i) * 0.0217)
				readsBack(t, s.Format(m), m, Parse, Metres)
				readsBack(t, s.Bare(m), m, Parse, u)
				readsBack(t, s.FormatOver(m), m, ParseOver, Metres)
				readsBack(t, s.FormatUp(m), m, ParseUp, Metres)
			}
		})
	}
}

func readsBack(t *testing.T, text string, m float64, parse func(string, Unit) (float64, error), bare Unit) {
	t.Helper()
	if got, err := parse(text, bare); err != nil || math.Abs(got-m) > near {
		t.Fatalf("%v is written %q and read as %v, %v", m, text, got, err)
	}
}

func TestRoundingIsOnceAndNoMoreThanHalfAStep(t *testing.T) {
	for _, u := range Units {
		for _, step := range Steps(u) {
			s := Style{u, step}
			if math.Abs(s.Grain()-step) > near {
				t.Errorf("%s: a step of %v acts as %v", u, step, s.Grain())
			}
			for i := -2000; i <= 2000; i++ {
				m := float64(i) * 0.00037
				r := s.Round(m)
				if math.Abs(r-m) > step/2*(1+1e-6) {
					t.Fatalf("%s, step %v: %v rounds to %v", u, step, m, r)
				}
				if s.Round(r) != r || s.Round(-m) != -r {
					t.Fatalf("%s, step %v: rounding %v is not settled or not symmetric", u, step, m)
				}
				readsBack(t, s.Format(m), r, Parse, u)
			}
		}
	}
}

func TestRoundKeepsWhatCannotBeShown(t *testing.T) {
	if got := (Style{Unit: Metres}).Round(math.Inf(1)); !math.IsInf(got, 1) {
		t.Errorf("infinity rounds to %v", got)
	}
}

func TestStepText(t *testing.T) {
	want := map[Unit]string{
		FeetInches:  `[1/16" 1/8" 1/4" 1/2"]`,
		Metres:      `[1 mm 5 mm 10 mm]`,
		Centimetres: `[1 mm 5 mm 10 mm]`,
		Millimetres: `[1 mm 5 mm 10 mm]`,
	}
	for _, u := range Units {
		var texts []string
		found := false
		for _, s := range Steps(u) {
			texts = append(texts, StepText(u, s))
			found = found || s == DefaultStep(u)
		}
		if got := fmt.Sprint(texts); got != want[u] || !found {
			t.Errorf("%s: %s, want %s with the default among them", u, got, want[u])
		}
	}
}

func ExampleStyle_Format() {
	s := Style{Unit: FeetInches, Step: Inch / 8}
	m, err := Parse("3.8227 m", FeetInches)
	fmt.Println(s.Format(m), err)
	fmt.Println(s.FormatOver(-m))
	fmt.Println(strconv.Quote(Style{Unit: Metres, Step: 0.005}.Format(m)))
	// Output:
	// 12' 6 1/2" <nil>
	// 12' 6 1/2" SR
	// "3.825 m"
}

func TestFormatSmallHasNoFeetWhereThereAreNone(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		step float64
		m    float64
		want string
	}{
		{FeetInches, Inch / 8, Inch / 2, `1/2"`}, {FeetInches, Inch / 8, 2.25 * Inch, `2 1/4"`}, {FeetInches, Inch / 8, 2 * Inch, `2"`},
		{FeetInches, Inch / 8, 0, `0"`}, {FeetInches, Inch / 8, Foot + Inch/2, `1' 0 1/2"`},
		{Millimetres, 0.005, 0.01, "10 mm"}, {Metres, 0.005, 0.01, "0.010 m"},
	} {
		if got := (Style{Unit: c.unit, Step: c.step}).FormatSmall(c.m); got != c.want {
			t.Errorf("%v m: %s, want %s", c.m, got, c.want)
		}
	}
}
