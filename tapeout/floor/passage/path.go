package passage

import (
	"container/heap"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Path returns the way that was found from a to b, to be drawn: through the middle of
// its narrowest place and nowhere narrower, as short as it is without hugging the
// walls, straightened. It is searched on squares of a few centimetres; nil where there
// is no way, or one so narrow that the squares do not show it.
func (s *Space) Path(a, b plane.Point, f Found) []plane.Point {
	if !(f.Width > 0) {
		return nil
	}
	if len(s.atoms) == 0 {
		return []plane.Point{a, b}
	}
	g := s.squares(a, b, f.Width)
	if f.Limit != ByGap {
		return s.straightened(g.path(a, b), f.Width)
	}
	middle := f.At[0].Towards(f.At[1], 0.5)
	before, after := g.path(a, middle), g.path(middle, b)
	if before == nil || after == nil {
		return nil
	}
	return append(s.straightened(before, f.Width), s.straightened(after, f.Width)[1:]...)
}

const (
	squaresAcross = 16      // the narrowest place, in squares
	coarsest      = 0.1     // metres
	mostSquares   = 250_000 // on one floor
	easy          = 0.75    // metres from a wall at which nobody minds it
	hugging       = 3.0     // times as long a way seems along a wall
)

// squares is the floor cut into squares, each with its distance to the nearest atom.
type squares struct {
	space      *Space
	origin     plane.Point // middle of the first square
	size       float64
	nx, ny     int
	nearest    []int32 // the atom nearest to the middle of each square; -1: not known
	clear      []float64
	taken      []bool // an atom runs through it
	need, ease float64
}

func (s *Space) squares(a, b plane.Point, width float64) *squares {
	box := plane.Box{Min: a, Max: a}.Union(plane.Box{Min: b, Max: b})
	if len(s.outline.Vertices) > 0 {
		outline, _ := s.outline.Bounds()
		box = box.Union(outline)
	} else {
		for _, t := range s.atoms {
			box = box.Union(t.box)
		}
		box = box.Grow(2 * min(width, easy))
	}
	width = min(width, 2*easy)
	g := &squares{space: s, origin: box.Min}
	g.size = max(min(width/squaresAcross, coarsest), math.Sqrt(box.Width()*box.Height()/mostSquares))
	g.nx, g.ny = int(box.Width()/g.size)+2, int(box.Height()/g.size)+2
	g.need = max(0, width/2-g.size*math.Sqrt2/2)
	g.ease = max(easy, width/2)
	g.mark()
	g.spread()
	return g
}

func (g *squares) at(k int) plane.Point {
	return g.origin.Add(plane.Point{X: float64(k%g.nx) * g.size, Y: float64(k/g.nx) * g.size})
}

func (g *squares) of(p plane.Point) (k int, ok bool) {
	d := p.Sub(g.origin).Times(1 / g.size)
	x, y := int(math.Round(d.X)), int(math.Round(d.Y))
	return y*g.nx + x, x >= 0 && y >= 0 && x < g.nx && y < g.ny
}

// mark takes the squares that atoms run through. Points on an atom a quarter of a
// square apart miss none across which a step could lead.
func (g *squares) mark() {
	n := g.nx * g.ny
	g.nearest, g.clear, g.taken = make([]int32, n), make([]float64, n), make([]bool, n)
	for k := range n {
		g.nearest[k], g.clear[k] = -1, math.Inf(1)
	}
	for i, a := range g.space.atoms {
		steps := int(a.Length()/g.size*4) + 1
		for t := range steps + 1 {
			if k, ok := g.of(a.At(float64(t) / float64(steps))); ok {
				g.taken[k] = true
				g.offer(k, int32(i))
			}
		}
	}
}

// offer gives a square an atom, if it is nearer than the one it has.
func (g *squares) offer(k int, atom int32) {
	if atom < 0 || atom == g.nearest[k] {
		return
	}
	if d := g.space.atoms[atom].Distance(g.at(k)); d < g.clear[k] {
		g.nearest[k], g.clear[k] = atom, d
	}
}

// spread hands the nearest atom on from square to square, twice there and back.
func (g *squares) spread() {
	n := g.nx * g.ny
	for range 2 {
		for k := range n {
			g.offerFrom(k, -1)
		}
		for k := n - 1; k >= 0; k-- {
			g.offerFrom(k, 1)
		}
	}
}

func (g *squares) offerFrom(k, way int) {
	x, y := k%g.nx, k/g.nx
	for _, d := range [4][2]int{{way, 0}, {-way, way}, {0, way}, {way, way}} {
		if u, v := x+d[0], y+d[1]; u >= 0 && u < g.nx && v >= 0 && v < g.ny {
			g.offer(k, g.nearest[v*g.nx+u])
		}
	}
}

// path is Dijkstra's shortest path over the squares that leave room enough, in which
// what runs along a wall seems longer.
func (g *squares) path(a, b plane.Point) []plane.Point {
	from, ok1 := g.of(a)
	to, ok2 := g.of(b)
	if !ok1 || !ok2 {
		return nil
	}
	cost := make([]float64, len(g.clear))
	before := make([]int32, len(g.clear))
	for k := range cost {
		cost[k], before[k] = math.Inf(1), -1
	}
	cost[from] = 0
	open := queue{{from, 0}}
	for len(open) > 0 {
		k := heap.Pop(&open).(reached)
		if k.square == to {
			break
		}
		if k.cost > cost[k.square] {
			continue
		}
		g.steps(k.square, func(next int, length float64) {
			wall := max(0, 1-g.clear[next]/g.ease)
			if c := k.cost + length*(1+hugging*wall); c < cost[next] && (g.free(next) || next == to) {
				cost[next], before[next] = c, int32(k.square)
				heap.Push(&open, reached{next, c})
			}
		})
	}
	if math.IsInf(cost[to], 1) {
		return nil
	}
	way := []plane.Point{b}
	for k := before[to]; k >= 0 && int(k) != from; k = before[k] {
		way = append(way, g.at(int(k)))
	}
	way = append(way, a)
	slices.Reverse(way)
	return way
}

func (g *squares) free(k int) bool { return !g.taken[k] && g.clear[k] >= g.need }

// steps calls visit for the eight neighbours of a square; across a corner only where
// nothing runs through the two squares beside it.
func (g *squares) steps(k int, visit func(next int, length float64)) {
	x, y := k%g.nx, k/g.nx
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			u, v := x+dx, y+dy
			if dx == 0 && dy == 0 || u < 0 || v < 0 || u >= g.nx || v >= g.ny {
				continue
			}
			if dx != 0 && dy != 0 {
				if g.taken[y*g.nx+u] || g.taken[v*g.nx+x] {
					continue
				}
			}
			visit(v*g.nx+u, g.size*math.Hypot(float64(dx), float64(dy)))
		}
	}
}

// straightened leaves out points where the straight line past them keeps as far off
// everything as the way did, or as the person needs.
func (s *Space) straightened(way []plane.Point, width float64) []plane.Point {
	if len(way) < 3 {
		return way
	}
	clear := make([]float64, len(way))
	for i, p := range way {
		clear[i], _, _ = s.Clear(p)
	}
	out := way[:1:1]
	for at := 0; at < len(way)-1; {
		next := at + 1
		least := min(clear[at], clear[next])
		for far := at + 2; far < len(way); far++ {
			least = min(least, clear[far])
			if s.off(plane.Edge{A: way[at], B: way[far]}) < min(least, max(width/2, easy)) {
				break
			}
			next = far
		}
		out = append(out, way[next])
		at = next
	}
	return out
}

// off returns how near a segment comes to anything.
func (s *Space) off(e plane.Edge) float64 {
	box, least := e.Bounds(), math.Inf(1)
	for i := range s.atoms {
		if boxDistance(s.atoms[i].box, box) < least {
			least = min(least, s.atoms[i].DistanceTo(e))
		}
	}
	return least
}

// reached is a square and the cost at which it was reached.
type reached struct {
	square int
	cost   float64
}

type queue []reached

func (q queue) Len() int           { return len(q) }
func (q queue) Less(i, j int) bool { return q[i].cost < q[j].cost }
func (q queue) Swap(i, j int)      { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)        { *q = append(*q, x.(reached)) }
func (q *queue) Pop() any {
	old := *q
	last := old[len(old)-1]
	*q = old[:len(old)-1]
	return last
}
