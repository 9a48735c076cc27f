package floorcanvas

import "math"

// pattern is lengths on and off in toolkit pixels; nil is unbroken.
func (d Dash) pattern() []float64 {
	switch d {
	case Dashed:
		return []float64{7, 5}
	case DashDot:
		return []float64{14, 4, 2, 4}
	case Dotted:
		return []float64{1.5, 4}
	}
	return nil
}

// pen is how a run of points is drawn, in device pixels.
type pen struct {
	half    float64
	pattern []float64
	p       paint
}

// polyline paints a run of device pixels, x and y in turn.
func (s *surface) polyline(xy []float64, n pen) {
	if len(n.pattern) == 0 {
		for i := 0; i+3 < len(xy); i += 2 {
			s.line(stretch{xy[i], xy[i+1], xy[i+2], xy[i+3]}, n.half, n.p)
		}
		return
	}
	walked := 0.0
	for i := 0; i+3 < len(xy); i += 2 {
		walked = s.dashes(stretch{xy[i], xy[i+1], xy[i+2], xy[i+3]}, walked, n)
	}
}

// dashes paints one straight part of a broken line of which a length has been
// walked before, and returns the length walked after it. Only the part that is
// seen is walked dash by dash.
func (s *surface) dashes(l stretch, walked float64, n pen) float64 {
	length := math.Hypot(l.x1-l.x0, l.y1-l.y0)
	t0, t1, ok := s.window(l, n.half+2)
	if !ok || length == 0 {
		return walked + length
	}
	period := 0.0
	for _, d := range n.pattern {
		period += d
	}
	for start := math.Floor((walked+t0*length)/period) * period; start-walked < t1*length; start += period {
		from := start - walked
		for i := 0; i+1 < len(n.pattern); i += 2 {
			a, b := max(from, t0*length), min(from+n.pattern[i], t1*length)
			if a < b {
				s.line(l.part(a/length, b/length), n.half, n.p)
			}
			from += n.pattern[i] + n.pattern[i+1]
		}
	}
	return walked + length
}
