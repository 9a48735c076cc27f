package dxf_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

const metres = "9 $INSUNITS|70 6"

func mustReadAt(t *testing.T, file string, tol float64) *linework.Sheet {
	t.Helper()
	s, err := dxf.Read(context.Background(), strings.NewReader(file), tol, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// rationalBezier evaluates the Bernstein form directly, which the reader does not.
func rationalBezier(points []plane.Point, weights []float64, t float64) plane.Point {
	n := len(points) - 1
	var sum plane.Point
	total, choose := 0.0, 1.0
	for i, p := range points {
		b := choose * math.Pow(t, float64(i)) * math.Pow(1-t, float64(n-i)) * weights[i]
		sum, total = sum.Add(p.Times(b)), total+b
		choose = choose * float64(n-i) / float64(i+1)
	}
	return sum.Times(1 / total)
}

// No point of a curve is further than the tolerance from what it was flattened to.
func TestChordsStayWithinTheTolerance(t *testing.T) {
	control := []plane.Point{pt(0, 0), pt(1, 4), pt(5, -3), pt(6, 1)}
	weights := []float64{1, 0.4, 3, 1}
	bezier := "0 SPLINE|71 3|40 0|40 0|40 0|40 0|40 1|40 1|40 1|40 1"
	for i, p := range control {
		bezier += fmt.Sprintf("|10 %v|20 %v|41 %v", p.X, p.Y, weights[i])
	}
	for _, c := range []struct {
		name, entity string
		at           func(t float64) plane.Point // t from 0 to 1
	}{
		{"an ellipse", "0 ELLIPSE|10 1|20 2|11 3|21 4|40 0.3", func(t float64) plane.Point {
			s, c := math.Sincos(2 * math.Pi * t)
			return pt(1+3*c-4*0.3*s, 2+4*c+3*0.3*s)
		}},
		{"an arc stretched by its block", "0 INSERT|2 B|41 5|42 0.5|50 30", func(t float64) plane.Point {
			s, c := math.Sincos(math.Pi * t)
			x, y := 5*2*c, 0.5*2*s
			s30, c30 := math.Sincos(math.Pi / 6)
			return pt(x*c30-y*s30, x*s30+y*c30)
		}},
		{"a tilted circle", "0 CIRCLE|40 2|210 1|220 0|230 1", func(t float64) plane.Point {
			s, c := math.Sincos(2 * math.Pi * t)
			return pt(2*s*math.Sqrt(0.5), 2*c)
		}},
		{"a rational spline", bezier, func(t float64) plane.Point { return rationalBezier(control, weights, t) }},
	} {
		for _, tol := range []float64{0.1, 0.001, 0.00001} {
			t.Run(fmt.Sprintf("%s to %v", c.name, tol), func(t *testing.T) {
				s := mustReadAt(t, section("HEADER", metres)+withBlocks("0 BLOCK|2 B|0 ARC|40 2|50 0|51 180|0 ENDBLK", c.entity), tol)
				worst := 0.0
				const samples = 2000
				for i := range samples + 1 {
					worst = max(worst, departure(s.Items[0].Edges, c.at(float64(i)/samples)))
				}
				if worst > tol*1.000001 {
					t.Errorf("departs by %g", worst)
				}
				if n := len(s.Items[0].Edges); float64(n) > 12/math.Sqrt(tol) {
					t.Errorf("%d chords", n)
				}
			})
		}
	}
}

func departure(edges []plane.Edge, p plane.Point) float64 {
	least := math.Inf(1)
	for _, e := range edges {
		least = min(least, e.Distance(p))
	}
	return least
}

func TestCurvesThatAreCircularStayArcs(t *testing.T) {
	for _, c := range []struct {
		name, entity string
		edges        int
		length       float64
	}{
		{"an ellipse as wide as high", "0 ELLIPSE|11 0|21 2|40 1|41 0|42 6.283185307179586", 2, 4 * math.Pi},
		{"a circle in a turned, mirrored block", "0 INSERT|2 B|41 -3|42 3|50 20", 2, 6 * math.Pi},
		{"a circle upside down in space", "0 CIRCLE|40 1|230 -1", 2, 2 * math.Pi},
		{"an arc across zero", "0 ARC|40 1|50 350|51 10", 1, math.Pi / 9},
		{"an arc with angles beyond a turn", "0 ARC|40 1|50 -10|51 370", 1, math.Pi / 9},
		{"an arc that ends where it starts", "0 ARC|40 1|50 30|51 30", 2, 2 * math.Pi},
		{"a bulge", "0 LWPOLYLINE|10 0|20 0|42 1|10 2|20 0", 1, math.Pi},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, withBlocks("0 BLOCK|2 B|0 CIRCLE|8 0|40 1|0 ENDBLK", c.entity))
			i := &s.Items[0]
			if len(i.Edges) != c.edges || math.Abs(i.Length()-c.length) > 1e-12 {
				t.Errorf("%d edges, %v long, want %d, %v", len(i.Edges), i.Length(), c.edges, c.length)
			}
		})
	}
}

// Where the unit is not known the tolerance follows the curve's own size.
func TestTolerancesWithoutAUnit(t *testing.T) {
	small := mustRead(t, drawing("0 ELLIPSE|11 1|40 0.5"))
	large := mustRead(t, drawing("0 ELLIPSE|11 1000|40 0.5"))
	if a, b := len(small.Items[0].Edges), len(large.Items[0].Edges); a != b || a < 100 || a > 500 {
		t.Errorf("%d and %d chords", a, b)
	}
}

// A spline through points is straight through points in line, passes through them
// all, and leaves in the directions that are given.
func TestSplinesThroughPoints(t *testing.T) {
	s := mustRead(t, drawing("0 SPLINE|8 A|71 3|11 0|21 0|11 1|21 1|11 1|21 1|11 4|21 4"))
	wantLength(t, s, "A", 4*math.Sqrt2)
	s = mustReadAt(t, section("HEADER", metres)+drawing("0 SPLINE|71 3|11 0|21 0|11 2|21 1|11 5|21 -1|12 0|22 3|13 0|23 -1"), 1e-5)
	edges := s.Items[0].Edges
	for _, p := range []plane.Point{pt(0, 0), pt(2, 1), pt(5, -1)} {
		if d := departure(edges, p); d > 1e-9 {
			t.Errorf("passes %v at %g", p, d)
		}
	}
	up, down := edges[0].Tangent(0), edges[len(edges)-1].Tangent(1)
	if up.Y < 0.999 || down.Y > -0.999 {
		t.Errorf("leaves in direction %v and ends in %v", up, down)
	}
	if left(s, "SPLINE", "passes through") != 1 {
		t.Errorf("left aside: %v", s.Left)
	}
}

// The same drawing placed through a block that is turned and enlarged evenly is
// that much longer, whatever is in it.
func TestEvenBlocksKeepProportions(t *testing.T) {
	const things = "0 ARC|8 0|10 1|20 2|40 3|50 20|51 200|0 ELLIPSE|8 0|11 3|21 1|40 0.4|0 LWPOLYLINE|8 0|70 1|10 0|20 0|42 0.7|10 5|20 1|42 -2|10 3|20 3|" +
		"0 SPLINE|8 0|71 2|40 0|40 0|40 0|40 1|40 1|40 1|10 0|20 0|10 2|20 5|10 4|20 0"
	plain := lengthByLayer(mustReadAt(t, section("HEADER", metres)+drawing(things), 1e-7), every)["0"]
	for _, insert := range []string{"41 2|42 2|50 77", "41 -2|42 2|50 77", "41 2|42 -2|43 5", "41 2|42 2|230 -1", "41 -2|42 -2|10 1000|20 -1000"} {
		s := mustReadAt(t, section("HEADER", metres)+withBlocks("0 BLOCK|2 B|10 7|20 8|"+things+"|0 ENDBLK", "0 INSERT|2 B|8 A|"+insert), 1e-7)
		if got := lengthByLayer(s, every)["A"]; math.Abs(got-2*plain) > 1e-6 {
			t.Errorf("%s: %v long, want %v", insert, got, 2*plain)
		}
	}
}
