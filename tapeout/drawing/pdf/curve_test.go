package pdf

import (
	"math"
	"testing"

	"groundrow/tapeout/plane"
)

// asCurve writes an arc of up to a half turn as drawing programs do.
func asCurve(e plane.Edge) bezier {
	_, r, _ := e.Circle()
	reach := 4.0 / 3 * math.Tan(math.Abs(e.Sweep())/4) * r
	return bezier{e.A, e.A.Add(e.Tangent(0).Times(reach)), e.B.Sub(e.Tangent(1).Times(reach)), e.B}
}

func TestArcsAreRecognised(t *testing.T) {
	for _, c := range []struct {
		name   string
		radius float64
		sweep  float64
		tol    float64
	}{
		{"a quarter of a table", 20, math.Pi / 2, 0.01},
		{"a quarter of a revolve, off the circle by three times the tolerance", 1000, math.Pi / 2, 0.1},
		{"clockwise", 300, -math.Pi / 3, 0.01},
		{"the edge of a stage, nearly straight", 5000, 0.05, 0.01},
		{"a half turn in one curve, within the tolerance", 1, math.Pi, 0.05},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := plane.ArcOf(plane.Point{X: 700, Y: -40}, c.radius, 1, c.sweep)[0]
			b := asCurve(want)
			got := b.edges(c.tol)
			if len(got) != 1 || math.Abs(got[0].Bulge-want.Bulge) > 1e-3*math.Abs(want.Bulge)+1e-12 {
				t.Errorf("got %v, want %v", got, want)
			}
		})
	}
}

func TestCurvesThatAreNoArcsAreFlattened(t *testing.T) {
	for name, b := range map[string]bezier{
		"a swag":                       {{X: 0, Y: 0}, {X: 0, Y: 50}, {X: 100, Y: 0}, {X: 100, Y: 50}},
		"a half turn beyond tolerance": asCurve(plane.ArcOf(plane.Point{}, 100, 0, math.Pi)[0]),
		"a quarter of an ellipse":      {{X: 100, Y: 0}, {X: 100, Y: 27.6}, {X: 55.2, Y: 50}, {X: 0, Y: 50}},
		"a loop":                       {{X: 0, Y: 0}, {X: 200, Y: 100}, {X: -100, Y: 100}, {X: 100, Y: 0}},
	} {
		t.Run(name, func(t *testing.T) {
			edges := b.edges(0.01)
			if len(edges) < 4 {
				t.Fatalf("%d edges", len(edges))
			}
			wantAlong(t, &b, edges, 0.01)
		})
	}
}

// wantAlong fails unless the edges run from end to end of the curve without a gap,
// and pass every one of a thousand places on it within tol.
func wantAlong(t *testing.T, b *bezier, edges []plane.Edge, tol float64) {
	t.Helper()
	if edges[0].A != b[0] || edges[len(edges)-1].B != b[3] {
		t.Errorf("the ends are %v and %v", edges[0].A, edges[len(edges)-1].B)
	}
	for i := 1; i < len(edges); i++ {
		if edges[i].A != edges[i-1].B {
			t.Errorf("a gap before edge %d", i)
		}
	}
	for i := range 1000 {
		p, near := b.at(float64(i)/999), math.Inf(1)
		for _, e := range edges {
			near = min(near, e.Distance(p))
		}
		if near > tol {
			t.Fatalf("%v is off by %v", p, near)
		}
	}
}

func TestStraightCurveIsALine(t *testing.T) {
	b := bezier{{X: 0, Y: 0}, {X: 30, Y: 0.001}, {X: 60, Y: 0}, {X: 100, Y: 0}}
	if got := b.edges(0.01); len(got) != 1 || !got[0].Straight() {
		t.Errorf("got %v", got)
	}
}

func TestCircleIsTwoHalvesWhateverItsParts(t *testing.T) {
	for _, parts := range []int{2, 4, 8, 12, 36} {
		o := outline{closed: true}
		for i := range parts {
			step := 2 * math.Pi / float64(parts)
			for _, e := range plane.ArcOf(plane.Point{X: 50, Y: 50}, 30, float64(i)*step, step) {
				b := asCurve(e)
				if i == 0 {
					o.start = b[0]
				}
				o.rest = append(o.rest, segment{[3]plane.Point{b[1], b[2], b[3]}, true})
			}
		}
		edges := o.edges(0.6) // the two curves of half a turn each are half a point off
		if len(edges) != 2 || math.Abs(edges[0].Bulge-1) > 0.02 || math.Abs(edges[1].Bulge-1) > 0.02 {
			t.Errorf("of %d parts: %v", parts, edges)
		}
	}
}

func TestArcsOfOtherCirclesAreNotJoined(t *testing.T) {
	var c chain
	for _, e := range []plane.Edge{
		{A: plane.Point{X: 0}, B: plane.Point{X: 10}, Bulge: 0.2},
		{A: plane.Point{X: 10}, B: plane.Point{X: 20}, Bulge: -0.2},
		{A: plane.Point{X: 20}, B: plane.Point{X: 30}, Bulge: -0.3},
		{A: plane.Point{X: 30}, B: plane.Point{X: 40}},
		{A: plane.Point{X: 40}, B: plane.Point{X: 50}},
	} {
		c.add(e, 0.01)
	}
	if len(c.edges) != 5 {
		t.Errorf("got %v", c.edges)
	}
}

func TestDashes(t *testing.T) {
	for _, c := range []struct {
		name string
		in   []float32
		want []float64
	}{
		{"none", nil, nil},
		{"pairs", []float32{6, 3}, []float64{6, 3}},
		{"an odd number goes round twice", []float32{6, 3, 1}, []float64{6, 3, 1, 6, 3, 1}},
		{"one", []float32{4}, []float64{4, 4}},
		{"no gaps are no dashes", []float32{5, 0}, nil},
		{"negative", []float32{5, -1}, nil},
		{"no number", []float32{float32(math.NaN()), 1}, nil},
	} {
		if got := dashes(c.in); !equal(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
	}
}

func equal(a, b []float64) bool {
	if len(a) != len(b) || (a == nil) != (b == nil) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// A page is turned back by turning it on, and its corners stay corners.
func TestPlaceOfAPage(t *testing.T) {
	box := plane.Box{Min: plane.Point{X: -10, Y: 20}, Max: plane.Point{X: 90, Y: 70}}
	for quarters := -4; quarters <= 8; quarters++ {
		m := onPage(box, quarters, 2)
		b := boxAfter(box, m)
		w, h := 200.0, 100.0
		if quarters%2 != 0 {
			w, h = h, w
		}
		if b.Min.Len() > 1e-9 || math.Abs(b.Max.X-w) > 1e-9 || math.Abs(b.Max.Y-h) > 1e-9 || math.Abs(m.scale()-2) > 1e-12 {
			t.Errorf("%d quarters: %v, %v", quarters, b, m)
		}
	}
}

func TestFootMarksStayQuotationMarksElsewhere(t *testing.T) {
	for in, want := range map[string]string{
		"10’-6”": `10'-6"`, "1⁄4” = 1’": `1⁄4" = 1'`, "½”": `½"`, "6 ″": `6 "`, "‘HAMLET’": "‘HAMLET’", "“7” AND “A”": "“7\" AND “A”", "": "",
	} {
		if got := footMarks(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

// FuzzOutline: whatever the points, matrix and tolerance, what is drawn runs from
// end to end without a gap, and stays on the paper.
func FuzzOutline(f *testing.F) {
	f.Add(0.0, 0.0, 0.0, 50.0, 100.0, 0.0, 100.0, 50.0, 1.0, 0.3, 0.01)
	f.Add(100.0, 0.0, 100.0, 55.22847, 55.22847, 100.0, 0.0, 100.0, 2.0, 0.0, 0.05)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0)
	f.Add(1e7, -1e7, 1e7, 1e7, -1e7, 1e7, 5.0, 1e-300, 1e-5, 1e5, 1e-3)
	f.Add(math.NaN(), 0.0, math.Inf(1), 0.0, 1.0, 1.0, 2.0, 2.0, 1.0, 0.0, 0.1)
	f.Fuzz(func(t *testing.T, x0, y0, x1, y1, x2, y2, x3, y3, scale, skew, tol float64) {
		if !(tol >= FinestTolerance) || tol > 10 {
			t.Skip()
		}
		b := bezier{{X: x0, Y: y0}, {X: x1, Y: y1}, {X: x2, Y: y2}, {X: x3, Y: y3}}
		own := outline{start: b[0], rest: []segment{{[3]plane.Point{b[1], b[2], b[3]}, true}, lineTo(b[1])}, closed: true}
		o := own.moved(matrix{a: scale, b: skew, c: -skew, d: scale})
		if !o.finite() {
			return
		}
		edges := o.edges(tol)
		for i, e := range edges {
			if !e.A.Finite() || !e.B.Finite() || math.IsNaN(e.Bulge) || math.IsInf(e.Bulge, 0) {
				t.Fatalf("edge %d is %v", i, e)
			}
			if i > 0 && e.A != edges[i-1].B {
				t.Fatalf("a gap before edge %d of %v", i, edges)
			}
		}
		if n := len(edges); n > 0 && (edges[0].A != o.start || edges[n-1].B != o.start) {
			t.Fatalf("%v does not lead back to %v", edges, o.start)
		}
		if w, ok := windowOf(&o, tol); ok {
			w.cut(edges, tol)
		}
		if s, ok := o.asStrip(); ok && !(s.width < thin) {
			t.Fatalf("a strip %v wide", s.width)
		}
	})
}

// FuzzCurve: a curve comes back within the tolerance and its rounding, unless it is
// the usual way to write an arc, which is allowed 0.06 % of its radius.
func FuzzCurve(f *testing.F) {
	f.Add(0.0, 50.0, 100.0, 0.0, 100.0, 50.0, 0.01)
	f.Add(0.0, 55.22847, -44.77153, 100.0, -100.0, 100.0, 0.05)
	f.Add(1.0, 1.0, -3.0, 2.0, 0.5, 0.5, 0.2)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, x3, y3, tol float64) {
		b := bezier{{}, {X: x1, Y: y1}, {X: x2, Y: y2}, {X: x3, Y: y3}}
		if !(tol >= 0.01) || tol > 1 {
			t.Skip()
		}
		size := 0.0
		for _, p := range b {
			if !p.Finite() || p.Len() > 1000 {
				t.Skip()
			}
			size = max(size, p.Len())
		}
		edges := b.edges(tol)
		allowed := tol + 1e-9*size
		if _, r, curved := edges[0].Circle(); curved {
			allowed += min(0.0006*r, size)
		}
		wantAlong(t, &b, edges, allowed)
	})
}
