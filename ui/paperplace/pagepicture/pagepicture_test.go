package pagepicture

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"

	"groundrow/assets/demo"
	"groundrow/assets/fonts"
	"groundrow/prep/sheets"
)

var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// page returns a page of 100 by 200 mm, written as the sheets are.
func page(t testing.TB, drawn func(*gofpdf.Fpdf)) *Document {
	t.Helper()
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: 100, Ht: 200}})
	pdf.SetAutoPageBreak(false, 0)
	pdf.AddUTF8FontFromBytes("sheet", "", fonts.Regular)
	pdf.AddUTF8FontFromBytes("sheet", "B", fonts.Bold)
	pdf.AddPage()
	drawn(pdf)
	var b bytes.Buffer
	if err := pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	d, err := Read(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// ink adds up how dark a part of a picture is, in whole black pixels.
func ink(img image.Image, r image.Rectangle) float64 {
	sum := 0.0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			g := color.GrayModel.Convert(img.At(x, y)).(color.Gray)
			sum += 1 - float64(g.Y)/255
		}
	}
	return sum
}

func TestWhatIsDrawnStandsWhereItWasPut(t *testing.T) {
	all := image.Rect(0, 0, 100, 200)
	for _, c := range []struct {
		name  string
		drawn func(*gofpdf.Fpdf)
		in    image.Rectangle // where all ink lies, at a pixel to a millimetre
		want  float64         // how much of it
		tol   float64
	}{
		{"a filled box", func(p *gofpdf.Fpdf) { p.Rect(10, 20, 30, 40, "F") }, image.Rect(10, 20, 40, 60), 1200, 1},
		{"a grey box", func(p *gofpdf.Fpdf) { p.SetFillColor(128, 128, 128); p.Rect(10, 20, 30, 40, "F") }, image.Rect(10, 20, 40, 60), 600, 10},
		{"a wide line", func(p *gofpdf.Fpdf) { p.SetLineWidth(2); p.Line(10, 50, 90, 50) }, image.Rect(10, 49, 90, 51), 160, 1},
		{"a broken line", func(p *gofpdf.Fpdf) {
			p.SetLineWidth(2)
			p.SetDashPattern([]float64{5, 5}, 0)
			p.Line(10, 50, 90, 50)
		}, image.Rect(10, 49, 90, 51), 80, 1},
		{"a disc", func(p *gofpdf.Fpdf) { p.Circle(50, 100, 20, "F") }, image.Rect(29, 79, 71, 121), math.Pi * 400, 12},
		{"a box cut by a clip", func(p *gofpdf.Fpdf) {
			p.ClipRect(0, 0, 25, 200, false)
			p.Rect(10, 20, 30, 40, "F")
			p.ClipEnd()
		}, image.Rect(10, 20, 25, 60), 600, 1},
	} {
		img := page(t, c.drawn).Render(0, 100)
		if got := ink(img, c.in); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: %v pixels of ink where it belongs, want %v", c.name, got, c.want)
		}
		if got := ink(img, all) - ink(img, c.in); got > 0.5 {
			t.Errorf("%s: %v pixels of ink where none belongs", c.name, got)
		}
	}
}

func TestWordsStandOnTheirLine(t *testing.T) {
	for _, style := range []string{"", "B"} {
		d := page(t, func(p *gofpdf.Fpdf) {
			p.SetFont("sheet", style, 20)
			p.Text(10, 50, "HHH (½″)")
		})
		img := d.Render(0, 400)
		line := image.Rect(40, 174, 400, 204)
		if got := ink(img, line); got < 100 {
			t.Errorf("style %q: %v pixels of ink on the line", style, got)
		}
		if got := ink(img, image.Rect(0, 0, 400, 800)) - ink(img, line); got > 25 {
			t.Errorf("style %q: %v pixels of ink off the line", style, got)
		}
	}
}

func TestEverySheetOfTheDemoHasAPicture(t *testing.T) {
	p := demo.Production(wednesday)
	job := sheets.Job{P: p, Floor: p.Floors[0].ID, Printed: wednesday}
	for _, s := range sheets.All() {
		var b bytes.Buffer
		if err := sheets.Write(&b, s.Kind, job); err != nil {
			t.Fatal(err)
		}
		d, err := Read(b.Bytes())
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
			continue
		}
		if want := sheets.Pages(s.Kind, job); d.Pages() != want {
			t.Errorf("%s: %d pages, want %d", s.Name, d.Pages(), want)
		}
		for i := range d.Pages() {
			img := d.Render(i, 200)
			if got := ink(img, img.Bounds()); got < 60 {
				t.Errorf("%s, page %d: %v pixels of ink", s.Name, i+1, got)
			}
		}
	}
}

func TestWhatIsNoSheetIsRefused(t *testing.T) {
	for name, pdf := range map[string]string{
		"nothing": "", "words": "hello", "no pages": "/MediaBox [0 0 100 100]",
		"no size":     "/MediaBox [0 0 0 0] <</Type /Page >>",
		"cut off":     "/MediaBox [0 0 100 100] <</Type /Page >> /Length 99>> stream\nabc",
		"not to read": "/MediaBox [0 0 100 100] <</Type /Page >> /Length 3>> stream\nabcdef",
	} {
		if _, err := Read([]byte(pdf)); err == nil {
			t.Errorf("%s: taken for a sheet", name)
		}
	}
}

func TestAPageThatIsNotThereIsWhite(t *testing.T) {
	d := page(t, func(p *gofpdf.Fpdf) { p.Rect(0, 0, 100, 200, "F") })
	for _, n := range []int{-1, 1} {
		img := d.Render(n, 50)
		if got := ink(img, img.Bounds()); got != 0 {
			t.Errorf("page %d has %v pixels of ink", n, got)
		}
	}
}

// FuzzContent draws whatever stands on a page.
func FuzzContent(f *testing.F) {
	for _, seed := range []string{
		"q 0.5 w 10 10 m 90 90 l S Q", "1 0 0 rg 10 10 20 20 re f", "[3 1] 0 d 0 0 m 50 50 90 10 99 99 c h B*",
		"BT /F1 12 Tf ET BT 10 10 Td (\x00A\\)\x00b) Tj ET", "10 10 30 30 re W n 0 0 99 99 re f", "(((", "/", "] [", "1e300 -1e300 l S", "NaN 0 m Inf 3 l S",
		strings.Repeat("q ", 40), "[1e-300 1e-300] 0 d 0 0 m 99 99 l S",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		d := &Document{width: 100, height: 100, pages: [][]byte{content}, bold: map[string]bool{}}
		if img := d.Render(0, 32); img.Bounds().Dx() != 32 {
			t.Errorf("the picture is %v", img.Bounds())
		}
	})
}

func BenchmarkFloorPlan(b *testing.B) {
	p := demo.Production(wednesday)
	var buf bytes.Buffer
	if err := sheets.Write(&buf, sheets.FloorPlan, sheets.Job{P: p, Floor: p.Floors[0].ID, Printed: wednesday}); err != nil {
		b.Fatal(err)
	}
	d, err := Read(buf.Bytes())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d.Render(0, 600)
	}
}
