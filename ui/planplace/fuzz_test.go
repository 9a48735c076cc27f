package planplace

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

func FuzzParseDegrees(f *testing.F) {
	for _, seed := range []string{"90", "-45°", "−30", "12,5", "20 right", "20° left", "", "a quarter", "NaN", "1e9", "right left"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := parseDegrees(text)
		if err != nil {
			return
		}
		if !(math.Abs(v) <= 3600) {
			t.Fatalf("%q reads as %v", text, v)
		}
		if again, err := parseDegrees(decimal(v)); err != nil || math.Abs(again-v) > 1e-6 {
			t.Fatalf("%q is %v, written %q, read back as %v, %v", text, v, decimal(v), again, err)
		}
	})
}

func FuzzBow(f *testing.F) {
	for _, seed := range []string{"", "6\" left", "1' right", "-2", "0.5 m", "round", "1e300", "900'"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		bow, err := parseBow(text, length.FeetInches)
		if err != nil {
			return
		}
		path := plane.Open(plane.Point{}, plane.Point{X: 3, Y: 1})
		if setBow(&path, 0, bow) != nil {
			return
		}
		if got := bowOf(&path, 0); !(math.Abs(got-bow) < 1e-9) {
			t.Fatalf("%q is %v, the line bows by %v", text, bow, got)
		}
	})
}

func FuzzPasteCorners(f *testing.F) {
	f.Add("1'\t2' SL\n3'\t4' SR", 1, cornerUp)
	f.Add("nonsense\t1", 0, cornerUp)
	f.Add("\t\t\t\t\n", 0, cornerNumber)
	f.Fuzz(func(t *testing.T, block string, corner, cell int) {
		p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 2}))
		if corner < 0 || corner > 1 || cell < 0 || cell > cornerBow {
			return
		}
		var cells [][]string
		for _, row := range strings.Split(block, "\n") {
			cells = append(cells, strings.Split(row, "\t"))
		}
		_ = pasteCorners(p, lineOf(p), cells, corner, cell)
		for i, v := range lineOf(p).Vertices {
			if !v.Finite() || math.IsNaN(v.Bulge) {
				t.Fatalf("corner %d became %v", i+1, v)
			}
		}
	})
}
