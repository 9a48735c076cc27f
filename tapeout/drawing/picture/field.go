package picture

import (
	"image"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// field is the darkness of the surroundings of a place, above that of the paper
// there, smoothed a little.
type field struct {
	min   image.Point // of the picture that the first value belongs to
	w, h  int
	v     []float64
	noise float64 // standard deviation of the paper
	reach float64 // pixels; how far from the middle of a line its edge is looked for
}

// margin is how far beyond the radius the paper is looked at, in pixels.
const margin = 12

// newField returns the field around at; ok is false where that is off the picture.
func newField(img image.Image, at plane.Point, radius float64) (*field, bool) {
	reach := int(math.Ceil(2*radius)) + margin
	b := img.Bounds()
	// Compared as numbers: a place far off does not fit an int.
	if at.X < float64(b.Min.X) || at.X > float64(b.Max.X) || at.Y < float64(b.Min.Y) || at.Y > float64(b.Max.Y) {
		return nil, false
	}
	middle := image.Pt(int(at.X), int(at.Y))
	r := image.Rectangle{middle, middle}.Inset(-reach).Intersect(b)
	if r.Empty() {
		return nil, false
	}
	f := &field{min: r.Min, w: r.Dx(), h: r.Dy(), v: make([]float64, r.Dx()*r.Dy()), reach: float64(reach)}
	src := reader(img)
	for i := range f.v {
		f.v[i] = darkness(src.RGBA64At(r.Min.X+i%f.w, r.Min.Y+i/f.w))
	}
	f.smooth()
	f.offPaper()
	return f, true
}

// kernel is a Gaussian of one pixel.
var kernel = [5]float64{0.0545, 0.2442, 0.4026, 0.2442, 0.0545}

func (f *field) smooth() {
	once := make([]float64, len(f.v))
	for pass, to := range [2][]float64{once, f.v} {
		from := [2][]float64{f.v, once}[pass]
		for y := range f.h {
			for x := range f.w {
				sum := 0.0
				for k, weight := range kernel {
					i, j := x, y
					if pass == 0 {
						i = min(max(x+k-2, 0), f.w-1)
					} else {
						j = min(max(y+k-2, 0), f.h-1)
					}
					sum += weight * from[j*f.w+i]
				}
				to[y*f.w+x] = sum
			}
		}
	}
}

// offPaper subtracts the paper. It is first made level, since a photograph is
// lighter on one side. Its darkness is then the third decile, since lines are the
// smaller part of a drawing, and its noise follows from how far the twentieth lies
// below that: in a normal distribution they are 1.12 deviations apart.
func (f *field) offPaper() {
	f.level()
	sorted := slices.Sorted(slices.Values(f.v))
	paper := sorted[len(sorted)*3/10]
	f.noise = (paper - sorted[len(sorted)/20]) / 1.12
	for i := range f.v {
		f.v[i] -= paper
	}
}

// level takes the slope of the paper off the field.
func (f *field) level() {
	mid := (slices.Min(f.v) + slices.Max(f.v)) / 2
	over := f.slope(mid, image.Pt(f.w/2, 0))
	down := f.slope(mid, image.Pt(0, f.h/2))
	for i := range f.v {
		f.v[i] -= over*float64(i%f.w) + down*float64(i/f.w)
	}
}

// slope returns by how much the paper darkens from one pixel to the next in one
// direction: the median over all pairs of pixels the step apart that are both
// lighter than mid. The median ignores what stands on the paper.
func (f *field) slope(mid float64, step image.Point) float64 {
	n := step.X + step.Y
	if n == 0 {
		return 0
	}
	var rises []float64
	for y := range f.h - step.Y {
		for x := range f.w - step.X {
			a, b := f.v[y*f.w+x], f.v[(y+step.Y)*f.w+x+step.X]
			if a < mid && b < mid {
				rises = append(rises, b-a)
			}
		}
	}
	if len(rises) == 0 {
		return 0
	}
	slices.Sort(rises)
	return rises[len(rises)/2] / float64(n)
}

// least is how dark a line must be to be one.
func (f *field) least() float64 { return max(faintest, overNoise*f.noise) }

// at returns the field between pixels, interpolated bilinearly. Beyond its border it
// goes on as at the border.
func (f *field) at(p plane.Point) float64 {
	x := min(max(p.X-0.5-float64(f.min.X), 0), float64(f.w-1))
	y := min(max(p.Y-0.5-float64(f.min.Y), 0), float64(f.h-1))
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	k, l := min(i+1, f.w-1), min(j+1, f.h-1)
	return (1-fy)*((1-fx)*f.v[j*f.w+i]+fx*f.v[j*f.w+k]) + fy*((1-fx)*f.v[l*f.w+i]+fx*f.v[l*f.w+k])
}

// each calls do with the centre and the value of every pixel of the field within
// the radius.
func (f *field) each(at plane.Point, radius float64, do func(plane.Point, float64)) {
	from := image.Pt(int(math.Floor(at.X-radius)), int(math.Floor(at.Y-radius)))
	to := image.Pt(int(math.Ceil(at.X+radius)), int(math.Ceil(at.Y+radius)))
	r := image.Rectangle{from, to}.Intersect(image.Rect(0, 0, f.w, f.h).Add(f.min))
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			p := plane.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}
			if p.To(at) <= radius {
				do(p, f.v[(y-f.min.Y)*f.w+x-f.min.X])
			}
		}
	}
}
