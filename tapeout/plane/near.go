package plane

import (
	"cmp"
	"math"
	"slices"
)

// nearTree finds the points near an edge. It halves the points again and again
// across the longer side of their box, and leaves out halves whose box the edge's
// line or circle does not come near.
type nearTree struct {
	points []Point
	order  []int
	boxes  []Box // of the whole, then of the halves of box k at 2k+1 and 2k+2
}

// leafSize is how many points are not worth halving.
const leafSize = 8

func newNearTree(points []Point) *nearTree {
	t := &nearTree{points: points, order: make([]int, len(points))}
	for i := range t.order {
		t.order[i] = i
	}
	if len(points) > 0 {
		t.build(0, 0, len(points))
	}
	return t
}

func (t *nearTree) build(k, low, high int) {
	box, _ := BoxOf(t.points[t.order[low]])
	for _, i := range t.order[low+1 : high] {
		p := t.points[i]
		box.Min = Point{min(box.Min.X, p.X), min(box.Min.Y, p.Y)}
		box.Max = Point{max(box.Max.X, p.X), max(box.Max.Y, p.Y)}
	}
	for len(t.boxes) <= k {
		t.boxes = append(t.boxes, Box{})
	}
	t.boxes[k] = box
	if high-low <= leafSize {
		return
	}
	middle := (low + high) / 2
	t.halve(t.order[low:high], middle-low, box.Width() >= box.Height())
	t.build(2*k+1, low, middle)
	t.build(2*k+2, middle, high)
}

// halve arranges indices so that the first n are the lowest along the axis.
func (t *nearTree) halve(order []int, n int, over bool) {
	value := func(i int) float64 {
		if over {
			return t.points[i].X
		}
		return t.points[i].Y
	}
	for len(order) > 2*leafSize {
		// The middle of three places splits sorted and shuffled points alike.
		a, b, c := value(order[0]), value(order[len(order)/2]), value(order[len(order)-1])
		pivot := max(min(a, b), min(max(a, b), c))
		i, j := 0, len(order)-1
		for i <= j {
			for value(order[i]) < pivot {
				i++
			}
			for value(order[j]) > pivot {
				j--
			}
			if i <= j {
				order[i], order[j] = order[j], order[i]
				i++
				j--
			}
		}
		switch {
		case n <= j:
			order = order[:j+1]
		case n >= i:
			order, n = order[i:], n-i
		default:
			return
		}
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(compare(value(i), value(j)), i-j)
	})
}

// each calls visit for every point nearer than tol to the line or circle of the
// edge and within tol of the edge's box.
func (t *nearTree) each(c *curve, tol float64, visit func(i int)) {
	if len(t.points) > 0 {
		t.search(nearQuery{c, c.Bounds().Grow(tol), tol, visit}, 0, 0, len(t.points))
	}
}

type nearQuery struct {
	*curve
	box   Box
	tol   float64
	visit func(i int)
}

func (t *nearTree) search(q nearQuery, k, low, high int) {
	if !q.reaches(t.boxes[k]) {
		return
	}
	if high-low <= leafSize {
		for _, i := range t.order[low:high] {
			if p := t.points[i]; math.Abs(q.offset(p)) < q.tol && q.box.Holds(p) {
				q.visit(i)
			}
		}
		return
	}
	middle := (low + high) / 2
	t.search(q, 2*k+1, low, middle)
	t.search(q, 2*k+2, middle, high)
}

func (q *nearQuery) reaches(b Box) bool {
	if !q.box.Meets(b) {
		return false
	}
	w, h := b.Width()/2, b.Height()/2
	reach := math.Abs(q.along.Y)*w + math.Abs(q.along.X)*h
	if !q.straight {
		reach = w + h
	}
	return math.Abs(q.offset(b.Centre())) <= reach+q.tol
}

// offset returns the signed distance of p from the line, or from the circle of an
// arc: positive to the left, or outside.
func (c *curve) offset(p Point) float64 {
	if c.straight {
		return c.along.Cross(p.Sub(c.A))
	}
	z := p.Sub(c.mid)
	f := c.bend*z.Dot(z) + z.Dot(c.out)
	return 2 * f / (1 + math.Sqrt(max(0, 1+4*c.bend*f)))
}
