package plane

import (
	"encoding/binary"
	"math"
	"testing"
)

// decodeEdges reads edges from bytes, ten each: four coordinates in steps of a
// quarter of a millimetre within eight metres, and a bulge from a list or a byte.
func decodeEdges(data []byte) []Edge {
	var out []Edge
	for ; len(data) >= 10 && len(out) < 14; data = data[10:] {
		at := func(i int) float64 { return float64(int16(binary.LittleEndian.Uint16(data[2*i:]))) / 4096 }
		e := Edge{A: Point{at(0), at(1)}, B: Point{at(2), at(3)}}
		switch bulge := int8(data[9]); data[8] % 3 {
		case 1:
			e.Bulge = float64(bulge) / 32
		case 2:
			e.Bulge = math.Copysign(1, float64(bulge))
		}
		out = append(out, e)
	}
	return out
}

func encodeEdges(edges []Edge) []byte {
	var out []byte
	for _, e := range edges {
		for _, v := range []float64{e.A.X, e.A.Y, e.B.X, e.B.Y} {
			out = binary.LittleEndian.AppendUint16(out, uint16(int16(math.Round(v*4096))))
		}
		out = append(out, 1, byte(int8(math.Round(e.Bulge*32))))
	}
	return out
}

func FuzzArrange(f *testing.F) {
	f.Add(encodeEdges(Rectangle(Point{0, 0}, Point{2, 1}).Edges()), uint8(1))
	f.Add(encodeEdges(append(Circle(Point{0, 0}, 1).Edges(), Circle(Point{1, 0}, 1).Edges()...)), uint8(2))
	f.Add(encodeEdges(lines(line(-1, 0, 1, 0), line(-1, -1, 1, 1), line(-1, 1.002, 1, -0.998))), uint8(3))
	f.Add(encodeEdges(lines(line(0, 0, 5, 0), line(2, 0.003, 7, -0.002), line(3, 0, 4, 0))), uint8(2))
	f.Fuzz(func(t *testing.T, data []byte, fineness uint8) {
		edges := decodeEdges(data)
		tol := []float64{1e-6, 1e-3, 0.01, 0.05}[fineness%4]
		a := Arrange(edges, tol)
		for _, fault := range faults(edges, a, tol, 4) {
			t.Error(fault)
		}
		// Every end of a link may be moved by some tolerances. At a coarse tolerance
		// nodes of a third edge can join or part two nearly parallel ones, so there
		// the two lengths only have their limits in common.
		slack := 8 * tol * float64(1+len(edges)+len(a.Links))
		links, union := lengthOf(a.Links), UnionLength(edges, tol)
		if tol < 1e-5 && math.Abs(links-union) > slack {
			t.Errorf("the links are %v m, the union %v", links, union)
		}
		longest := 0.0
		for _, e := range edges {
			longest = max(longest, e.Length())
		}
		for _, got := range []float64{links, union} {
			if got > total(edges)+slack || got < longest-slack {
				t.Errorf("%v m, from edges of %v m of which one is %v", got, total(edges), longest)
			}
		}
	})
}

func FuzzRegions(f *testing.F) {
	f.Add(encodeEdges(Rectangle(Point{0, 0}, Point{2, 1}).Edges()), encodeEdges(Circle(Point{1, 1}, 1).Edges()))
	f.Fuzz(func(t *testing.T, first, second []byte) {
		a, b := pathOf(decodeEdges(first)), pathOf(decodeEdges(second))
		const tol = 1e-6
		if back := a.Reversed(); math.Abs(back.SignedArea()+a.SignedArea()) > 1e-6*(1+a.Area()) {
			t.Errorf("area %v, reversed %v", a.SignedArea(), back.SignedArea())
		}
		for _, e := range b.Edges() {
			inside, outside := Clip(e, a, tol)
			if got := total(inside) + total(outside); e.Length() > 0 && !near(got, e.Length(), 1e-6) {
				t.Errorf("%+v is %v m, its pieces %v", e, e.Length(), got)
			}
		}
		_, crossesA := a.CrossesItself(tol)
		_, crossesB := b.CrossesItself(tol)
		if crossesA || crossesB {
			return
		}
		over, limit := Overlap(a, b), min(a.Area(), b.Area())
		if over > limit+1e-4 || over < 0 || math.IsNaN(over) {
			t.Errorf("overlap %v of areas %v and %v", over, a.Area(), b.Area())
		}
		if swapped := Overlap(b, a); math.Abs(swapped-over) > 1e-4 {
			t.Errorf("overlap %v, swapped %v", over, swapped)
		}
		if over > 1e-4 && distanceBetween(a, b) > tol {
			t.Errorf("overlap %v at a distance of %v", over, distanceBetween(a, b))
		}
	})
}

// pathOf returns the closed path through the starts of edges.
func pathOf(edges []Edge) Path {
	p := Path{Closed: true}
	for _, e := range edges {
		p.Vertices = append(p.Vertices, Vertex{e.A, e.Bulge})
	}
	return p
}
