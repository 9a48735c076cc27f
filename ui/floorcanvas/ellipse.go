package floorcanvas

import (
	"fmt"
	"math"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// Ellipse is about where a point may come to lie. It is drawn with a thin line; where
// that would be too small to be seen all ellipses of a picture are enlarged by one
// round factor, so that they can be compared, and the factor is written beside them.
type Ellipse struct {
	At           plane.Point
	Major, Minor float64 // half-axes in metres
	Direction    float64 // of the longer one, radians from the picture's X axis
	Ink          theme.Ink
	Text         string // what it stands for, written before the factor
}

const (
	leastEllipse = 12   // toolkit pixels across; a smaller ellipse is enlarged
	clearOfSign  = 20   // to so many at least, so that it stands out round the sign of what is selected
	leastMajor   = 1e-6 // metres; what is less is no ellipse
	ellipseWidth = 1    // toolkit pixels
	ellipseGap   = 4    // toolkit pixels from the line to its words
)

// sound tells whether the ellipse can be drawn.
func (e Ellipse) sound() bool {
	turn := e.Direction - e.Direction // NaN for what is no finite direction
	return near(e.At) && turn == 0 && e.Major >= leastMajor && e.Major < farthest && e.Minor >= 0 && e.Minor <= e.Major
}

// enlarged returns the least of 1, 2, 5, 10, 20, 50, … by which the smallest of the
// ellipses is large enough to be seen at so many toolkit pixels to a metre.
func (s *scene) enlarged(per float64) float64 {
	smallest := math.Inf(1)
	for _, e := range s.Ellipses {
		smallest = min(smallest, 2*e.Major*per)
	}
	factor := 1.0
	if smallest >= leastEllipse {
		return factor
	}
	for i := 0; factor*smallest < clearOfSign; i++ {
		factor *= [...]float64{2, 2.5, 2}[i%3]
	}
	return factor
}

// ellipses draws them over the dots that they belong to.
func (f *frame) ellipses() {
	factor := f.sc.enlarged(f.look.per / f.k)
	for _, e := range f.sc.Ellipses {
		x, y := f.look.px(e.At)
		a, b := e.Major*factor*f.look.per, e.Minor*factor*f.look.per
		if x < f.port.x-a || y < f.port.y-a || x > f.port.x+f.port.w+a || y > f.port.y+f.port.h+a {
			continue
		}
		f.polyline(f.around(x, y, a, b, e.Direction+f.look.view.Turn), f.pen(ellipseWidth, Solid, f.ink(e.Ink)))
	}
}

// around returns points along an ellipse in device pixels, so near each other that the
// chords are a fifth of a pixel off it at most, up to a bound. The buffer is that of
// pixels.
func (f *frame) around(x, y, a, b, turn float64) []float64 {
	n := int(min(max(math.Ceil(math.Pi*math.Sqrt(a/0.4)), 16), 720))
	sin, cos := math.Sincos(turn)
	f.xy = f.xy[:0]
	for i := range n + 1 {
		v, u := math.Sincos(2 * math.Pi * float64(i%n) / float64(n))
		u, v = a*u, b*v
		f.xy = append(f.xy, x+cos*u-sin*v, y-sin*u-cos*v)
	}
	return f.xy
}

// ellipseLabels are the words of the ellipses, each below its line.
func (s *scene) ellipseLabels(l *lens, k float64) []Label {
	factor := s.enlarged(l.per / k)
	out := make([]Label, len(s.Ellipses))
	for i, e := range s.Ellipses {
		sin, cos := math.Sincos(e.Direction + l.view.Turn)
		down := math.Hypot(e.Major*sin, e.Minor*cos) * factor * l.per / k
		text := e.Text
		if factor > 1 {
			text += fmt.Sprintf(", %.0f times its size", factor)
		}
		out[i] = Label{At: e.At, Text: text, Size: leastText, Ink: e.Ink, Anchor: Below, Offset: down + ellipseGap}.settled()
	}
	return out
}

// placeEllipses finds the words of the ellipses what place the others have left. The
// first is written in any case: nobody may take an enlarged ellipse for a true one.
func (s *scene) placeEllipses(t *typesetter, l *lens, room *crowd, k float64) []placed {
	labels := s.ellipseLabels(l, k)
	out := make([]placed, len(labels))
	for i, label := range labels {
		out[i] = placeOne(label, t, l, room, k)
		if i == 0 && out[i].dropped {
			label.Fixed = true
			out[i] = placeOne(label, t, l, room, k)
		}
	}
	return out
}
