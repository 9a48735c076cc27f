package floorcanvas

import (
	"image"
	"image/color"
	"math"
	"testing"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// ruled is a white sheet of 100 by 60 pixels, a metre to ten, with a black column
// at x = 30 and a black row at y = 20.
func ruled() *Backdrop {
	img := image.NewGray(image.Rect(0, 0, 100, 60))
	for y := range 60 {
		for x := range 100 {
			if x != 30 && y != 20 {
				img.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	return &Backdrop{Scan: NewScan(img), PerPixel: 0.1, Place: plane.Motion{Shift: plane.Point{X: 2, Y: 7}}}
}

func TestTheBackdropLiesWhereItIsPlaced(t *testing.T) {
	for _, turn := range []float64{0, 0.3, math.Pi / 2} {
		b := ruled()
		b.Place.Turn = turn
		view := View{Centre: b.Place.Apply(plane.Point{X: 5, Y: -3}), Scale: 0.02}
		img := Render(Picture{Backdrop: b, HideDatum: true}, 600, 600, Look{View: view})
		l := newLens(view, portOf(600, 600, 1, true), 1)
		inks := theme.Inks{}
		for name, c := range map[string]struct {
			at   plane.Point // of the scan, metres
			want theme.Ink
		}{
			"on the column":     {plane.Point{X: 3.05, Y: -4.05}, theme.FaintLabel},
			"on the row":        {plane.Point{X: 6.05, Y: -2.05}, theme.FaintLabel},
			"on white paper":    {plane.Point{X: 6.05, Y: -4.05}, theme.Paper},
			"beyond the corner": {plane.Point{X: -0.2, Y: 0.2}, theme.Paper},
		} {
			x, y := l.px(b.Place.Apply(c.at))
			got := color.NRGBAModel.Convert(img.At(int(x), int(y)))
			if got != inks.Colour(c.want) {
				t.Errorf("turned %.1f, %s: %v, want %v", turn, name, got, inks.Colour(c.want))
			}
		}
	}
}

func TestAThinLineOfTheBackdropIsSeenFromAfar(t *testing.T) {
	img := image.NewGray(image.Rect(0, 0, 2000, 2000))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for y := range 2000 {
		img.Pix[y*img.Stride+1000] = 0
	}
	b := &Backdrop{Scan: NewScan(img), PerPixel: 0.01}
	out := Render(Picture{Backdrop: b, HideDatum: true}, 120, 120, Look{})
	paper := theme.Inks{}.Colour(theme.Paper)
	seen := 0.0
	for x := range 120 {
		c := color.NRGBAModel.Convert(out.At(x, 60)).(color.NRGBA)
		seen = max(seen, theme.Contrast(c, paper))
	}
	if seen < 1.5 {
		t.Errorf("the line has a contrast of %.2f with the paper", seen)
	}
}

func TestTheBackdropIsFittedAndSnappedTo(t *testing.T) {
	b := ruled()
	b.Snap = func(p plane.Point, within float64) (plane.Point, bool) {
		q := plane.Point{X: 5.05, Y: p.Y}
		return q, q.To(p) <= within
	}
	s := prepare(Picture{Backdrop: b})
	if want := (plane.Box{Min: plane.Point{X: 2, Y: 1}, Max: plane.Point{X: 12, Y: 7}}); s.bounds.Min.To(want.Min) > 1e-9 || s.bounds.Max.To(want.Max) > 1e-9 {
		t.Errorf("the bounds are %v, want %v", s.bounds, want)
	}
	got := s.snap(plane.Point{X: 5.1, Y: 3.33}, 0.01, nil)
	if got.What != SnapDark || got.Point.To(plane.Point{X: 5.05, Y: 3.33}) > 1e-9 {
		t.Errorf("snapped to %+v", got)
	}
	line := prepare(Picture{Backdrop: b, Shapes: []Shape{{ID: "a", Edges: []plane.Edge{{A: plane.Point{X: 5.12, Y: 3.33}, B: plane.Point{X: 9, Y: 3.33}}}}}})
	if got := line.snap(plane.Point{X: 5.1, Y: 3.33}, 0.01, nil); got.What != SnapEnd {
		t.Errorf("the end of a line gives way to the scan: %+v", got)
	}
}

func TestABackdropThatCannotBeShownIsLeftOut(t *testing.T) {
	for _, b := range []*Backdrop{
		nil, {}, {Scan: NewScan(image.NewGray(image.Rect(0, 0, 0, 0))), PerPixel: 1},
		{Scan: ruled().Scan, PerPixel: math.NaN()}, {Scan: ruled().Scan, PerPixel: 1, Place: plane.Motion{Turn: math.Inf(1)}},
	} {
		Render(Picture{Backdrop: b}, 50, 50, Look{})
		if b.sound() {
			t.Errorf("%+v counts as sound", b)
		}
	}
}

func BenchmarkPanFrameOverABackdrop(b *testing.B) {
	f := benchFrame()
	p := crowded(5000, 500)
	p.Backdrop = &Backdrop{Scan: NewScan(image.NewGray(image.Rect(0, 0, 4000, 3000))), PerPixel: 0.01, Place: plane.Motion{Turn: 0.01, Shift: plane.Point{Y: 30}}}
	f.sc = prepare(p)
	v := f.look.view
	for i := 0; b.Loop(); i++ {
		v.Centre.X += v.Scale * float64(i%2*2-1)
		f.aim(v)
		f.paint()
	}
}

// Of a picture whose size nobody knows yet no lengths are told.
func TestAPictureWithoutAScaleTellsNoLengths(t *testing.T) {
	look := Look{View: View{Scale: 0.02}, Full: true}
	told := Render(Picture{Backdrop: ruled(), HideDatum: true}, 400, 300, look)
	silent := Render(Picture{Backdrop: ruled(), HideDatum: true, Unscaled: true}, 400, 300, look)
	strip := image.Rect(rulerLeft, 0, 400, rulerTop)
	shades := func(img image.Image) int {
		seen := map[color.Color]bool{}
		for y := strip.Min.Y; y < strip.Max.Y; y++ {
			for x := strip.Min.X; x < strip.Max.X; x++ {
				seen[img.At(x, y)] = true
			}
		}
		return len(seen)
	}
	if shades(silent) != 1 || shades(told) < 2 {
		t.Errorf("the ruler has %d shades, want one; with a scale %d", shades(silent), shades(told))
	}
}
