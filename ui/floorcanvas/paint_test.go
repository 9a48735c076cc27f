package floorcanvas

import (
	"image"
	"image/color"
	"math"
	"testing"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

func blank(w, h int) *surface {
	s := &surface{img: image.NewRGBA(image.Rect(0, 0, w, h)), clip: image.Rect(0, 0, w, h)}
	s.flood(s.clip, paint{255, 255, 255})
	return s
}

// darkness is how much ink there is, in pixels.
func (s *surface) darkness(r image.Rectangle) float64 {
	sum := 0.0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			sum += float64(255-s.img.RGBAAt(x, y).R) / 255
		}
	}
	return sum
}

func TestALineHasTheInkOfItsWidthAndLength(t *testing.T) {
	for name, angle := range map[string]float64{"level": 0, "upright": math.Pi / 2, "flat": 0.2, "diagonal": math.Pi / 4, "steep": 1.3} {
		t.Run(name, func(t *testing.T) {
			s := blank(200, 200)
			const length, width = 120, 3
			dx, dy := math.Cos(angle)*length/2, math.Sin(angle)*length/2
			s.line(stretch{100 - dx, 100 - dy, 100 + dx, 100 + dy}, width/2., paint{})
			want := length*width + math.Pi*width*width/4 // round ends
			if got := s.darkness(s.clip); math.Abs(got-want) > 0.03*want {
				t.Errorf("%.1f pixels of ink, want about %.1f", got, want)
			}
		})
	}
}

func TestALineThroughTheClipStaysInIt(t *testing.T) {
	s := blank(60, 60)
	s.clip = image.Rect(20, 20, 40, 40)
	s.line(stretch{-1e6, -1e6, 1e6, 1e6}, 2, paint{})
	s.line(stretch{30, -1e9, 30, 1e9}, 1, paint{})
	s.line(stretch{math.NaN(), 0, 10, 10}, 1, paint{})
	s.line(stretch{math.Inf(1), 0, 10, 10}, 1, paint{})
	all, inside := s.darkness(s.img.Rect), s.darkness(s.clip)
	if inside == 0 || all != inside {
		t.Errorf("%.1f pixels of ink, %.1f of them inside", all, inside)
	}
}

func TestDashesLeaveTheirGaps(t *testing.T) {
	s := blank(120, 20)
	s.polyline([]float64{0, 10.5, 60, 10.5, 120, 10.5}, pen{half: 0.5, pattern: []float64{10, 10}})
	for x, dark := range map[int]bool{5: true, 15: false, 25: true, 35: false, 45: true, 55: false, 65: true, 75: false, 115: false} {
		if got := s.img.RGBAAt(x, 10).R < 128; got != dark {
			t.Errorf("at %d inked is %v", x, got)
		}
	}
}

func TestDashesStayPutWhenTheirStartIsOutOfSight(t *testing.T) {
	near, far := blank(100, 11), blank(100, 11)
	n := pen{half: 0.5, pattern: []float64{10, 10}}
	near.polyline([]float64{0, 5.5, 100, 5.5}, n)
	far.polyline([]float64{-2e9, 5.5, 100, 5.5}, n)
	for x := 3; x < 97; x++ {
		if a, b := near.img.RGBAAt(x, 5).R, far.img.RGBAAt(x, 5).R; math.Abs(float64(a)-float64(b)) > 40 {
			t.Fatalf("at %d: %d and %d", x, a, b)
		}
	}
}

func TestHatchesCanBeToldApartWithoutColour(t *testing.T) {
	square := []float64{0, 0, 64, 0, 64, 64, 0, 64}
	h := hatch{period: 12, half: 1}
	rises := func(fill Fill) (up, down float64) {
		s := blank(64, 64)
		var f filler
		h.fill = fill
		f.polygon(s, square, paint{}, h)
		for y := 1; y < 63; y++ {
			for x := 1; x < 63; x++ {
				at := func(x, y int) float64 { return float64(s.img.RGBAAt(x, y).R) }
				up += math.Abs(at(x, y) - at(x+1, y-1))
				down += math.Abs(at(x, y) - at(x+1, y+1))
			}
		}
		return up, down
	}
	// Along the lines of a hatch nothing changes; across them everything does.
	if up, down := rises(Rising); up > down/10 {
		t.Errorf("rising: change %.0f along, %.0f across", up, down)
	}
	if up, down := rises(Falling); down > up/10 {
		t.Errorf("falling: change %.0f along, %.0f across", down, up)
	}
}

func TestAPolygonFarLargerThanThePictureIsFilled(t *testing.T) {
	s := blank(50, 50)
	var f filler
	f.polygon(s, []float64{-1e9, -1e9, 1e9, -1e9, 1e9, 1e9, -1e9, 1e9}, paint{}, hatch{fill: Full})
	if got := s.darkness(s.clip); got < 2499 {
		t.Errorf("%.0f of 2500 pixels", got)
	}
}

func TestRenderCopesWithWhateverItIsGiven(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	bad := plane.Point{X: nan, Y: inf}
	for name, p := range map[string]Picture{
		"nothing": {},
		"no numbers": {
			Shapes:   []Shape{{ID: "a", Edges: []plane.Edge{{A: bad, B: bad}, {Bulge: nan}, {B: plane.Point{X: 1}, Bulge: inf}}, Width: nan, Metres: inf}},
			Areas:    []Area{{ID: "b", Path: plane.Closed(bad, bad, plane.Point{}), Fill: Rising, Outline: nan, Label: "x"}},
			Dots:     []Dot{{At: bad}, {Size: nan}, {Size: inf}},
			Labels:   []Label{{At: bad, Text: "x"}, {Text: "y", Size: nan, Offset: nan}},
			Handles:  []Handle{{At: bad}},
			Ellipses: []Ellipse{{At: bad, Major: 1, Minor: 1}, {Major: inf, Minor: nan, Direction: nan}},
			Audience: bad, Bounds: plane.Box{Min: bad, Max: bad}, Datum: plane.Motion{Turn: nan, Shift: bad},
		},
		"empty things": {
			Shapes: []Shape{{}}, Areas: []Area{{Fill: Full}, {Fill: Full, Path: plane.Closed(plane.Point{})}},
			Dots: []Dot{{}}, Labels: []Label{{}}, Handles: []Handle{{}},
		},
		"an ellipse larger than a town": {Ellipses: []Ellipse{{Major: 1e6, Minor: 1e-9, Direction: 1e300}, {Major: 2e-6, Minor: 2e-6}}},
		"a point of a line":             {Shapes: []Shape{{Edges: []plane.Edge{{}}, Dash: Dashed}}},
		"far apart": {Shapes: []Shape{{Dash: Dotted, Edges: []plane.Edge{
			{A: plane.Point{X: -9e6}, B: plane.Point{X: 9e6, Y: 1}}, {B: plane.Point{X: 9e6}, Bulge: 1e-6}}}}},
		"a very long word": {Labels: []Label{{Text: string(make([]rune, 1<<20))}}},
	} {
		t.Run(name, func(t *testing.T) {
			for _, v := range []View{{}, {Scale: finest, Turn: 1}, {Scale: coarsest}, {Scale: nan, Centre: bad}} {
				if img := Render(p, 300, 200, Look{View: v, Full: true}); img.Rect.Dx() != 300 || img.Rect.Dy() != 200 {
					t.Errorf("size %v", img.Rect)
				}
			}
		})
	}
}

func TestRenderBoundsItsSize(t *testing.T) {
	if img := Render(Picture{}, -5, 0, Look{Density: math.NaN()}); img.Rect.Empty() {
		t.Error("an empty picture")
	}
	if img := Render(Picture{}, 1<<30, 1<<30, Look{}); img.Rect.Dx()*img.Rect.Dy() > 1<<24 {
		t.Errorf("%v", img.Rect)
	}
}

func TestWhatIsSelectedIsThickerAndNotOnlyAnotherColour(t *testing.T) {
	p := Picture{HideDatum: true, Shapes: []Shape{{ID: "a", Edges: plane.Open(plane.Point{}, plane.Point{X: 10, Y: 3}).Edges()}}}
	look := Look{View: View{Scale: 0.05, Centre: plane.Point{X: 5, Y: 1.5}}}
	plainInk := inked(Render(p, 300, 200, look))
	look.Selected = []string{"a"}
	if got := inked(Render(p, 300, 200, look)); got < 2*plainInk {
		t.Errorf("%d pixels when selected, %d when not", got, plainInk)
	}
}

// inked counts pixels that are not paper, above the audience's plate.
func inked(img *image.RGBA) int {
	paper := color.RGBAModel.Convert(theme.Inks{}.Colour(theme.Paper))
	n := 0
	for y := range img.Rect.Dy() - 30 {
		for x := range img.Rect.Dx() {
			if img.At(x, y) != paper {
				n++
			}
		}
	}
	return n
}

func TestAWhiteTapeIsSeenOnWhitePaper(t *testing.T) {
	p := Picture{HideDatum: true, Shapes: []Shape{{Colour: color.White, Width: 3, Edges: plane.Open(plane.Point{}, plane.Point{X: 10}).Edges()}}}
	img := Render(p, 300, 200, Look{View: View{Scale: 0.05, Centre: plane.Point{X: 5}}})
	darkest := 255
	for y := 80; y < 120; y++ {
		darkest = min(darkest, int(img.RGBAAt(150, y).R))
	}
	if darkest > 150 {
		t.Errorf("the darkest pixel across the tape is %d", darkest)
	}
}
