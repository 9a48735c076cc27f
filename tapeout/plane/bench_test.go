package plane

import (
	"math/rand/v2"
	"testing"
)

// BenchmarkArrange measures line work that could defeat an index: parallel hatching
// across the whole floor, long lines both ways, and a stray point far off; and arcs.
func BenchmarkArrange(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 31))
	var hatch, weave, stray, arcs []Edge
	for i := range 10_000 {
		x := float64(i) * 0.01
		hatch = append(hatch, line(x, 0, x+50, 50))
		p := Point{r.Float64() * 100, r.Float64() * 100}
		e := Edge{A: p, B: p.Add(Polar(r.Float64()*5, r.Float64()*7))}
		stray = append(stray, e)
		e.Bulge = r.Float64() - 0.5
		arcs = append(arcs, e)
	}
	stray[0].A = Point{9e5, 9e5}
	for i := range 300 {
		weave = append(weave, line(float64(i), 0, float64(i), 300), line(0, float64(i), 300, float64(i)))
	}
	for name, edges := range map[string][]Edge{"hatching": hatch, "weave": weave, "stray": stray, "arcs": arcs} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Arrange(edges, 1e-3)
			}
		})
	}
}

// BenchmarkOverlap measures what a search for a placement asks for most: a small
// piece against an outline with arcs.
func BenchmarkOverlap(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 32))
	room := blob(r, Point{0, 0}, 6)
	for name, piece := range map[string]Path{
		"inside": Rectangle(Point{-1, -1}, Point{1, 1}),
		"across": Rectangle(Point{3, -1}, Point{8, 1}),
		"apart":  Rectangle(Point{20, 0}, Point{22, 1}),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Overlap(room, piece)
			}
		})
	}
}
