package drawingin

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"

	"fyne.io/fyne/v2/test"

	"groundrow/tapeout/plane"
)

// scanned is a sheet of 600 by 400 dots with a black rectangle from (100, 100) to
// (500, 300), its lines three dots wide.
func scanned() *image.Gray {
	img := image.NewGray(image.Rect(0, 0, 600, 400))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for y := 99; y <= 301; y++ {
		for x := 99; x <= 501; x++ {
			if x <= 101 || x >= 499 || y <= 101 || y >= 299 {
				img.SetGray(x, y, color.Gray{})
			}
		}
	}
	return img
}

func asPNG(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// corners are the middles of the rectangle's lines where they meet, in the order in
// which a person is asked for them.
var corners = []plane.Point{{X: 100.5, Y: 300.5}, {X: 500.5, Y: 300.5}, {X: 500.5, Y: 100.5}, {X: 100.5, Y: 100.5}}

func TestAScanLiesWhereItsKnownPointsSay(t *testing.T) {
	for _, way := range ways {
		t.Run(string(way), func(t *testing.T) {
			s := newScan(scanned())
			s.turn(way)
			// The rectangle is 8 m by 4 m, from 4 m stage right, 1 m up.
			floor := []plane.Point{{X: -4, Y: 1}, {X: 4, Y: 1}, {X: 4, Y: 5}, {X: -4, Y: 5}}
			for i := range s.known {
				s.known[i] = knownPoint{pixel: corners[i], set: true, floor: floor[i], up: "x", over: "x"}
			}
			b, err := s.laid(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			if way == byTwo && math.Abs(b.PerPixel-0.02) > 1e-9 {
				t.Errorf("a dot is %v m, want 0.02", b.PerPixel)
			}
			got, ok := b.Snap(plane.Point{X: 1, Y: 4.95}, 0.2)
			if want := (plane.Point{X: 1, Y: 5}); !ok || got.To(want) > 0.02 {
				t.Errorf("the dark line is at %v (%v), want %v", got, ok, want)
			}
		})
	}
}

func TestAScanIsKeptAndLaidUnderThePlan(t *testing.T) {
	b := open(t, empty())
	content := asPNG(t, scanned())
	b.read("scan.png", content)
	if b.refusal() != "" || b.page.scans.scan == nil {
		t.Fatalf("it was not opened: %s", b.refusal())
	}
	s := b.page.scans
	if !s.lay.Disabled() {
		t.Error("it can be laid before anything is known of it")
	}
	s.askPoints()
	for _, p := range corners[:2] {
		s.board.canvas.AddPoint(plane.Point{X: p.X * rawPixel, Y: -p.Y * rawPixel})
	}
	for row, cells := range map[string][2]string{"0": {"1 m", "4 m SR"}, "1": {"1 m", "4 m SL"}} {
		for i, text := range cells {
			if err := s.points.OnEdit(row, 2+i, text); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := s.points.OnEdit("0", 2, "high"); err == nil {
		t.Error("a word was taken for a length")
	}
	before := b.desk.View().Seq
	test.Tap(s.lay)
	b.desk.Settle()
	v := b.desk.View()
	drawing, points, ok := v.P.UnderPlan()
	if !ok || len(points) != 2 {
		t.Fatalf("%v lies under the plan by %v", drawing, points)
	}
	kept, err := b.desk.File().Drawing(context.Background(), drawing.ID)
	if err != nil {
		t.Fatal(err)
	}
	laid, err := Under(context.Background(), drawing, kept, points)
	if err != nil || math.Abs(laid.PerPixel-0.02) > 1e-9 {
		t.Errorf("it lies as %+v (%v)", laid, err)
	}
	if v.Seq != before+1 || len(v.P.Drawings) != 1 || v.P.Drawings[0].Format != "PNG" || v.P.Drawings[0].Bytes != len(content) {
		t.Errorf("%d changes, drawings %+v", v.Seq-before, v.P.Drawings)
	}
}

func TestARectangleTypesItsCorners(t *testing.T) {
	s := newScan(scanned())
	s.turn(byFour)
	s.known[0].floor = plane.Point{X: 1, Y: 2}
	say := func(m float64) string { return "typed" }
	if err := s.rectangle(3, 2, say); err != nil {
		t.Fatal(err)
	}
	if want := (plane.Point{X: 4, Y: 4}); s.known[2].floor != want || s.known[3].up != "typed" {
		t.Errorf("the third corner is at %v, want %v", s.known[2].floor, want)
	}
	if err := s.rectangle(0, 2, say); err == nil {
		t.Error("a rectangle of no width was taken")
	}
}

func TestPointsThatCannotStraightenAreRefused(t *testing.T) {
	s := newScan(scanned())
	s.turn(byFour)
	for i := range s.known {
		s.known[i] = knownPoint{pixel: plane.Point{X: float64(i), Y: 5}, set: true, floor: plane.Point{X: float64(i)}, up: "x", over: "x"}
	}
	if _, err := s.laid(context.Background()); err == nil {
		t.Error("four points in a line were taken")
	}
}
