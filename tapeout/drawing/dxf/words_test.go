package dxf_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/linework"
)

func TestWordsWithoutTheirFormatting(t *testing.T) {
	for _, c := range []struct{ name, kind, value, want string }{
		{"plain", "TEXT", "DOOR 1", "DOOR 1"},
		{"signs", "TEXT", "%%c20 %%p1 45%%d", "⌀20 ±1 45°"},
		{"underlined", "TEXT", "%%uSCALE%%u 1:25", "SCALE 1:25"},
		{"per cent", "TEXT", "50%%%", "50%"},
		{"a character by number", "TEXT", "%%065B", "AB"},
		{"an unknown sign", "TEXT", "%%z", "%%z"},
		{"a caret", "TEXT", "a^ b^Ic", "a^b\tc"},
		{"Unicode by number", "TEXT", `caf\U+00E9`, "café"},
		{"a pair of surrogates", "TEXT", `\U+D834\U+DD1E`, "𝄞"},
		{"half a pair", "TEXT", `\U+D834x`, "\uFFFD\uFFFD\uFFFDx"},
		{"not Unicode by number", "TEXT", `\U+00G1`, `\U+00G1`},
		{"Japanese by number", "TEXT", `\M+18ABF`, "漢"},
		{"paragraphs", "MTEXT", `one\Ptwo`, "one\ntwo"},
		{"font and height", "MTEXT", `{\fSans|b1|i0;Stage} \H2.5x;left`, "Stage left"},
		{"colour and alignment", "MTEXT", `\A1;\C3;red\c255;der`, "redder"},
		{"a fraction", "MTEXT", `6 \S1/2;"`, `6 1/2"`},
		{"a stacked fraction", "MTEXT", `6 \S1^ 2;`, `6 1/2`},
		{"a power", "MTEXT", `m\S2^;`, `m2`},
		{"an index", "MTEXT", `m\S^ 2;`, `m2`},
		{"underlined paragraph", "MTEXT", `\LSCALE\l 1:25`, "SCALE 1:25"},
		{"escaped braces", "MTEXT", `\{a\} \\ b`, `{a} \ b`},
		{"a space that does not break", "MTEXT", `1\~m`, "1\u00a0m"},
		{"a code without its end", "MTEXT", `\H2`, "2"},
		{"a lone backslash", "MTEXT", `a\`, `a\`},
		{"indents", "MTEXT", `\pxi-3,l4;first`, "first"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, words(c.kind, c.value))
			if len(s.Texts) != 1 {
				t.Fatalf("%d texts, left aside %v", len(s.Texts), s.Left)
			}
			if got := s.Texts[0].Text; got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// words is a drawing with one text, whose value may hold anything.
func words(kind, value string) string {
	return "0\nSECTION\n2\nENTITIES\n0\n" + kind + "\n40\n2\n1\n" + value + "\n0\nENDSEC\n" + end
}

func TestCodePages(t *testing.T) {
	for _, c := range []struct{ name, header, value, want string }{
		{"Western", "9 $ACADVER|1 AC1015|9 $DWGCODEPAGE|3 ANSI_1252", "caf\xe9", "café"},
		{"Cyrillic", "9 $ACADVER|1 AC1009|9 $DWGCODEPAGE|3 ansi_1251", "\xf1\xf6\xe5\xed\xe0", "сцена"},
		{"Japanese", "9 $ACADVER|1 AC1015|9 $DWGCODEPAGE|3 ANSI_932", "\x95\x91\x91\xe4", "舞台"},
		{"none stated", "9 $ACADVER|1 AC1009", "caf\xe9", "café"},
		{"UTF-8 though none is stated", "9 $ACADVER|1 AC1009", "café", "café"},
		{"UTF-8", "9 $ACADVER|1 AC1021|9 $DWGCODEPAGE|3 ANSI_1252", "café", "café"},
		{"not UTF-8 in a release that says so", "9 $ACADVER|1 AC1032|9 $DWGCODEPAGE|3 ANSI_1252", "caf\xe9", "café"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, section("HEADER", c.header)+words("TEXT", c.value))
			if got := s.Texts[0].Text; got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
			if odd := left(s, "encoding", "UTF-8"); (odd > 0) != strings.HasPrefix(c.name, "not UTF-8") {
				t.Errorf("left aside: %v", s.Left)
			}
		})
	}
}

func TestWhereWordsStand(t *testing.T) {
	const block = "0 BLOCK|2 B|0 TEXT|8 0|40 3|10 1|20 0|1 IN|0 ENDBLK"
	for _, c := range []struct {
		name, entity string
		want         linework.Text
	}{
		{"on the left", "0 TEXT|8 A|40 2|10 3|20 4|11 9|21 9|50 90|1 x", linework.Text{At: pt(3, 4), Height: 2, Turn: math.Pi / 2}},
		{"in the middle", "0 TEXT|8 A|40 2|10 3|20 4|11 9|21 8|72 4|1 x", linework.Text{At: pt(9, 8), Height: 2}},
		{"fitted", "0 TEXT|8 A|40 2|10 3|20 4|11 9|21 8|72 5|1 x", linework.Text{At: pt(3, 4), Height: 2}},
		{"a paragraph by direction", "0 MTEXT|8 A|40 2|10 3|20 4|11 0|21 -5|1 x", linework.Text{At: pt(3, 4), Height: 2, Turn: -math.Pi / 2}},
		{"a paragraph by angle", "0 MTEXT|8 A|40 2|10 3|20 4|50 45|1 x", linework.Text{At: pt(3, 4), Height: 2, Turn: math.Pi / 4}},
		{"a paragraph with a frame of its own", "0 MTEXT|8 A|40 2|10 3|20 4|1 x|101 Embedded Object|10 1|40 99|1 y", linework.Text{At: pt(3, 4), Height: 2}},
		{"in a block", "0 INSERT|8 A|2 B|10 10|20 20|41 2|42 2|50 90", linework.Text{Text: "IN", At: pt(10, 22), Height: 6, Turn: math.Pi / 2, Block: "B", Group: 1}},
		{"an attribute", "0 INSERT|8 A|2 NONE|66 1|10 50|0 ATTRIB|8 0|40 2|10 3|20 4|1 x|0 SEQEND", linework.Text{At: pt(3, 4), Height: 2, Kind: "ATTRIB", Block: "NONE", Group: 1}},
		{"an unseen attribute", "0 INSERT|8 A|2 NONE|66 1|0 ATTRIB|8 A|40 2|10 3|20 4|70 1|1 x|0 SEQEND", linework.Text{At: pt(3, 4), Height: 2, Kind: "ATTRIB", Block: "NONE", Group: 1, Hidden: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, withBlocks(block, c.entity))
			want := c.want
			if want.Text == "" {
				want.Text = "x"
			}
			if want.Kind == "" {
				want.Kind = "TEXT"
				if strings.HasPrefix(c.entity, "0 MTEXT") {
					want.Kind = "MTEXT"
				}
			}
			want.Layer = "A"
			near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-12 })
			if diff := cmp.Diff([]linework.Text{want}, s.Texts, near); diff != "" {
				t.Error(diff)
			}
		})
	}
}
