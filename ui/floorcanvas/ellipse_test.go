package floorcanvas

import (
	"image"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

// extentOf is the box of what is inked in a part of an image, in pixels.
func extentOf(img *image.RGBA, within image.Rectangle) image.Rectangle {
	var box image.Rectangle
	paper := img.RGBAAt(within.Min.X, within.Min.Y)
	for y := within.Min.Y; y < within.Max.Y; y++ {
		for x := within.Min.X; x < within.Max.X; x++ {
			if img.RGBAAt(x, y) != paper {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

// An ellipse with half-axes a and b, the longer one at an angle t, reaches √(a²cos²t +
// b²sin²t) across and √(a²sin²t + b²cos²t) up.
func TestAnEllipseIsAsLargeAsItSays(t *testing.T) {
	for _, c := range []struct{ major, minor, direction, turn, density, factor float64 }{
		{0.6, 0.2, 0, 0, 1, 1},
		{0.6, 0.2, 0.5, 0, 1, 1},
		{0.6, 0.2, 0.5, 0.9, 1, 1},
		{0.6, 0.2, -1.2, 0.3, 2, 1},
		{0.6, 0.6, 0, 0, 1, 1},
		{0.6, 0, math.Pi / 2, 0, 1, 1},
		{0.02, 0.008, 0.7, 0, 1, 50}, // 40 mm across at 20 px to a metre are 0.8 px
		{0.02, 0.008, 0.7, 0, 2, 50},
		{0.35, 0.2, 0.7, 0, 1, 1},
		{0.29, 0.2, 0.7, 0, 1, 2},
	} {
		// Without a word only the line is inked.
		p := Picture{HideDatum: true, Unscaled: true, Ellipses: []Ellipse{{Major: c.major, Minor: c.minor, Direction: c.direction}}}
		sc := prepare(p)
		if got := sc.enlarged(20); got != c.factor {
			t.Errorf("%+v: enlarged by %g", c, got)
		}
		f := frame{painter: newPainter(), sc: sc, k: c.density, plain: true}
		f.img = image.NewRGBA(image.Rect(0, 0, int(200*c.density), int(200*c.density)))
		f.aim(View{Scale: 0.05, Turn: c.turn})
		f.ellipses()
		got := extentOf(f.img, f.img.Rect)
		sin, cos := math.Sincos(c.direction + c.turn)
		per := 20 * c.density * c.factor
		across := 2*math.Hypot(c.major*cos, c.minor*sin)*per + ellipseWidth*c.density
		up := 2*math.Hypot(c.major*sin, c.minor*cos)*per + ellipseWidth*c.density
		if math.Abs(float64(got.Dx())-across) > 2 || math.Abs(float64(got.Dy())-up) > 2 {
			t.Errorf("%+v: %d by %d pixels, want %.1f by %.1f", c, got.Dx(), got.Dy(), across, up)
		}
		if long := 2 * c.major * per / c.density; long < leastEllipse {
			t.Errorf("%+v: %.1f pixels across are too few to be seen", c, long)
		}
	}
}

// The longer axis of an ellipse that points up and to the right is inked there.
func TestAnEllipseLiesInItsDirection(t *testing.T) {
	f := frame{painter: newPainter()}
	xy := f.around(50, 50, 30, 10, 0.4)
	if len(xy) < 2*12 {
		t.Fatalf("it is drawn by %d figures, too few to be round", len(xy))
	}
	for i := 0; i < len(xy); i += 2 {
		x, y := xy[i]-50, 50-xy[i+1]
		along, aside := x*math.Cos(0.4)+y*math.Sin(0.4), y*math.Cos(0.4)-x*math.Sin(0.4)
		if off := math.Hypot(along/30, aside/10) - 1; math.Abs(off) > 1e-9 {
			t.Fatalf("point %d at %v, %v is not on it: %v", i/2, x, y, off)
		}
	}
}

func TestTheFactorIsRoundAndSaidBesideTheEllipse(t *testing.T) {
	at := func(scale float64, es ...Ellipse) []placed { return placeAll(Picture{Ellipses: es}, scale) }
	small, large := Ellipse{Major: 0.02, Minor: 0.01, Text: "95 %"}, Ellipse{At: plane.Point{X: 3}, Major: 0.1, Minor: 0.1, Text: "95 %"}
	for scale, want := range map[float64]string{
		0.0033: "95 %", // 12.1 pixels
		0.0034: "95 %, 2 times its size",
		0.02:   "95 %, 10 times its size",
		0.0201: "95 %, 20 times its size",
		5:      "95 %, 5000 times its size",
	} {
		if ls := at(scale, small); len(ls) != 1 || ls[0].Text != want || ls[0].dropped {
			t.Errorf("%v metres to a pixel: %+v, want %q", scale, ls, want)
		}
	}
	for _, l := range at(0.02, large, small) {
		if l.Text != "95 %, 10 times its size" {
			t.Errorf("two ellipses cannot be compared: %q", l.Text)
		}
	}
}

// What is drawn about one mark moves no other mark's label, and is said in a crowd too.
func TestAnEllipseLeavesTheOtherLabelsWhereTheyAre(t *testing.T) {
	p := Picture{}
	for range 60 {
		p.Labels = append(p.Labels, Label{Text: strings.Repeat("M", 8)})
	}
	before := placeAll(p, 0.02)
	p.Ellipses = []Ellipse{{Major: 0.02, Minor: 0.02, Text: "95 %"}}
	after := placeAll(p, 0.02)
	for i := range before {
		if before[i].box != after[i].box || before[i].dropped != after[i].dropped {
			t.Fatalf("label %d is moved", i)
		}
	}
	if last := after[len(after)-1]; last.Text != "95 %, 10 times its size" || last.dropped {
		t.Errorf("the factor is not said: %+v", last)
	}
}

func TestWhatIsNoEllipseIsNotDrawn(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	sc := prepare(Picture{Ellipses: []Ellipse{
		{}, {Major: nan}, {Major: inf}, {Major: 1, Minor: 2}, {Major: 1, Minor: nan}, {Major: 1, Minor: -1},
		{Major: 1, Direction: inf}, {Major: 1, Direction: nan}, {At: plane.Point{X: nan}, Major: 1},
	}})
	if len(sc.Ellipses) != 0 {
		t.Errorf("%+v", sc.Ellipses)
	}
}
