package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestFreeAreaOfBlockedRectangles(t *testing.T) {
	p := func(x, y float64) Point { return Point{x, y} }
	room := Rectangle(p(0, 0), p(10, 8))
	for _, c := range []struct {
		name    string
		a       Path
		blocked []Path
		want    float64
	}{
		{"nothing in the way", Rectangle(p(1, 1), p(3, 2)), nil, 2},
		{"half outside", Rectangle(p(-1, 1), p(1, 2)), nil, 1},
		{"a column within", Rectangle(p(1, 1), p(5, 5)), []Path{Rectangle(p(2, 2), p(3, 3))}, 15},
		{"two that overlap", Rectangle(p(0, 0), p(4, 4)), []Path{Rectangle(p(1, 1), p(3, 2)), Rectangle(p(2, 1), p(4, 2))}, 13},
		{"flush with the wall", Rectangle(p(0, 0), p(4, 4)), []Path{Rectangle(p(0, 0), p(1, 1))}, 15},
		{"one that is the region", Rectangle(p(2, 2), p(4, 4)), []Path{Rectangle(p(2, 2), p(4, 4))}, 0},
		{"all covered", Rectangle(p(2, 2), p(4, 4)), []Path{Rectangle(p(-1, -1), p(11, 9))}, 0},
		{"a round column, walked the other way", Rectangle(p(1, 1), p(5, 5)), []Path{Circle(p(3, 3), 1).Reversed()}, 16 - math.Pi},
		{"a column half outside the room", Rectangle(p(-2, -2), p(4, 4)), []Path{Rectangle(p(-1, 1), p(1, 3))}, 14},
	} {
		if got := FreeArea(c.a, room, c.blocked); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %.9f m², want %.9f m²", c.name, got, c.want)
		}
	}
}

// Where blocked regions do not overlap each other and lie within the room, what
// they take away is their overlaps with the region.
func TestFreeAreaTakesAwayOverlaps(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 9))
	room := Closed(Point{0, 0}, Point{12, 0}, Point{12, 6}, Point{7, 6}, Point{7, 10}, Point{0, 10})
	blocked := []Path{Circle(Point{3, 3}, 0.7), Closed(Point{5, 1}, Point{6, 1.2}, Point{5.4, 2}), Rectangle(Point{8, 0}, Point{9, 3})}
	for range 200 {
		at := Motion{Turn: rnd.Float64() * 7, Shift: Point{rnd.Float64() * 12, rnd.Float64() * 10}}
		a := Rectangle(Point{-2, -1}, Point{2, 3}).Moved(at)
		want := Overlap(a, room)
		for _, b := range blocked {
			want -= Overlap(a, b)
		}
		if got := FreeArea(a, room, blocked); math.Abs(got-want) > 1e-5 {
			t.Fatalf("%v: %.7f m², want %.7f m²", at, got, want)
		}
	}
}
