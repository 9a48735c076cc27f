package drawingfile

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"groundrow/tapeout/length"
)

// asPDF writes pages as a PDF 1.4 file; each page is its drawing operators (PDF
// reference 1.7, chapter 4), on a letter sheet.
func asPDF(pages ...string) []byte {
	objects := []string{"<< /Type /Catalog /Pages 2 0 R >>", "", "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>"}
	var kids []string
	for _, p := range pages {
		n := len(objects) + 1
		kids = append(kids, fmt.Sprintf("%d 0 R", n))
		objects = append(objects,
			fmt.Sprintf("<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents %d 0 R /Resources << /Font << /F1 3 0 R >> >> >>", n+1),
			fmt.Sprintf("<< /Length %d >>\nstream\n%s\nendstream", len(p), p))
	}
	objects[1] = fmt.Sprintf("<< /Type /Pages /Kids [%s] /Count %d >>", strings.Join(kids, " "), len(kids))
	var s strings.Builder
	s.WriteString("%PDF-1.4\n")
	var at []int
	for i, o := range objects {
		at = append(at, s.Len())
		fmt.Fprintf(&s, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := s.Len()
	fmt.Fprintf(&s, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range at {
		fmt.Fprintf(&s, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&s, "trailer << /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
	return []byte(s.String())
}

// kitchen is a wall, a centre line and a plaster line, with the scale in words.
const kitchen = "100 300 m 500 300 l S 300 100 m 300 700 l S 60 150 m 560 150 l S\n" +
	"BT /F1 10 Tf 304 690 Td (CENTRE LINE) Tj ET BT /F1 10 Tf 64 154 Td (PLASTER LINE) Tj ET BT /F1 18 Tf 60 40 Td (KITCHEN PLAN) Tj ET\n" +
	"BT /F1 10 Tf 60 20 Td (SCALE 1:48) Tj ET"

func TestPagesOfAPDF(t *testing.T) {
	// What the reader compiles is kept from one run of the tests to the next.
	t.Setenv("XDG_CACHE_HOME", filepath.Join(os.TempDir(), "groundrow-tests"))
	src, err := Of("plans.pdf", asPDF("", kitchen))
	if err != nil {
		t.Fatal(err)
	}
	file, err := Open(context.Background(), src)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if len(file.Pages) != 2 || !file.Pages[0].Blank() || file.First() != 1 || file.Pages[1].What() != "3 lines" {
		t.Fatalf("the pages are %+v; the second should be opened first", file.Pages)
	}
	if _, err := file.Sheet(context.Background(), 0, nil); err == nil {
		t.Error("a page without lines was read")
	}
	sheet, err := file.Sheet(context.Background(), 1, nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Sense(context.Background(), sheet)
	if err != nil || len(r.Scales) == 0 || len(r.Datums) == 0 {
		t.Fatalf("%v: scales %v, datums %v", err, r.Scales, r.Datums)
	}
	if got, want := r.Scales[0].PerUnit, 48*length.Inch/72; got < want*0.9999 || got > want*1.0001 {
		t.Errorf("a point is %v m, want %v", got, want)
	}
	if got := Title(sheet); got != "KITCHEN PLAN" {
		t.Errorf("the page calls itself %q", got)
	}
	if keep := r.Keep(); len(keep) != 1 {
		t.Errorf("%d lines are kept, want the wall alone", len(keep))
	}
}

func TestAPDFThatIsDamagedIsRefusedAsAWhole(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", filepath.Join(os.TempDir(), "groundrow-tests"))
	whole := asPDF(kitchen)
	src, err := Of("cut.pdf", whole[:120])
	if err != nil {
		t.Fatal(err)
	}
	if file, err := Open(context.Background(), src); err == nil {
		t.Errorf("it was opened: %+v", file.Pages)
		file.Close()
	}
}

// scan.pdf is a page as a picture and nothing else; plan.pdf
// is the same page as lines: see testdata/pdf/README.md.
func TestAScanIsAPageToBeTraced(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", filepath.Join(os.TempDir(), "groundrow-tests"))
	src, err := Read("../../testdata/pdf/scan.pdf")
	if err != nil {
		t.Fatal(err)
	}
	file, err := Open(context.Background(), src)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if p := file.Pages[0]; len(file.Pages) != 1 || !p.Scan || p.Blank() || !strings.Contains(p.What(), "traced") {
		t.Fatalf("the pages are %+v", file.Pages)
	}
	if _, err := file.Sheet(context.Background(), 0, nil); err == nil || !strings.Contains(err.Error(), "trace") {
		t.Errorf("its lines: %v", err)
	}
	img, err := file.Picture(context.Background(), 0, 50)
	if err != nil {
		t.Fatal(err)
	}
	wide, high := file.Pages[0].Width/length.Inch*50, file.Pages[0].Height/length.Inch*50
	if b := img.Bounds(); math.Abs(float64(b.Dx())-wide) > 1 || math.Abs(float64(b.Dy())-high) > 1 {
		t.Errorf("it has %v dots, want %v by %v", b.Size(), wide, high)
	}
	if _, ok := img.(*image.Gray); !ok {
		t.Errorf("it is a %T", img)
	}
	if _, err := Drawn(context.Background(), src, 1, 50); err == nil {
		t.Error("a second page was drawn")
	}
}

// A picture in grey is as the standard library makes it, but for rounding.
func TestGreyIsThatOfTheLibrary(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 16, 16))
	for i := range img.Pix {
		img.Pix[i] = uint8(i * 37)
		if i%4 == 3 {
			img.Pix[i] = 255
		}
	}
	got := inGrey(img)
	for y := range 16 {
		for x := range 16 {
			want := color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y
			if d := int(got.GrayAt(x, y).Y) - int(want); d < -1 || d > 1 {
				t.Fatalf("at %d, %d: %d, want %d", x, y, got.GrayAt(x, y).Y, want)
			}
		}
	}
}
