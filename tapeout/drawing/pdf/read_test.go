package pdf_test

import (
	"bytes"
	"math"
	"os"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// point is a PDF point in metres, and quarter the floor at a quarter inch to the
// foot, 1:48.
const (
	point   = 0.0254 / 72
	quarter = 48
)

// worst returns how far the farthest of the wanted points is from any end of the
// sheet's edges, in metres on the floor at 1:48.
func worst(sheet *linework.Sheet, want []plane.Point) float64 {
	far := 0.0
	for _, w := range want {
		near := math.Inf(1)
		for _, item := range sheet.Items {
			for _, e := range item.Edges {
				near = min(near, e.A.To(w), e.B.To(w))
			}
		}
		far = max(far, near)
	}
	return far * point * quarter
}

// A plan that gofpdf has drawn comes back within the two decimals of a point that
// gofpdf writes: half of the last one is 0.085 mm on the floor at 1:48 each way.
func TestPlanDrawnByGofpdfComesBackToItsOwnPrecision(t *testing.T) {
	const high = 792.0
	walls := [][]plane.Point{
		{{X: 72.1234, Y: 90.777}, {X: 301.4567, Y: 90.777}, {X: 301.4567, Y: 222.2222}},
		{{X: 72.1234, Y: 90.777}, {X: 72.1234, Y: 222.2222}},
		{{X: 333.333, Y: 444.444}, {X: 512.3456, Y: 611.1111}},
	}
	p := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "pt", Size: gofpdf.SizeType{Wd: 612, Ht: high}})
	p.AddPage()
	var want []plane.Point
	for _, w := range walls {
		for i, c := range w {
			want = append(want, plane.Point{X: c.X, Y: high - c.Y})
			if i > 0 {
				p.Line(w[i-1].X, w[i-1].Y, c.X, c.Y)
			}
		}
	}
	var out bytes.Buffer
	if err := p.Output(&out); err != nil {
		t.Fatal(err)
	}

	sheet := read(t, out.Bytes())
	if off := worst(sheet, want); off > 0.000_15 {
		t.Errorf("the farthest corner is %.3f mm off on the floor", off*1000)
	} else {
		t.Logf("the farthest corner is %.3f mm off on the floor at 1:48", off*1000)
	}
}

// Drawing programs write a circle as four cubic curves whose control points lie
// 0.5522847 of the radius along the tangents.
func TestCircleOfFourCurvesIsACircle(t *testing.T) {
	sheet := read(t, page{drawing: "380 300 m 380 344.18278 344.18278 380 300 380 c 255.81722 380 220 344.18278 220 300 c " +
		"220 255.81722 255.81722 220 300 220 c 344.18278 220 380 255.81722 380 300 c S"}.file())
	wantCircle(t, sheet, plane.Point{X: 300, Y: 300}, 80)
}

// A curve that is no arc comes back as chords within the tolerance.
func TestOtherCurvesAreFlattened(t *testing.T) {
	sheet := read(t, page{drawing: "100 100 m 100 400 500 400 500 100 c S"}.file())
	if len(sheet.Items) != 1 {
		t.Fatalf("%d things are read, want one", len(sheet.Items))
	}
	for _, e := range sheet.Items[0].Edges {
		if !e.Straight() {
			t.Error("an arc stands for a curve that is none")
		}
	}
	// Halfway along, the curve is at three quarters of the height of its handles.
	nearest := math.Inf(1)
	for _, e := range sheet.Items[0].Edges {
		nearest = min(nearest, e.Distance(plane.Point{X: 300, Y: 325}))
	}
	if nearest > tolerance {
		t.Errorf("the chords pass the middle of the curve at %v points", nearest)
	}
}

// wantCircle fails unless the sheet has arcs all round the circle; what is allowed
// is the departure of a circle of four cubic curves, 0.027 % of its radius.
func wantCircle(t *testing.T, sheet *linework.Sheet, centre plane.Point, radius float64) {
	t.Helper()
	round := 0.0
	for _, item := range sheet.Items {
		for _, e := range item.Edges {
			c, r, curved := e.Circle()
			if !curved {
				continue
			}
			if c.To(centre) > 0.001*radius || math.Abs(r-radius) > 0.001*radius {
				t.Errorf("an arc has centre %v and radius %.3f, want %v and %.3f", c, r, centre, radius)
			}
			round += math.Abs(e.Sweep())
		}
	}
	if math.Abs(round-2*math.Pi) > 0.01 {
		t.Errorf("arcs go round by %.3f, want a whole turn", round)
	}
}

// The file was drawn by cairo from cairo.svg beside it; where its vertices lie
// follows from the transforms written there.
func TestPlanDrawnByCairoComesBack(t *testing.T) {
	data, err := os.ReadFile("../../../testdata/pdf/cairo.pdf")
	if err != nil {
		t.Fatal(err)
	}
	const high = 792
	up := func(x, y float64) plane.Point { return plane.Point{X: x, Y: high - y} }
	sin, cos := math.Sincos(math.Pi / 6)
	turned := func(x, y float64) plane.Point { return up(50+cos*x-sin*y, 60+sin*x+cos*y) }
	sheet := read(t, data)
	off := worst(sheet, []plane.Point{
		up(100.125, 200.25), up(300.5, 200.25), up(300.5, 350.75),
		turned(10, 10), turned(210, 10),
		turned(40, 60), turned(140, 60), turned(140, 110),
	})
	if off > 0.000_2 {
		t.Errorf("the farthest corner is %.3f mm off on the floor", off*1000)
	} else {
		t.Logf("the farthest corner is %.3f mm off on the floor at 1:48", off*1000)
	}
	wantCircle(t, sheet, up(400, 500), 60)
	for _, item := range sheet.Items {
		if item.Colour.RGB == 0xC00000 && (len(item.Dash) != 2 || math.Abs(item.Dash[0]-6) > 0.01 || math.Abs(item.Dash[1]-3) > 0.01) {
			t.Errorf("the dashes of the red line are %v, want 6 and 3", item.Dash)
		}
	}
}

// near is how well a place in a hand-written file comes back, in points.
const near = 0.002

// ends returns the two ends of the only straight line on the page.
func ends(t *testing.T, p page) (a, b plane.Point, item linework.Item) {
	t.Helper()
	sheet := read(t, p.file())
	if len(sheet.Items) != 1 || len(sheet.Items[0].Edges) != 1 {
		t.Fatalf("%d things are on the page, want one line: %+v", len(sheet.Items), sheet.Items)
	}
	e := sheet.Items[0].Edges[0]
	return e.A, e.B, sheet.Items[0]
}

func TestWhereALineLiesOnThePageThatIsShown(t *testing.T) {
	const line = "100 200 m 400 250 l S"
	at := func(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }
	for _, c := range []struct {
		name string
		page page
		a, b plane.Point
	}{
		{"as it is written", page{drawing: line}, at(100, 200), at(400, 250)},
		{"cropped", page{entries: "/CropBox [50 60 500 700]", drawing: line}, at(50, 140), at(350, 190)},
		{"turned by a quarter, clockwise", page{entries: "/Rotate 90", drawing: line}, at(200, 612-100), at(250, 612-400)},
		{"turned upside down", page{entries: "/Rotate 180", drawing: line}, at(512, 592), at(212, 542)},
		{"turned by three quarters", page{entries: "/Rotate 270", drawing: line}, at(792-200, 100), at(792-250, 400)},
		{"in user units of two points", page{entries: "/UserUnit 2", drawing: line}, at(200, 400), at(800, 500)},
		{"under a matrix", page{drawing: "q 2 0 0 2 10 20 cm 45 90 m 195 115 l S Q"}, at(100, 200), at(400, 250)},
		{"in a form", page{drawing: "q 1 0 0 1 10 20 cm /F5 Do Q", forms: []string{form("2 0 0 2 0 0", "", "45 90 m 195 115 l S")}}, at(100, 200), at(400, 250)},
		{"in a form in a form", page{drawing: "/F5 Do", forms: []string{
			form("1 0 0 1 100 0", "/XObject << /F6 6 0 R >>", "q 1 0 0 1 0 100 cm /F6 Do Q"),
			form("0 1 -1 0 0 0", "", "100 0 m 150 -300 l S"),
		}}, at(100, 200), at(400, 250)},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, b, _ := ends(t, c.page)
			if a.To(c.a) > near || b.To(c.b) > near {
				t.Errorf("the line runs from %v to %v, want %v to %v", a, b, c.a, c.b)
			}
		})
	}
}

func TestWidthsAndDashesAreThoseOnPaper(t *testing.T) {
	_, _, item := ends(t, page{drawing: "q 2 0 0 2 0 0 cm 1.5 w [6 3] 0 d 10 10 m 110 10 l S Q"})
	if want := 3 * point; math.Abs(item.Width-want) > 1e-6 {
		t.Errorf("the pen is %v m wide, want %v", item.Width, want)
	}
	if len(item.Dash) != 2 || math.Abs(item.Dash[0]-12) > near || math.Abs(item.Dash[1]-6) > near {
		t.Errorf("the dashes are %v, want 12 and 6 points", item.Dash)
	}
}

func TestClippedAwayIsNotRead(t *testing.T) {
	a, b, _ := ends(t, page{drawing: "q 100 100 200 200 re W n 50 150 m 500 150 l S Q"})
	if math.Abs(a.X-100) > near || math.Abs(b.X-300) > near {
		t.Errorf("the line runs from %v to %v, want to be cut at 100 and 300", a, b)
	}
}
