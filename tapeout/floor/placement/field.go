package placement

import (
	"math"
	"sync"

	"groundrow/tapeout/plane"
)

// field tells how deep a point lies in the free floor, in metres, negative outside:
// never more than one metre changes a metre on, and outside never more than the
// true distance.
type field struct {
	within, blocked []ring
	box             plane.Box // around what is free
	origin          plane.Point
	step            float64
	nx, ny          int
	once            sync.Once
	grid            []float32 // depth at the nodes; none before ready
	near            float64   // how far the nearest node can be
}

// ring is a closed outline as straight edges.
type ring struct {
	edges []side
	box   plane.Box
}

// side is a straight edge, from a, along d.
type side struct{ ax, ay, dx, dy, inv float64 }

// chord is how far the chords of a curve depart from it, in metres.
const chord = 1e-3

// newField makes the field of what is within all of some outlines and in none of
// the blocked ones.
func newField(within, blocked []plane.Path) *field {
	f := &field{}
	for _, p := range within {
		f.within = append(f.within, ringOf(p))
	}
	for _, p := range blocked {
		if p.Closed && len(p.Vertices) > 1 {
			f.blocked = append(f.blocked, ringOf(p))
		}
	}
	f.box = f.within[0].box
	return f
}

func ringOf(p plane.Path) ring {
	pts := p.Flatten(chord)
	var r ring
	r.box, _ = plane.BoxOf(pts...)
	for i, a := range pts {
		d := pts[(i+1)%len(pts)].Sub(a)
		if n := d.Dot(d); n > 0 {
			r.edges = append(r.edges, side{a.X, a.Y, d.X, d.Y, 1 / n})
		}
	}
	return r
}

// gridNodes bounds the nodes along one side of the grid.
const gridNodes = 600

// ready fills the grid, which only a search needs.
func (f *field) ready() {
	if f != nil {
		f.once.Do(f.fill)
	}
}

func (f *field) fill() {
	b := f.box.Grow(0.3)
	f.step = max(0.025, max(b.Width(), b.Height())/gridNodes)
	f.origin = b.Min
	f.nx, f.ny = int(b.Width()/f.step)+2, int(b.Height()/f.step)+2
	f.near = f.step * math.Sqrt2 / 2
	f.grid = make([]float32, f.nx*f.ny)
	for j := range f.ny {
		for i := range f.nx {
			f.grid[j*f.nx+i] = float32(f.depth(f.origin.X+float64(i)*f.step, f.origin.Y+float64(j)*f.step))
		}
	}
}

// depth is the field at a point.
func (f *field) depth(x, y float64) float64 {
	d := math.Inf(1)
	for i := range f.within {
		d = min(d, f.within[i].depth(x, y)+touch)
	}
	for i := range f.blocked {
		b := &f.blocked[i].box
		// A box that is further than the depth so far cannot matter.
		if far := d + touch; b.Min.X-x > far || x-b.Max.X > far || b.Min.Y-y > far || y-b.Max.Y > far {
			continue
		}
		d = min(d, -f.blocked[i].depth(x, y)-touch)
	}
	return d
}

// about returns bounds of the field at a point, by the nearest node of the grid; the
// field itself while there is none.
func (f *field) about(x, y float64) (lo, hi float64) {
	if f.grid == nil {
		d := f.depth(x, y)
		return d, d
	}
	i, j := int((x-f.origin.X)/f.step+0.5), int((y-f.origin.Y)/f.step+0.5)
	if x < f.origin.X || y < f.origin.Y || i >= f.nx || j >= f.ny {
		dx := max(f.box.Min.X-x, x-f.box.Max.X, 0)
		dy := max(f.box.Min.Y-y, y-f.box.Max.Y, 0)
		return math.Inf(-1), touch - math.Hypot(dx, dy)
	}
	v := float64(f.grid[j*f.nx+i])
	return v - f.near, v + f.near
}

// depth is the distance from the outline, negative outside.
func (r *ring) depth(x, y float64) float64 {
	best, in := math.Inf(1), false
	for i := range r.edges {
		e := &r.edges[i]
		px, py := x-e.ax, y-e.ay
		if (py < 0) != (py-e.dy < 0) {
			if (px*e.dy < py*e.dx) == (e.dy > 0) {
				in = !in
			}
		}
		t := min(max((px*e.dx+py*e.dy)*e.inv, 0), 1)
		qx, qy := px-t*e.dx, py-t*e.dy
		best = min(best, qx*qx+qy*qy)
	}
	if best = math.Sqrt(best); in {
		return best
	}
	return -best
}
