package pdf_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

// stretches returns the straight lines of a page as words, in drawing order.
func stretches(s *linework.Sheet) []string {
	var out []string
	for _, item := range s.Items {
		for _, e := range item.Edges {
			out = append(out, fmt.Sprintf("%.2f %.2f – %.2f %.2f", e.A.X+0, e.A.Y+0, e.B.X+0, e.B.Y+0))
		}
	}
	return out
}

// circular is a clip along a circle of radius 100 around 200, 200.
const circular = "300 200 m 300 255.228 255.228 300 200 300 c 144.772 300 100 255.228 100 200 c " +
	"100 144.772 144.772 100 200 100 c 255.228 100 300 144.772 300 200 c h W n "

// Clips are in the space of what the object lies in: a matrix that comes between the
// clip and the line, or that of the form, must not be applied to them twice.
func TestLinesAreCutWhereTheyAreClipped(t *testing.T) {
	for _, c := range []struct {
		name string
		page page
		want []string
		left string
	}{
		{"by a rectangle", page{drawing: "100 100 200 200 re W n 50 150 m 500 150 l S"}, []string{"100.00 150.00 – 300.00 150.00"}, ""},
		{"by two", page{drawing: "100 100 200 200 re W n 200 0 400 400 re W n 50 150 m 500 150 l S"}, []string{"200.00 150.00 – 300.00 150.00"}, ""},
		{"under the same matrix", page{drawing: "2 0 0 2 0 0 cm 50 50 100 100 re W n 25 75 m 250 75 l S"}, []string{"100.00 150.00 – 300.00 150.00"}, ""},
		{"before a matrix", page{drawing: "100 100 200 200 re W n 2 0 0 2 0 0 cm 25 75 m 250 75 l S"}, []string{"100.00 150.00 – 300.00 150.00"}, ""},
		{"in a form", page{drawing: "q 1 0 0 1 10 20 cm /F5 Do Q", forms: []string{
			form("2 0 0 2 0 0", "", "50 50 100 100 re W n 25 75 m 250 75 l S")}}, []string{"110.00 170.00 – 310.00 170.00"}, ""},
		{"by the form's own box", page{drawing: "q 1 0 0 1 10 20 cm /F5 Do Q", forms: []string{
			stream("/Type /XObject /Subtype /Form /BBox [0 0 100 100] /Matrix [2 0 0 2 0 0]", "10 50 m 300 50 l S")}}, []string{"30.00 120.00 – 210.00 120.00"}, ""},
		{"by a turned rectangle", page{drawing: "0.70710678 0.70710678 -0.70710678 0.70710678 300 300 cm -100 -100 200 200 re W n 0.70710678 -0.70710678 0.70710678 0.70710678 0 0 cm -300 0 m 300 0 l S"},
			[]string{"158.58 300.00 – 441.42 300.00"}, ""},
		{"by a circle", page{drawing: circular + "50 200 m 500 200 l S"}, []string{"100.00 200.00 – 300.00 200.00"}, ""},
		{"by the page", page{drawing: "500 200 m 900 200 l S"}, []string{"500.00 200.00 – 612.00 200.00"}, ""},
		{"by the page that is shown", page{entries: "/CropBox [100 100 300 300]", drawing: "50 200 m 500 200 l S"}, []string{"0.00 100.00 – 200.00 100.00"}, ""},
		{"not, along the frame", page{drawing: "100 100 200 200 re W n 100 100 m 100 300 l S"}, []string{"100.00 100.00 – 100.00 300.00"}, ""},
		{"not, by what is too complicated", page{drawing: "100 100 50 200 re 250 100 50 200 re W n 50 150 m 500 150 l S"}, []string{"50.00 150.00 – 500.00 150.00"}, "too complicated"},
		{"away", page{drawing: oneLine + " 10 10 5 5 re W n 50 150 m 500 150 l S"}, []string{"100.00 200.00 – 400.00 250.00"}, "clipped away"},
		{"away by the page", page{drawing: oneLine + " -50 -150 m 500 -150 l S"}, []string{"100.00 200.00 – 400.00 250.00"}, "outside the page"},
	} {
		t.Run(c.name, func(t *testing.T) {
			sheet := read(t, c.page.file())
			if got := stretches(sheet); !slices.Equal(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
			if (c.left == "") != (len(sheet.Left) == 0) || !leftAside(sheet, c.left) && c.left != "" {
				t.Errorf("left aside: %v", sheet.Left)
			}
		})
	}
}

func TestFilledAreas(t *testing.T) {
	const pt = 72 / 25.4 // in a millimetre
	strip := func(high float64) string { return fmt.Sprintf("100 200 300 %f re f", high*pt) }
	for _, c := range []struct {
		name, drawing, kind string
		edges               int
	}{
		{"a strip of one millimetre is a line", strip(1), pdf.KindStrip, 1},
		{"one of two is an area", strip(2), pdf.KindFill, 4},
		{"a mitred strip is a line", "100 200 m 400 200 l 397 203 l 103 203 l f", pdf.KindStrip, 1},
		{"a small square is an area", "100 200 2 2 re f", pdf.KindFill, 4},
		{"a triangle is an area", "100 200 m 103 200 l 101 204 l f", pdf.KindFill, 3},
		{"what has a pen is drawn with it", "100 200 300 2 re B", pdf.KindStroke, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			sheet := read(t, page{drawing: "1 0 0 rg " + c.drawing}.file())
			if len(sheet.Items) != 1 || sheet.Items[0].Kind != c.kind || len(sheet.Items[0].Edges) != c.edges {
				t.Fatalf("got %+v", sheet.Items)
			}
			if c.kind != pdf.KindStroke && sheet.Items[0].Colour != linework.RGB(0xFF0000) {
				t.Errorf("its colour is %+v", sheet.Items[0].Colour)
			}
		})
	}
	sheet := read(t, page{drawing: strip(1)}.file())
	if e := sheet.Items[0].Edges[0]; math.Abs(e.A.Y-200-pt/2) > near || math.Abs(e.Chord()-300) > near || math.Abs(sheet.Items[0].Width-0.001) > 1e-6 {
		t.Errorf("the strip is %+v", sheet.Items[0])
	}
}

func TestWhatDrawsNothingIsLeftAside(t *testing.T) {
	sheet := read(t, page{drawing: oneLine + " 1 1 1 rg 10 10 100 100 re f 10 10 m 90 90 l n /S sh /G gs 10 10 m 90 90 l S",
		resources: "/Shading << /S << /ShadingType 2 /ColorSpace /DeviceGray /Coords [0 0 1 1] /Function << /FunctionType 2 /Domain [0 1] /N 1 >> >> >> " +
			"/ExtGState << /G << /CA 0 >> >>"}.file())
	if len(sheet.Items) != 1 {
		t.Errorf("got %+v", sheet.Items)
	}
	for _, words := range []string{"white", "shading", "transparent colour"} {
		if !leftAside(sheet, words) {
			t.Errorf("nothing is said of %s: %s", words, strings.TrimSpace(fmt.Sprint(sheet.Left)))
		}
	}
}
