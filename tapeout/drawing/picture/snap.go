package picture

import (
	"image"
	"math"

	"groundrow/tapeout/plane"
)

// Figures of the search for a line; they were set by trying it on drawn strokes.
const (
	mostRadius  = 200.0      // pixels
	faintest    = 16 / 255.0 // a line is darker than its paper by at least so much
	overNoise   = 5.0        // and by so many standard deviations of the paper
	asDark      = 0.8        // lines within this part of the darkest count as equally dark
	probeStep   = 0.25       // pixels between samples across a line
	probes      = 7          // parallel samples, a pixel apart, whose mean is taken
	rounds      = 5          // of finding the direction and the middle
	flat        = 1e-6       // squared darkness; below it nothing changes at all
	noisy       = 4.0        // mean square of a difference of noise, in its variances, with something to spare
	plain       = 0.4        // how much of the change must be in one direction; noise changes alike in all
	leastWindow = 2.5        // pixels; how far around it the direction of a line is felt
)

// SnapToDark returns the middle of the darkest line within radius pixels of a place
// on the picture, at the nearest place of it; of lines that are about equally dark
// it is the nearest. The line may be darker or lighter than others as long as it
// stands out from the paper around it, which may be grey and uneven. ok is false
// where there is none: on empty paper, inside a large dark area, off the picture.
//
// The place is found as the centroid of the darkness across the stroke above half
// its depth. On a clean or moderately noisy stroke of 1 to 20 pixels it is right to
// half a pixel; where lines meet it can be pulled towards the meeting.
func SnapToDark(img image.Image, at plane.Point, radius float64) (middle plane.Point, ok bool) {
	if !at.Finite() || !(radius > 0) {
		return plane.Point{}, false
	}
	radius = min(radius, mostRadius)
	f, ok := newField(img, at, radius)
	if !ok {
		return plane.Point{}, false
	}
	c, ok := f.seed(at, radius)
	if !ok {
		return plane.Point{}, false
	}
	return f.settle(c, at, radius)
}

// seed returns the pixel nearest to at that is about as dark as the darkest within
// the radius.
func (f *field) seed(at plane.Point, radius float64) (plane.Point, bool) {
	darkest := 0.0
	f.each(at, radius, func(_ plane.Point, v float64) { darkest = max(darkest, v) })
	if darkest < f.least() {
		return plane.Point{}, false
	}
	best, dist := plane.Point{}, math.Inf(1)
	f.each(at, radius, func(p plane.Point, v float64) {
		if d := p.To(at); v >= asDark*darkest && d < dist {
			best, dist = p, d
		}
	})
	return best, true
}

// settle walks from a dark place to the middle of its line, and along that to where
// it is nearest to at. Where the line does not reach so far, its middle beside the
// dark place is the answer. A direction that leads across no line was felt too
// closely, and is felt again in a wider window.
func (f *field) settle(c, at plane.Point, radius float64) (middle plane.Point, ok bool) {
	window := leastWindow
	for range rounds {
		across, felt := f.across(c, window)
		if !felt {
			break
		}
		from := c
		if ok {
			along := across.Left()
			from = c.Add(along.Times(at.Sub(c).Dot(along)))
		}
		next, width, on := f.middle(from, across)
		if ok && (!on || next.To(at) > radius+width) {
			next, width, on = f.middle(c, across)
		}
		switch {
		case on:
			c, window, ok = next, max(width, leastWindow), true
		case ok:
			return c, true
		default:
			window *= 2
		}
	}
	return c, ok
}

// across returns the direction across the line at c, of length one: that in which
// the darkness changes most, the main axis of the structure tensor. In the middle of
// a wide line nothing but noise changes; there it looks further around. Where no
// direction stands out, as on a crossing, it is the best there is. ok is false where
// nothing changes at all.
func (f *field) across(c plane.Point, window float64) (across plane.Point, ok bool) {
	best := -1.0
	for ; window <= f.reach; window *= 1.5 {
		var xx, xy, yy, weights float64
		f.each(c, 2*window, func(p plane.Point, _ float64) {
			w := math.Exp(-p.Sub(c).Dot(p.Sub(c)) / (window * window))
			gx := f.at(p.Add(plane.Point{X: 1})) - f.at(p.Add(plane.Point{X: -1}))
			gy := f.at(p.Add(plane.Point{Y: 1})) - f.at(p.Add(plane.Point{Y: -1}))
			xx, xy, yy, weights = xx+w*gx*gx, xy+w*gx*gy, yy+w*gy*gy, weights+w
		})
		if xx+yy < weights*(flat+noisy*f.noise*f.noise) {
			continue
		}
		oneWay := math.Hypot(xx-yy, 2*xy) / (xx + yy)
		if oneWay > best {
			best, across = oneWay, plane.Polar(1, math.Atan2(2*xy, xx-yy)/2)
		}
		if best > plain {
			break
		}
	}
	return across, best >= 0
}

// middle returns the centroid of the darkness across the line through c, and how
// wide the line is there. ok is false where c is not on a line that ends on both
// sides.
func (f *field) middle(c, across plane.Point) (middle plane.Point, width float64, ok bool) {
	reach := int(f.reach / probeStep)
	profile := make([]float64, 2*reach+1)
	for i := range profile {
		profile[i] = f.probe(c.Add(across.Times(float64(i-reach)*probeStep)), across.Left())
	}
	top := reach
	for i := max(0, reach-int(1/probeStep)); i <= min(2*reach, reach+int(1/probeStep)); i++ {
		if profile[i] > profile[top] {
			top = i
		}
	}
	depth := profile[top]
	if depth < f.least() {
		return plane.Point{}, 0, false
	}
	half := depth / 2
	first, last := top, top
	for first >= 0 && profile[first] > half {
		first--
	}
	for last < len(profile) && profile[last] > half {
		last++
	}
	if first < 0 || last == len(profile) {
		return plane.Point{}, 0, false
	}
	var sum, moment float64
	for i := first + 1; i < last; i++ {
		w := profile[i] - half
		sum, moment = sum+w, moment+w*float64(i-reach)*probeStep
	}
	return c.Add(across.Times(moment / sum)), float64(last-first) * probeStep, true
}

// probe returns the mean darkness of a short stretch along the line.
func (f *field) probe(p, along plane.Point) float64 {
	sum := 0.0
	for i := range probes {
		sum += f.at(p.Add(along.Times(float64(i - probes/2))))
	}
	return sum / probes
}
