package floorcanvas

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// The window's canvas on a screen of 1366 by 768 is smaller than this.
const benchWide, benchHigh = 1352, 821

func benchFrame() *frame {
	f := &frame{painter: newPainter(), sc: prepare(crowded(5000, 500)), inks: theme.Inks{}, k: 1}
	f.img = image.NewRGBA(image.Rect(0, 0, benchWide, benchHigh))
	f.aim(View{})
	f.paint()
	return f
}

func BenchmarkPanFrame(b *testing.B) {
	f := benchFrame()
	v := f.look.view
	for i := 0; b.Loop(); i++ {
		v.Centre.X += v.Scale * float64(i%2*2-1)
		f.aim(v)
		f.paint()
	}
}

func BenchmarkZoomFrame(b *testing.B) {
	f := benchFrame()
	for i := 0; b.Loop(); i++ {
		factor := 1.2
		if i%2 == 1 {
			factor = 1 / 1.2
		}
		f.aim(f.look.zoomed(factor, 600, 400))
		f.paint()
	}
}

// What the canvas does for a moving pointer; the toolkit's own frame comes on top.
func BenchmarkHover(b *testing.B) {
	c := newBench(b, crowded(5000, 500))
	c.SetSelected([]string{"s1"})
	for i := 0; b.Loop(); i++ {
		c.MouseMoved(mouse(fyne.NewPos(300+float32(i%200), 300), 0, 0))
	}
}

func BenchmarkPick(b *testing.B) {
	s := prepare(crowded(5000, 500))
	for b.Loop() {
		s.pick(plane.Point{X: 30, Y: 30}, 0.02, noLabels)
		s.pick(plane.Point{X: 1, Y: 3}, 0.02, noLabels)
	}
}

func BenchmarkSnap(b *testing.B) {
	s := prepare(crowded(5000, 500))
	for b.Loop() {
		s.snap(plane.Point{X: 1, Y: 3}, 0.02, nil)
	}
}

func BenchmarkPrepare(b *testing.B) {
	p := crowded(5000, 500)
	for b.Loop() {
		prepare(p).flatten(0.01)
	}
}

func noLabels(plane.Point) (string, bool) { return "", false }
