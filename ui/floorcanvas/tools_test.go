package floorcanvas

import (
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/tapeout/plane"
)

func TestDrawing(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(b *bench)
		want []string
	}{
		{"Enter finishes", func(b *bench) { b.click(5, 5, 0); b.click(6, 5, 0); b.keys(fyne.KeyReturn) }, []string{"draw 2 false"}},
		{"a double click finishes", func(b *bench) { b.click(5, 5, 0); b.click(6, 5, 0); b.click(6, 5, 0) }, []string{"draw 2 false"}},
		{"a click on the first point closes", func(b *bench) {
			b.SetSnapping(false)
			b.click(5, 5, 0)
			b.click(6, 5, 0)
			b.click(6, 7, 0)
			b.click(5.03, 5.03, 0)
		}, []string{"draw 3 true"}},
		{"Backspace takes the last point back", func(b *bench) {
			b.click(5, 5, 0)
			b.click(6, 5, 0)
			b.keys(fyne.KeyBackspace)
			b.click(7, 7, 0)
			b.keys(fyne.KeyEnter)
		}, []string{"draw 2 false"}},
		{"Escape drops it", func(b *bench) { b.click(5, 5, 0); b.click(6, 5, 0); b.keys(fyne.KeyEscape, fyne.KeyReturn) }, nil},
		{"one point is no line", func(b *bench) { b.click(5, 5, 0); b.keys(fyne.KeyReturn) }, nil},
		{"points can be typed", func(b *bench) {
			b.AddPoint(plane.Point{X: 1})
			b.AddPoint(plane.Point{X: 2})
			b.FinishDrawing(false)
		}, []string{"draw 2 false"}},
		{"another mode drops it", func(b *bench) { b.click(5, 5, 0); b.click(6, 5, 0); b.SetMode(Select); b.keys(fyne.KeyReturn) }, nil},
		{"a drag pans and sets no point", func(b *bench) {
			b.press(plane.Point{X: 5, Y: 5}, 0)
			b.dragTo(6, 6)
			b.letGo()
			b.keys(fyne.KeyReturn)
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench(t, specimen())
			b.SetMode(Draw)
			c.do(b)
			b.expect(t, c.want...)
		})
	}
}

func TestTheOwnerFollowsTheDrawing(t *testing.T) {
	b := newBench(t, specimen())
	var points []plane.Point
	b.OnDrawing = func(ps []plane.Point) { points = ps }
	b.SetMode(Draw)
	b.click(3.03, 5.97, 0)
	if len(points) != 1 || points[0].To(plane.Point{X: 3, Y: 6}) > 1e-9 {
		t.Errorf("a click near a corner set %v", points)
	}
}

func TestMeasuring(t *testing.T) {
	b := newBench(t, specimen())
	b.SetMode(Measure)
	b.click(-4.02, 3.02, 0)
	b.click(-0.98, 2.98, 0)
	b.expect(t, "measure 3.00")
	b.click(-4.02, 3.02, 0)
	b.keys(fyne.KeyEscape)
	b.click(5, 5, 0)
	b.expect(t)
}

func TestSnappingSaysWhatItCaught(t *testing.T) {
	p := specimen()
	s := prepare(Picture{Shapes: append(p.Shapes, Shape{ID: "across", Edges: plane.Open(plane.Point{X: -3, Y: 2}, plane.Point{X: -2, Y: 4}).Edges()})})
	dots := prepare(p)
	const scale = 0.01
	for _, c := range []struct {
		what string
		s    *scene
		at   plane.Point
		want plane.Point
	}{
		{SnapEnd, s, plane.Point{X: -3.97, Y: 7.03}, plane.Point{X: -4, Y: 7}},
		{SnapCorner, s, plane.Point{X: -1.03, Y: 4.97}, plane.Point{X: -1, Y: 5}},
		{SnapMiddle, s, plane.Point{X: -1.03, Y: 4.03}, plane.Point{X: -1, Y: 4}},
		{SnapCrossing, s, plane.Point{X: -2.48, Y: 3.05}, plane.Point{X: -2.5, Y: 3}},
		{SnapCentre, s, plane.Point{X: 1.57, Y: 3.03}, plane.Point{X: 1.6, Y: 3}},
		{SnapLine, s, plane.Point{X: -1.04, Y: 4.5}, plane.Point{X: -1, Y: 4.5}},
		{SnapGrid, s, plane.Point{X: 6.98, Y: 6.99}, plane.Point{X: 7, Y: 7}},
		{SnapMark, dots, plane.Point{X: -1.03, Y: 7.62}, plane.Point{X: -1.2, Y: 7.6}},
	} {
		t.Run(c.what, func(t *testing.T) {
			within := scale
			if c.what == SnapMark {
				within = 0.02
			}
			got := c.s.snap(c.at, within, nil)
			if got.What != c.what || got.Point.To(c.want) > 1e-6 {
				t.Errorf("caught %q at %v", got.What, got.Point)
			}
		})
	}
}

func TestNothingNearIsThePointItself(t *testing.T) {
	s := prepare(Picture{})
	at := plane.Point{X: 0.3337, Y: 0.3331}
	if got := s.snap(at, 1e-4, nil); got.What != "" || got.Point != at {
		t.Errorf("%+v", got)
	}
}

func TestWhatIsDraggedDoesNotSnapToItself(t *testing.T) {
	s := prepare(specimen())
	got := s.snap(plane.Point{X: -4, Y: 7}, 0.01, map[string]bool{"wall": true})
	if got.ID == "wall" {
		t.Errorf("%+v", got)
	}
}

func TestAStraightLineGoesUpOrOver(t *testing.T) {
	b := newBench(t, specimen())
	b.SetMode(Draw)
	b.SetSnapping(false)
	b.AddPoint(plane.Point{X: 5, Y: 5})
	for _, c := range []struct{ at, want plane.Point }{
		{plane.Point{X: 6, Y: 5.4}, plane.Point{X: 6, Y: 5}},
		{plane.Point{X: 5.2, Y: 3}, plane.Point{X: 5, Y: 3}},
	} {
		if got := b.aimed(c.at, true); got.Point.To(c.want) > 1e-9 {
			t.Errorf("%v became %v, want %v", c.at, got.Point, c.want)
		}
	}
}
