package pagepicture

import "math"

// point is a place in the picture, in pixels from its top left corner.
type point struct{ x, y float64 }

func (p point) to(q point) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }

// run is a line through points; a closed one ends where it begins.
type run struct {
	points []point
	closed bool
}

// path is what has been drawn since the last path was ended; curves are straight
// pieces already.
type path struct{ runs []run }

func (p *path) move(to point) { p.runs = append(p.runs, run{points: []point{to}}) }

// last is the run that is drawn on; one that is closed is followed by another
// from where it began.
func (p *path) last() *run {
	n := len(p.runs)
	if n == 0 {
		p.move(point{})
		n = 1
	}
	if r := &p.runs[n-1]; !r.closed {
		return r
	}
	p.move(p.runs[n-1].points[0])
	return &p.runs[n]
}

func (p *path) line(to point) {
	r := p.last()
	r.points = append(r.points, to)
}

func (p *path) close() {
	if n := len(p.runs); n > 0 {
		p.runs[n-1].closed = true
	}
}

// curve adds a cubic curve in pieces of a few pixels.
func (p *path) curve(b, c, d point) {
	r := p.last()
	a := r.points[len(r.points)-1]
	length := a.to(b) + b.to(c) + c.to(d)
	n := 2
	if length < 1e6 {
		n = max(2, min(24, int(length/3)))
	}
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		r.points = append(r.points, point{ka*a.x + kb*b.x + kc*c.x + kd*d.x, ka*a.y + kb*b.y + kc*c.y + kd*d.y})
	}
}

// pieces returns the straight pieces of a run.
func (r run) pieces() [][2]point {
	var out [][2]point
	for i := 1; i < len(r.points); i++ {
		out = append(out, [2]point{r.points[i-1], r.points[i]})
	}
	if n := len(r.points); r.closed && n > 1 && r.points[n-1] != r.points[0] {
		out = append(out, [2]point{r.points[n-1], r.points[0]})
	}
	return out
}

// dashed returns the laid parts of the pieces; pattern is in pixels, laid and
// free by turns, and its sum is more than nothing.
func dashed(pieces [][2]point, pattern []float64) [][2]point {
	var out [][2]point
	i, left := 0, pattern[0]
	for _, p := range pieces {
		length := p[0].to(p[1])
		if !(length < maxDashed) {
			return pieces
		}
		for at := 0.0; at < length; {
			step := min(left, length-at)
			if i%2 == 0 && step > 0 {
				out = append(out, [2]point{along(p, at/length), along(p, (at+step)/length)})
			}
			at += step
			if left -= step; left <= 0 {
				i++
				left = pattern[i%len(pattern)]
			}
		}
	}
	return out
}

// maxDashed is the longest piece that is broken into dashes: what is longer lies
// far outside any page.
const maxDashed = 4 * maxWidth

func along(p [2]point, t float64) point {
	return point{p[0].x + (p[1].x-p[0].x)*t, p[0].y + (p[1].y-p[0].y)*t}
}
