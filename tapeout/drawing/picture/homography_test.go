package picture_test

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/picture"
	"groundrow/tapeout/plane"
)

// perspective is one case of the reference results that make.py made with OpenCV
// 4.6.0.
type perspective struct {
	Pixels     [4][2]float64
	Real       [4][2]float64 `json:"real_m"`
	Matrix     [9]float64
	MorePixels [][2]float64 `json:"more_pixels"`
	MoreReal   [][2]float64 `json:"more_real_m"`
}

func readPerspectives(t *testing.T) []perspective {
	t.Helper()
	content, err := os.ReadFile("../../../testdata/picture/perspective.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Cases []perspective }
	if err := json.Unmarshal(content, &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Cases) == 0 {
		t.Fatal("there are no reference cases")
	}
	return file.Cases
}

func point(p [2]float64) plane.Point { return plane.Point{X: p[0], Y: p[1]} }

func four(ps [4][2]float64) (out [4]plane.Point) {
	for i, p := range ps {
		out[i] = point(p)
	}
	return out
}

func TestFourPointsAgreesWithOpenCV(t *testing.T) {
	const tight = 1e-9 // metres, and parts of a matrix element
	for i, c := range readPerspectives(t) {
		h, err := picture.FourPoints(four(c.Pixels), four(c.Real))
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		for j := range h {
			if got, want := h[j]/h[8], c.Matrix[j]; math.Abs(got-want) > tight*max(1, math.Abs(want)) {
				t.Errorf("case %d: element %d is %.12g, want %.12g", i, j, got, want)
			}
		}
		for j, p := range c.MorePixels {
			got, ok := h.Apply(point(p))
			if want := point(c.MoreReal[j]); !ok || got.To(want) > tight {
				t.Errorf("case %d: %v goes to %v, %v, want %v", i, p, got, ok, want)
			}
		}
	}
}

func TestFourPointsGoWhereTheyShouldAndBack(t *testing.T) {
	for i, c := range readPerspectives(t) {
		pixels, real := four(c.Pixels), four(c.Real)
		h, err := picture.FourPoints(pixels, real)
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		back, ok := h.Inverse()
		if !ok {
			t.Fatalf("case %d has no inverse", i)
		}
		for j := range pixels {
			if got, ok := h.Apply(pixels[j]); !ok || got.To(real[j]) > 1e-9 {
				t.Errorf("case %d: pixel %d goes to %v, want %v", i, j, got, real[j])
			}
			if got, ok := back.Apply(real[j]); !ok || got.To(pixels[j]) > 1e-6 {
				t.Errorf("case %d: point %d comes from %v, want %v", i, j, got, pixels[j])
			}
		}
	}
}

func TestFourPointsAreRefusedInWords(t *testing.T) {
	square := [4][2]float64{{0, 0}, {6, 0}, {6, 4}, {0, 4}}
	onPicture := [4][2]float64{{100, 900}, {1500, 880}, {1300, 200}, {250, 220}}
	for _, c := range []struct {
		name         string
		pixels, real [4][2]float64
		says         string
	}{
		{"coincident on the picture", [4][2]float64{{100, 900}, {1500, 880}, {100, 900}, {250, 220}}, square, "points 1 and 3 are the same place on the picture"},
		{"coincident on the floor", onPicture, [4][2]float64{{0, 0}, {6, 0}, {6, 0}, {0, 4}}, "points 2 and 3 are the same place on the floor"},
		{"three in a line", [4][2]float64{{100, 900}, {800, 551}, {1500, 200}, {250, 220}}, square, "points 1, 2 and 3 lie in a line on the picture"},
		{"three in a line on the floor", onPicture, [4][2]float64{{0, 0}, {6, 0}, {3, 0}, {0, 4}}, "points 1, 2 and 3 lie in a line on the floor"},
		{"mirrored", [4][2]float64{{1500, 900}, {100, 880}, {250, 200}, {1300, 220}}, square, "mirrored"},
		{"crossed over", [4][2]float64{{100, 900}, {1300, 200}, {1500, 880}, {250, 220}}, square, "their order"},
		{"no number", [4][2]float64{{math.NaN(), 900}, {1500, 880}, {1300, 200}, {250, 220}}, square, "point 1 has no position on the picture"},
		{"endless", onPicture, [4][2]float64{{0, 0}, {6, 0}, {6, math.Inf(1)}, {0, 4}}, "point 3 has no position on the floor"},
	} {
		_, err := picture.FourPoints(four(c.pixels), four(c.real))
		if !errors.Is(err, picture.ErrFourPoints) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want words on %q", c.name, err, c.says)
		}
	}
}

func TestBeyondTheHorizonThereIsNoFloor(t *testing.T) {
	// The sides of a floor that run away from the camera meet at (800, 100).
	h, err := picture.FourPoints(
		four([4][2]float64{{100, 900}, {1500, 900}, {1150, 500}, {450, 500}}),
		four([4][2]float64{{0, 0}, {6, 0}, {6, 6}, {0, 6}}))
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := h.Apply(plane.Point{X: 800, Y: 110}); !ok {
		t.Error("just below the horizon there is no floor")
	}
	for _, y := range []float64{90, -500} {
		if got, ok := h.Apply(plane.Point{X: 800, Y: y}); ok {
			t.Errorf("at %g, above the horizon, the floor is at %v", y, got)
		}
	}
}

func TestTheZeroTransformTakesNothingAnywhere(t *testing.T) {
	var h picture.Homography
	if _, ok := h.Apply(plane.Point{X: 1, Y: 1}); ok {
		t.Error("it takes a pixel somewhere")
	}
	if _, ok := h.Inverse(); ok {
		t.Error("it has an inverse")
	}
}
