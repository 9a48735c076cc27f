package sense_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

var statements = []struct {
	text     string
	want     []length.Scale
	labelled bool
}{
	{`SCALE: 1/4" = 1'-0"`, []length.Scale{48}, true},
	{`Scale 3/8"=1'`, []length.Scale{32}, true},
	{`1/2” = 1’-0”`, []length.Scale{24}, false},
	{`½" = 1'-0"`, []length.Scale{24}, false},
	{`1 1/2" = 1'-0"`, []length.Scale{8}, false},
	{`1" = 4'`, []length.Scale{48}, false},
	{"GROUND PLAN 1:25", []length.Scale{25}, false},
	{"Scale 1 : 50 @ A1", []length.Scale{50}, true},
	{"SCALE\n1:24", []length.Scale{24}, true},
	{"1 cm = 0.5 m", []length.Scale{50}, false},
	{"1/4 inch scale", []length.Scale{48}, true},
	{`1/2" scale`, []length.Scale{24}, true},
	{`1/4" = 1'-0" (1:48)`, []length.Scale{48}, false},
	{"Plan 1:25, details 1:10", []length.Scale{25, 10}, false},
	{"full scale", []length.Scale{1}, true},
	{"RAMP 1:12", nil, false},
	{"Slope 1:20 down", nil, false},
	{"Call 1:30 pm", nil, false},
	{"12'-6\"", nil, false},
	{"1:2:3", nil, false},
	{"Do not scale", nil, true},
	{"Sheet 1/4", nil, false},
	{"", nil, false},
}

func TestScalesIn(t *testing.T) {
	for _, c := range statements {
		t.Run(c.text, func(t *testing.T) {
			got, labelled := sense.ScalesIn(c.text)
			if !slices.Equal(got, c.want) || labelled != c.labelled {
				t.Errorf("got %v, %v; want %v, %v", got, labelled, c.want, c.labelled)
			}
		})
	}
}

func FuzzScalesIn(f *testing.F) {
	for _, c := range statements {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, _ := sense.ScalesIn(text)
		for i, s := range got {
			if !s.Valid() || slices.Contains(got[:i], s) {
				t.Errorf("%q: %v", text, got)
			}
		}
		d := &draft{}
		d.Unit = linework.Point
		d.rect("0", 0, 0, 700, 500)
		d.write(text, 10, 10, 8)
		for _, g := range sense.ProposeScale(d.sheet()) {
			if !(g.PerUnit > 0) || math.IsInf(g.PerUnit, 0) || g.Why == "" || !(g.Confidence > 0 && g.Confidence <= 1) {
				t.Errorf("%q: %+v", text, g)
			}
		}
	})
}

// plotted is a page at 1:48 with dimensions, times the stretch.
func plotted(stretch float64) *draft {
	d := &draft{}
	d.Unit = linework.Point
	k := stretch / 48 / float64(linework.Point) // points for a metre
	d.rect("", 0, 0, 1200, 800)
	for i, text := range []string{`12'-6"`, `20'`, `8' 3"`, `5'-0 1/2"`} {
		m, _ := length.Parse(text, length.FeetInches)
		y := 100 + 80*float64(i)
		d.put("", seg(100, y, 100+m*k, y))
		d.put("", seg(98, y-2, 102, y+2))
		d.put("", seg(98+m*k, y-2, 102+m*k, y+2))
		d.put("", seg(100, y-9, 160+30*float64(i), y-9)) // a wall beside it, of another length
		d.write(text, 100+m*k/2-10, y+3, 8)
	}
	return d
}

func TestProposeScale(t *testing.T) {
	mm := func() *draft {
		d := stage()
		d.Unit = linework.Millimetre
		d.Sheet = *d.Scaled(1000)
		d.Unit = linework.Millimetre
		return d
	}
	for _, c := range []struct {
		name  string
		draft *draft
		scale length.Scale // of the likeliest; tolerance 0.1 %
		unit  linework.Unit
		why   string
	}{
		{"words on paper", func() *draft {
			d := &draft{}
			d.Unit = linework.Point
			d.rect("", 0, 0, 1200, 800)
			d.write(`SCALE: 1/2" = 1'-0"`, 1000, 40, 8)
			return d
		}(), 24, linework.Point, `The drawing says “SCALE: 1/2" = 1'-0"”.`},
		{"figures", plotted(1), 48, linework.Point, "4 of 4 lengths written on the drawing agree"},
		{"printed to fit", func() *draft {
			d := plotted(0.94)
			d.write(`1/4" = 1'-0"`, 1000, 40, 8)
			return d
		}(), 48 / 0.94, linework.Point, "4 of 4 lengths"},
		{"the file's own dimensions", func() *draft {
			d := mm()
			d.Measures = []linework.Measure{{Says: "3.00 m", Measured: 3000}, {Says: "12'-6\"", Measured: 3810}}
			return d
		}(), 1, linework.Millimetre, "2 of 2 lengths"},
		{"full size", mm(), 1, linework.Millimetre, "The file counts in units of one millimetre, and at full size the drawing is 22 m across."},
		{"full size with a scale for the plot", func() *draft { d := mm(); d.write("1:50", 0, 0, 100); return d }(), 1, linework.Millimetre, "full size"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := sense.ProposeScale(c.draft.sheet())
			if len(got) == 0 {
				t.Fatal("nothing is proposed")
			}
			g := got[0]
			want := float64(c.scale) * float64(c.unit)
			if math.Abs(g.PerUnit/want-1) > 0.001 || math.Abs(float64(g.Scale/c.scale)-1) > 0.001 || !strings.Contains(g.Why, c.why) {
				t.Errorf("got %+v, want %s and %q", got, c.scale.Ratio(), c.why)
			}
		})
	}
}

func TestUnknownUnitsAreOffered(t *testing.T) {
	d := stage() // 22 units across
	d.Unit, d.UnitHint = 0, linework.Foot
	got := sense.ProposeScale(d.sheet())
	if len(got) < 2 || got[0].PerUnit != length.Foot || !strings.Contains(got[0].Why, "hints") {
		t.Errorf("%+v", got)
	}
	if got := sense.ProposeScale(&linework.Sheet{}); len(got) != 0 {
		t.Errorf("an empty sheet has the scale %+v", got)
	}
}

func TestCheckKnown(t *testing.T) {
	style := length.Style{Unit: length.Metres, Step: 0.005}
	for _, c := range []struct {
		name           string
		perUnit, known float64
		agrees, usable bool
		factor         float64
		words          string
	}{
		{"right", 0.001, 9, true, true, 1, "The scale is right: 9.000 m was measured where 9.000 m is known."},
		{"printed to fit", 0.001, 9.5, false, true, 9.5 / 9, "it is 5.3 % too small. Likely it was printed to fit the paper, or the paper has stretched."},
		{"inches for feet", 0.001, 108, false, true, 12, "it is 12 times too small. Likely inches were taken where feet are meant"},
		{"millimetres for inches", 0.001, 228.6, false, true, 25.4, "Likely millimetres were taken where inches are meant."},
		{"centimetres for inches", 0.001, 22.86, false, true, 2.54, "Likely centimetres were taken where inches are meant."},
		{"millimetres for centimetres", 0.001, 90, false, true, 10, "Likely millimetres were taken where centimetres are meant."},
		{"half size", 0.001, 18, false, true, 2, "Likely it was printed at half size"},
		{"no cause known", 0.001, 63, false, true, 7, "it is 7 times too small."},
		{"no scale yet", 0, 9, false, true, 0, "With 9.000 m between these points one unit of the drawing is 0.001 m."},
		{"nothing", 0.001, 0, false, false, 0, "The known length must be more than nothing"},
		{"too short", 0.001, 0.1, false, false, 0, "too short to tell a scale"},
		{"too long", 0.001, 1e9, false, false, 0, "longer than any stage"},
		{"no number", 0.001, math.NaN(), false, false, 0, "more than nothing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := sense.CheckKnown(c.perUnit, pt(0, 0), pt(9000, 0), c.known, style)
			if v.Agrees != c.agrees || v.Usable != c.usable || math.Abs(v.Factor-c.factor) > 1e-9 || !strings.Contains(v.Sentence, c.words) {
				t.Errorf("got %+v", v)
			}
			if v.Usable && math.Abs(v.PerUnit*9000-c.known) > 1e-9 {
				t.Errorf("%v m in a unit do not make the length right", v.PerUnit)
			}
		})
	}
	for _, b := range []plane.Point{pt(0, 0), pt(math.Inf(1), 0), pt(math.NaN(), 0), pt(5e-324, 0)} {
		if v := sense.CheckKnown(1, pt(0, 0), b, 5, style); v.Usable || v.Sentence == "" {
			t.Errorf("%v: %+v", b, v)
		}
	}
}
