package length

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// near is the tolerance of a comparison in metres: a nanometre.
const near = 1e-9

var lengths = []struct {
	name string
	text string
	bare Unit
	want float64
}{
	{"feet, inches and a fraction", `12'6 1/2"`, FeetInches, 3.8227},
	{"a space after the feet", `12' 6 1/2"`, FeetInches, 3.8227},
	{"inches without their mark", `12' 6.5`, FeetInches, 3.8227},
	{"a dash and no marks", `12-6 1/2`, FeetInches, 3.8227},
	{"a dash and no marks among metres", `12-6 1/2`, Metres, 3.8227},
	{"the draughtsman's dash", `12'-6 1/2"`, FeetInches, 3.8227},
	{"two dashes", `12'-6-1/2"`, FeetInches, 3.8227},
	{"two dashes and no marks", `12-6-1/2`, FeetInches, 3.8227},
	{"typographic", `12′ 6½″`, Metres, 3.8227},
	{"curly quotes", `12’ 6½”`, FeetInches, 3.8227},
	{"two apostrophes for inches", `12' 6 1/2''`, FeetInches, 3.8227},
	{"fraction slash", `12' 6 1⁄2"`, FeetInches, 3.8227},
	{"spaces round the slash", `12' 6 1 / 2"`, FeetInches, 3.8227},
	{"words", `12 feet, 6 inches`, Metres, 3.81},
	{"short words", `12ft 6in`, Metres, 3.81},
	{"short words with full stops", `12 ft. 6 in.`, Metres, 3.81},
	{"no-break spaces", "12'\u00a06\u202f1/2\"", FeetInches, 3.8227},
	{"tabs and capitals", "\t12 FT\t6 IN ", FeetInches, 3.81},
	{"inches only", `6 1/2"`, FeetInches, 0.1651},
	{"inches only with a dash", `6-1/2"`, FeetInches, 0.1651},
	{"many inches", `150"`, FeetInches, 3.81},
	{"a fraction only", `1/2"`, FeetInches, 0.0127},
	{"feet and a fraction of an inch", `6' 1/2"`, FeetInches, 1.8415},
	{"a fraction of a foot", `6 1/2'`, Metres, 1.9812},
	{"eighths", `⅜"`, FeetInches, 0.009525},
	{"a bare mixed number is feet", `6 1/2`, FeetInches, 1.9812},
	{"a bare number is feet", `12.5`, FeetInches, 3.81},
	{"a bare mixed number is inches on paper", `6 1/2`, Inches, 0.1651},
	{"a bare mixed number with a dash on paper", `6-1/2`, Inches, 0.1651},
	{"a bare number is metres", `3.81`, Metres, 3.81},
	{"a bare number is centimetres", `381`, Centimetres, 3.81},
	{"a bare number is millimetres", `3810`, Millimetres, 3.81},
	{"an unknown unit counts as metres", `3.81`, "", 3.81},
	{"metres", `3.81m`, FeetInches, 3.81},
	{"centimetres", `381 cm`, FeetInches, 3.81},
	{"millimetres", `3810 mm`, FeetInches, 3.81},
	{"metres and centimetres", `3 m 81 cm`, FeetInches, 3.81},
	{"metres in words", `3.81 metres`, FeetInches, 3.81},
	{"decimal comma", `3,81 m`, FeetInches, 3.81},
	{"decimal comma after zero", `0,381 m`, FeetInches, 0.381},
	{"decimal comma and four figures", `3,8101 m`, FeetInches, 3.8101},
	{"commas for thousands and a point", `3,810.5 mm`, FeetInches, 3.8105},
	{"points for thousands and a comma", `3.810,5 mm`, FeetInches, 3.8105},
	{"a point and three figures", `3.810`, Metres, 3.81},
	{"no zero before the point", `.5`, Metres, 0.5},
	{"a point still to be followed", `3.`, Metres, 3},
	{"minus", `-12' 6"`, FeetInches, -3.81},
	{"typographic minus", `−3.81 m`, FeetInches, -3.81},
	{"minus and a space", `- 6"`, FeetInches, -0.1524},
	{"minus nothing", `-0`, FeetInches, 0},
	{"nothing", `0' 0"`, FeetInches, 0},
	{"the longest", `10000 m`, FeetInches, 10_000},
}

func TestParseReadsTheUsualSpellings(t *testing.T) {
	for _, c := range lengths {
		t.Run(c.name, func(t *testing.T) {
			got, err := Parse(c.text, c.bare)
			if err != nil || math.Abs(got-c.want) > near {
				t.Errorf("Parse(%q, %q) = %v, %v; want %v", c.text, c.bare, got, err, c.want)
			}
			if got == 0 && math.Signbit(got) {
				t.Error("zero is negative")
			}
		})
	}
}

var notLengths = []struct {
	name, text, why string
}{
	{"empty", "", "missing"},
	{"blank", " \t", "missing"},
	{"a word", "door", "“door” is not a unit"},
	{"another unit", "12 yd", "“yd” is not a unit"},
	{"an ambiguous comma", "3,810", "3.810 or 3810"},
	{"ragged groups", "1,23,456.0", "groups of three"},
	{"two points", "1.2.3", "too many points"},
	{"an ambiguous dash", "6-1/2", "the dash can join"},
	{"inches that fill a foot", `12' 12"`, "stay below 12"},
	{"a forgotten point", `12' 65"`, "stay below 12"},
	{"fractional feet before inches", `12.5' 6"`, "whole number"},
	{"two numbers", `12 6`, "two numbers"},
	{"metres before inches", `3 m 6"`, "feet go with inches"},
	{"centimetres that fill a metre", `3 m 100 cm`, "less than one"},
	{"three parts", `12' 6" 3`, "one piece too many"},
	{"a part missing", `12' -`, "a number is missing"},
	{"only a mark", `"`, "a number is missing"},
	{"zero below the line", `6 1/0"`, "divides by zero"},
	{"a fraction of one or more", `6 3/2"`, "not below one"},
	{"decimals and a fraction", `6.5 1/2"`, "decimals and a fraction"},
	{"a second line below", `1/2/3"`, "no meaning"},
	{"an exponent", "1e3", "not a unit"},
	{"infinity", "inf", "not a unit"},
	{"no number", "nan", "not a unit"},
	{"too long a length", "10000.1 m", "10 km"},
	{"too long a number", strings.Repeat("9", 150), "10 km"},
	{"too long a text", strings.Repeat("9", 500), "too long"},
	{"not text", "12\xff", "not text"},
	{"arithmetic", "3+4", "no meaning"},
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	for _, c := range notLengths {
		t.Run(c.name, func(t *testing.T) {
			got, err := Parse(c.text, FeetInches)
			var p *ParseError
			if !errors.As(err, &p) || got != 0 {
				t.Fatalf("Parse(%q) = %v, %v; want a ParseError", c.text, got, err)
			}
			text := err.Error()
			if !strings.Contains(text, c.why) || !strings.Contains(text, `12' 6 1/2"`) {
				t.Errorf("message %q lacks %q or the examples", text, c.why)
			}
			if p.Text != c.text {
				t.Errorf("text %q, want it as typed", p.Text)
			}
			if len([]rune(text)) > 320 || strings.ContainsAny(text, "\t\n") {
				t.Errorf("message does not fit a line: %q", text)
			}
		})
	}
}

func TestErrorNamesTheUnitOfABareNumber(t *testing.T) {
	for _, u := range append(Units, Inches) {
		_, err := Parse("?", u)
		want := "a bare number counts as " + strings.TrimSuffix(u.Name(), " and inches")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v lacks %q", u, err, want)
		}
	}
}

// The international foot is 0.3048 m and the inch 25.4 mm, both exactly: NIST SP
// 811, appendix B (from memory). A million survey feet would be 2 ft longer.
func TestFootAndInchAreInternational(t *testing.T) {
	for text, want := range map[string]float64{
		"1 ft": 0.3048, "1 in": 0.0254, "10000 ft": 3048, `0' 1/16"`: 0.0015875,
	} {
		if got, err := Parse(text, Metres); err != nil || got != want {
			t.Errorf("%s = %v, %v; want exactly %v", text, got, err, want)
		}
	}
}

func TestSides(t *testing.T) {
	cases := []struct {
		name, text string
		want       float64
		parse      func(string, Unit) (float64, error)
	}{
		{"side after", `12' 6" SL`, 3.81, ParseOver},
		{"side before", `SR 4'`, -1.2192, ParseOver},
		{"one letter", `4' R`, -1.2192, ParseOver},
		{"one letter without a space", `4'R`, -1.2192, ParseOver},
		{"one letter before", `L4'`, 1.2192, ParseOver},
		{"full stops", `4' S.R.`, -1.2192, ParseOver},
		{"words", `4 feet stage right`, -1.2192, ParseOver},
		{"bare number with a side", `4 sr`, -1.2192, ParseOver},
		{"a sign", `-4'`, -1.2192, ParseOver},
		{"neither", `4'`, 1.2192, ParseOver},
		{"nothing to the right", `0 SR`, 0, ParseOver},
		{"centre line", `CL`, 0, ParseOver},
		{"what FormatOver writes at the centre", `on centre`, 0, ParseOver},
		{"zero", `0`, 0, ParseOver},
		{"upstage", `3.81 m US`, 3.81, ParseUp},
		{"downstage", `DS 4'`, -1.2192, ParseUp},
		{"downstage by sign", `−4'`, -1.2192, ParseUp},
		{"up as a word", `4' up`, 1.2192, ParseUp},
		{"no side", `4'`, 1.2192, ParseUp},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.parse(c.text, FeetInches)
			if err != nil || math.Abs(got-c.want) > near || got == 0 && math.Signbit(got) {
				t.Errorf("%q = %v, %v; want %v", c.text, got, err, c.want)
			}
		})
	}
}

func TestSidesThatCannotBeMeant(t *testing.T) {
	for _, text := range []string{`-4' SR`, `4' SL SR`, `SL`, `4' house left`, `4' US`, ``, `4 slr`} {
		if got, err := ParseOver(text, FeetInches); err == nil {
			t.Errorf("ParseOver(%q) = %v; want an error", text, got)
		}
	}
	for _, text := range []string{`-4' DS`, `CL`, `4' SL`} {
		if got, err := ParseUp(text, FeetInches); err == nil {
			t.Errorf("ParseUp(%q) = %v; want an error", text, got)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, c := range lengths {
		f.Add(c.text, string(c.bare))
	}
	for _, c := range notLengths {
		f.Add(c.text, string(FeetInches))
	}
	f.Fuzz(func(t *testing.T, text, unit string) {
		bare := Unit(unit)
		v, err := Parse(text, bare)
		if err != nil {
			var p *ParseError
			if !errors.As(err, &p) || v != 0 || err.Error() == "" {
				t.Fatalf("Parse(%q) = %v, %v", text, v, err)
			}
			return
		}
		if !(math.Abs(v) <= Limit) {
			t.Fatalf("Parse(%q) = %v, beyond the limit", text, v)
		}
		again, err := Parse(Style{Unit: bare}.Bare(v), bare)
		if err != nil || math.Abs(again-v) > bareInches {
			t.Fatalf("%q is %v, shown as %q, read back as %v, %v", text, v, Style{Unit: bare}.Bare(v), again, err)
		}
		if over, err := ParseOver(text, bare); err != nil || over != v {
			t.Fatalf("ParseOver(%q) = %v, %v; Parse gives %v", text, over, err, v)
		}
	})
}
