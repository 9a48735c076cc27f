package length

import (
	"errors"
	"math"
	"strings"
	"testing"
)

var scales = []struct {
	text string
	want Scale
}{
	// The architect's scales: twelve inches over the inches that stand for them.
	{`3/32" = 1'-0"`, 128}, {`1/8" = 1'-0"`, 96}, {`3/16" = 1'-0"`, 64}, {`1/4" = 1'-0"`, 48},
	{`3/8" = 1'-0"`, 32}, {`1/2" = 1'-0"`, 24}, {`3/4" = 1'-0"`, 16}, {`1" = 1'-0"`, 12},
	{`1 1/2" = 1'-0"`, 8}, {`3" = 1'-0"`, 4},
	// Reductions of ISO 5455 (from memory), and 1:25 (common practice, no source).
	{"1:2", 2}, {"1:5", 5}, {"1:10", 10}, {"1:20", 20}, {"1:25", 25}, {"1:50", 50}, {"1:100", 100}, {"1:200", 200},
	// Other spellings of the same.
	{`1/4"=1'`, 48}, {`1/4"=1'0"`, 48}, {`1/4 in = 1 ft`, 48}, {`¼" = 1′-0″`, 48}, {`1/4" = 12"`, 48},
	{`1/4`, 48}, {`1/4"`, 48}, {`3/32"`, 128}, {`3/32`, 128}, {`1 1/2`, 8}, {`1-1/2"`, 8}, {`1.5"`, 8}, {`3"`, 4},
	{`1/4 = 1`, 48}, {`1/4" to the foot`, 48}, {`1/4 inch to the foot`, 48}, {`1/4" per foot`, 48},
	{`Scale: 1/4" = 1'-0"`, 48}, {`1/4" scale`, 48}, {`1/4" = 1'-0" (1:48)`, 48},
	{`1 : 48`, 48}, {`1/50`, 50}, {`1/25`, 25}, {`50`, 50}, {`2:100`, 50}, {`1:49.5`, 49.5}, {`1:49,5`, 49.5},
	{`1 cm = 0.5 m`, 50}, {`2 cm = 1 m`, 50}, {`20mm=1m`, 50}, {`1" = 20'`, 240},
}

func TestParseScale(t *testing.T) {
	for _, c := range scales {
		t.Run(c.text, func(t *testing.T) {
			got, err := ParseScale(c.text)
			if err != nil || math.Abs(float64(got-c.want)) > 1e-9 {
				t.Errorf("%v, %v; want %v", float64(got), err, float64(c.want))
			}
		})
	}
}

func TestParseScaleSaysWhatIsWrong(t *testing.T) {
	for text, why := range map[string]string{
		"":                        "missing",
		"half inch":               "“half” is not a unit",
		"3":                       `3" to the foot or 1:3`,
		"3/50":                    "on no scale rule",
		"1:0":                     "between 1:1 and 1:10000",
		"0:1":                     "more than nothing",
		"2:1":                     "between 1:1 and 1:10000",
		"1:1000000":               "between",
		"1:1:1":                   "no meaning",
		"1:x":                     "no meaning",
		"1:,234":                  "no meaning",
		"1:1,200":                 "1.200 or 1200",
		"1:1.2.3":                 "too many points",
		`0" = 1'`:                 "more than nothing",
		`-1/4" = 1'`:              "more than nothing",
		`1/4" = `:                 "no number",
		`2 cm = 1`:                "both lengths need a unit",
		`1/4" = 1'-0" (1:50)`:     "is 1:48 and not 1:50",
		strings.Repeat("1", 1000): "too long",
		"1:\xff":                  "not text",
	} {
		got, err := ParseScale(text)
		var p *ParseError
		if !errors.As(err, &p) || !strings.Contains(err.Error(), why) || !strings.Contains(err.Error(), "1:50") {
			t.Errorf("ParseScale(%q) = %v, %v; want %q", text, got, err, why)
		}
	}
}

func TestScaleReadsBack(t *testing.T) {
	all := append(UsualScales(FeetInches), UsualScales(Metres)...)
	for _, s := range append(all, 1, 49.5, 47.123, 1000, MaxScale) {
		if got, err := ParseScale(s.String()); err != nil || math.Abs(float64(got/s)-1) > 1e-9 {
			t.Errorf("%s reads as %v, %v", s, float64(got), err)
		}
		if got, err := ParseScale(s.Ratio()); err != nil || math.Abs(float64(got/s)-1) > 1e-9 {
			t.Errorf("%s reads as %v, %v", s.Ratio(), float64(got), err)
		}
	}
}

func TestScaleNames(t *testing.T) {
	for s, want := range map[Scale]string{
		48: `1/4" = 1'-0" (1:48)`, 128: `3/32" = 1'-0" (1:128)`, 8: `1 1/2" = 1'-0" (1:8)`, 4: `3" = 1'-0" (1:4)`,
		50: "1:50", 49.5: "1:49.5", 0: "no scale", Scale(math.NaN()): "no scale",
	} {
		if got := s.String(); got != want {
			t.Errorf("%v is %q, want %q", float64(s), got, want)
		}
	}
	for _, s := range UsualScales(FeetInches) {
		if _, ok := s.Architect(); !ok {
			t.Errorf("%s has no architect's name", s)
		}
	}
}

func TestOnFloorAndPaper(t *testing.T) {
	// A quarter of an inch on paper is a foot on the floor.
	if got := Scale(48).OnFloor(Inch / 4); math.Abs(got-Foot) > near {
		t.Errorf("1/4 inch is %v m", got)
	}
	if got := Scale(50).OnPaper(Scale(50).OnFloor(0.123)); math.Abs(got-0.123) > near {
		t.Errorf("there and back: %v", got)
	}
	if got := Scale(0).OnPaper(3); got != 0 {
		t.Errorf("without a scale: %v", got)
	}
}

func TestTrueScale(t *testing.T) {
	// A proscenium of 30 ft that measures 7 1/4" at 1/4" to the foot: 360/7.25.
	actual, factor, ok := TrueScale(48, 30*Foot, 7.25*Inch)
	if !ok || math.Abs(float64(actual)-360/7.25) > 1e-9 || math.Abs(factor-7.5/7.25) > 1e-9 {
		t.Errorf("%v, %v, %v", float64(actual), factor, ok)
	}
	for _, c := range []struct{ nominal, known, measured float64 }{
		{0, 1, 1}, {48, 0, 1}, {48, 1, 0}, {48, -1, 1}, {48, math.NaN(), 1}, {48, 1, 1e-9}, {48, 1, 2}, {48, math.Inf(1), 1},
	} {
		if s, f, ok := TrueScale(Scale(c.nominal), c.known, c.measured); ok || s != 0 || f != 0 {
			t.Errorf("%+v = %v, %v, %v; want none", c, float64(s), f, ok)
		}
	}
}

func TestOffBy(t *testing.T) {
	feet, metres := Style{FeetInches, Inch / 8}, Style{Metres, 0.01}
	for _, c := range []struct {
		name            string
		nominal, actual Scale
		style           Style
		want            string
	}{
		{"too small", 48, 49.5, feet, `The plot is 3.0 % too small: it is 1:49.5, not 1/4" = 1'-0" (1:48). Scaled off the paper, 30' 0" would come out 0' 10 7/8" too short.`},
		{"too large", 50, 48.5, metres, `The plot is 3.1 % too large: it is 1:48.5, not 1:50. Scaled off the paper, 9.00 m would come out 0.28 m too long.`},
		{"true", 50, 50.04, metres, `The plot is true to 1:50 within 0.1 %.`},
		{"unknown", 0, 50, metres, `The scale is not known.`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.nominal.OffBy(c.actual, c.style); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

func FuzzParseScale(f *testing.F) {
	for _, c := range scales {
		f.Add(c.text)
	}
	f.Add("1:")
	f.Add("((1:50))")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseScale(text)
		if err != nil {
			if s != 0 || err.Error() == "" {
				t.Fatalf("ParseScale(%q) = %v, %v", text, float64(s), err)
			}
			return
		}
		if !s.Valid() {
			t.Fatalf("ParseScale(%q) = %v", text, float64(s))
		}
		again, err := ParseScale(s.String())
		if err != nil || math.Abs(float64(again-s)) > 0.001 {
			t.Fatalf("%q is %s, read back as %v, %v", text, s, float64(again), err)
		}
	})
}
