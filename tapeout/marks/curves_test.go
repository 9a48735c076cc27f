package marks

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// chords draws a curve as n straight pieces.
func chords(n int, closed bool, at func(t float64) plane.Point) plane.Path {
	path := plane.Path{Closed: closed}
	last := n
	if closed {
		last = n - 1
	}
	for i := range last + 1 {
		path.Vertices = append(path.Vertices, plane.Vertex{Point: at(float64(i) / float64(n))})
	}
	return path
}

func ellipseAt(t float64) plane.Point {
	s, k := math.Sincos(2 * math.Pi * t)
	return p(4*k, 6+1.5*s)
}

// bezierAt is a cubic spline that bends one way and then the other.
func bezierAt(t float64) plane.Point {
	u := 1 - t
	at := p(-5, 1).Times(u * u * u).Add(p(-2, 6).Times(3 * u * u * t)).Add(p(2, -3).Times(3 * u * t * t)).Add(p(5, 3).Times(t * t * t))
	return at
}

// apron is three arcs that run on into each other: a flat middle with tighter ends.
func apron() plane.Path {
	middle, _ := plane.Through(p(-4, -1.2), p(0, -1.8), p(4, -1.2))
	path := plane.Path{Vertices: []plane.Vertex{{Point: middle.A, Bulge: middle.Bulge}, {Point: middle.B}}}
	tangent := middle.Tangent(1)
	end := p(6, 0.2)
	// The arc from B along the tangent to the end has the bulge tan(half the angle
	// between tangent and chord).
	chord := end.Sub(middle.B)
	half := math.Atan2(tangent.Cross(chord), tangent.Dot(chord)) / 2
	path.Vertices[1].Bulge = math.Tan(half)
	path.Vertices = append(path.Vertices, plane.Vertex{Point: end})
	return path
}

// fewestChords is the least number of chords over a curve given by fine points, found
// the long way: from each point to every later one that a chord may reach.
func fewestChords(fine []plane.Point, tol float64) int {
	best := make([]int, len(fine))
	for i := 1; i < len(fine); i++ {
		best[i] = math.MaxInt32
		for j := i - 1; j >= 0; j-- {
			if best[j]+1 >= best[i] {
				continue
			}
			chord, most := plane.Edge{A: fine[j], B: fine[i]}, 0.0
			for k := j + 1; k < i && most <= 4*tol; k++ {
				most = max(most, chord.Distance(fine[k]))
			}
			if most <= tol {
				best[i] = best[j] + 1
			}
			if most > 4*tol {
				break // none of these curves comes back to a longer chord
			}
		}
	}
	return best[len(fine)-1]
}

func TestCurvesHaveEnoughPointsAndNotOneMore(t *testing.T) {
	for _, c := range []struct {
		name string
		path plane.Path
	}{
		{"an ellipse drawn as chords", chords(180, true, ellipseAt)},
		{"a spline drawn as chords", chords(120, false, bezierAt)},
		{"an apron of several arcs", apron()},
		{"a circle of two halves", plane.Circle(p(0, 5), 3)},
	} {
		for _, tol := range []float64{0.01, 0.0254, 0.06} {
			t.Run(fmt.Sprintf("%s, %v m", c.name, tol), func(t *testing.T) {
				rules := DefaultRules
				rules.Chord, rules.CentreSwing = tol, false
				pl := &plan.Plan{Elements: []plan.Element{element("curve", c.path)}}
				ms := Of(pl, &floor.Floor{}, nil, rules, 0)
				edges := c.path.Edges()
				var fine []plane.Point
				for _, e := range edges {
					n := max(1, int(math.Ceil(e.Length()/0.05)))
					for i := range n {
						fine = append(fine, e.At(float64(i)/float64(n)))
					}
				}
				if !c.path.Closed {
					fine = append(fine, edges[len(edges)-1].B)
				}
				order := alongPoints(fine, ms)
				if len(order) != len(ms) {
					t.Fatalf("%d of %d marks are on the curve", len(order), len(ms))
				}
				if c.path.Closed {
					order = append(order, order[0])
				}
				worst := 0.0
				for i := 1; i < len(order); i++ {
					worst = max(worst, departure(fine, order[i-1], order[i]))
				}
				if worst > tol+1e-6 {
					t.Errorf("a chord departs by %v", worst)
				}
				most := fewestChords(rotated(fine, order[0].index, c.path.Closed), tol)
				if got := len(order) - 1; got > most {
					t.Errorf("%d chords, %d are enough", got, most)
				} else {
					t.Logf("%d chords, of 50 mm steps %d; the worst departs by %.1f mm", got, most, 1000*worst)
				}
			})
		}
	}
}

// marked is a mark and the last fine point at or before it.
type marked struct {
	index int
	at    plane.Point
}

// alongPoints returns the marks in their order along the fine points; those off the
// curve are left out.
func alongPoints(fine []plane.Point, ms []Mark) []marked {
	var out []marked
	for _, m := range ms {
		best, least := -1, 1e-3
		for i, f := range fine {
			if d := (plane.Edge{A: f, B: fine[(i+1)%len(fine)]}).Distance(m.At); d < least-1e-9 {
				best, least = i, d
			}
		}
		if best >= 0 {
			out = append(out, marked{best, m.At})
		}
	}
	slices.SortFunc(out, func(a, b marked) int {
		return cmp.Or(cmp.Compare(a.index, b.index), cmp.Compare(fine[a.index].To(a.at), fine[b.index].To(b.at)))
	})
	return out
}

func departure(fine []plane.Point, a, b marked) float64 {
	chord, most := plane.Edge{A: a.at, B: b.at}, 0.0
	for k := a.index; k != b.index; {
		k = (k + 1) % len(fine)
		most = max(most, chord.Distance(fine[k]))
	}
	return most
}

// rotated begins a closed curve at the fine point i and ends it there.
func rotated(fine []plane.Point, i int, closed bool) []plane.Point {
	if !closed {
		return fine
	}
	out := append(append([]plane.Point{}, fine[i:]...), fine[:i]...)
	return append(out, out[0])
}

func TestABayOfThreeWallsIsNoCurve(t *testing.T) {
	bay := plane.Open(p(0, 0), p(2, 0.3), p(4, 0.3), p(6, 0))
	if ms := find(t, element("bay", bay)); count(ms, Corner) != 2 || count(ms, End) != 2 {
		t.Errorf("%+v", ms)
	}
}

func TestACurveIsSwungOnlyWhereTheTapeReachesAndNothingIsInItsWay(t *testing.T) {
	pl := &plan.Plan{Elements: []plan.Element{element("ring", plane.Circle(p(1, 4), 2))}}
	room := &floor.Floor{Outline: plane.Rectangle(p(-6, -6), p(6, 9))}
	column := *room
	column.Obstacles = []floor.Obstacle{{ID: "column", Shape: plane.Rectangle(p(1.5, 4.5), p(1.9, 4.9))}}
	under := *room
	under.Obstacles = []floor.Obstacle{{ID: "piano", Shape: plane.Rectangle(p(0.5, 3.5), p(1.5, 4.5))}}
	for _, c := range []struct {
		name    string
		f       *floor.Floor
		longest float64
		want    int
	}{
		{"free", room, 0, 1}, {"a tape just long enough", room, 2, 1}, {"a tape too short", room, 1.9, 0},
		{"a column in the way", &column, 0, 0}, {"something on the centre", &under, 0, 0},
	} {
		ms := Of(pl, c.f, nil, DefaultRules, c.longest)
		if got := count(ms, Centre); got != c.want {
			t.Errorf("%s: %d centres", c.name, got)
		}
		if c.want == 0 && count(ms, Curve) < 6 {
			t.Errorf("%s: no points instead", c.name)
		}
	}
}

// A tolerance that nobody could tape is widened, and the whole of the curve is marked.
func TestATinyToleranceLeavesNoPartOfACurveUnmarked(t *testing.T) {
	one := plane.Edge{A: plane.Point{}, B: plane.Point{X: 8}, Bulge: 0.4}
	two := plane.Edge{A: one.B, B: plane.Point{X: 18, Y: 1}, Bulge: -0.3}
	for name, c := range map[string]chain{"one arc": {parts: []plane.Edge{one}}, "two arcs": {parts: []plane.Edge{one, two}}} {
		got := c.points(1e-8)
		if len(got) < mostPoints/4 || len(got) > mostPoints {
			t.Fatalf("%s: %d points", name, len(got))
		}
		end := c.parts[len(c.parts)-1].B
		longest, from := 0.0, c.parts[0].A
		for _, p := range append(got, onChain{at: end}) {
			longest, from = math.Max(longest, from.To(p.at)), p.at
		}
		if longest > 0.1 {
			t.Errorf("%s: %.3f m are left without a point", name, longest)
		}
	}
}
