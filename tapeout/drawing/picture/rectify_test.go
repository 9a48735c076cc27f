package picture_test

import (
	"context"
	"errors"
	"image"
	"image/color"
	"math"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/picture"
	"groundrow/tapeout/plane"
)

// room is 4 by 3 m.
var room = plane.Box{Max: plane.Point{X: 4, Y: 3}}

// tilted takes the room to a photograph of 400 by 300 pixels.
func tilted(t *testing.T) picture.Homography {
	t.Helper()
	h, err := picture.FourPoints(
		four([4][2]float64{{20, 280}, {380, 270}, {300, 40}, {90, 30}}),
		four([4][2]float64{{0, 0}, {4, 0}, {4, 3}, {0, 3}}))
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// shown is what a floor whose colour follows from the place looks like through the
// camera: a naive rendering, pixel by pixel.
func shown(h picture.Homography, floor func(plane.Point) color.RGBA) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 400, 300))
	for y := range 300 {
		for x := range 400 {
			if p, ok := h.Apply(plane.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}); ok {
				img.SetRGBA(x, y, floor(p))
			}
		}
	}
	return img
}

func blend(p plane.Point) color.RGBA {
	return color.RGBA{byte(min(max(p.X*50, 0), 255)), byte(min(max(p.Y*60, 0), 255)), 100, 255}
}

func TestRectifyStraightensAPhotograph(t *testing.T) {
	h := tilted(t)
	got, err := picture.Rectify(context.Background(), shown(h, blend), h, 50, room)
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != image.Rect(0, 0, 200, 150) {
		t.Fatalf("it has %v", got.Bounds())
	}
	for y := 2; y < 148; y++ {
		for x := 2; x < 198; x++ {
			want := blend(plane.Point{X: (float64(x) + 0.5) / 50, Y: 3 - (float64(y)+0.5)/50})
			c := got.RGBAAt(x, y)
			if apart(c, want) > 2 {
				t.Fatalf("at %d, %d: %v, want %v", x, y, c, want)
			}
		}
	}
}

func apart(a, b color.RGBA) float64 {
	d := func(x, y byte) float64 { return math.Abs(float64(x) - float64(y)) }
	return max(d(a.R, b.R), d(a.G, b.G), d(a.B, b.B), d(a.A, b.A))
}

func TestRectifyAtTheSameSizeChangesNothing(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 40, 30))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7)
		if i%4 == 3 {
			img.Pix[i] = 255
		}
	}
	s := picture.Similarity{Scale: 0.1, Shift: plane.Point{Y: 3}}
	got, err := picture.Rectify(context.Background(), img, s.Homography(), 10, room)
	if err != nil {
		t.Fatal(err)
	}
	for y := range 30 {
		for x := range 40 {
			if c, want := got.RGBAAt(x, y), img.RGBAAt(x, y); apart(c, want) > 1 {
				t.Fatalf("at %d, %d: %v, want %v", x, y, c, want)
			}
		}
	}
}

func TestRectifyKeepsThinLinesWhenItMakesThePictureSmaller(t *testing.T) {
	img := image.NewGray(image.Rect(0, 0, 400, 300))
	for i := range img.Pix {
		img.Pix[i] = 255
		if i%400 == 201 {
			img.Pix[i] = 0
		}
	}
	s := picture.Similarity{Scale: 0.01, Shift: plane.Point{Y: 3}}
	got, err := picture.Rectify(context.Background(), img, s.Homography(), 25, room)
	if err != nil {
		t.Fatal(err)
	}
	if c := got.RGBAAt(50, 40); c.R > 0xd0 {
		t.Errorf("where the line runs it is %v", c)
	}
}

func TestWhatThePictureDoesNotShowIsTransparent(t *testing.T) {
	img := image.NewUniform(color.Black)
	s := picture.Similarity{Scale: 0.01, Shift: plane.Point{Y: 3}}
	one := image.NewGray(image.Rect(0, 0, 200, 300)) // the left half of the room
	for _, c := range []struct {
		name string
		img  image.Image
		x    int
		want byte
	}{{"inside", one, 50, 255}, {"outside", one, 150, 0}, {"a picture without an end", img, 150, 255}} {
		got, err := picture.Rectify(context.Background(), c.img, s.Homography(), 50, room)
		if err != nil {
			t.Fatal(err)
		}
		if a := got.RGBAAt(c.x, 75).A; a != c.want {
			t.Errorf("%s: alpha is %d, want %d", c.name, a, c.want)
		}
	}
}

func TestRectifyRefusesWhatMakesNoPicture(t *testing.T) {
	h := tilted(t)
	img := shown(h, blend)
	for _, c := range []struct {
		name  string
		h     picture.Homography
		ppm   float64
		box   plane.Box
		cause error
	}{
		{"too large", h, 1e5, room, linework.ErrTooLarge},
		{"endless", h, math.Inf(1), room, linework.ErrTooLarge},
		{"no area", h, 50, plane.Box{}, nil},
		{"no resolution", h, math.NaN(), room, nil},
		{"turned inside out", h, -50, plane.Box{Min: room.Max}, nil},
		{"no transform", picture.Homography{}, 50, room, picture.ErrFourPoints},
	} {
		got, err := picture.Rectify(context.Background(), img, c.h, c.ppm, c.box)
		if err == nil || got != nil || c.cause != nil && !errors.Is(err, c.cause) {
			t.Errorf("%s: got %v", c.name, err)
		}
	}
}

func TestRectifyCanBeCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	h := tilted(t)
	if _, err := picture.Rectify(ctx, shown(h, blend), h, 50, room); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func BenchmarkRectify(b *testing.B) {
	img := image.NewGray(image.Rect(0, 0, 2000, 1500))
	s := picture.Similarity{Scale: 0.002, Shift: plane.Point{Y: 3}}
	for b.Loop() {
		if _, err := picture.Rectify(context.Background(), img, s.Homography(), 400, room); err != nil {
			b.Fatal(err)
		}
	}
}
