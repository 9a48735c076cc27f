package plane

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// naive is a second solver in the plainest terms: it compares all edges with all,
// solves circles from their centres, and welds every point with every other.
type naive struct {
	edges []Edge
	nodes []Point
	links []Edge
}

func (n *naive) solve(tol float64) {
	for _, e := range n.edges {
		at := []float64{0, 1}
		for _, f := range n.edges {
			for _, p := range append(n.cross(e, f), f.A, f.B) {
				t, ok := n.place(e, p, tol)
				if _, onF := n.place(f, p, tol); ok && (onF || p == f.A || p == f.B) {
					at = append(at, t)
				}
			}
		}
		slices.Sort(at)
		for i, t := range at[1:] {
			if piece := e.Part(at[i], t); piece.Length() > tol {
				n.add(piece, tol)
			}
		}
	}
}

func (n *naive) add(e Edge, tol float64) {
	for _, p := range []Point{e.A, e.B} {
		if !slices.ContainsFunc(n.nodes, func(q Point) bool { return p.To(q) < tol }) {
			n.nodes = append(n.nodes, p)
		}
	}
	same := func(l Edge) bool {
		ends := min(l.A.To(e.A)+l.B.To(e.B), l.A.To(e.B)+l.B.To(e.A))
		return ends < 4*tol && l.At(0.5).To(e.At(0.5)) < 4*tol
	}
	if !slices.ContainsFunc(n.links, same) {
		n.links = append(n.links, e)
	}
}

// place returns the fraction at which p is on e.
func (n *naive) place(e Edge, p Point, tol float64) (t float64, ok bool) {
	c, r, round := e.Circle()
	if !round {
		d := e.B.Sub(e.A)
		t = p.Sub(e.A).Dot(d) / d.Dot(d)
	} else {
		if math.Abs(p.To(c)-r) > tol {
			return 0, false
		}
		turn := math.Mod(p.Sub(c).Angle()-e.A.Sub(c).Angle(), 2*math.Pi)
		if turn*e.Sweep() < 0 {
			turn += math.Copysign(2*math.Pi, e.Sweep())
		}
		t = turn / e.Sweep()
	}
	return t, t > 0 && t < 1 && e.At(t).To(p) < tol
}

// cross returns where the lines or circles of e and f cross.
func (n *naive) cross(e, f Edge) []Point {
	c1, r1, round1 := e.Circle()
	c2, r2, round2 := f.Circle()
	switch {
	case !round1 && !round2:
		d, g := e.B.Sub(e.A), f.B.Sub(f.A)
		det := d.X*g.Y - d.Y*g.X
		if math.Abs(det) < 1e-9*d.Len()*g.Len() {
			return nil
		}
		w := f.A.Sub(e.A)
		return []Point{e.A.Add(d.Times((w.X*g.Y - w.Y*g.X) / det))}
	case round1 && round2:
		d := c1.To(c2)
		if d < 1e-7 || d > r1+r2 || d < math.Abs(r1-r2) {
			return nil
		}
		a := (d*d + r1*r1 - r2*r2) / (2 * d)
		u := c2.Sub(c1).Times(1 / d)
		h := u.Left().Times(math.Sqrt(max(0, r1*r1-a*a)))
		foot := c1.Add(u.Times(a))
		return []Point{foot.Add(h), foot.Sub(h)}
	case round1:
		return n.cross(f, e)
	}
	d := e.B.Sub(e.A)
	u := d.Times(1 / d.Len())
	foot := e.A.Add(u.Times(c2.Sub(e.A).Dot(u)))
	gap := foot.To(c2)
	if gap > r2 {
		return nil
	}
	h := u.Times(math.Sqrt(r2*r2 - gap*gap))
	return []Point{foot.Add(h), foot.Sub(h)}
}

func TestArrangeLikeNaive(t *testing.T) {
	const tol = 1e-6
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 7))
		n := naive{edges: scattered(r, 3+r.IntN(15))}
		n.solve(tol)
		a := Arrange(n.edges, tol)
		if len(a.Nodes) != len(n.nodes) || len(a.Links) != len(n.links) {
			t.Errorf("seed %d: %d nodes, %d links; naively %d, %d",
				seed, len(a.Nodes), len(a.Links), len(n.nodes), len(n.links))
		}
		if got, want := UnionLength(n.edges, tol), total(n.links); math.Abs(got-want) > 1e-4 {
			t.Errorf("seed %d: union length %v, naively %v", seed, got, want)
		}
	}
}

func TestEachPairLikeNaive(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 8))
		boxes := make([]Box, r.IntN(40))
		for i := range boxes {
			p := Point{float64(r.IntN(20)), float64(r.IntN(20))}
			boxes[i] = Box{p, p.Add(Point{float64(r.IntN(4)), float64(r.IntN(9))})}
			if r.IntN(20) == 0 {
				boxes[i].Max = Point{1e6, 1e6}
			}
		}
		got := map[[2]int]int{}
		eachPair(boxes, func(i, j int) { got[[2]int{min(i, j), max(i, j)}]++ })
		for i := range boxes {
			for j := range i {
				want := 0
				if boxes[i].Meets(boxes[j]) {
					want = 1
				}
				if got[[2]int{j, i}] != want {
					t.Errorf("seed %d: %v and %v visited %d times", seed, boxes[j], boxes[i], got[[2]int{j, i}])
				}
			}
		}
	}
}

func TestNearTreeLikeNaive(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 9))
		points := make([]Point, r.IntN(300))
		for i := range points {
			points[i] = Point{math.Floor(r.Float64() * 40), r.Float64() * 40}
		}
		e := scattered(r, 1)[0]
		c := e.curve()
		const tol = 0.5
		found := map[int]bool{}
		newNearTree(points).each(&c, tol, func(i int) { found[i] = true })
		for i, p := range points {
			if e.Distance(p) < tol && !found[i] {
				t.Errorf("seed %d: %v is %g from %+v and was not found", seed, p, e.Distance(p), e)
			}
		}
	}
}
