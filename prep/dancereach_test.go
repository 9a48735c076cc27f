package prep

import (
	"math"
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestADanceLineReachesToTheNarrowerSide(t *testing.T) {
	p := small()
	f := p.Floor("room")
	if _, ok := ReachOf(p, f, ToProscenium); ok {
		t.Error("a plan without a proscenium has a reach")
	}
	p.Plan.Elements = append(p.Plan.Elements,
		element("left", plan.Proscenium, plane.Rectangle(pt(5.5, 0), pt(8, 0.4))),
		element("right", plan.Proscenium, plane.Rectangle(pt(-8, 0), pt(-5.2, 0.4))),
		element("header", plan.Proscenium, plane.Rectangle(pt(-8, 0), pt(8, 0.4))),
		element("wall", plan.SideWall, plane.Open(pt(9, 0), pt(9, 8))),
		element("leg", plan.Masking, plane.Open(pt(-7.5, 3), pt(-10, 3))),
	)
	for to, want := range map[DanceReach]float64{ToProscenium: 5.2, ToWings: 7.5} {
		if got, ok := ReachOf(p, f, to); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v, %v; want %v", to, got, ok, want)
		}
	}
}
