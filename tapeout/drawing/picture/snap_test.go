package picture_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"groundrow/tapeout/drawing/picture"
	"groundrow/tapeout/plane"
)

// stroke is a straight line of ink across a sheet of paper.
type stroke struct {
	through    plane.Point
	slope      float64 // degrees from X, clockwise as seen, Y being down
	width      float64 // pixels
	ink, paper float64 // grey levels
	noise      float64 // standard deviation, grey levels
	shade      float64 // grey levels by which the paper darkens across the sheet
	blur       int     // passes of a 3 by 3 mean, as a scanner or lens has them
}

const side = 120

// draw paints the strokes with the coverage of each pixel worked out on a grid of
// 8 by 8, on the paper of the first.
func draw(seed uint64, strokes ...stroke) *image.Gray {
	rng := rand.New(rand.NewPCG(seed, 10))
	s := strokes[0]
	v := make([]float64, side*side)
	for i := range v {
		x, y := i%side, i/side
		v[i] = s.paper - s.shade*float64(x+y)/(2*side)
		for _, k := range strokes {
			v[i] += k.cover(x, y) * (k.ink - v[i])
		}
	}
	for range s.blur {
		v = blurred(v)
	}
	img := image.NewGray(image.Rect(0, 0, side, side))
	for i := range v {
		img.Pix[i] = byte(min(max(math.Round(v[i]+s.noise*rng.NormFloat64()), 0), 255))
	}
	return img
}

func (s stroke) off(p plane.Point) float64 {
	return plane.Polar(1, s.slope*math.Pi/180).Cross(p.Sub(s.through))
}

func (s stroke) cover(x, y int) float64 {
	switch far := math.Abs(s.off(plane.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5})) - s.width/2; {
	case far > 1:
		return 0
	case far < -1:
		return 1
	}
	const n = 8
	in := 0
	for i := range n * n {
		p := plane.Point{X: float64(x) + (float64(i%n)+0.5)/n, Y: float64(y) + (float64(i/n)+0.5)/n}
		if math.Abs(s.off(p)) <= s.width/2 {
			in++
		}
	}
	return float64(in) / (n * n)
}

func blurred(v []float64) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		for j := range 9 {
			x := min(max(i%side+j%3-1, 0), side-1)
			y := min(max(i/side+j/3-1, 0), side-1)
			out[i] += v[y*side+x] / 9
		}
	}
	return out
}

func TestSnapFindsTheMiddleOfAStroke(t *testing.T) {
	papers := []struct {
		name string
		stroke
	}{
		{"clean", stroke{ink: 0, paper: 255}},
		{"pencil on grey paper", stroke{ink: 90, paper: 170}},
		{"noise", stroke{ink: 20, paper: 235, noise: 20}},
		{"grey, shaded, noisy, blurred", stroke{ink: 40, paper: 190, noise: 12, shade: 50, blur: 2}},
	}
	for _, paper := range papers {
		worst := 0.0
		for _, width := range []float64{1, 2, 3, 5, 8, 12, 20} {
			for slope := 0.0; slope < 180; slope += 15 {
				s := paper.stroke
				s.width, s.slope = width, slope
				s.through = plane.Point{X: 60.3 + slope/400, Y: 59.6 - width/50}
				img := draw(uint64(slope)+1, s)
				for _, away := range []float64{-6, -2.5, 0, 4, 7} {
					name := fmt.Sprintf("%s, %g wide at %g°, from %g away", paper.name, width, slope, away)
					across := plane.Polar(1, (slope+90)*math.Pi/180)
					at := s.through.Add(across.Times(away))
					got, ok := picture.SnapToDark(img, at, 10)
					if !ok {
						t.Errorf("%s: no line is found", name)
						continue
					}
					off, slip := math.Abs(s.off(got)), got.To(s.through)
					worst = max(worst, off)
					if off > 0.5 {
						t.Errorf("%s: %.2f pixels off the middle", name, off)
					}
					if slip > 2.5 {
						t.Errorf("%s: %.2f pixels from the nearest place of the line", name, slip)
					}
				}
			}
		}
		t.Logf("%s: at most %.2f pixels off", paper.name, worst)
	}
}

func TestSnapFindsNothingOnEmptyPaper(t *testing.T) {
	for seed := range uint64(40) {
		img := draw(seed, stroke{paper: 200, noise: 15, shade: 20, width: -1})
		for _, at := range []plane.Point{{X: 60, Y: 60}, {X: 2, Y: 118}, {X: 100, Y: 30}} {
			if got, ok := picture.SnapToDark(img, at, 12); ok {
				t.Errorf("sheet %d: a line at %v on empty paper", seed, got)
			}
		}
	}
}

func TestSnapPrefersTheDarkerThenTheNearerLine(t *testing.T) {
	dark := stroke{through: plane.Point{X: 50, Y: 40}, slope: 90, width: 2, ink: 10, paper: 240}
	faint := stroke{through: plane.Point{X: 62, Y: 40}, slope: 90, width: 2, ink: 190}
	twin := stroke{through: plane.Point{X: 62, Y: 40}, slope: 90, width: 3, ink: 20}
	for _, c := range []struct {
		name  string
		other stroke
		at    float64
		want  float64
	}{
		{"a faint line is nearer", faint, 59, 50},
		{"an equal line is nearer", twin, 59, 62},
		{"an equal line is further", twin, 54, 50},
	} {
		got, ok := picture.SnapToDark(draw(1, dark, c.other), plane.Point{X: c.at, Y: 40}, 12)
		if !ok || math.Abs(got.X-c.want) > 0.5 {
			t.Errorf("%s: got %v, %v, want the line at %g", c.name, got, ok, c.want)
		}
	}
}

func TestSnapNearACrossingStaysOnALine(t *testing.T) {
	a := stroke{through: plane.Point{X: 60, Y: 60}, slope: 0, width: 3, ink: 0, paper: 255}
	b := stroke{through: plane.Point{X: 60, Y: 60}, slope: 90, width: 3, ink: 0}
	img := draw(1, a, b)
	for dx := -8.0; dx <= 8; dx += 2 {
		for dy := -8.0; dy <= 8; dy += 2 {
			got, ok := picture.SnapToDark(img, a.through.Add(plane.Point{X: dx, Y: dy}), 10)
			if !ok || min(math.Abs(a.off(got)), math.Abs(b.off(got))) > 2 {
				t.Errorf("from (%g, %g): got %v, %v, on neither line", dx, dy, got, ok)
			}
		}
	}
}

func TestSnapAsksForAPlaceOnThePicture(t *testing.T) {
	img := draw(1, stroke{through: plane.Point{X: 60, Y: 60}, width: 3, paper: 255})
	black := image.NewUniform(color.Black)
	for _, c := range []struct {
		name   string
		img    image.Image
		at     plane.Point
		radius float64
	}{
		{"far off", img, plane.Point{X: 1e18, Y: 60}, 10},
		{"no number", img, plane.Point{X: math.NaN(), Y: 60}, 10},
		{"no radius", img, plane.Point{X: 60, Y: 60}, 0},
		{"radius is no number", img, plane.Point{X: 60, Y: 60}, math.NaN()},
		{"all black", black, plane.Point{X: 60, Y: 60}, 10},
		{"no pixels", image.NewGray(image.Rectangle{}), plane.Point{}, 10},
		{"transparent", image.NewRGBA(image.Rect(0, 0, 50, 50)), plane.Point{X: 20, Y: 20}, 10},
	} {
		if got, ok := picture.SnapToDark(c.img, c.at, c.radius); ok {
			t.Errorf("%s: a line at %v", c.name, got)
		}
	}
	if _, ok := picture.SnapToDark(img, plane.Point{X: 60, Y: 60}, math.Inf(1)); !ok {
		t.Error("an endless radius finds no line")
	}
}

func BenchmarkSnapToDark(b *testing.B) {
	img := draw(1, stroke{through: plane.Point{X: 60, Y: 60}, slope: 30, width: 3, paper: 230, noise: 10})
	for b.Loop() {
		picture.SnapToDark(img, plane.Point{X: 64, Y: 60}, 12)
	}
}
