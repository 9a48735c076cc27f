package sheets

import (
	"fmt"
	"image"
	_ "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// The bar is measured on the rendered page, so that everything between the plan
// and the paper is in the measurement: the scale, the page size, the PDF itself.
func TestScaleBarIsTrueOnPaper(t *testing.T) {
	tests := []struct {
		size PageSize
		unit string
		page float64 // scale wished, 0: what fits
	}{
		{Letter, "ft", 0}, {Tabloid, "ft", 0}, {A4, "m", 0}, {A3, "mm", 0}, {A4, "cm", 50}, {Letter, "ft", 48},
	}
	const dpi = 300
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt), func(t *testing.T) {
			j := richJob(tt.size)
			j.P.Settings.Unit = tt.unit
			j.Scale = length.Scale(tt.page)
			d := drawFloor(j)
			lies := d.lies(j.Size)
			size := j.Size
			if lies {
				size = size.turned()
			}
			plan := d.divide(size.body())
			unit := 1.0
			if tt.unit == "ft" {
				unit = length.Foot
			}
			scale := j.Scale
			if scale == 0 {
				b, _ := d.bounds()
				scale = fitting(b, plan.frame.w, plan.frame.h, d.Unit)
			}
			want := barOf(view{scale: scale}, unit) * unit / float64(scale) * 1000
			got := measureBar(t, pdf(t, FloorPlan, j), plan.bar, dpi)
			if math.Abs(got-want) > 0.3 {
				t.Errorf("the bar is %.2f mm long, want %.2f at %s", got, want, scale)
			}
		})
	}
}

// measureBar returns the length in millimetres of the outline of the scale bar
// on the first page: the longest dark run in the rows where it lies.
func measureBar(t *testing.T, data []byte, at inset, dpi float64) float64 {
	t.Helper()
	img := part(t, data, dpi, inset{at.x - 2, at.y + 1, at.w + 2, 5})
	longest := 0
	for y := range img.Bounds().Dy() {
		run := 0
		for x := range img.Bounds().Dx() {
			if r, _, _, _ := img.At(x, y).RGBA(); r < 0xB000 {
				run++
				longest = max(longest, run)
			} else {
				run = 0
			}
		}
	}
	return float64(longest) / dpi * 25.4
}

// part renders a part of the first page.
func part(t *testing.T, data []byte, dpi float64, r inset) image.Image {
	t.Helper()
	px := func(mm float64) string { return fmt.Sprint(int(mm / 25.4 * dpi)) }
	path := saved(t, data)
	base := filepath.Join(filepath.Dir(path), "page")
	out, err := exec.Command(tool(t, "pdftoppm"), "-r", fmt.Sprint(dpi), "-gray", "-singlefile", "-png",
		"-x", px(r.x), "-y", px(r.y), "-W", px(r.w), "-H", px(r.h), path, base).CombinedOutput()
	if err != nil {
		t.Fatalf("pdftoppm: %v\n%s", err, out)
	}
	f, err := os.Open(base + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

func TestLargestUsualScaleIsChosen(t *testing.T) {
	square := func(side float64) plane.Box { return plane.Box{Max: plane.Point{X: side, Y: side}} }
	tests := []struct {
		name string
		side float64 // metres
		unit length.Unit
		want length.Scale
	}{
		{"fits exactly at 1:50", 9.1, length.Metres, 50},
		{"a hair too large for 1:50", 9.11, length.Metres, 100},
		{"a small piece is not drawn as a detail", 0.1, length.Metres, 10},
		{"feet have the architect's scales", 9.1, length.FeetInches, 64},
		{"larger than any usual scale", 200, length.Metres, 2000},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := fitting(square(tt.side), 200, 200, tt.unit); got != tt.want {
				t.Errorf("scale %v, want %v", got, tt.want)
			}
		})
	}
}

func TestPlanAtALargeScaleGoesOverSeveralPages(t *testing.T) {
	j := richJob(Letter)
	j.Scale = 24
	n := Pages(FloorPlan, j)
	if n < 4 {
		t.Fatalf("%d pages at 1:24, want several", n)
	}
	data := pdf(t, FloorPlan, j)
	text := textOf(t, data)
	for _, want := range []string{"(1:24)", fmt.Sprintf("Part 1 of %d", n), fmt.Sprintf("Part %d of %d", n, n)} {
		if !strings.Contains(text, want) {
			t.Errorf("the parts lack %q", want)
		}
	}
	count := wordsOf(t, data)
	for _, m := range j.work().Marks {
		if count[m.Label] == 0 {
			t.Errorf("no part shows %s", m.Label)
		}
	}
}

// Every point of the plan must be on some part, and neighbours must overlap by
// as much as the crosses need.
func TestPartsCoverThePlanAndOverlap(t *testing.T) {
	b := plane.Box{Min: plane.Point{X: -8, Y: -3}, Max: plane.Point{X: 9, Y: 12}}
	frame := inset{10, 10, 180, 150}
	ps := cutUp(b, frame, 24)
	views, across, up := ps.views, ps.across, ps.up
	if across < 2 || up < 2 || len(views) != across*up {
		t.Fatalf("%d parts, %d across, %d up", len(views), across, up)
	}
	for i := range 50 {
		for k := range 50 {
			p := plane.Point{X: b.Min.X + b.Width()*float64(i)/49, Y: b.Min.Y + b.Height()*float64(k)/49}
			seen := false
			for _, v := range views {
				seen = seen || (spot{At: p}).seen(v)
			}
			if !seen {
				t.Fatalf("no part shows %v", p)
			}
		}
	}
	step := views[0].mm(views[1].at.X - views[0].at.X)
	if got := frame.w - step; math.Abs(got-lapping) > 1e-6 {
		t.Errorf("neighbours overlap by %.3f mm, want %.1f", got, lapping)
	}
}

func TestAudienceIsAtTheFootOfThePage(t *testing.T) {
	v := view{frame: inset{0, 0, 100, 100}, scale: 50}
	down, up := plane.Point{Y: -1}, plane.Point{Y: 1}
	if v.y(down) <= v.y(up) {
		t.Error("downstage is not lower on the page than upstage")
	}
	if left, right := (plane.Point{X: 1}), (plane.Point{X: -1}); v.x(left) <= v.x(right) {
		t.Error("stage left is not at the right of the page")
	}
}

func TestLabelsDoNotCoverEachOther(t *testing.T) {
	for _, j := range []Job{richJob(Letter), richJob(A3), crowded(300)} {
		d := drawFloor(j)
		b, _ := d.bounds()
		plan := d.divide(j.size().body())
		v := view{plan.frame, b.Centre(), fitting(b, plan.frame.w, plan.frame.h, d.Unit)}
		labels, _ := d.arrange(append(d.Pivots, d.Points...), v)
		for i, a := range labels {
			if !a.clear {
				t.Errorf("%s found no room", a.Text)
			}
			for _, c := range labels[:i] {
				if a.at.meets(c.at) {
					t.Errorf("%s covers %s", a.Text, c.Text)
				}
			}
		}
	}
}

func TestStocksCanBeToldApartWithoutColour(t *testing.T) {
	seen := map[pen]int{}
	for i := range 2 * len(stockPens) {
		n := stockPen(i)
		if other, ok := seen[n]; ok {
			t.Errorf("stocks %d and %d have the same pen %v", other, i, n)
		}
		seen[n] = i
		if _, ok := dashes[n.Dash]; !ok {
			t.Errorf("pen %d has the unknown pattern %q", i, n.Dash)
		}
	}
}

func TestSegmentCrossesRectangle(t *testing.T) {
	r := inset{10, 10, 10, 5}
	tests := []struct {
		name string
		s    segment
		want bool
	}{
		{"through", segment{0, 12, 30, 13}, true},
		{"inside", segment{12, 12, 13, 13}, true},
		{"touches a corner", segment{5, 5, 10, 10}, true},
		{"past a corner", segment{5, 12, 12, 3}, false},
		{"beside, upright", segment{9, 0, 9, 30}, false},
		{"ends before", segment{0, 12, 9.9, 12}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if _, _, got := tt.s.within(r); got != tt.want {
				t.Errorf("crosses: %v", got)
			}
		})
	}
}

func TestNamesStandWithWhatTheyName(t *testing.T) {
	corner := func(over, up float64) plane.Point { return plane.Point{X: over, Y: up} }
	bent := plane.Open(corner(0, 0), corner(0, 4), corner(10, 4)).Edges()
	if got := nameSpot("wall", bent); got.At.To(corner(5, 4)) > 1e-9 {
		t.Errorf("the name of a bent wall stands at %v, want the middle of its longest side", got.At)
	}
	box := plane.Rectangle(corner(0, 0), corner(4, 2)).Edges()
	if got := nameSpot("platform", box); got.At.To(corner(2, 1)) > 1e-9 {
		t.Errorf("the name of a platform stands at %v, want its middle", got.At)
	}
	circle := plane.Circle(corner(3, 3), 2).Edges()
	if got := nameSpot("revolve", circle); got.At.To(corner(3, 3)) > 1e-9 {
		t.Errorf("the name of a revolve stands at %v, want its centre", got.At)
	}
}

func TestLabelsWithoutRoomAreOnPartsThatFollow(t *testing.T) {
	j := crowded(900)
	j.Size = Letter
	data := pdf(t, FloorPlan, j)
	if n := Pages(FloorPlan, j); n < 3 {
		t.Fatalf("%d pages, want the whole and its parts", n)
	}
	if !strings.Contains(textOf(t, data), "on the parts that follow") {
		t.Error("the whole does not say where to look")
	}
	count := wordsOf(t, data)
	for _, m := range j.work().Marks {
		if count[m.Label] == 0 {
			t.Errorf("no page shows %s", m.Label)
		}
	}
}
