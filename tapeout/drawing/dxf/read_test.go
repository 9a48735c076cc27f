package dxf_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

func TestLayersHideWhatIsOnThem(t *testing.T) {
	const (
		tables = "0 LAYER|2 OFF|62 -1|70 0|0 LAYER|2 FROZEN|62 2|70 1|0 LAYER|2 SHOWN|62 3|70 0"
		block  = "0 BLOCK|2 B|10 0|20 0|" +
			"0 LINE|8 0|10 0|20 0|11 1|21 0|" + // takes the insert's layer
			"0 LINE|8 SHOWN|10 0|20 0|11 2|21 0|" +
			"0 ENDBLK|" +
			"0 BLOCK|2 OUTER|10 0|20 0|0 INSERT|2 B|8 0|0 ENDBLK"
	)
	for _, c := range []struct {
		name, entities string
		want           map[string]float64 // seen
	}{
		{"a line on a layer that is off", "0 LINE|8 OFF|11 5", map[string]float64{}},
		{"a line on a layer that is frozen", "0 LINE|8 FROZEN|11 5", map[string]float64{}},
		{"names in small letters", "0 LINE|8 frozen|11 5", map[string]float64{}},
		{"an invisible line", "0 LINE|8 SHOWN|60 1|11 5", map[string]float64{}},
		{"a block on a shown layer", "0 INSERT|2 B|8 SHOWN", map[string]float64{"SHOWN": 3}},
		{"a block on a layer that is off", "0 INSERT|2 B|8 OFF", map[string]float64{"SHOWN": 2}},
		{"a block on a frozen layer", "0 INSERT|2 B|8 FROZEN", map[string]float64{}},
		{"an invisible block", "0 INSERT|2 B|8 SHOWN|60 1", map[string]float64{}},
		{"a block inside one that is off", "0 INSERT|2 OUTER|8 OFF", map[string]float64{"SHOWN": 2}},
		{"a block inside one that is frozen", "0 INSERT|2 OUTER|8 FROZEN", map[string]float64{}},
		{"a layer without an entry", "0 LINE|8 NEW|11 5", map[string]float64{"NEW": 5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, section("TABLES", tables)+withBlocks(block, c.entities))
			if diff := cmp.Diff(c.want, lengthByLayer(s, (*linework.Item).Shown)); diff != "" {
				t.Error(diff)
			}
			if len(s.Items) == 0 {
				t.Error("what is hidden is not in the sheet at all")
			}
		})
	}
}

func TestColoursComeFromLayerBlockOrThemselves(t *testing.T) {
	const (
		tables = "0 LAYER|2 RED|62 1|0 LAYER|2 TRUE|62 1|420 1193046"
		block  = "0 BLOCK|2 B|0 LINE|8 0|62 0|11 1|0 ENDBLK"
	)
	for _, c := range []struct {
		name, entity string
		want         uint32
	}{
		{"by layer", "0 LINE|8 RED|11 1", 0xFF0000},
		{"true colour of the layer", "0 LINE|8 TRUE|11 1", 0x123456},
		{"by number", "0 LINE|8 RED|62 3|11 1", 0x00FF00},
		{"true colour", "0 LINE|8 RED|62 3|420 255|11 1", 0x0000FF},
		{"foreground", "0 LINE|8 OTHER|11 1", 0x000000},
		{"by block, the insert's number", "0 INSERT|2 B|8 RED|62 5", 0x0000FF},
		{"by block, the insert's layer", "0 INSERT|2 B|8 RED", 0xFF0000},
		{"a number beyond the table", "0 LINE|8 RED|62 999|11 1", 0x000000},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, section("TABLES", tables)+withBlocks(block, c.entity))
			if got := s.Items[0].Colour; got != linework.RGB(c.want) {
				t.Errorf("got %06x, want %06x", got.RGB, c.want)
			}
		})
	}
}

// Colour 7 is the foreground, white there. Of the faded shades the two darkest, whose
// numbers end in 7 and 9, are irregular in that table and not compared.
func TestNumberedColoursLikeEZDXF(t *testing.T) {
	for i, want := range readReference(t).Colours {
		n := i + 1
		if n == 7 || n >= 10 && n < 250 && (n%10 == 7 || n%10 == 9) {
			continue
		}
		got := mustRead(t, drawing("0 LINE|11 1|62 "+strconv.Itoa(n))).Items[0].Colour.RGB
		for shift := 0; shift < 24; shift += 8 {
			if d := int(got>>shift&0xFF) - int(want>>shift&0xFF); d < -1 || d > 1 {
				t.Errorf("colour %d is %06x, want %06x", n, got, want)
				break
			}
		}
	}
}

func TestDashesAreScaled(t *testing.T) {
	const tables = "0 LTYPE|2 DASHED|73 2|40 3|49 2|49 -1|0 LTYPE|2 Dotted|49 0|49 -1|0 LTYPE|2 CENTER|49 5|49 -1|49 1|49 -1|49 3|" +
		"0 LTYPE|2 SOLIDISH|49 4|0 LTYPE|2 GAPFIRST|49 -1|49 2|0 LAYER|2 A|6 DASHED"
	for _, c := range []struct {
		name, entity string
		want         []float64
	}{
		{"by layer", "0 LINE|8 A|11 1", []float64{20, 10}},
		{"scale of its own", "0 LINE|8 A|48 0.5|11 1", []float64{10, 5}},
		{"of its own", "0 LINE|8 A|6 DOTTED|11 1", []float64{0, 10}},
		{"continuous on a dashed layer", "0 LINE|8 A|6 CONTINUOUS|11 1", nil},
		{"last dash joins the first", "0 LINE|8 A|6 CENTER|11 1", []float64{80, 10, 10, 10}},
		{"no gap is solid", "0 LINE|8 A|6 SOLIDISH|11 1", nil},
		{"a gap comes first", "0 LINE|8 A|6 GAPFIRST|11 1", []float64{20, 10}},
		{"by layer by name", "0 LINE|8 A|6 ByLayer|11 1", []float64{20, 10}},
		{"by block", "0 INSERT|2 B|6 DOTTED", []float64{0, 10}},
		{"unknown", "0 LINE|8 A|6 NOWHERE|11 1", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := section("HEADER", "9 $LTSCALE|40 10") + section("TABLES", tables) +
				withBlocks("0 BLOCK|2 B|0 LINE|8 0|6 BYBLOCK|11 1|0 ENDBLK", c.entity)
			if diff := cmp.Diff(c.want, mustRead(t, file).Items[0].Dash); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestEndlessDashesAreLeftAside(t *testing.T) {
	s := mustRead(t, section("TABLES", "0 LTYPE|2 LONG"+strings.Repeat("|49 1|49 -1", 100))+drawing("0 LINE|6 LONG|11 1"))
	if s.Items[0].Dash != nil || left(s, "LTYPE", "larger") != 1 {
		t.Errorf("%d dashes, left aside %v", len(s.Items[0].Dash), s.Left)
	}
}

func TestUnits(t *testing.T) {
	for _, c := range []struct {
		name, header string
		unit, hint   linework.Unit
		words        string
	}{
		{"millimetres", "9 $INSUNITS|70 4", linework.Millimetre, 0, "millimetre"},
		{"feet", "9 $INSUNITS|70 2|9 $MEASUREMENT|70 1", linework.Foot, 0, "foot"},
		{"none, metric", "9 $MEASUREMENT|70 1", 0, linework.Millimetre, "likely a millimetre"},
		{"none, inches", "9 $INSUNITS|70 0|9 $MEASUREMENT|70 0", 0, linework.Inch, "likely an inch"},
		{"none, feet and inches shown", "9 $MEASUREMENT|70 1|9 $LUNITS|70 4", 0, linework.Inch, "feet and inches"},
		{"light years", "9 $INSUNITS|70 19", 0, 0, "19"},
		{"nothing at all", "9 $ACADVER|1 AC1009", 0, 0, "Measure a known length"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, section("HEADER", c.header)+drawing(""))
			if s.Unit != c.unit || s.UnitHint != c.hint || !strings.Contains(s.UnitWhy, c.words) {
				t.Errorf("got %v, hint %v, %q", s.Unit, s.UnitHint, s.UnitWhy)
			}
		})
	}
}

func TestMirroredArcsTurnTheOtherWay(t *testing.T) {
	const block = "0 BLOCK|2 B|0 ARC|8 A|10 0|20 0|40 2|50 0|51 90|0 ENDBLK"
	quarter := math.Tan(math.Pi / 8)
	for _, c := range []struct {
		name, entity string
		want         plane.Edge
	}{
		{"as it is", "0 INSERT|2 B|10 10|20 0", plane.Edge{A: pt(12, 0), B: pt(10, 2), Bulge: quarter}},
		{"mirrored by its scale", "0 INSERT|2 B|10 10|20 0|41 -1", plane.Edge{A: pt(8, 0), B: pt(10, 2), Bulge: -quarter}},
		{"twice as large", "0 INSERT|2 B|41 2|42 2|50 90", plane.Edge{A: pt(0, 4), B: pt(-4, 0), Bulge: quarter}},
		{"seen from behind", "0 INSERT|2 B|10 10|20 0|230 -1", plane.Edge{A: pt(-12, 0), B: pt(-10, 2), Bulge: -quarter}},
		{"an arc that faces down", "0 ARC|10 10|40 2|50 0|51 90|210 0|220 0|230 -1", plane.Edge{A: pt(-12, 0), B: pt(-10, 2), Bulge: -quarter}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, withBlocks(block, c.entity))
			near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-12 })
			if diff := cmp.Diff([]plane.Edge{c.want}, s.Items[0].Edges, near); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func TestWhatIsLeftAside(t *testing.T) {
	for _, c := range []struct{ name, entities, what, why string }{
		{"a kind that nobody knows", "0 WOBBLE|8 0", "WOBBLE", "not of a kind"},
		{"an endless line", "0 XLINE|10 0|11 1", "XLINE", "without an end"},
		{"a picture", "0 IMAGE|10 0", "IMAGE", "picture"},
		{"a solid", "0 3DSOLID|1 x", "3DSOLID", "solid"},
		{"paper space", "0 LINE|67 1|11 1", "paper space", "printed sheets"},
		{"no number", "0 LINE|10 NaN|11 1", "LINE", "no number"},
		{"endless", "0 LINE|10 inf|11 1", "LINE", "no number"},
		{"too far", "0 LINE|10 1e300|11 1", "LINE", "beyond"},
		{"beyond float64", "0 LINE|10 1e999|11 1", "LINE", "beyond"},
		{"letters", "0 LINE|10 twelve|11 1", "LINE", "cannot be read"},
		{"no length", "0 LINE|10 1|11 1", "LINE", "no length"},
		{"an upright line", "0 LINE|10 1|11 1|31 5", "LINE", "no length"},
		{"a mesh", "0 POLYLINE|70 64|66 1|0 VERTEX|10 1|0 SEQEND", "POLYLINE", "mesh"},
		{"bad knots", "0 SPLINE|71 3|40 0|40 1|10 0|10 1|10 2|10 3", "SPLINE", "do not fit"},
		{"a weight of nothing", "0 SPLINE|71 1|40 0|40 0|40 1|40 1|41 0|41 1|10 0|10 1", "SPLINE", "do not fit"},
		{"no block", "0 INSERT|2 NOWHERE", "INSERT NOWHERE", "not in the file"},
		{"no picture of a dimension", "0 DIMENSION|2 *D9|70 1|13 0|14 5", "DIMENSION *D9", "not in the file"},
		{"a block in another file", "0 INSERT|2 XREF", "INSERT XREF", "another file"},
		{"a block that contains itself", "0 INSERT|2 ME", "INSERT ME", "contains itself"},
		{"a huge array", "0 INSERT|2 B|70 30000|71 30000", "INSERT B", "more than 500000"},
		{"out of reach by its block", "0 INSERT|2 B|41 1e9|10 1e10", "LINE", "place in the drawing"},
		{"a wide line", "0 LWPOLYLINE|43 2|10 0|20 0|10 5|20 0", "widths of LWPOLYLINE", "middle"},
		{"heights", "0 LINE|10 0|11 3|31 4", "heights of LINE", "from above"},
	} {
		t.Run(c.name, func(t *testing.T) {
			const blocks = "0 BLOCK|2 XREF|70 4|0 ENDBLK|0 BLOCK|2 ME|0 INSERT|2 YOU|0 ENDBLK|0 BLOCK|2 YOU|0 INSERT|2 ME|0 ENDBLK|" +
				"0 BLOCK|2 B|0 LINE|11 100|0 ENDBLK"
			s := mustRead(t, withBlocks(blocks, c.entities+"|0 LINE|8 GOOD|11 7"))
			if left(s, c.what, c.why) == 0 {
				t.Errorf("left aside: %v", s.Left)
			}
			wantLength(t, s, "GOOD", 7)
		})
	}
}

func TestDimensionsSayWhatTheyMeasure(t *testing.T) {
	const block = "0 BLOCK|2 *D1|0 LINE|8 0|11 3|0 TEXT|1 3.00|8 0|0 ENDBLK"
	s := mustRead(t, withBlocks(block, "0 DIMENSION|8 D|2 *D1|70 32|13 0|23 0|14 3|24 4|50 0|42 3|1 <>|"+
		"0 DIMENSION|8 D|2 *D1|70 1|13 0|14 3|24 4|1 12'-0\"|0 DIMENSION|8 D|2 *D1|70 0|13 0|14 3|24 4|50 90|0 DIMENSION|8 D|2 *D1|70 2|42 1.5"))
	want := []linework.Measure{
		{Measured: 3, To: pt(3, 4), Layer: "D", Group: 1},
		{Says: "12'-0\"", Measured: 5, To: pt(3, 4), Layer: "D", Group: 2},
		{Measured: 4, To: pt(3, 4), Layer: "D", Group: 3},
		{Measured: 1.5, Angular: true, Layer: "D", Group: 4},
	}
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-12 })
	if diff := cmp.Diff(want, s.Measures, near); diff != "" {
		t.Error(diff)
	}
	if i := s.Items[1]; i.Kind != "DIMENSION" || i.Group != 2 || i.Layer != "D" || i.Block != "*D1" {
		t.Errorf("the picture is %+v", i)
	}
	if s.Texts[0].Kind != "DIMENSION" {
		t.Errorf("its words are %+v", s.Texts[0])
	}
}

func TestPlanForDemonstration(t *testing.T) {
	s := mustReadFile(t, "plan.dxf", 0.001)
	if s.Unit != linework.Millimetre || len(s.Measures) != 4 || len(s.Left) != 1 {
		t.Errorf("unit %v, %d measures, left aside %v", s.Unit, len(s.Measures), s.Left)
	}
	for _, m := range s.Measures[:1] {
		if m.Measured != 11000 {
			t.Errorf("the opening measures %v", m.Measured)
		}
	}
	for _, want := range []string{"SCALE 1:25", "REVOLVE ⌀3600", "D1", "Marrow Lane Playhouse\nDo not scale off this drawing"} {
		if !slices.ContainsFunc(s.Texts, func(x linework.Text) bool { return x.Text == want }) {
			t.Errorf("no words %q", want)
		}
	}
	for _, l := range s.Layers {
		if (l.Name == "LIGHTING") != l.Off || (l.Name == "OLD VERSION") != l.Frozen {
			t.Errorf("layer %+v", l)
		}
	}
}
