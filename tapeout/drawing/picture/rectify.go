package picture

import (
	"context"
	"fmt"
	"image"
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// MaxRectified is how many pixels a straightened picture may have.
const MaxRectified = 32_000_000

// Rectify returns the part of the picture within the box, metres, as it is on the
// floor: Y up the picture, without perspective, pixelsPerMetre pixels to the metre.
// The upper left corner of the result is the box's at its least X and greatest Y.
// Between pixels the picture is interpolated bilinearly; where it is made smaller,
// each pixel is the mean of several samples, so that thin lines stay. What the
// picture does not show is transparent.
//
// A box or a resolution that makes no picture, or one of more than MaxRectified
// pixels, is refused in words. ctx calls the work off.
func Rectify(ctx context.Context, img image.Image, h Homography, pixelsPerMetre float64, box plane.Box) (*image.RGBA, error) {
	w, ht := math.Ceil(box.Width()*pixelsPerMetre-samePixel), math.Ceil(box.Height()*pixelsPerMetre-samePixel)
	back, ok := h.Inverse()
	switch {
	case !ok:
		return nil, fmt.Errorf("straightening the picture: %w", ErrFourPoints)
	case !(w >= 1 && ht >= 1 && pixelsPerMetre > 0): // or no number
		return nil, fmt.Errorf("straightening the picture: an area of %g by %g m at %g pixels to the metre makes no picture", box.Width(), box.Height(), pixelsPerMetre)
	case !(w*ht <= MaxRectified):
		return nil, fmt.Errorf("straightening the picture: %w", &linework.Fault{
			Reason: linework.ErrTooLarge,
			What:   fmt.Sprintf("it would have %.0f by %.0f pixels, and at most %d million can be made", w, ht, MaxRectified/1_000_000),
			Do:     "Choose a smaller area or fewer pixels to the metre",
		})
	}
	r := rectifier{src: reader(img), back: back, step: 1 / pixelsPerMetre, corner: plane.Point{X: box.Min.X, Y: box.Max.Y}}
	r.samples = r.samplesFor(box)
	out := image.NewRGBA(image.Rect(0, 0, int(w), int(ht)))
	for y := range out.Rect.Max.Y {
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("straightening the picture: %w", err)
		}
		r.row(out, y)
	}
	return out, nil
}

// samePixel is how far, in pixels, a box may reach over a whole number of them by
// rounding and still not begin another.
const samePixel = 1e-6

// mostSamples bounds the samples along each side of a pixel.
const mostSamples = 4

type rectifier struct {
	src     image.RGBA64Image
	back    Homography // metres to pixels of src
	step    float64    // metres
	corner  plane.Point
	samples int // along each side of a pixel
}

// samplesFor returns how many pixels of the picture, along one side, fall into one
// of the result in the middle of the box.
func (r *rectifier) samplesFor(box plane.Box) int {
	c := box.Centre()
	at, ok := r.back.Apply(c)
	over, okOver := r.back.Apply(c.Add(plane.Point{X: r.step}))
	up, okUp := r.back.Apply(c.Add(plane.Point{Y: r.step}))
	if !ok || !okOver || !okUp {
		return 1
	}
	return int(min(max(math.Round(max(at.To(over), at.To(up))), 1), mostSamples))
}

func (r *rectifier) row(out *image.RGBA, y int) {
	n := r.samples
	for x := range out.Rect.Max.X {
		var sum colour
		for i := range n * n {
			sub := plane.Point{X: (float64(i%n) + 0.5) / float64(n), Y: (float64(i/n) + 0.5) / float64(n)}
			p := plane.Point{
				X: r.corner.X + (float64(x)+sub.X)*r.step,
				Y: r.corner.Y - (float64(y)+sub.Y)*r.step,
			}
			if at, ok := r.back.Apply(p); ok {
				sum.add(r.bilinear(at), 1/float64(n*n))
			}
		}
		copy(out.Pix[y*out.Stride+4*x:], sum.bytes())
	}
}

// bilinear returns the colour of the picture at a place; nothing outside it. Along
// its border the outermost pixels go on by half of one.
func (r *rectifier) bilinear(at plane.Point) (sum colour) {
	b := r.src.Bounds()
	inside := at.X >= float64(b.Min.X) && at.X <= float64(b.Max.X) && at.Y >= float64(b.Min.Y) && at.Y <= float64(b.Max.Y)
	if !inside {
		return colour{}
	}
	x, fx := math.Modf(max(at.X-0.5, float64(b.Min.X)))
	y, fy := math.Modf(max(at.Y-0.5, float64(b.Min.Y)))
	for i, weight := range [4]float64{(1 - fx) * (1 - fy), fx * (1 - fy), (1 - fx) * fy, fx * fy} {
		if weight == 0 {
			continue
		}
		c := r.src.RGBA64At(min(int(x)+i%2, b.Max.X-1), min(int(y)+i/2, b.Max.Y-1))
		sum.add(colour{float64(c.R), float64(c.G), float64(c.B), float64(c.A)}, weight)
	}
	return sum
}

// colour is red, green, blue and alpha, premultiplied, from 0 to 0xffff.
type colour [4]float64

func (c *colour) add(d colour, weight float64) {
	for i := range c {
		c[i] += weight * d[i]
	}
}

func (c *colour) bytes() []byte {
	var out [4]byte
	for i, v := range c {
		out[i] = byte(min(v/0x101+0.5, 0xff))
	}
	return out[:]
}
