package pdf_test

import (
	"image/color"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"groundrow/tapeout/drawing/pdf"
)

// leaf is a page of a document: its dictionary's own entries, with its contents.
func leaf(contents int, entries string) string {
	return "<< /Type /Page /Parent 2 0 R /Contents " + string(rune('0'+contents)) + " 0 R " + entries + " >>"
}

// set is a document of four pages: a plan, a turned one in larger units, a picture
// and a blank one.
func set() []byte {
	resources := "/Resources << /Font << " + fonts + ">> /XObject << /P 9 0 R >> >> "
	return fileOf(
		"<< /Type /Catalog /Pages 2 0 R /PageLabels << /Nums [0 << /P (A-) /S /D /St 101 >>] >> >>",
		"<< /Type /Pages /Kids [3 0 R 4 0 R 5 0 R 6 0 R] /Count 4 /MediaBox [0 0 720 360] >>",
		leaf(7, resources), leaf(7, resources+"/Rotate 90 /UserUnit 2"), leaf(8, resources), leaf(8, "/MediaBox [0 0 72 72]"),
		stream("", oneLine+" 10 10 m 20 20 l S BT /F 10 Tf 100 300 Td (DOOR) Tj ET"),
		stream("", "q 360 0 0 360 0 0 cm /P Do Q"),
		stream("/Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8", "\x80"),
	)
}

func TestPagesAreDescribedSoThatOneCanBePicked(t *testing.T) {
	got, err := engine.Pages(t.Context(), set())
	if err != nil {
		t.Fatal(err)
	}
	want := []pdf.PageInfo{
		{Number: 1, Label: "A-101", Width: 0.254, Height: 0.127, Paths: 2, Texts: 1, Counted: true},
		{Number: 2, Label: "A-102", Width: 0.254, Height: 0.508, Turned: 1, Paths: 2, Texts: 1, Counted: true},
		{Number: 3, Label: "A-103", Width: 0.254, Height: 0.127, Images: 1, Picture: 0.5, Counted: true},
		{Number: 4, Label: "A-104", Width: 0.0254, Height: 0.0254, Counted: true},
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-6)); diff != "" {
		t.Error(diff)
	}
	for i, scan := range []bool{false, false, true, false} {
		if got[i].Scan() != scan {
			t.Errorf("page %d: a scan is %v", i+1, !scan)
		}
	}
}

// What a form holds is counted as often as it is placed.
func TestPagesCountWhatFormsHold(t *testing.T) {
	got, err := engine.Pages(t.Context(), page{drawing: "/F5 Do /F5 Do", forms: []string{form("1 0 0 1 0 0", "", oneLine+" "+oneLine)}}.file())
	if err != nil || len(got) != 1 || got[0].Paths != 4 {
		t.Errorf("got %+v, %v", got, err)
	}
}

func TestRenderShowsThePageAsItIsSeen(t *testing.T) {
	p := page{entries: "/CropBox [0 0 144 72] /Rotate 90", drawing: "0 0 72 72 re f"}
	picture, err := engine.Render(t.Context(), p.file(), 1, 100)
	if err != nil {
		t.Fatal(err)
	}
	if size := picture.Bounds().Size(); size.X != 100 || size.Y != 200 {
		t.Fatalf("the picture has %v pixels", size)
	}
	for y, want := range map[int]color.Gray{50: {0}, 150: {255}} { // turned clockwise, left is at the top
		if got := color.GrayModel.Convert(picture.At(50, y)); got != want {
			t.Errorf("%d pixels down it is %v, want %v", y, got, want)
		}
	}
}

func TestRenderIsBounded(t *testing.T) {
	for name, box := range map[string]string{"a large sheet": "[0 0 14000 14000]", "a ribbon": "[0 0 14000 1]"} {
		picture, err := engine.Render(t.Context(), page{entries: "/CropBox " + box + " /MediaBox " + box, drawing: oneLine}.file(), 1, 1200)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if size := picture.Bounds().Size(); size.X*size.Y > 40_100_000 || size.X < 1000 {
			t.Errorf("%s has %v pixels", name, size)
		}
	}
	for _, dpi := range []float64{0, -1, math.NaN()} {
		if picture, err := engine.Render(t.Context(), page{drawing: oneLine}.file(), 1, dpi); err != nil || picture.Bounds().Dx() != 612 {
			t.Errorf("at %v dots to an inch: %v", dpi, err)
		}
	}
}

func TestPageInAMissingPlaceIsNamed(t *testing.T) {
	_, err := engine.Render(t.Context(), set(), 5, 72)
	if err == nil || !strings.Contains(err.Error(), "no page 5") || !strings.Contains(err.Error(), "page 4") {
		t.Errorf("it says %v", err)
	}
}
